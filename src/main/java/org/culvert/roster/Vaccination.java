package org.culvert.roster;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.InvalidException;
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

    /** Null: it shows no protection, such as a test that found too little. */
    @Nullable
    LocalDate currentUntil;

    String basis;

    /** What was done; null where only the last day was told. */
    @Enumerated(EnumType.STRING)
    BoosterRule.@Nullable Event event;

    @Nullable
    Double antibodyIuPerMl;

    @Nullable
    Instant erasedAt;

    protected Vaccination() {}

    Vaccination(VaccinationService.VaccinationEntry entry, @Nullable LocalDate currentUntil) {
        memberId = entry.memberId();
        against = entry.against();
        givenOn = entry.givenOn();
        this.currentUntil = currentUntil;
        basis = entry.basis();
        event = entry.event();
        antibodyIuPerMl = entry.antibodyIuPerMl();
    }

    BoosterRule.Dose dose() {
        return new BoosterRule.Dose(event, givenOn, antibodyIuPerMl, currentUntil);
    }

    void correct(RosterCorrections.VaccinationCorrection correction) {
        if (erasedAt != null) {
            throw new ConflictException("This member was erased: nothing is written of them again.");
        }
        against = Corrections.words("against", correction.against(), against, 100);
        givenOn = correction.givenOn().over("givenOn", givenOn);
        if (event != BoosterRule.Event.antibodyTest
                && correction.currentUntil().isMade()
                && correction.currentUntil().value() == null) {
            throw InvalidException.of("currentUntil", "It does not say until when.", "a day on or after givenOn");
        }
        currentUntil = correction.currentUntil().over(currentUntil);
        basis = Corrections.words("basis", correction.basis(), basis, 100);
        revisedBecause(correction.reason());
    }
}
