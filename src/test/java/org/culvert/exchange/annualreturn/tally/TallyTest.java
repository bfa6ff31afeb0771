package org.culvert.exchange.annualreturn.tally;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class TallyTest {
    private static final Instant START = Instant.parse("2020-01-01T00:00:00Z");
    private static final int LONGEST = 60;

    private static Instant day(int number) {
        return START.plus(Duration.ofDays(number));
    }

    private static Stay mine(int from, Integer to) {
        return new Stay("mine " + from, true, day(from), to == null ? null : day(to));
    }

    private static Stay others(int from, Integer to) {
        return new Stay("others " + from, false, day(from), to == null ? null : day(to));
    }

    private static Counted animal(long number, Integer ended, String end, Stay... stays) {
        return new Counted(
                "turtle", CountedAs.animal, number, 1, "found", List.of(stays), ended == null ? null : day(ended), end);
    }

    /** From day 10 to day 20, by hand. */
    private static Tally tally(Counted... all) {
        return Tally.of(day(10), day(20), List.of(all));
    }

    private static Line only(Tally tally) {
        assertThat(tally.lines()).hasSize(1);
        return tally.lines().get(0);
    }

    @Test
    void countsWhatIsHeldComesAndGoes() {
        Tally tally = tally(
                animal(1, 15, "released", mine(5, 15)),
                animal(2, null, null, mine(12, null)),
                animal(3, 17, "died", others(8, 11), mine(11, 17)),
                animal(4, null, null, mine(13, 16), others(16, null)),
                animal(5, 9, "died", mine(2, 9)),
                animal(6, null, null, mine(20, null)),
                animal(7, null, null, mine(1, null)));
        Line line = only(tally);
        assertThat(line.opening()).isEqualTo(2);
        assertThat(line.came()).containsExactlyInAnyOrderEntriesOf(Map.of("found", 2, "transferred", 1));
        assertThat(line.went()).containsExactlyInAnyOrderEntriesOf(Map.of("released", 1, "died", 1, "transferred", 1));
        assertThat(line.closing()).isEqualTo(2);
        assertThat(tally.doubts()).isEmpty();
        assertThat(tally.movements().stream()
                        .filter(movement -> movement.other() != null)
                        .map(movement -> movement.what().caseNumber() + " " + movement.in() + " "
                                + movement.other().link()))
                .containsExactly("3 true others 8", "4 false others 16");
    }

    @Test
    void whatLeavesAtTheFirstInstantIsInTheOpeningAndWhatComesAtTheLastIsNot() {
        Line first = only(tally(animal(1, 10, "released", mine(5, 10))));
        assertThat(first.opening()).isEqualTo(1);
        assertThat(first.went()).containsEntry("released", 1);
        assertThat(tally(animal(2, null, null, mine(20, null))).lines()).isEmpty();
        Line last = only(tally(animal(3, 20, "released", mine(15, 20))));
        assertThat(last.closing())
                .as("it goes at the first instant of the next span")
                .isEqualTo(1);
    }

    @Test
    void aGapIsInTheLineAndALineOfItsOwn() {
        Tally tally = tally(
                animal(1, null, null, mine(5, 12), mine(14, null)),
                animal(2, 18, "released", mine(11, 15)),
                animal(3, 16, "unknown", mine(11, 16)));
        Line line = only(tally);
        assertThat(line.opening()).isEqualTo(1);
        assertThat(line.came()).containsExactlyInAnyOrderEntriesOf(Map.of("found", 2, "custodyGap", 1));
        assertThat(line.went()).containsExactlyInAnyOrderEntriesOf(Map.of("custodyGap", 2, "unknown", 1));
        assertThat(line.closing()).isEqualTo(1);
        assertThat(tally.doubts())
                .containsExactlyInAnyOrder(
                        new Doubt("turtle", CountedAs.animal, true, "custodyGap", 1, List.of(1L)),
                        new Doubt("turtle", CountedAs.animal, false, "custodyGap", 2, List.of(1L, 2L)),
                        new Doubt("turtle", CountedAs.animal, false, "unknown", 1, List.of(3L)));
    }

    @Test
    void spansOfOneHolderThatMeetAreOne() {
        Line line = only(tally(animal(1, null, null, mine(5, 12), mine(12, null))));
        assertThat(line.came()).isEmpty();
        assertThat(line.went()).isEmpty();
        assertThat(line.opening()).isEqualTo(1);
    }

    @Test
    void nobodyMakesALineThatDoesNotAddUp() {
        assertThatThrownBy(() ->
                        new Line("turtle", CountedAs.animal, 3, new TreeMap<>(Map.of("found", 2)), new TreeMap<>(), 4))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("3 opening");
        assertThatThrownBy(() -> animal(1, null, null, mine(1, null), others(5, 6)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /**
     * Random chains against a count that goes from day to day and looks at who has what, as one would with a calendar. In
     * half of the chains spans meet.
     */
    @Test
    void opensAndClosesLikeACountDayByDay() {
        var random = new Random(20_261_129);
        int met = 0;
        for (int round = 0; round < 2_000; round++) {
            List<Counted> all = new ArrayList<>();
            int animals = 1 + random.nextInt(12);
            for (int number = 0; number < animals; number++) {
                all.add(random(random, number));
            }
            int from = 5 + random.nextInt(30);
            int before = from + 1 + random.nextInt(LONGEST - from);
            Tally tally = Tally.of(day(from), day(before), all);
            Map<String, int[]> byHand = byHand(all, from, before);
            for (Line line : tally.lines()) {
                assertThat(new int[] {line.opening(), line.cameIn(), line.wentOut(), line.closing()})
                        .as("round %d, %s", round, line)
                        .isEqualTo(byHand.remove(line.taxon() + " " + line.kind()));
                assertThat(line.opening() + line.cameIn()).isEqualTo(line.wentOut() + line.closing());
                met++;
            }
            assertThat(byHand.values())
                    .as("round %d", round)
                    .allSatisfy(counts -> assertThat(counts[0] + counts[1]).isZero());
            int gaps = tally.doubts().stream()
                    .filter(doubt -> doubt.why().equals("custodyGap"))
                    .mapToInt(Doubt::count)
                    .sum();
            int inLines = tally.lines().stream()
                    .mapToInt(line -> line.came().getOrDefault("custodyGap", 0)
                            + line.went().getOrDefault("custodyGap", 0))
                    .sum();
            assertThat(gaps).as("round %d", round).isEqualTo(inLines);
        }
        assertThat(met).isGreaterThan(2_000);
    }

    /** What one year closes with, the next one opens with. */
    @Test
    void aYearOpensWithWhatTheOneBeforeClosedWith() {
        var random = new Random(7);
        for (int round = 0; round < 500; round++) {
            List<Counted> all = new ArrayList<>();
            for (int number = 0; number < 10; number++) {
                all.add(random(random, number));
            }
            int middle = 10 + random.nextInt(20);
            Map<String, Integer> closing = new HashMap<>();
            Tally.of(day(1), day(middle), all)
                    .lines()
                    .forEach(line -> closing.put(line.taxon() + line.kind(), line.closing()));
            Map<String, Integer> opening = new HashMap<>();
            Tally.of(day(middle), day(LONGEST), all)
                    .lines()
                    .forEach(line -> opening.put(line.taxon() + line.kind(), line.opening()));
            closing.values().removeIf(count -> count == 0);
            opening.values().removeIf(count -> count == 0);
            assertThat(opening).as("round %d", round).isEqualTo(closing);
        }
    }

    private static Counted random(Random random, int number) {
        List<Stay> stays = new ArrayList<>();
        int at = random.nextInt(20);
        Integer until = at;
        for (int link = 1 + random.nextInt(5); link > 0 && until != null; link--) {
            int from = at + (random.nextBoolean() ? 0 : random.nextInt(5));
            until = link == 1 && random.nextInt(3) == 0 ? null : from + 1 + random.nextInt(12);
            stays.add(random.nextBoolean() ? mine(from, until) : others(from, until));
            at = until == null ? at : until;
        }
        boolean ended = until != null && random.nextInt(4) > 0;
        String end = List.of("released", "died", "unknown").get(random.nextInt(3));
        return new Counted(
                random.nextBoolean() ? "turtle" : "possum",
                random.nextInt(4) == 0 ? CountedAs.egg : CountedAs.animal,
                number,
                1 + random.nextInt(3),
                "found",
                stays,
                ended ? day(until + (random.nextInt(5) == 0 ? 3 : 0)) : null,
                ended ? end : null);
    }

    /** Opening, in, out and closing of each kind, by looking at each day who has what. */
    private static Map<String, int[]> byHand(List<Counted> all, int from, int before) {
        Map<String, int[]> counts = new HashMap<>();
        for (Counted one : all) {
            int[] of = counts.computeIfAbsent(one.taxon() + " " + one.kind(), key -> new int[4]);
            of[0] += has(one, from - 1) ? one.count() : 0;
            for (int day = from; day < before; day++) {
                of[1] += !has(one, day - 1) && has(one, day) ? one.count() : 0;
                of[2] += has(one, day - 1) && !has(one, day) ? one.count() : 0;
            }
            of[3] += has(one, before - 1) ? one.count() : 0;
        }
        return counts;
    }

    /** Whether the holder has it in the day that begins with an instant. */
    private static boolean has(Counted one, int day) {
        Instant noon = day(day).plus(Duration.ofHours(12));
        return one.stays().stream()
                .anyMatch(stay -> stay.own()
                        && stay.from().isBefore(noon)
                        && (stay.to() == null || stay.to().isAfter(noon)));
    }

    @Test
    void eggsThatWereSetFirstGoFirst() {
        List<Counted> eggs = Eggs.of(
                "turtle",
                7,
                List.of(new Eggs.Laid(day(3), 2), new Eggs.Laid(day(1), 5)),
                List.of(new Eggs.Gone(day(15), 4, "hatched"), new Eggs.Gone(day(12), 2, "failed")),
                List.of(mine(1, null)));
        assertThat(eggs).extracting(Counted::count).containsExactly(2, 3, 1, 1);
        assertThat(eggs).extracting(Counted::end).containsExactly("failed", "hatched", "hatched", null);
        assertThat(eggs).extracting(one -> one.stays().get(0).from()).containsExactly(day(1), day(1), day(3), day(3));
        Line line = only(Tally.of(day(2), day(14), eggs));
        assertThat(line.opening()).isEqualTo(5);
        assertThat(line.came()).containsEntry("set", 2);
        assertThat(line.went()).containsEntry("failed", 2);
        assertThat(line.closing()).isEqualTo(5);
    }

    @Test
    void eggsThatFailedWhileNobodyHadThemAreNamedAndInNoLine() {
        Tally tally = Tally.of(
                day(10),
                day(20),
                Eggs.of(
                        "turtle",
                        7,
                        List.of(new Eggs.Laid(day(11), 3)),
                        List.of(new Eggs.Gone(day(12), 3, "failed")),
                        List.of(mine(13, null))));
        assertThat(tally.lines()).isEmpty();
        assertThat(tally.doubts())
                .containsExactly(new Doubt("turtle", CountedAs.egg, false, "heldByNobody", 3, List.of(7L)));
        assertThatThrownBy(() -> Eggs.of(
                        "turtle",
                        7,
                        List.of(new Eggs.Laid(day(1), 1)),
                        List.of(new Eggs.Gone(day(2), 2, "hatched")),
                        List.of()))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
