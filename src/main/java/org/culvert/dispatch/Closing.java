package org.culvert.dispatch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** The end of an incident to which nobody went. */
@Entity
@Table(name = "closings")
class Closing extends Recorded {
    UUID incidentId;
    String outcome;

    @Nullable
    String passedOnTo;

    @Nullable
    String theirReference;

    String reason;

    protected Closing() {}

    Closing(
            UUID incidentId,
            String outcome,
            @Nullable String passedOnTo,
            @Nullable String theirReference,
            String reason,
            Instant at) {
        happenedAt(at);
        this.incidentId = incidentId;
        this.outcome = outcome;
        this.passedOnTo = passedOnTo;
        this.theirReference = theirReference;
        this.reason = reason;
    }
}
