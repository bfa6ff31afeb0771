package org.culvert.care;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Why this carer: under which authorisation, on which conditions. */
@Entity
@Table(name = "placements")
class Placement extends Recorded {
    UUID caseId;
    UUID carerId;
    UUID handOverId;
    String authorisation;

    @Nullable
    UUID visitId;

    @Nullable
    String conditions;

    protected Placement() {}

    Placement(UUID caseId, PlacementService.PlacementEntry entry, UUID handOverId, String authorisation, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.carerId = entry.carerMemberId();
        this.handOverId = handOverId;
        this.authorisation = authorisation;
        this.visitId = entry.visitId();
        this.conditions = entry.conditions();
    }
}
