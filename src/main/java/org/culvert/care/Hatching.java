package org.culvert.care;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;

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
}
