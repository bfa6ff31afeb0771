package org.culvert.hotspot;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** How far a run has come. */
@Entity
@Table(name = "hotspot_run_progress")
class RunProgress {
    @Id
    UUID runId;

    int timesBegun;
    Instant begunAt;
    int simulationsDone;

    @Nullable
    Instant failedAt;

    @Nullable
    String failure;

    protected RunProgress() {}

    RunProgress(UUID runId, Instant begunAt) {
        this.runId = runId;
        this.timesBegun = 1;
        this.begunAt = begunAt;
    }

    void beginAgain(Instant at) {
        timesBegun++;
        begunAt = at;
        simulationsDone = 0;
        failedAt = null;
        failure = null;
    }

    void fail(Instant at, String reason) {
        failedAt = at;
        failure = reason;
    }
}
