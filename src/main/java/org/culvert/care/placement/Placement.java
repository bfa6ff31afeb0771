package org.culvert.care.placement;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.culvert.care.matching.Candidacy;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
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

    /** Why in spite of a rule of the network's own. */
    @Nullable
    String despite;

    @JdbcTypeCode(SqlTypes.JSON)
    List<CarerSearch.CarerTestView> tests;

    protected Placement() {}

    Placement(UUID caseId, PlacementService.PlacementEntry entry, UUID handOverId, Candidacy candidacy, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.carerId = entry.carerMemberId();
        this.handOverId = handOverId;
        this.authorisation = Objects.requireNonNull(candidacy.authorisationNumber(), "refused before");
        this.visitId = entry.visitId();
        this.conditions = entry.conditions();
        this.despite = candidacy.isFit() ? null : entry.despite();
        this.tests =
                candidacy.tests().stream().map(CarerSearch.CarerTestView::of).toList();
    }

    void correct(PlacementService.PlacementCorrection correction, Clock clock) {
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
