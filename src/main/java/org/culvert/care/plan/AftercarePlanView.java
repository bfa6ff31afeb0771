package org.culvert.care.plan;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.care.plan.CareEntryView.Flag;
import org.culvert.care.schedule.Measure;
import org.culvert.care.template.PlanStepEntry;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A plan with its tasks.
 *
 * @param inForce whether neither a vet nor the fate of the case has ended it
 * @param templateRevision which revision of the template it was made of
 * @param endedAt when it ended, by a vet or with the case
 * @param ending by whom and why, where a vet ended it
 * @param weightTrend null below three weighings on three days
 */
public record AftercarePlanView(
        UUID id,
        UUID caseId,
        long caseNumber,
        @Nullable UUID visitId,
        @Nullable UUID templateId,
        @Nullable Integer templateRevision,
        String vetName,
        String vetRegistration,
        LocalDate dayZero,
        @Nullable String words,
        boolean inForce,
        @Nullable Instant endedAt,
        @Nullable EndingView ending,
        List<PhaseView> phases,
        List<TaskView> tasks,
        @Nullable WeightTrendView weightTrend,
        String note,
        RecordView record) {
    /** Steps that hold from a day on, in place of all others; the first phase has no reason. */
    public record PhaseView(
            UUID id,
            int fromDay,
            LocalDate from,
            List<PlanStepEntry> steps,
            String vetName,
            String vetRegistration,
            @Nullable String reason,
            RecordView record) {}

    public record EndingView(String vetName, String vetRegistration, String reason, Instant at) {}

    public enum TaskState {
        coming,
        due,
        overdue,
        done,
        doneLate,
        skipped,
        /** Overdue when the plan ended. */
        missed,
        /** Due when the plan ended. */
        lapsed
    }

    /**
     * One time that a step is to be done.
     *
     * @param day what it is called by, with the step's key
     * @param missesInARow how often the step was missed up to this task, of one that is overdue
     */
    public record TaskView(
            String stepKey,
            int day,
            String words,
            Measure measure,
            String unit,
            @Nullable Double low,
            @Nullable Double high,
            LocalDate date,
            LocalDate lastDate,
            Instant dueFrom,
            Instant dueUntil,
            TaskState state,
            int missesInARow,
            @Nullable UUID entryId,
            List<Flag> flags) {}

    /**
     * How the weight runs, by the median of pairwise slopes.
     *
     * @param lowGramsPerDay lower end of the 95 % interval; null where there are too few weighings for one
     * @param percentPerWeek of the first fitted weight
     * @param overDays how many days back it looks
     */
    public record WeightTrendView(
            double gramsPerDay,
            @Nullable Double lowGramsPerDay,
            @Nullable Double highGramsPerDay,
            double percentPerWeek,
            int weighings,
            int overDays) {}
}
