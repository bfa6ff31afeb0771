package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;

/**
 * What the records themselves say against what every kind of chance assumes: that collisions happen one by one, and that a
 * place taken as exact is.
 *
 * @param closePairs pairs of events within {@value #CLOSE_METRES} m along one road and within a day of each other
 * @param closePairsExpected how many there would be if places and days went separately
 * @param words what is doubtful, in plain words; empty where nothing is
 */
public record RecordDoubts(int closePairs, double closePairsExpected, List<String> words) {
    static final int CLOSE_METRES = 200;

    private static final double PAIRS_P = 0.05;
    private static final double ROUND_P = 0.01;
    private static final int[] STEPS = {1000, 500, 100};

    /** Within this share of a step, to either side, a place looks rounded to it. */
    private static final double NEAR = 0.01;

    private static final String HANGING_TOGETHER =
            "collisions that hang together: more of them lie close in both place and day than places and days would bring"
                    + " about separately; one entered twice, or many animals struck in one night, makes a hotspot of its own";

    /**
     * Pairs close in place and day by Knox (1964), The detection of space-time interactions, Applied Statistics 13, 25-30,
     * with the Poisson count that he gives; places near whole steps by the exact binomial tail, each stretch of two per cent
     * of a step counted once, so that one bad bend at a kilometre stone is no rounding.
     *
     * @param events the events counted
     * @param days of each event, numbered one after another
     */
    public static RecordDoubts of(Chainage chainage, List<RoadEvent> events, long[] days) {
        if (days.length != events.size()) {
            throw new IllegalArgumentException("every event needs its day");
        }
        List<String> words = new ArrayList<>();
        int closePairs = 0;
        double expected = 0;
        if (events.size() > 1) {
            Pairs pairs = Pairs.of(chainage, events, days);
            closePairs = pairs.both;
            expected = pairs.inPlace * pairs.inTime / (0.5 * events.size() * (events.size() - 1.0));
            if (closePairs > 0 && PoissonDistribution.of(expected).survivalProbability(closePairs - 1) <= PAIRS_P) {
                words.add(HANGING_TOGETHER);
            }
        }
        for (int step : STEPS) {
            if (looksRounded(chainage, events, step)) {
                words.add("rounding that the records do not tell of: more places lie within " + Math.round(NEAR * step)
                        + " m of a whole " + step + " m along their road than would by chance");
                break;
            }
        }
        return new RecordDoubts(closePairs, expected, List.copyOf(words));
    }

    /** How many pairs are close in place, in time, and in both. */
    private record Pairs(double inPlace, double inTime, int both) {
        static Pairs of(Chainage chainage, List<RoadEvent> events, long[] days) {
            int count = events.size();
            double[] at = new double[count];
            int[] road = new int[count];
            for (int i = 0; i < count; i++) {
                RoadEvent event = events.get(i);
                road[i] = chainage.road(event.link());
                at[i] = chainage.at(event.link(), event.metres());
            }
            Integer[] order = new Integer[count];
            Arrays.setAll(order, i -> i);
            Arrays.sort(order, Comparator.<Integer>comparingInt(i -> road[i]).thenComparingDouble(i -> at[i]));
            double inPlace = 0;
            int both = 0;
            for (int i = 0; i < count; i++) {
                int one = order[i];
                for (int k = i + 1; k < count; k++) {
                    int other = order[k];
                    if (road[other] != road[one] || at[other] - at[one] > CLOSE_METRES) {
                        break;
                    }
                    inPlace++;
                    both += Math.abs(days[one] - days[other]) <= 1 ? 1 : 0;
                }
            }
            Map<Long, Integer> onDay = new HashMap<>();
            for (long day : days) {
                onDay.merge(day, 1, Integer::sum);
            }
            double inTime = 0;
            for (Map.Entry<Long, Integer> entry : onDay.entrySet()) {
                double here = entry.getValue();
                inTime += here * (here - 1) / 2 + here * onDay.getOrDefault(entry.getKey() + 1, 0);
            }
            return new Pairs(inPlace, inTime, both);
        }
    }

    private static boolean looksRounded(Chainage chainage, List<RoadEvent> events, int step) {
        record Cell(int road, long cell) {}
        Set<Cell> cells = new HashSet<>();
        Set<Cell> near = new HashSet<>();
        double cellMetres = 2 * NEAR * step;
        for (RoadEvent event : events) {
            Recording recording = event.recording();
            // Of a place rounded to any step that is known, nothing is doubtful: a tenth of whole hectometres are
            // kilometres
            if (recording.roundingMetres() > 0 || recording.spreadMetres() > step / 4.0) {
                continue;
            }
            double at = chainage.at(event.link(), event.metres());
            // Cells have the whole steps at their middles
            var cell = new Cell(chainage.road(event.link()), Math.round(at / cellMetres));
            cells.add(cell);
            if (Math.abs(at - Math.rint(at / step) * step) <= NEAR * step) {
                near.add(cell);
            }
        }
        return !near.isEmpty()
                && BinomialDistribution.of(cells.size(), 2 * NEAR).survivalProbability(near.size() - 1) <= ROUND_P;
    }
}
