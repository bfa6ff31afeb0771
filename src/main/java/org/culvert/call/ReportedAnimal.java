package org.culvert.call;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.culvert.platform.Recorded;
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
}
