package org.culvert.care.health;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** Reports that are alike; it happened when it was raised. */
@Entity
@Table(name = "health_alerts")
class HealthAlert extends Recorded {
    UUID syndromeId;
    UUID thresholdId;
    int smallestCount;
    double withinKilometres;
    int withinDays;

    @Nullable
    UUID joinedTo;

    @Nullable
    Instant joinedAt;

    protected HealthAlert() {}

    HealthAlert(UUID syndromeId, AlertThreshold threshold, Instant at) {
        happenedAt(at);
        this.syndromeId = syndromeId;
        this.thresholdId = threshold.id();
        this.smallestCount = threshold.smallestCount;
        this.withinKilometres = threshold.withinKilometres;
        this.withinDays = threshold.withinDays;
    }

    void joinTo(UUID other, Instant at) {
        joinedTo = other;
        joinedAt = at;
        revisedBecause("a report joins it with an older alert");
    }
}
