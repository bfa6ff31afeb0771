package org.culvert.clinic;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** What a named vet sends the animal on with. */
@Entity
@Table(name = "discharges")
class Discharge extends Recorded {
    UUID visitId;
    String vetName;
    String vetRegistration;

    @jakarta.persistence.Column(name = "plan")
    String words;

    @Nullable
    String limits;

    @Nullable
    String mayHold;

    @Nullable
    LocalDate reviewOn;

    protected Discharge() {}

    Discharge(UUID visitId, ClinicService.DischargeEntry entry, Instant at) {
        happenedAt(at);
        this.visitId = visitId;
        this.vetName = entry.vetName();
        this.vetRegistration = entry.vetRegistration();
        this.words = entry.plan();
        this.limits = entry.limits();
        this.mayHold = entry.mayHold();
        this.reviewOn = entry.reviewOn();
    }

    void correct(ClinicCorrections.DischargeCorrection correction) {
        vetName = Corrections.words("vetName", correction.vetName(), vetName, 200);
        vetRegistration = Corrections.words("vetRegistration", correction.vetRegistration(), vetRegistration, 200);
        words = Corrections.words("plan", correction.plan(), words, 20000);
        limits = Corrections.text("limits", correction.limits(), limits, 4000);
        mayHold = Corrections.text("mayHold", correction.mayHold(), mayHold, 2000);
        reviewOn = correction.reviewOn().over(reviewOn);
        revisedBecause(correction.reason());
    }
}
