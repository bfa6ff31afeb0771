package org.culvert.care.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class TaskHistoryTest {
    private static final LocalDate DAY = LocalDate.of(2026, 1, 1);

    private static Step step(String key, int first, int last, String words) {
        return new Step(key, words, first, last, Rhythm.daily, null, Measure.none, null, null, null, null, null, null);
    }

    @Test
    void aTaskThatALaterPhaseLeavesOutStaysAndOneThatItChangesIsChanged() {
        List<TaskHistory> told = TaskHistory.of(
                DAY,
                ZoneOffset.UTC,
                List.of(
                        new Phase(0, List.of(step("dry", 0, 2, "dry"), step("swim", 1, 2, "short"))),
                        new Phase(1, List.of(step("swim", 1, 3, "long"))),
                        new Phase(2, List.of(step("dry", 0, 2, "dry"), step("swim", 1, 3, "long")))));

        assertThat(told)
                .extracting(
                        one -> one.task().step().key() + " " + one.task().day(),
                        TaskHistory::askedFor,
                        TaskHistory::since,
                        TaskHistory::changes)
                .containsExactlyInAnyOrder(
                        tuple("dry 0", true, 0, 0),
                        // Left out by the second phase
                        tuple("dry 1", false, 0, 1),
                        // Left out by the second, asked for again by the third
                        tuple("dry 2", true, 0, 2),
                        tuple("swim 1", true, 0, 1),
                        tuple("swim 2", true, 0, 1),
                        tuple("swim 3", true, 1, 0));
        assertThat(told)
                .filteredOn(one -> one.task().step().key().equals("swim"))
                .allMatch(one -> one.task().step().words().equals("long"));
    }

    /** Whatever the phases are: what is asked for is the plan's tasks, nothing that came is lost, and changes only grow. */
    @Test
    void randomPlansLoseNothing() {
        UniformRandomProvider dice = RandomSource.XO_RO_SHI_RO_128_PP.create(46);
        for (int round = 0; round < 200; round++) {
            List<Phase> phases = new ArrayList<>();
            List<TaskHistory> before = List.of();
            int count = 1 + dice.nextInt(4);
            for (int place = 0; place < count; place++) {
                phases.add(new Phase(place == 0 ? 0 : dice.nextInt(12), steps(dice)));
                List<TaskHistory> now = TaskHistory.of(DAY, ZoneOffset.UTC, phases);
                assertThat(now.stream().filter(TaskHistory::askedFor).map(TaskHistory::task))
                        .containsExactlyInAnyOrderElementsOf(new Schedule(DAY, ZoneOffset.UTC, phases).tasks());
                assertThat(names(now)).hasSameSizeAs(now).containsAll(names(before));
                for (TaskHistory old : before) {
                    TaskHistory same = now.stream()
                            .filter(one -> name(one).equals(name(old)))
                            .findFirst()
                            .orElseThrow();
                    boolean changed =
                            same.askedFor() != old.askedFor() || !same.task().equals(old.task());
                    assertThat(same.changes() - old.changes()).isEqualTo(changed ? 1 : 0);
                }
                before = now;
            }
        }
    }

    private static List<Step> steps(UniformRandomProvider dice) {
        List<Step> steps = new ArrayList<>();
        for (String key : List.of("a", "b", "c")) {
            if (dice.nextBoolean()) {
                int first = dice.nextInt(10);
                steps.add(step(key, first, first + dice.nextInt(6), "words " + dice.nextInt(2)));
            }
        }
        return steps;
    }

    private static String name(TaskHistory told) {
        return told.task().step().key() + told.task().day();
    }

    private static Set<String> names(List<TaskHistory> told) {
        return told.stream().map(TaskHistoryTest::name).collect(Collectors.toSet());
    }
}
