package org.culvert.clinic;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;

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
}
