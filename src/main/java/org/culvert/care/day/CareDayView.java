package org.culvert.care.day;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.care.plan.AftercarePlanView.WeightTrendView;
import org.culvert.care.plan.CareEntryView;
import org.jspecify.annotations.Nullable;

/** A day of a member who cares: each animal they hold on it, and what is to be done. */
public record CareDayView(UUID memberId, String callSign, LocalDate date, List<HeldAnimalView> animals, String note) {
    /**
     * One animal.
     *
     * @param id of its case
     * @param heldFrom from when the member has it
     * @param heldTo until when; null: still
     * @param planId null where no plan is in force
     * @param tasks of the day, after those of earlier days that are overdue
     * @param entries what was entered of it on that day
     * @param clinicName of the last clinic that it came from
     * @param limits what that clinic forbids
     * @param reviewOn when that clinic wants to see it again
     */
    public record HeldAnimalView(
            UUID id,
            long caseNumber,
            String scientificName,
            String vernacularName,
            Instant heldFrom,
            @Nullable Instant heldTo,
            @Nullable UUID planId,
            @Nullable String planWords,
            List<TaskView> tasks,
            List<CareEntryView> entries,
            @Nullable WeightTrendView weightTrend,
            @Nullable String clinicName,
            @Nullable String dischargePlan,
            @Nullable String limits,
            @Nullable LocalDate reviewOn) {}
}
