package org.culvert.care.clutch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** Eggs of one mother. */
@Entity
@Table(name = "clutches")
class Clutch extends Recorded {
    UUID motherCaseId;

    @Nullable
    UUID visitId;

    protected Clutch() {}

    Clutch(UUID motherCaseId, @Nullable UUID visitId, Instant at) {
        happenedAt(at);
        this.motherCaseId = motherCaseId;
        this.visitId = visitId;
    }

    void correct(ClutchCorrections.ClutchCorrection correction, Clock clock) {
        visitId = correction.visitId().over(visitId);
        happenedAt(Corrections.known(
                "at", correction.at(), Objects.requireNonNull(happenedAt(), "a clutch has a time"), clock));
        revisedBecause(correction.reason());
    }
}
