package org.culvert.clinic;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;

/** What was found where on the body. */
@Entity
@Table(name = "findings")
class Finding extends Recorded {
    UUID visitId;
    String bodyPart;
    String side;

    @jakarta.persistence.Column(name = "finding")
    String words;

    protected Finding() {}

    Finding(UUID visitId, ClinicService.FindingEntry entry) {
        this.visitId = visitId;
        this.bodyPart = entry.bodyPart();
        this.side = entry.side().name();
        this.words = entry.finding();
    }
}
