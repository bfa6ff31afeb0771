package org.culvert.hotspot;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** What came out of a run, to the byte; it never changes. */
@Entity
@Table(name = "hotspot_run_results")
class RunResult {
    @Id
    UUID runId;

    Instant finishedAt;
    String engineVersion;
    int networkNumber;
    String inputsSha256;
    String document;
    String documentSha256;

    protected RunResult() {}

    RunResult(
            UUID runId,
            Instant finishedAt,
            String engineVersion,
            int networkNumber,
            String inputsSha256,
            String document,
            String documentSha256) {
        this.runId = runId;
        this.finishedAt = finishedAt;
        this.engineVersion = engineVersion;
        this.networkNumber = networkNumber;
        this.inputsSha256 = inputsSha256;
        this.document = document;
        this.documentSha256 = documentSha256;
    }
}
