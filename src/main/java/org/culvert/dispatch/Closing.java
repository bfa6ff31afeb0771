package org.culvert.dispatch;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
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

    void correct(ClosingService.ClosingCorrection correction, Clock clock) {
        outcome = Corrections.name("outcome", correction.outcome(), outcome);
        happenedAt(Corrections.known("at", correction.at(), Objects.requireNonNull(happenedAt()), clock));
        passedOnTo = Corrections.text("passedOnTo", correction.passedOnTo(), passedOnTo, 200);
        theirReference = Corrections.text("theirReference", correction.theirReference(), theirReference, 200);
        reason = Corrections.words("because", correction.because(), reason, 2000);
        revisedBecause(correction.reason());
    }
}
