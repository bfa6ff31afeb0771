package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.junit.jupiter.api.Test;

class RecordDoubtsTest {
    private static final double ROAD_METRES = 60_000;

    private final Chainage road = new Chainage(
            new int[] {0}, new int[] {0}, new double[] {0}, new double[] {ROAD_METRES}, new double[] {ROAD_METRES});

    /** Counted by hand: places 0-1, 0-2, 1-2 and 3-4 are close, days 0-1, 0-3, 1-3, 2-4 of ten pairs. */
    @Test
    void itCountsPairsAsKnoxDid() {
        RecordDoubts doubts =
                RecordDoubts.of(road, places(1013, 1063, 1213, 5227, 5427), new long[] {10, 11, 40, 10, 39});
        assertThat(doubts.closePairs()).isEqualTo(1);
        assertThat(doubts.closePairsExpected()).isCloseTo(4 * 4 / 10.0, within(1e-12));
        assertThat(doubts.words()).isEmpty();
    }

    @Test
    void independentRecordsAreDoubtedRarely() {
        int doubted = 0;
        for (int set = 0; set < 1000; set++) {
            UniformRandomProvider random = MonteCarlo.generator(61, set);
            doubted += doubts(200, 0, 0, random).words().isEmpty() ? 0 : 1;
        }
        // Five per cent for pairs, of a count that is seldom whole there, and three times one for rounding
        assertThat(doubted).isBetween(5, 80);
    }

    @Test
    void doubledRecordsAreSeen() {
        int doubted = 0;
        for (int set = 0; set < 200; set++) {
            doubted += doubts(34, 3, 0, MonteCarlo.generator(62, set)).words().stream()
                            .anyMatch(words -> words.startsWith("collisions that hang together"))
                    ? 1
                    : 0;
        }
        assertThat(doubted).isGreaterThan(195);
    }

    @Test
    void roundedPlacesTakenAsExactAreSeen() {
        int doubted = 0;
        for (int set = 0; set < 200; set++) {
            doubted += doubts(34, 0, 0.3, MonteCarlo.generator(63, set)).words().stream()
                            .anyMatch(words -> words.contains("of a whole 1000 m"))
                    ? 1
                    : 0;
        }
        assertThat(doubted).isGreaterThan(195);
    }

    @Test
    void roundingThatIsKnownIsNone() {
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 1; i < 20; i++) {
            events.add(new RoadEvent(0, 1000 * i, new Recording(1000, 0)));
        }
        assertThat(RecordDoubts.of(road, events, new long[19]).words()).isEmpty();
        events.clear();
        UniformRandomProvider random = MonteCarlo.generator(65, 0);
        long[] days = new long[300];
        for (int i = 0; i < days.length; i++) {
            events.add(new RoadEvent(0, 100 * random.nextInt(600), new Recording(100, 0)));
            days[i] = 3L * i;
        }
        assertThat(RecordDoubts.of(road, events, days).words())
                .as("hectometres, of which one in ten is a kilometre")
                .isEmpty();
    }

    /** A season of nights at one bend is a hotspot, not rounding, nor doubled. */
    @Test
    void oneBadBendAtAKilometreStoneIsNoRounding() {
        List<RoadEvent> events = new ArrayList<>();
        long[] days = new long[30];
        UniformRandomProvider random = MonteCarlo.generator(64, 0);
        for (int i = 0; i < 30; i++) {
            events.add(new RoadEvent(
                    0, i < 15 ? 7000 + 4 * random.nextDouble() : ROAD_METRES * random.nextDouble(), Recording.EXACT));
            days[i] = 10L * i;
        }
        assertThat(RecordDoubts.of(road, events, days).words()).isEmpty();
    }

    @Test
    void everyEventNeedsItsDay() {
        assertThatThrownBy(() -> RecordDoubts.of(road, places(1, 2), new long[1]))
                .isInstanceOf(IllegalArgumentException.class);
        assertThat(RecordDoubts.of(road, List.of(), new long[0]).words()).isEmpty();
    }

    private RecordDoubts doubts(int count, int doubled, double rounded, UniformRandomProvider random) {
        List<RoadEvent> events = new ArrayList<>();
        long[] days = new long[count];
        for (int i = 0; i < count; i++) {
            if (i >= count - doubled) {
                events.add(events.get(count - 1 - i));
                days[i] = days[count - 1 - i];
                continue;
            }
            double at = ROAD_METRES * random.nextDouble();
            events.add(new RoadEvent(
                    0, random.nextDouble() < rounded ? 1000 * Math.rint(at / 1000) : at, Recording.EXACT));
            days[i] = random.nextInt(360);
        }
        return RecordDoubts.of(road, events, days);
    }

    private static List<RoadEvent> places(double... metres) {
        List<RoadEvent> events = new ArrayList<>();
        for (double at : metres) {
            events.add(new RoadEvent(0, at, Recording.EXACT));
        }
        return events;
    }
}
