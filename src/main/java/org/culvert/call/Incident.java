package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.hibernate.annotations.Generated;
import org.hibernate.generator.EventType;
import org.jspecify.annotations.Nullable;

/** What happened at one place and time; when unknown, {@code happenedAt} is empty and the interval says the rest. */
@Entity
@Table(name = "incidents")
class Incident extends Recorded {
    @Generated(event = EventType.INSERT)
    @jakarta.persistence.Column(insertable = false, updatable = false)
    long number;

    String cause;

    @Nullable
    UUID placeId;

    @Nullable
    Instant happenedNotBefore;

    Instant reportedAt;

    protected Incident() {}

    Incident(
            String cause,
            @Nullable UUID placeId,
            @Nullable Instant happenedAt,
            @Nullable Instant happenedNotBefore,
            Instant reportedAt) {
        happenedAt(happenedAt);
        this.cause = cause;
        this.placeId = placeId;
        this.happenedNotBefore = happenedNotBefore;
        this.reportedAt = reportedAt;
    }

    /** Puts the incident somewhere else, because of what became known. */
    void moveTo(UUID placeId, String reason) {
        this.placeId = placeId;
        revisedBecause(reason);
    }

    /** A further call knows what the first did not. */
    void learn(@Nullable UUID placeId, @Nullable Instant happenedAt, String cause) {
        boolean learnt = false;
        if (this.placeId == null && placeId != null) {
            this.placeId = placeId;
            learnt = true;
        }
        if (happenedAt() == null && happenedAt != null) {
            happenedAt(happenedAt);
            learnt = true;
        }
        if (this.cause.equals("unknown") && !cause.equals("unknown")) {
            this.cause = cause;
            learnt = true;
        }
        if (learnt) {
            revisedBecause("A further call told more.");
        }
    }

    void correct(CallCorrections.IncidentCorrection correction, Clock clock) {
        cause = correction.cause().over("cause", cause);
        happenedAt(Corrections.past("happenedAt", correction.happenedAt(), happenedAt(), clock));
        happenedNotBefore =
                Corrections.past("happenedNotBefore", correction.happenedNotBefore(), happenedNotBefore, clock);
        Instant happened = happenedAt();
        if (happened != null && happenedNotBefore != null && happened.isBefore(happenedNotBefore)) {
            throw InvalidException.of(
                    "happenedNotBefore", "It happened before that.", "an instant at or before happenedAt");
        }
        revisedBecause(correction.reason());
    }
}
