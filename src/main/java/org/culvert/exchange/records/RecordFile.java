package org.culvert.exchange.records;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A file of old records as it came; its octets are apart. */
@Entity
@Table(name = "record_files")
class RecordFile extends Recorded {
    String fileName;
    long octets;
    byte[] sha256;
    UUID contentId;
    String encoding;
    boolean encodingIsSure;
    LocalDate keepUntil;

    @Nullable
    Instant calledOffAt;

    @Nullable
    UUID calledOffBy;

    @Nullable
    String calledOffBecause;

    @Nullable
    Instant erasedAt;

    protected RecordFile() {}

    RecordFile(String fileName, UUID contentId, RecordFileParts.Seen seen, LocalDate keepUntil) {
        this.fileName = fileName;
        this.contentId = contentId;
        this.octets = seen.octets();
        this.sha256 = seen.sha256().clone();
        this.encoding = seen.encoding().charset().name();
        this.encodingIsSure = seen.encoding().isSure();
        this.keepUntil = keepUntil;
    }

    void callOff(Instant at, UUID by, String reason) {
        calledOffAt = at;
        calledOffBy = by;
        calledOffBecause = reason;
        revisedBecause(reason);
    }
}
