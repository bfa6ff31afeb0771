package org.culvert.care.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScheduleTest {
    private static final ZoneId NEW_YORK = ZoneId.of("America/New_York");

    private static Step step(String key, int first, int last, Rhythm rhythm, @Nullable Integer every) {
        return step(key, first, last, rhythm, every, null);
    }

    private static Step step(
            String key, int first, int last, Rhythm rhythm, @Nullable Integer every, @Nullable LocalTime hour) {
        return new Step(key, "do it", first, last, rhythm, every, Measure.none, null, null, null, null, null, hour);
    }

    private static Schedule of(LocalDate dayZero, ZoneId zone, Step... steps) {
        return new Schedule(dayZero, zone, List.of(new Phase(0, List.of(steps))));
    }

    private static List<LocalDate> datesOf(Schedule schedule) {
        return schedule.tasks().stream().map(Task::date).toList();
    }

    private static LocalDate in1997(int month, int day) {
        return LocalDate.of(1997, month, day);
    }

    /** RFC 5545, section 3.8.5.3, "Daily for 10 occurrences": 9:00 AM EDT, September 2-11. */
    @Test
    void dailyForTenOccurrences() {
        Schedule schedule = of(in1997(9, 2), NEW_YORK, step("a", 0, 9, Rhythm.daily, null, LocalTime.of(9, 0)));

        assertThat(datesOf(schedule))
                .isEqualTo(IntStream.rangeClosed(2, 11)
                        .mapToObj(day -> in1997(9, day))
                        .toList());
        assertThat(schedule.tasks().get(0).dueFrom()).isEqualTo(Instant.parse("1997-09-02T13:00:00Z"));
    }

    /** RFC 5545, section 3.8.5.3, "Every 10 days, 5 occurrences": September 2,12,22; October 2,12. */
    @Test
    void everyTenDaysFiveOccurrences() {
        assertThat(datesOf(of(in1997(9, 2), NEW_YORK, step("a", 0, 40, Rhythm.everyDays, 10))))
                .containsExactly(in1997(9, 2), in1997(9, 12), in1997(9, 22), in1997(10, 2), in1997(10, 12));
    }

    /**
     * RFC 5545, section 3.8.5.3, "Weekly for 10 occurrences": 9:00 AM EDT, September 2,9,16,23,30, October 7,14,21; 9:00 AM EST,
     * October 28, November 4.
     */
    @Test
    void weeklyForTenOccurrences() {
        Schedule schedule = of(in1997(9, 2), NEW_YORK, step("a", 0, 63, Rhythm.weekly, null, LocalTime.of(9, 0)));

        assertThat(datesOf(schedule))
                .containsExactly(
                        in1997(9, 2),
                        in1997(9, 9),
                        in1997(9, 16),
                        in1997(9, 23),
                        in1997(9, 30),
                        in1997(10, 7),
                        in1997(10, 14),
                        in1997(10, 21),
                        in1997(10, 28),
                        in1997(11, 4));
        assertThat(schedule.tasks().get(7).dueFrom()).isEqualTo(Instant.parse("1997-10-21T13:00:00Z"));
        assertThat(schedule.tasks().get(8).dueFrom()).isEqualTo(Instant.parse("1997-10-28T14:00:00Z"));
    }

    /** The days on which the clocks change are looked up in the zone database; Lord Howe moves them by half an hour. */
    @ParameterizedTest
    @CsvSource({"Australia/Lord_Howe,30", "Australia/Sydney,60", "America/New_York,60"})
    void aDayIsAsLongAsTheClocksMakeIt(String zoneName, long minutes) {
        ZoneId zone = ZoneId.of(zoneName);
        LocalDate dayZero = LocalDate.of(2025, 1, 1);
        List<Task> tasks =
                of(dayZero, zone, step("a", 0, 364, Rhythm.daily, null)).tasks();

        assertThat(tasks).hasSize(365);
        Set<Long> lengths = new HashSet<>();
        for (Task task : tasks) {
            long offBy = zone.getRules().getOffset(task.dueFrom()).getTotalSeconds()
                    - zone.getRules().getOffset(task.dueUntil()).getTotalSeconds();
            long expected = Duration.ofHours(24).toSeconds() + offBy;
            assertThat(Duration.between(task.dueFrom(), task.dueUntil()).toSeconds())
                    .as(task.date().toString())
                    .isEqualTo(expected);
            lengths.add(expected / 60);
        }
        assertThat(lengths).containsExactlyInAnyOrder(1440L, 1440 - minutes, 1440 + minutes);
        for (int i = 1; i < tasks.size(); i++) {
            assertThat(tasks.get(i).dueFrom()).isEqualTo(tasks.get(i - 1).dueUntil());
        }
    }

    @ParameterizedTest
    @CsvSource({"Australia/Lord_Howe", "Australia/Sydney", "America/New_York"})
    void anHourThatIsSkippedComesLaterAndOfTwoTheFirstIsMeant(String zoneName) {
        ZoneId zone = ZoneId.of(zoneName);
        ZoneOffsetTransition change = zone.getRules().nextTransition(Instant.parse("2025-01-01T00:00:00Z"));
        for (int i = 0; i < 2; i++) {
            LocalDate date = change.getDateTimeBefore().toLocalDate();
            LocalTime within = (change.isGap() ? change.getDateTimeBefore() : change.getDateTimeAfter())
                    .plusMinutes(10)
                    .toLocalTime();
            ZoneOffset before = change.getOffsetBefore();
            Task task = of(date, zone, step("a", 0, 0, Rhythm.once, null, within))
                    .tasks()
                    .get(0);

            // With the offset from before the change a skipped hour lies as much later, and a doubled one is the first
            assertThat(task.dueFrom()).isEqualTo(date.atTime(within).toInstant(before));
            assertThat(task.dueFrom()).isBefore(task.dueUntil());
            change = zone.getRules().nextTransition(change.getInstant());
        }
    }

    /** Samoa left out the whole of 30 December 2011 when it crossed the date line: zone database, Pacific/Apia. */
    @Test
    void aDayThatIsSkippedLeavesNoTaskBeforeItBegins() {
        ZoneId apia = ZoneId.of("Pacific/Apia");
        List<Task> tasks = of(LocalDate.of(2011, 12, 29), apia, step("a", 0, 2, Rhythm.daily, null, LocalTime.of(9, 0)))
                .tasks();

        assertThat(tasks).allSatisfy(task -> assertThat(task.dueFrom()).isBeforeOrEqualTo(task.dueUntil()));
        assertThat(tasks.get(2).dueFrom()).isEqualTo(Instant.parse("2011-12-30T19:00:00Z"));
    }

    @Test
    void whatIsDoneOnceIsDueOnAnyOfItsDays() {
        Schedule schedule = of(LocalDate.of(2025, 3, 1), ZoneOffset.UTC, step("stitches", 40, 44, Rhythm.once, null));

        assertThat(schedule.tasks()).hasSize(1);
        Task task = schedule.tasks().get(0);
        assertThat(task.day()).isEqualTo(40);
        assertThat(task.dueFrom()).isEqualTo(Instant.parse("2025-04-10T00:00:00Z"));
        assertThat(task.dueUntil()).isEqualTo(Instant.parse("2025-04-15T00:00:00Z"));
        assertThat(schedule.tasksOn(LocalDate.of(2025, 4, 14))).containsExactly(task);
        assertThat(schedule.tasksOn(LocalDate.of(2025, 4, 15))).isEmpty();
    }

    @Test
    void stepsAreReplacedFromADayOn() {
        LocalDate dayZero = LocalDate.of(2025, 3, 1);
        Step swim = step("swim", 0, 20, Rhythm.daily, null);
        Step stitches = step("stitches", 5, 30, Rhythm.once, null);
        Step weigh = step("weigh", 0, 20, Rhythm.weekly, null);
        Step longer = step("swim", 10, 14, Rhythm.everyDays, 2);
        var changed = new Schedule(
                dayZero,
                ZoneOffset.UTC,
                List.of(new Phase(0, List.of(swim, stitches, weigh)), new Phase(10, List.of(longer, stitches))));

        assertThat(daysOf(changed, "swim")).containsExactly(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14);
        assertThat(daysOf(changed, "weigh")).containsExactly(0, 7);
        List<Task> once = changed.tasks().stream()
                .filter(task -> task.step().key().equals("stitches"))
                .toList();
        assertThat(once).hasSize(1);
        assertThat(once.get(0).lastDate()).isEqualTo(dayZero.plusDays(30));
    }

    @Test
    void whatIsLeftOutOfTheNewStepsIsDueNoLonger() {
        LocalDate dayZero = LocalDate.of(2025, 3, 1);
        var changed = new Schedule(
                dayZero,
                ZoneOffset.UTC,
                List.of(
                        new Phase(0, List.of(step("stitches", 5, 30, Rhythm.once, null))),
                        new Phase(8, List.of()),
                        new Phase(3, List.of(step("swim", 4, 6, Rhythm.daily, null)))));

        assertThat(changed.tasks())
                .allSatisfy(task -> assertThat(task.step().key()).isEqualTo("swim"));
        assertThat(daysOf(changed, "swim")).containsExactly(4, 5, 6);
    }

    private static List<Integer> daysOf(Schedule schedule, String key) {
        return schedule.tasks().stream()
                .filter(task -> task.step().key().equals(key))
                .map(Task::day)
                .toList();
    }

    @Test
    void everyTaskLiesWithinItsStepAndItsPhaseAndNoneIsThereTwice() {
        long seed = 20261129;
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        List<ZoneId> zones = List.of(ZoneId.of("Australia/Lord_Howe"), ZoneId.of("Australia/Sydney"), NEW_YORK);
        int tasks = 0;
        for (int plan = 0; plan < 1_000; plan++) {
            ZoneId zone = zones.get(random.nextInt(zones.size()));
            LocalDate dayZero = LocalDate.of(2024, 1, 1).plusDays(random.nextInt(700));
            List<Phase> phases = new ArrayList<>();
            int from = 0;
            for (int i = 0; i <= random.nextInt(3); i++) {
                phases.add(new Phase(from, steps(random)));
                from = random.nextInt(60);
            }
            var schedule = new Schedule(dayZero, zone, phases);
            Set<String> called = new HashSet<>();
            for (Task task : schedule.tasks()) {
                String as = "seed %d plan %d: %s".formatted(seed, plan, task);
                Step step = task.step();
                assertThat(called.add(step.key() + " " + task.day())).as(as).isTrue();
                assertThat(task.date()).as(as).isAfterOrEqualTo(dayZero.plusDays(step.firstDay()));
                assertThat(task.lastDate()).as(as).isBeforeOrEqualTo(dayZero.plusDays(step.lastDay()));
                assertThat(task.dueFrom()).as(as).isBefore(task.dueUntil());
                assertThat(task.dueFrom().atZone(zone).toLocalDate()).as(as).isEqualTo(task.date());
                assertThat(task.dueUntil())
                        .as(as)
                        .isEqualTo(
                                task.lastDate().plusDays(1).atStartOfDay(zone).toInstant());
                tasks++;
            }
            assertThat(called).as("seed %d plan %d", seed, plan).isEqualTo(counted(phases));
        }
        assertThat(tasks).isGreaterThan(10_000);
    }

    private static List<Step> steps(UniformRandomProvider random) {
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i <= random.nextInt(4); i++) {
            Rhythm rhythm = Rhythm.values()[random.nextInt(4)];
            int first = random.nextInt(40);
            LocalTime hour = random.nextInt(3) == 0 ? LocalTime.of(random.nextInt(24), random.nextInt(60)) : null;
            steps.add(step(
                    "step" + i,
                    first,
                    first + random.nextInt(40),
                    rhythm,
                    rhythm == Rhythm.everyDays ? 1 + random.nextInt(9) : null,
                    hour));
        }
        return steps;
    }

    /** Counted another way: each step's own days first, then whether its phase holds on them. */
    private static Set<String> counted(List<Phase> phases) {
        Set<String> called = new HashSet<>();
        for (int p = 0; p < phases.size(); p++) {
            for (Step step : phases.get(p).steps()) {
                int stride = switch (step.rhythm()) {
                    case once, daily -> 1;
                    case everyDays -> step.everyDays();
                    case weekly -> 7;
                };
                for (int day = step.firstDay(); day <= step.lastDay(); day += stride) {
                    if (holds(phases, p, day)) {
                        called.add(step.key() + " " + (step.rhythm() == Rhythm.once ? step.firstDay() : day));
                    }
                }
            }
        }
        return called;
    }

    private static boolean holds(List<Phase> phases, int p, int day) {
        return phases.get(p).fromDay() <= day
                && phases.subList(p + 1, phases.size()).stream().noneMatch(later -> later.fromDay() <= day);
    }

    @Test
    void aStepThatNobodyCanMeanIsRefused() {
        assertThatThrownBy(() -> step("a", 3, 2, Rhythm.daily, null)).hasMessageContaining("day 0");
        assertThatThrownBy(() -> step("a", 0, 2, Rhythm.everyDays, null)).hasMessageContaining("how many");
        assertThatThrownBy(() -> step("a", 0, 2, Rhythm.daily, 2)).hasMessageContaining("how many");
        assertThatThrownBy(() ->
                        new Phase(0, List.of(step("a", 0, 2, Rhythm.daily, null), step("a", 3, 4, Rhythm.daily, null))))
                .hasMessageContaining("two steps");
    }

    @Test
    void theLimitsThemselvesAreInside() {
        var weigh =
                new Step("a", "weigh", 0, 9, Rhythm.daily, null, Measure.grams, 400.0, 500.0, null, null, null, null);

        assertThat(weigh.crossesLimit(400)).isFalse();
        assertThat(weigh.crossesLimit(500)).isFalse();
        assertThat(weigh.crossesLimit(399.9)).isTrue();
        assertThat(weigh.crossesLimit(500.1)).isTrue();
    }
}
