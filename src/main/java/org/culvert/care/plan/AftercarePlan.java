package org.culvert.care.plan;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** What a named vet wants done for the animal of a case; it happened when it was made. */
@Entity
@Table(name = "aftercare_plans")
class AftercarePlan extends Recorded {
    UUID caseId;

    @Nullable
    UUID visitId;

    @Nullable
    UUID adoptionId;

    String vetName;
    String vetRegistration;
    LocalDate dayZero;

    @Nullable
    String words;

    @Nullable
    Instant endedAt;

    @Nullable
    String endedBecause;

    @Nullable
    String endedVetName;

    @Nullable
    String endedVetRegistration;

    protected AftercarePlan() {}

    AftercarePlan(UUID caseId, PlanEntries.PlanEntry entry, @Nullable UUID adoptionId, LocalDate dayZero, Instant at) {
        happenedAt(at);
        this.caseId = caseId;
        this.visitId = entry.visitId();
        this.adoptionId = adoptionId;
        this.vetName = entry.vetName();
        this.vetRegistration = entry.vetRegistration();
        this.dayZero = dayZero;
        this.words = entry.words();
    }

    Instant madeAt() {
        return Objects.requireNonNull(happenedAt());
    }

    void end(PlanEntries.PlanEndingEntry entry, Instant at) {
        requireInForce();
        endedAt = at;
        endedBecause = entry.reason();
        endedVetName = entry.vetName();
        endedVetRegistration = entry.vetRegistration();
        revisedBecause(entry.reason());
    }

    AftercarePlanView.@Nullable EndingView ending() {
        return endedAt == null || endedVetName == null || endedVetRegistration == null || endedBecause == null
                ? null
                : new AftercarePlanView.EndingView(endedVetName, endedVetRegistration, endedBecause, endedAt);
    }

    void requireInForce() {
        if (endedAt != null) {
            throw new ConflictException("That plan was ended: " + endedBecause);
        }
    }
}
