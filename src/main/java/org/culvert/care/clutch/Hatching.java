package org.culvert.care.clutch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;

/** Hatchlings that came out of a clutch at one time. */
@Entity
@Table(name = "hatchings")
class Hatching extends Recorded {
    UUID clutchId;
    int hatched;

    protected Hatching() {}

    Hatching(UUID clutchId, int hatched, Instant at) {
        happenedAt(at);
        this.clutchId = clutchId;
        this.hatched = hatched;
    }

    void correct(ClutchCorrections.HatchedCorrection correction, Clock clock) {
        happenedAt(Corrections.known(
                "at", correction.at(), Objects.requireNonNull(happenedAt(), "a hatching has a time"), clock));
        revisedBecause(correction.reason());
    }
}
