package org.culvert.clinic;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;

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

    void correct(ClinicCorrections.FindingCorrection correction) {
        bodyPart = Corrections.words("bodyPart", correction.bodyPart(), bodyPart, 200);
        side = Corrections.name("side", correction.side(), side);
        words = Corrections.words("finding", correction.finding(), words, 4000);
        revisedBecause(correction.reason());
    }
}
