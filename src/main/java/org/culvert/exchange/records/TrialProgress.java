package org.culvert.exchange.records;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** How far a trial has come. */
@Entity
@Table(name = "record_trial_progress")
class TrialProgress {
    @Id
    UUID trialId;

    int timesBegun;
    Instant begunAt;
    long rowsRead;
    long rowsRight;
    long rowsDoubtful;
    long rowsApart;
    long rowsRefused;

    @Nullable
    Integer networkNumber;

    @Nullable
    @JdbcTypeCode(SqlTypes.JSON)
    RecordTrialSigns signs;

    @Nullable
    @JdbcTypeCode(SqlTypes.JSON)
    RecordTrialSummary summary;

    @Nullable
    Instant finishedAt;

    @Nullable
    Instant failedAt;

    @Nullable
    String failure;

    protected TrialProgress() {}

    TrialProgress(UUID trialId, Instant begunAt) {
        this.trialId = trialId;
        this.timesBegun = 1;
        this.begunAt = begunAt;
    }

    void beginAgain(Instant at) {
        timesBegun++;
        begunAt = at;
        rowsRead = 0;
        rowsRight = 0;
        rowsDoubtful = 0;
        rowsApart = 0;
        rowsRefused = 0;
        failedAt = null;
        failure = null;
    }

    void fail(Instant at, String reason) {
        failedAt = at;
        failure = reason;
    }
}
