package org.culvert.care;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
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

    void correct(CareCorrections.PlacementCorrection correction, Clock clock) {
        visitId = correction.visitId().over(visitId);
        conditions = Corrections.text("conditions", correction.conditions(), conditions, 4000);
        happenedAt(Corrections.known(
                "offeredAt",
                correction.offeredAt(),
                Objects.requireNonNull(happenedAt(), "a placement has a time"),
                clock));
        revisedBecause(correction.reason());
    }
}
