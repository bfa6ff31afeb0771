package org.culvert.care.schedule;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The tasks of a plan, by the local days of a zone.
 *
 * <p>Days are counted on the calendar, so that a local day of 23, 24 or 25 hours is one day: a rhythm is never thrown off by a
 * change of the clocks (as in RFC 5545, section 3.8.5.3, for {@code FREQ=DAILY} and {@code WEEKLY} with local times). A task
 * is due from the beginning of its day, or from its hour, until the next day begins; one that is done once, until the day after
 * its step's last begins. For an hour that does not exist or exists twice {@code java.time} decides: one that is skipped comes
 * later by as much as the clocks go forward, and of two the first is meant. Where an hour that is skipped would come only on the
 * next day, the task is due the whole day.
 *
 * <p>Of phases the last in order that holds on a day is the one that counts: a later one replaces all from its first day on. A
 * step that is done once and whose key and first day are the same in both is one task across them.
 *
 * @param dayZero the day that is counted as 0
 * @param phases in the order in which they were decided
 */
public record Schedule(LocalDate dayZero, ZoneId zone, List<Phase> phases) {
    private record Called(String key, int day) {}

    public Schedule {
        phases = List.copyOf(phases);
    }

    /** All tasks, by the day they are called by and in the order of the steps. */
    public List<Task> tasks() {
        int end = phases.stream()
                .flatMap(phase -> phase.steps().stream())
                .mapToInt(Step::lastDay)
                .max()
                .orElse(-1);
        Map<Called, Task> tasks = new LinkedHashMap<>();
        for (int day = 0; day <= end; day++) {
            for (Step step : stepsOn(day)) {
                if (step.rhythm() == Rhythm.once && day >= step.firstDay() && day <= step.lastDay()) {
                    Task here = taskOf(step, step.firstDay(), day);
                    tasks.merge(new Called(step.key(), step.firstDay()), here, Schedule::joined);
                } else if (step.rhythm() != Rhythm.once && step.isOn(day)) {
                    tasks.put(new Called(step.key(), day), taskOf(step, day, day));
                }
            }
        }
        return tasks.values().stream().sorted(Comparator.comparing(Task::date)).toList();
    }

    /** The tasks that are due on some hour of a local date. */
    public List<Task> tasksOn(LocalDate date) {
        return tasks().stream().filter(task -> task.isOn(date)).toList();
    }

    /** The steps that hold on a day, whether they are due on it or not. */
    public List<Step> stepsOn(int day) {
        List<Step> steps = List.of();
        for (Phase phase : phases) {
            if (phase.fromDay() <= day) {
                steps = phase.steps();
            }
        }
        return steps;
    }

    private static Task joined(Task earlier, Task later) {
        return new Task(
                later.step(), earlier.day(), earlier.date(), later.lastDate(), earlier.dueFrom(), later.dueUntil());
    }

    private Task taskOf(Step step, int called, int day) {
        LocalDate date = dayZero.plusDays(day);
        Instant begins = date.atStartOfDay(zone).toInstant();
        Instant ends = date.plusDays(1).atStartOfDay(zone).toInstant();
        Instant from = step.hour() == null
                ? begins
                : date.atTime(step.hour()).atZone(zone).toInstant();
        return new Task(step, called, date, date, from.isBefore(ends) ? from : begins, ends);
    }
}
