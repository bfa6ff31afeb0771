package org.culvert.care.plan;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.culvert.animal.CaseView;
import org.culvert.care.plan.AftercarePlanView.TaskState;
import org.culvert.care.plan.AftercarePlanView.WeightTrendView;
import org.culvert.care.plan.CareEntryView.Flag;
import org.culvert.care.schedule.Schedule;
import org.culvert.care.schedule.Step;
import org.culvert.care.schedule.Task;
import org.culvert.care.schedule.TaskHistory;
import org.culvert.care.schedule.Weighing;
import org.culvert.care.schedule.WeightTrend;
import org.culvert.platform.Recorded;
import org.jspecify.annotations.Nullable;

/** A plan with what was done of it, as of an instant: the state of a task is derived here and kept nowhere. */
final class PlanTold {
    private static final double CONFIDENCE = 0.95;
    private static final int TREND_DAYS = 28;

    /** A task, how it stands, and its entry if it has one. */
    record TaskTold(
            Task task,
            TaskState state,
            int missesInARow,
            @Nullable CareEntry entry) {}

    final AftercarePlan plan;
    final List<PlanPhase> phases;
    final CaseView seen;
    private final List<CareEntry> entries;
    private final List<PlanPhase> beside;
    private final Schedule schedule;
    private final List<Task> tasks;
    private final Map<Called, Task> byName = new HashMap<>();
    private final Instant now;

    private record Called(String key, int day) {}

    /**
     * @param phases of the plan, in their order
     * @param beside phases of other plans of the case
     * @param entries of the case that were not taken back, in the order in which they happened
     */
    PlanTold(
            AftercarePlan plan,
            List<PlanPhase> phases,
            List<PlanPhase> beside,
            List<CareEntry> entries,
            CaseView seen,
            ZoneId zone,
            Instant now) {
        this.plan = plan;
        this.phases = phases;
        this.beside = beside;
        this.entries = entries;
        this.seen = seen;
        this.schedule = new Schedule(
                plan.dayZero, zone, phases.stream().map(PlanPhase::phase).toList());
        this.tasks = schedule.tasks();
        this.now = now;
        tasks.forEach(task -> byName.put(new Called(task.step().key(), task.day()), task));
    }

    ZoneId zone() {
        return schedule.zone();
    }

    /** When it ended, by a vet or with the case; null while it is in force. */
    @Nullable
    Instant endedAt() {
        CaseView.FateView fate = seen.fate();
        Instant ended = plan.endedAt;
        if (fate == null) {
            return ended;
        }
        Instant fateAt = fate.at() == null ? fate.record().recordedAt() : fate.at();
        return ended == null || fateAt.isBefore(ended) ? fateAt : ended;
    }

    boolean isInForce() {
        return endedAt() == null;
    }

    /** Its tasks by their first day; of a plan that has ended none that would have begun later. */
    List<TaskTold> tasks() {
        Map<Called, CareEntry> byTask = new HashMap<>();
        for (CareEntry entry : entries) {
            if (plan.id().equals(entry.planId) && entry.stepKey != null && entry.day != null) {
                byTask.put(new Called(entry.stepKey, entry.day), entry);
            }
        }
        Instant ended = endedAt();
        Map<String, Integer> misses = new HashMap<>();
        List<TaskTold> told = new ArrayList<>();
        for (Task task : tasks) {
            String key = task.step().key();
            CareEntry entry = byTask.get(new Called(key, task.day()));
            if (entry == null && !isAskedFor(task)) {
                continue;
            }
            TaskState state = state(task, entry, ended);
            int inARow = 0;
            if (state == TaskState.overdue || state == TaskState.missed) {
                inARow = misses.merge(key, 1, Integer::sum);
            } else if (entry != null) {
                misses.put(key, 0);
            }
            told.add(new TaskTold(task, state, inARow, entry));
        }
        return told;
    }

    /** The last task of each step that is overdue, where nothing was done or skipped since. */
    List<TaskTold> openMisses() {
        Map<String, TaskTold> last = new LinkedHashMap<>();
        for (TaskTold told : tasks()) {
            String key = told.task().step().key();
            if (told.entry() != null) {
                last.remove(key);
            } else if (told.state() == TaskState.overdue) {
                last.put(key, told);
            }
        }
        return List.copyOf(last.values());
    }

    private TaskState state(Task task, @Nullable CareEntry entry, @Nullable Instant ended) {
        if (entry != null) {
            return entry.isSkipped() ? TaskState.skipped : isLate(task, entry) ? TaskState.doneLate : TaskState.done;
        }
        if (ended != null) {
            return task.dueUntil().isAfter(ended) ? TaskState.lapsed : TaskState.missed;
        }
        if (now.isBefore(task.dueFrom())) {
            return TaskState.coming;
        }
        return now.isBefore(task.dueUntil()) ? TaskState.due : TaskState.overdue;
    }

    private static boolean isLate(Task task, CareEntry entry) {
        return !entry.at().isBefore(task.dueUntil());
    }

    /** A task that the plan asks for. */
    Optional<Task> findTask(String key, int day) {
        return Optional.ofNullable(byName.get(new Called(key, day)));
    }

    /** Whether a task began before the plan ended. */
    boolean isAskedFor(Task task) {
        Instant ended = endedAt();
        return ended == null || task.dueFrom().isBefore(ended);
    }

    Optional<Task> taskOf(CareEntry entry) {
        return entry.stepKey == null || entry.day == null ? Optional.empty() : findTask(entry.stepKey, entry.day);
    }

    /** The step of an entry; of one that was left out since, as it was. */
    Optional<Step> stepOf(CareEntry entry) {
        return taskOf(entry).map(Task::step).or(() -> lastOf(phases, entry));
    }

    private static Optional<Step> lastOf(List<PlanPhase> phases, CareEntry entry) {
        return phases.stream()
                .filter(phase -> phase.planId.equals(entry.planId))
                .sorted(Comparator.comparing((PlanPhase phase) -> phase.place).reversed())
                .flatMap(phase -> phase.phase().steps().stream())
                .filter(step -> step.key().equals(entry.stepKey))
                .findFirst();
    }

    /** When the plan or its steps were changed last. */
    Instant changedAt() {
        return Stream.concat(Stream.of(plan), phases.stream())
                .map(PlanTold::changedAt)
                .max(Comparator.naturalOrder())
                .orElseThrow();
    }

    static Instant changedAt(Recorded row) {
        Instant revised = row.revisedAt();
        return revised == null ? row.recordedAt() : revised;
    }

    /** Whether it ended before a task could be overdue. */
    boolean endsBefore(Task task) {
        Instant ended = endedAt();
        return ended != null && task.dueUntil().isAfter(ended);
    }

    /** All tasks that it ever asked for. */
    List<TaskHistory> histories() {
        return TaskHistory.of(
                plan.dayZero, zone(), phases.stream().map(PlanPhase::phase).toList());
    }

    LocalDate dateOf(int day) {
        return plan.dayZero.plusDays(day);
    }

    boolean isDoneLate(CareEntry entry) {
        return !entry.isSkipped()
                && taskOf(entry).filter(task -> isLate(task, entry)).isPresent();
    }

    /** What a vet should hear of an entry. */
    List<Flag> flags(CareEntry entry) {
        List<Flag> flags = new ArrayList<>();
        if (!entry.stands() || entry.isSkipped()) {
            return flags;
        }
        Step step = isWeightBeside(entry)
                ? fallStepOn(entry.at()).orElse(null)
                : stepOf(entry).orElse(null);
        if (step == null) {
            return flags;
        }
        Double figure = entry.figure;
        if (figure != null && step.low() != null && figure < step.low()) {
            flags.add(Flag.belowLow);
        }
        if (figure != null && step.high() != null && figure > step.high()) {
            flags.add(Flag.aboveHigh);
        }
        if (entry.answer != null && entry.answer.equals(step.flagAnswer())) {
            flags.add(Flag.flaggedAnswer);
        }
        if (figure != null && fallsFast(step, entry.at())) {
            flags.add(Flag.fallsFast);
        }
        return flags;
    }

    private static boolean isWeightBeside(CareEntry entry) {
        return entry.kind() == PlanEntries.CareKind.weight;
    }

    private boolean fallsFast(Step step, Instant at) {
        Double perWeek = step.fallPercentPerWeek();
        Integer days = step.fallOverDays();
        return perWeek != null
                && days != null
                && trend(days, at)
                        .filter(trend -> trend.fallsFasterThan(perWeek))
                        .isPresent();
    }

    /** The step that held on the day of an instant and looks for a fall of the weight. */
    private Optional<Step> fallStepOn(Instant at) {
        long day = ChronoUnit.DAYS.between(plan.dayZero, at.atZone(zone()).toLocalDate());
        return day < 0
                ? Optional.empty()
                : schedule.stepsOn((int) day).stream()
                        .filter(step -> step.fallPercentPerWeek() != null)
                        .findFirst();
    }

    /** The weight as of now, as far back as its step looks. */
    @Nullable
    WeightTrendView weightTrend() {
        Integer asked = fallStepOn(now).map(Step::fallOverDays).orElse(null);
        int days = asked == null ? TREND_DAYS : asked;
        return trend(days, now)
                .map(trend -> new WeightTrendView(
                        trend.gramsPerDay(),
                        trend.lowGramsPerDay(),
                        trend.highGramsPerDay(),
                        trend.percentPerWeek(),
                        trend.weighings(),
                        days))
                .orElse(null);
    }

    private Optional<WeightTrend> trend(int days, Instant until) {
        Instant from = until.minus(Duration.ofDays(days));
        List<Weighing> weighings = entries.stream()
                .filter(entry -> entry.stands()
                        && !entry.at().isBefore(from)
                        && !entry.at().isAfter(until))
                .filter(this::isWeighing)
                .map(entry -> new Weighing(entry.at(), Objects.requireNonNull(entry.figure)))
                .toList();
        return WeightTrend.of(weighings, zone(), CONFIDENCE);
    }

    /** Not all grams are of the animal: a step weighs it that looks for a fall of its weight, whichever plan it is of. */
    private boolean isWeighing(CareEntry entry) {
        Optional<Step> step = plan.id().equals(entry.planId) ? stepOf(entry) : lastOf(beside, entry);
        return entry.figure != null
                && entry.figure > 0
                && (isWeightBeside(entry)
                        || step.filter(one -> one.fallPercentPerWeek() != null).isPresent());
    }
}
