package org.culvert.exchange.records;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How far a taking has come. */
@Entity
@Table(name = "record_taking_progress")
class TakingProgress {
    @Id
    UUID takingId;

    int timesBegun;
    Instant begunAt;
    long rowsEntered;

    @Nullable
    Long rowsTaken;

    @Nullable
    UUID importId;

    @Nullable
    Instant finishedAt;

    @Nullable
    Instant failedAt;

    @Nullable
    String failure;

    protected TakingProgress() {}

    TakingProgress(UUID takingId, Instant begunAt) {
        this.takingId = takingId;
        this.timesBegun = 1;
        this.begunAt = begunAt;
    }

    void beginAgain(Instant at) {
        timesBegun++;
        begunAt = at;
        rowsEntered = 0;
        failedAt = null;
        failure = null;
    }

    void fail(Instant at, String reason) {
        failedAt = at;
        failure = reason;
    }
}
