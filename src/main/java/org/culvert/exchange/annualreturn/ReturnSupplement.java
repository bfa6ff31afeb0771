package org.culvert.exchange.annualreturn;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.file.KeptFiles;
import org.hibernate.annotations.Immutable;

/** What changed of a signed return, signed too. */
@Entity
@Immutable
@Table(name = "return_supplements")
class ReturnSupplement extends Recorded {
    UUID returnId;
    int number;
    Instant knownAt;
    String reason;
    String signedBy;
    String capacity;
    LocalDate signedOn;
    UUID documentFileId;
    byte[] documentSha256;
    UUID tableFileId;
    byte[] tableSha256;

    protected ReturnSupplement() {}

    ReturnSupplement(
            UUID returnId,
            int number,
            Instant knownAt,
            SupplementService.SupplementEntry signing,
            KeptFiles.Kept document,
            KeptFiles.Kept table) {
        happenedAt(knownAt);
        this.returnId = returnId;
        this.number = number;
        this.knownAt = knownAt;
        this.reason = signing.reason();
        this.signedBy = signing.name();
        this.capacity = signing.capacity();
        this.signedOn = signing.signedOn();
        this.documentFileId = document.id();
        this.documentSha256 = document.sha256().clone();
        this.tableFileId = table.id();
        this.tableSha256 = table.sha256().clone();
    }
}
