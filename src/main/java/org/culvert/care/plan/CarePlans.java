package org.culvert.care.plan;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.culvert.animal.CaseView;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.care.plan.AftercarePlanView.WeightTrendView;
import org.culvert.care.plan.PlanTold.TaskTold;
import org.jspecify.annotations.Nullable;

/** Plans in force as the rooms of the day need them: what is due on a date, and what was missed. */
@ApplicationScoped
public class CarePlans {
    /**
     * What the plan of an animal says of a day.
     *
     * @param words what the vet said beside the steps
     * @param tasks those of the day and, before them, the last of each step that is overdue from earlier days
     */
    public record DayOfPlan(
            UUID caseId,
            UUID planId,
            @Nullable String words,
            List<TaskView> tasks,
            @Nullable WeightTrendView weightTrend) {}

    /** The last task of a step that was missed, with nothing done or skipped since. */
    public record Missed(CaseView seen, UUID planId, TaskView task) {}

    private final PlanReader reader;
    private final PlanRepositories.Entries entries;

    CarePlans(PlanReader reader, PlanRepositories.Entries entries) {
        this.reader = reader;
        this.entries = entries;
    }

    @Transactional
    public List<DayOfPlan> listDays(Collection<UUID> caseIds, LocalDate date) {
        return reader.inForce(caseIds).stream().map(told -> day(told, date)).toList();
    }

    private DayOfPlan day(PlanTold told, LocalDate date) {
        List<TaskTold> tasks = new ArrayList<>();
        told.openMisses().stream()
                .filter(missed -> missed.task().lastDate().isBefore(date))
                .forEach(tasks::add);
        told.tasks().stream().filter(task -> task.task().isOn(date)).forEach(tasks::add);
        return new DayOfPlan(
                told.plan.caseId,
                told.plan.id(),
                told.plan.words,
                tasks.stream().map(task -> reader.view(told, task)).toList(),
                told.weightTrend());
    }

    /** What was missed in all plans in force, the longest overdue first. */
    @Transactional
    public List<Missed> listMissed() {
        return reader.allInForce().stream()
                .flatMap(told -> told.openMisses().stream()
                        .map(task -> new Missed(told.seen, told.plan.id(), reader.view(told, task))))
                .sorted(Comparator.comparing((Missed missed) -> missed.task().dueUntil())
                        .thenComparing(Missed::planId)
                        .thenComparing(missed -> missed.task().stepKey()))
                .toList();
    }

    /** Entries of an animal that happened in a span and stand, in the order in which they happened. */
    @Transactional
    public List<CareEntryView> listEntries(UUID caseId, Instant from, Instant to) {
        return reader.entryViews(
                caseId,
                entries.list(
                        "caseId = ?1 and withdrawnAt is null and happenedAt >= ?2 and happenedAt < ?3 order by happenedAt, id",
                        caseId,
                        from,
                        to));
    }
}
