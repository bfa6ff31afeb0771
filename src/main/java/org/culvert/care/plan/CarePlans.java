package org.culvert.care.plan;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.culvert.animal.CaseView;
import org.culvert.care.plan.AftercarePlanView.TaskView;
import org.culvert.care.plan.AftercarePlanView.WeightTrendView;
import org.culvert.care.plan.PlanTold.TaskTold;
import org.culvert.care.schedule.Task;
import org.culvert.care.schedule.TaskHistory;
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

    /**
     * A task that a plan asks for, or asked for once.
     *
     * @param off whether it is not to be done any more: skipped, done before its last day, left out of the plan, or of a plan
     *     that ended before
     * @param cameAt when the phase that it came with was entered
     * @param changes how often the task, its entries or its plan were changed; it never grows less
     * @param changedAt when that was last
     */
    public record TaskThrough(
            CaseView seen, UUID planId, Task task, boolean off, Instant cameAt, int changes, Instant changedAt) {}

    private record Called(UUID planId, String key, int day) {}

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

    /** Tasks of some animals whose days touch a span, whatever became of them and of their plans. */
    @Transactional
    public List<TaskThrough> listThrough(Collection<UUID> caseIds, LocalDate first, LocalDate last) {
        Map<Called, List<CareEntry>> entriesOf = caseIds.isEmpty()
                ? Map.of()
                : entries.list("caseId in ?1 and kind = 'task' order by id", caseIds).stream()
                        .collect(Collectors.groupingBy(CarePlans::called));
        List<TaskThrough> told = new ArrayList<>();
        for (PlanTold plan : reader.ofCases(caseIds)) {
            for (TaskHistory history : plan.histories()) {
                Task task = history.task();
                if (!task.lastDate().isBefore(first) && !task.date().isAfter(last)) {
                    var called = new Called(plan.plan.id(), task.step().key(), task.day());
                    told.add(through(plan, history, entriesOf.getOrDefault(called, List.of())));
                }
            }
        }
        return told;
    }

    private static Called called(CareEntry entry) {
        return new Called(
                Objects.requireNonNull(entry.planId),
                Objects.requireNonNull(entry.stepKey),
                Objects.requireNonNull(entry.day));
    }

    private static TaskThrough through(PlanTold plan, TaskHistory history, List<CareEntry> ofTask) {
        Task task = history.task();
        Instant changedAt = plan.changedAt();
        int changes = history.changes() + plan.plan.version();
        boolean off = !history.askedFor() || plan.endsBefore(task);
        for (CareEntry entry : ofTask) {
            changes += entry.version() + 1;
            changedAt = later(changedAt, PlanTold.changedAt(entry));
            if (entry.stands()) {
                off = !history.askedFor()
                        || entry.isSkipped()
                        || entry.at().atZone(plan.zone()).toLocalDate().isBefore(task.lastDate());
            }
        }
        return new TaskThrough(
                plan.seen,
                plan.plan.id(),
                task,
                off,
                plan.phases.get(history.since()).recordedAt(),
                changes,
                changedAt);
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    /** Entries of some animals that happened in a span and stand, each animal's in the order in which they happened. */
    @Transactional
    public Map<UUID, List<CareEntryView>> listEntries(Collection<UUID> caseIds, Instant from, Instant to) {
        return caseIds.isEmpty()
                ? Map.of()
                : reader
                        .entryViews(entries.list(
                                "caseId in ?1 and withdrawnAt is null and happenedAt >= ?2 and happenedAt < ?3 order by happenedAt, id",
                                caseIds,
                                from,
                                to))
                        .stream()
                        .collect(Collectors.groupingBy(CareEntryView::caseId));
    }
}
