package org.culvert.exchange.records;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** Somebody's decision to take rows of a trial in. */
@Entity
@Table(name = "record_takings")
class RecordTaking extends Recorded {
    UUID trialId;
    String which;
    boolean doubtful;
    boolean oneIncident;
    String reason;

    protected RecordTaking() {}

    RecordTaking(UUID trialId, TakingService.Which which, boolean doubtful, boolean oneIncident, String reason) {
        this.trialId = trialId;
        this.which = which.name();
        this.doubtful = doubtful;
        this.oneIncident = oneIncident;
        this.reason = reason;
    }
}
