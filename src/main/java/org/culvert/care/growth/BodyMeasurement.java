package org.culvert.care.growth;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** One measurement of an animal; it happened when it was taken. */
@Entity
@Table(name = "body_measurements")
class BodyMeasurement extends Recorded {
    UUID caseId;
    String measure;
    double value;

    @Nullable
    String words;

    @Nullable
    Instant withdrawnAt;

    @Nullable
    String withdrawnBecause;

    protected BodyMeasurement() {}

    BodyMeasurement(UUID caseId, GrowthEntries.BodyMeasurementEntry entry, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.measure = entry.measure().name();
        this.value = entry.value();
        this.words = entry.words();
    }

    void withdraw(Instant at, String reason) {
        if (withdrawnAt != null) {
            throw new ConflictException("That measurement was taken back already: " + withdrawnBecause);
        }
        withdrawnAt = at;
        withdrawnBecause = reason;
        revisedBecause(reason);
    }
}
