package org.culvert.exchange.records;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** A trial of a file: every row read and looked up, and nothing entered. */
@Entity
@Table(name = "record_trials")
class RecordTrial extends Recorded {
    UUID recordFileId;
    UUID readingId;

    protected RecordTrial() {}

    RecordTrial(UUID recordFileId, UUID readingId) {
        this.recordFileId = recordFileId;
        this.readingId = readingId;
    }
}
