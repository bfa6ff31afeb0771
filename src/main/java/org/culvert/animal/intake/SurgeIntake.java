package org.culvert.animal.intake;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** One animal taken in at the tent of a surge; it happened when it came there. */
@Entity
@Table(name = "surge_intakes")
class SurgeIntake extends Recorded {
    UUID surgeId;
    UUID sectorId;
    UUID caseId;
    String temporaryNumber;

    @Nullable
    Integer running;

    UUID holderId;
    String vitality;

    @Nullable
    String triage;

    @Nullable
    String condition;

    @Nullable
    Instant foundAt;

    @Nullable
    Instant foundNotBefore;

    protected SurgeIntake() {}

    SurgeIntake(
            SurgeSector sector,
            UUID caseId,
            TemporaryNumbers.Given number,
            UUID holderId,
            SurgeEntries.IntakeAnimal animal,
            Instant at) {
        happenedAt(at);
        this.surgeId = sector.surgeId;
        this.sectorId = sector.id();
        this.caseId = caseId;
        this.temporaryNumber = number.number();
        this.running = number.running();
        this.holderId = holderId;
        this.vitality = animal.vitality().name();
        this.triage = animal.triage() == null ? null : animal.triage().name();
        this.condition = animal.condition();
        this.foundAt = animal.foundAt();
        this.foundNotBefore = animal.foundNotBefore();
    }
}
