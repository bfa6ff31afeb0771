package org.culvert.hotspot;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** Says that a run is not wanted any more, and why. */
@Entity
@Table(name = "hotspot_run_cancellations")
class RunCancellation extends Recorded {
    UUID runId;
    String reason;

    protected RunCancellation() {}

    RunCancellation(UUID runId, String reason) {
        this.runId = runId;
        this.reason = reason;
    }
}
