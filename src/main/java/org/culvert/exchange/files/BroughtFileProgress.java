package org.culvert.exchange.files;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.file.ReadingWatch.Step;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;

/** How far the reading of a file has come. */
@Entity
@Table(name = "brought_file_progress")
class BroughtFileProgress {
    @Id
    UUID broughtFileId;

    int timesBegun;

    @Nullable
    Instant begunAt;

    String step;
    long done;
    long whole;

    @Nullable
    @JdbcTypeCode(SqlTypes.JSON)
    FileResult result;

    @Nullable
    Instant finishedAt;

    @Nullable
    Instant failedAt;

    @Nullable
    @JdbcTypeCode(SqlTypes.JSON)
    FileFailure failure;

    protected BroughtFileProgress() {}

    /** The end of a file that nobody began to read. */
    static BroughtFileProgress ofNothing(UUID broughtFileId, Instant at, FileFailure why) {
        var progress = new BroughtFileProgress();
        progress.broughtFileId = broughtFileId;
        progress.step = Step.octets.name();
        progress.fail(at, why);
        return progress;
    }

    BroughtFileProgress(UUID broughtFileId, Instant begunAt) {
        this.broughtFileId = broughtFileId;
        this.timesBegun = 1;
        this.begunAt = begunAt;
        this.step = Step.octets.name();
    }

    void beginAgain(Instant at) {
        timesBegun++;
        begunAt = at;
        note(Step.octets, 0, 0);
    }

    void note(Step at, long soFar, long of) {
        step = at.name();
        done = soFar;
        whole = of;
    }

    boolean isOver() {
        return finishedAt != null || failedAt != null;
    }

    void finish(Instant at, FileResult cameOfIt) {
        finishedAt = at;
        result = cameOfIt;
    }

    void fail(Instant at, FileFailure why) {
        failedAt = at;
        failure = why;
    }
}
