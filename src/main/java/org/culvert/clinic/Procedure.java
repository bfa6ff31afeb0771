package org.culvert.clinic;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Clock;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;

/** What a named vet did. */
@Entity
@Table(name = "procedures")
class Procedure extends Recorded {
    UUID visitId;

    @Column(name = "procedure")
    String words;

    String vetName;
    String vetRegistration;

    protected Procedure() {}

    Procedure(UUID visitId, ClinicService.ProcedureEntry entry) {
        happenedAt(entry.at());
        this.visitId = visitId;
        this.words = entry.procedure();
        this.vetName = entry.vetName();
        this.vetRegistration = entry.vetRegistration();
    }

    void correct(ClinicCorrections.ProcedureCorrection correction, Clock clock) {
        words = Corrections.words("procedure", correction.procedure(), words, 4000);
        vetName = Corrections.words("vetName", correction.vetName(), vetName, 200);
        vetRegistration = Corrections.words("vetRegistration", correction.vetRegistration(), vetRegistration, 200);
        happenedAt(Corrections.past("at", correction.at(), happenedAt(), clock));
        revisedBecause(correction.reason());
    }
}
