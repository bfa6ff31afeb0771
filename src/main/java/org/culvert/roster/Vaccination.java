package org.culvert.roster;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** One vaccination, and until when it counts as current, on which basis (booster or antibody test). */
@Entity
@Table(name = "vaccinations", schema = "personal")
class Vaccination extends Recorded {
    UUID memberId;
    String against;
    LocalDate givenOn;
    LocalDate currentUntil;
    String basis;

    @Nullable
    Instant erasedAt;

    protected Vaccination() {}

    Vaccination(UUID memberId, String against, LocalDate givenOn, LocalDate currentUntil, String basis) {
        this.memberId = memberId;
        this.against = against;
        this.givenOn = givenOn;
        this.currentUntil = currentUntil;
        this.basis = basis;
    }

    void correct(RosterCorrections.VaccinationCorrection correction) {
        if (erasedAt != null) {
            throw new ConflictException("This member was erased: nothing is written of them again.");
        }
        against = Corrections.words("against", correction.against(), against, 100);
        givenOn = correction.givenOn().over("givenOn", givenOn);
        currentUntil = correction.currentUntil().over("currentUntil", currentUntil);
        basis = Corrections.words("basis", correction.basis(), basis, 100);
        revisedBecause(correction.reason());
    }
}
