package org.culvert.care;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;

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
}
