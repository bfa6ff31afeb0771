package org.culvert.platform;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.PostUpdate;
import jakarta.persistence.PrePersist;
import jakarta.persistence.PreUpdate;
import java.time.Clock;

/** Stamps every record with its second clock and its author. */
@ApplicationScoped
public class RecordListener {
    private final Clock clock;
    private final Actor actor;

    RecordListener(Clock clock, Actor actor) {
        this.clock = clock;
        this.actor = actor;
    }

    @PrePersist
    void enter(Recorded row) {
        row.recordedAt = clock.instant();
        row.recordedBy = actor.accountId();
    }

    @PreUpdate
    void revise(Recorded row) {
        row.revisedAt = clock.instant();
        row.revisedBy = actor.accountId();
        if (!row.reasonGiven) {
            row.revisionReason = null;
        }
    }

    /**
     * Only now is the reason used up: a query may have the row looked at before, and put off what it would write.
     */
    @PostUpdate
    void written(Recorded row) {
        row.reasonGiven = false;
    }
}
