package org.culvert.animal;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** One individual, alive or dead. */
@Entity
@Table(name = "animals")
class Animal extends Recorded {
    UUID taxonId;
    String identificationVerificationStatus;
    String sex;

    @Nullable
    String lifeStage;

    @Nullable
    UUID motherId;

    @Nullable
    String naturalMarks;

    @Nullable
    LocalDate bornOn;

    @Nullable
    Integer bornDoubtDays;

    protected Animal() {}

    static Animal of(CaseEntries.AnimalEntry entry, UUID taxonId) {
        var animal = new Animal();
        animal.taxonId = taxonId;
        animal.identificationVerificationStatus =
                entry.identificationVerificationStatus().name();
        animal.sex = entry.sex().name();
        animal.lifeStage = entry.lifeStage();
        animal.motherId = entry.motherAnimalId();
        animal.naturalMarks = entry.naturalMarks();
        animal.bornOn = entry.bornOn();
        animal.bornDoubtDays = entry.bornDoubtDays();
        return animal;
    }

    /** Corrects all but which taxon it is, which is told apart. */
    void correct(CaseCorrections.AnimalCorrection correction, UUID taxonId) {
        this.taxonId = taxonId;
        identificationVerificationStatus = Corrections.name(
                "identificationVerificationStatus",
                correction.identificationVerificationStatus(),
                identificationVerificationStatus);
        sex = Corrections.name("sex", correction.sex(), sex);
        lifeStage = Corrections.text("lifeStage", correction.lifeStage(), lifeStage, 100);
        motherId = correction.motherId().over(motherId);
        naturalMarks = Corrections.text("naturalMarks", correction.naturalMarks(), naturalMarks, 2000);
        bornOn = correction.bornOn().over(bornOn);
        bornDoubtDays = correction.bornDoubtDays().over(bornDoubtDays);
        revisedBecause(correction.reason());
    }
}
