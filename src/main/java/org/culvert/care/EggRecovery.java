package org.culvert.care;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;

/** Eggs recovered at one time, every one of them accounted for. */
@Entity
@Table(name = "egg_recoveries")
class EggRecovery extends Recorded {
    UUID clutchId;
    int recovered;
    int setToIncubate;
    int broken;
    int discarded;

    protected EggRecovery() {}

    EggRecovery(UUID clutchId, ClutchService.EggsEntry entry, Instant at) {
        happenedAt(at);
        this.clutchId = clutchId;
        this.recovered = entry.recovered();
        this.setToIncubate = entry.setToIncubate();
        this.broken = entry.broken();
        this.discarded = entry.discarded();
    }

    void correct(CareCorrections.EggsCorrection correction, Clock clock) {
        recovered = correction.recovered().over("recovered", recovered);
        setToIncubate = correction.setToIncubate().over("setToIncubate", setToIncubate);
        broken = correction.broken().over("broken", broken);
        discarded = correction.discarded().over("discarded", discarded);
        happenedAt(Corrections.known(
                "at", correction.at(), Objects.requireNonNull(happenedAt(), "a recovery has a time"), clock));
        revisedBecause(correction.reason());
    }

    ClutchService.EggsEntry eggs() {
        return new ClutchService.EggsEntry(recovered, setToIncubate, broken, discarded, happenedAt());
    }
}
