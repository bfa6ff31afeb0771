package org.culvert.care.plan;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.care.template.PlanStepEntry;
import org.culvert.platform.ledger.Change;
import org.jspecify.annotations.Nullable;

/** What goes into this room. */
public final class PlanEntries {
    private PlanEntries() {}

    /**
     * A plan, of an adopted template or of the vet's own steps.
     *
     * @param templateId the template whose steps it takes; null: {@code steps} says them
     * @param visitId the visit with whose discharge it was made, if any
     * @param dayZero the day that is counted as 0; the day on which it is made where it is left out
     * @param words what the vet says beside the steps
     */
    public record PlanEntry(
            @Nullable UUID templateId,

            @Nullable @Size(min = 1, max = PlanStepEntry.MOST_STEPS)
            List<@Valid @NotNull PlanStepEntry> steps,

            @Nullable UUID visitId,
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @Nullable LocalDate dayZero,
            @Nullable @Size(max = 4000) String words,
            @Nullable Instant at) {}

    /**
     * New steps in place of all others, from a day on.
     *
     * @param from the first day of the new steps; the day on which it was decided where it is left out, and never earlier
     * @param steps none at all: the plan pauses
     */
    public record ChangeEntry(
            @Nullable LocalDate from,
            @NotNull @Size(max = PlanStepEntry.MOST_STEPS) List<@Valid @NotNull PlanStepEntry> steps,
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @NotBlank @Size(max = 2000) String reason,
            @Nullable Instant at) {}

    /** A vet ends a plan; the fate of its case ends it too, without this. */
    public record PlanEndingEntry(
            @NotBlank @Size(max = 200) String vetName,
            @NotBlank @Size(max = 200) String vetRegistration,
            @NotBlank @Size(max = 2000) String reason,
            @Nullable Instant at) {}

    /** What an entry is about; {@code task}: about a task of the plan. */
    public enum CareKind {
        task,
        weight,
        food,
        wound,
        photograph,
        note
    }

    /**
     * A task that was done or skipped, or something seen beside the plan.
     *
     * @param kind task where it is left out
     * @param stepKey of a task: the key of its step
     * @param day of a task: the day it is called by
     * @param value in the unit of the step's measure; of a weight in grams
     * @param answer where the step asks for yes or no
     * @param skippedBecause why a task was not done; null: it was done
     * @param photographId a photograph of the same case that shows it
     */
    public record CareEntryEntry(
            @Nullable CareKind kind,
            @Nullable @Size(max = 40) String stepKey,
            @Nullable @Min(0) @Max(PlanStepEntry.LAST_DAY) Integer day,
            @Nullable @Min(-1_000_000) @Max(1_000_000) Double value,
            @Nullable Boolean answer,
            @Nullable @Size(max = 4000) String words,
            @Nullable @Size(max = 2000) String skippedBecause,
            @Nullable UUID photographId,
            @Nullable Instant at) {}

    public record CareEntryCorrection(
            Change<Double> value,
            Change<Boolean> answer,
            Change<String> words,
            Change<String> skippedBecause,
            Change<UUID> photographId,
            Change<Instant> at,
            @NotBlank @Size(max = 2000) String reason) {}
}
