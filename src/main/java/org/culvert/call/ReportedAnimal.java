package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.InvalidException;
import org.culvert.platform.Recorded;
import org.culvert.platform.ledger.Corrections;
import org.jspecify.annotations.Nullable;

/** Animals as a caller told of them. */
@Entity
@Table(name = "reported_animals")
class ReportedAnimal extends Recorded {
    UUID callId;

    @Nullable
    UUID taxonId;

    @Nullable
    UUID taxonGroupId;

    @Nullable
    String verbatimIdentification;

    String identificationVerificationStatus;
    int individualCount;
    String vitality;

    @Nullable
    String lifeStage;

    @Nullable
    String sex;

    @Nullable
    String condition;

    String pouchChecked;
    boolean carcassSigned;

    protected ReportedAnimal() {}

    static ReportedAnimal of(CallEntry.Animal animal, UUID callId, @Nullable UUID taxonId, @Nullable UUID groupId) {
        var row = new ReportedAnimal();
        row.callId = callId;
        row.taxonId = taxonId;
        row.taxonGroupId = groupId;
        row.verbatimIdentification = animal.verbatimIdentification();
        row.identificationVerificationStatus =
                animal.identificationVerificationStatus().name();
        row.individualCount = animal.individualCount();
        row.vitality = animal.vitality().name();
        row.lifeStage = animal.lifeStage();
        row.sex = animal.sex() == null ? null : animal.sex().name();
        row.condition = animal.condition();
        row.pouchChecked = animal.pouchChecked().name();
        row.carcassSigned = animal.carcassSigned();
        return row;
    }

    /** Corrects all but which taxon it is. */
    void correct(CallCorrections.ReportedAnimalCorrection correction) {
        verbatimIdentification = Corrections.text(
                "verbatimIdentification", correction.verbatimIdentification(), verbatimIdentification, 200);
        identificationVerificationStatus = Corrections.name(
                "identificationVerificationStatus",
                correction.identificationVerificationStatus(),
                identificationVerificationStatus);
        individualCount = correction.individualCount().over("individualCount", individualCount);
        if (individualCount < 1 || individualCount > 1000) {
            throw InvalidException.of("individualCount", "That is no number of animals.", "1 to 1000");
        }
        vitality = Corrections.name("vitality", correction.vitality(), vitality);
        lifeStage = Corrections.text("lifeStage", correction.lifeStage(), lifeStage, 100);
        sex = Corrections.nameOrNone(correction.sex(), sex);
        condition = Corrections.text("condition", correction.condition(), condition, 2000);
        pouchChecked = Corrections.name("pouchChecked", correction.pouchChecked(), pouchChecked);
        carcassSigned = correction.carcassSigned().over("carcassSigned", carcassSigned);
        revisedBecause(correction.reason());
    }
}
