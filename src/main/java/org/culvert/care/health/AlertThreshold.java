package org.culvert.care.health;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.care.health.alike.Threshold;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** From how many, how near and how soon on there is an alert. */
@Entity
@Table(name = "alert_thresholds")
class AlertThreshold extends Recorded {
    @Nullable
    UUID syndromeId;

    int smallestCount;
    double withinKilometres;
    int withinDays;
    String source;
    LocalDate readOn;
    LocalDate validFrom;

    @Nullable
    LocalDate validTo;

    protected AlertThreshold() {}

    AlertThreshold(SyndromeEntries.ThresholdEntry entry) {
        this.syndromeId = entry.syndromeId();
        this.smallestCount = entry.smallestCount();
        this.withinKilometres = entry.withinKilometres();
        this.withinDays = entry.withinDays();
        this.source = entry.source();
        this.readOn = entry.readOn();
        this.validFrom = entry.validFrom();
        requireEnd(entry.validTo());
        this.validTo = entry.validTo();
    }

    void end(LocalDate until, String reason) {
        requireEnd(until);
        validTo = until;
        revisedBecause(reason);
    }

    Threshold figures() {
        return new Threshold(smallestCount, withinKilometres, withinDays);
    }

    private void requireEnd(@Nullable LocalDate until) {
        if (until != null && until.isBefore(validFrom)) {
            throw InvalidException.of("validTo", "It ends before it begins.", "a day from " + validFrom + " on");
        }
    }
}
