package org.culvert.hotspot.stats.season;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Whether the events of a year's parts are more than the effort in those parts explains: Pearson's chi-square against
 * expected counts in proportion to effort (calls taken of any kind, hours surveyed, traffic; where only the bare year is
 * known, the days of each month).
 *
 * <p>With every expected count at least {@value #LEAST_EXPECTED}, p comes from the chi-square distribution; else by Monte
 * Carlo from multinomial draws with the same total (Hope 1968, A simplified Monte Carlo significance test procedure, Journal
 * of the Royal Statistical Society B 30, 582-598). A part whose effort is not known (NaN) is left out together with its
 * events, and the result says how many.
 *
 * @param verdict the test
 * @param expected expected count of each part; NaN for a part left out
 * @param partsLeftOut how many parts have no known effort
 * @param eventsLeftOut how many events fell in those
 */
public record AgainstEffort(Verdict verdict, List<Double> expected, int partsLeftOut, int eventsLeftOut) {
    /** The usual rule for Pearson's chi-square. */
    static final double LEAST_EXPECTED = 5;

    private static final double TIE = 1e-9;

    public AgainstEffort {
        expected = List.copyOf(expected);
    }

    /**
     * @param events count in each part, such as months
     * @param effort in the same parts, in any unit, zero or more; NaN where it is not known
     * @param simulations for few events, such as 9,999
     * @param seed of the generator
     * @throws IllegalArgumentException if the parts do not match, fewer than two have known effort greater than zero, there
     *     are events where the effort is zero, or there are no events
     */
    public static AgainstEffort test(int[] events, double[] effort, int simulations, long seed) {
        if (events.length != effort.length || simulations < 1) {
            throw new IllegalArgumentException(
                    "every part needs a count and an effort, and there is at least one simulation");
        }
        int total = 0;
        int partsLeftOut = 0;
        int eventsLeftOut = 0;
        int used = 0;
        double allEffort = 0;
        for (int part = 0; part < events.length; part++) {
            if (events[part] < 0 || effort[part] < 0 || Double.isInfinite(effort[part])) {
                throw new IllegalArgumentException("counts and efforts are zero or more and finite");
            }
            if (Double.isNaN(effort[part])) {
                partsLeftOut++;
                eventsLeftOut += events[part];
                continue;
            }
            if (effort[part] == 0 && events[part] > 0) {
                throw new IllegalArgumentException(
                        "part " + part + " has events and no effort: give NaN where it is unknown");
            }
            total += events[part];
            allEffort += effort[part];
            if (effort[part] > 0) {
                used++;
            }
        }
        if (used < 2 || total == 0) {
            throw new IllegalArgumentException(
                    "at least two parts with effort, and an event in one of them, are needed");
        }
        List<Double> expected = new ArrayList<>();
        double[] expectedUsed = new double[used];
        int[] observedUsed = new int[used];
        double least = Double.POSITIVE_INFINITY;
        int at = 0;
        for (int part = 0; part < events.length; part++) {
            double here = total * effort[part] / allEffort;
            expected.add(here);
            if (here > 0) {
                expectedUsed[at] = here;
                observedUsed[at++] = events[part];
                least = Math.min(least, here);
            }
        }
        double statistic = chiSquare(observedUsed, expectedUsed);
        Verdict verdict = least >= LEAST_EXPECTED
                ? new Verdict(
                        "chi-square against effort",
                        statistic,
                        ChiSquaredDistribution.of(used - 1).survivalProbability(statistic),
                        "chi-square on " + (used - 1) + " degrees of freedom")
                : new Verdict(
                        "chi-square against effort",
                        statistic,
                        byMonteCarlo(statistic, expectedUsed, total, simulations, seed),
                        simulations + " multinomial draws, seed " + seed);
        return new AgainstEffort(verdict, expected, partsLeftOut, eventsLeftOut);
    }

    private static double byMonteCarlo(double statistic, double[] expected, int total, int simulations, long seed) {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
        double[] upTo = new double[expected.length];
        double sum = 0;
        for (int part = 0; part < expected.length; part++) {
            sum += expected[part];
            upTo[part] = sum;
        }
        int atLeast = 0;
        for (int simulation = 0; simulation < simulations; simulation++) {
            int[] drawn = new int[expected.length];
            for (int event = 0; event < total; event++) {
                double u = random.nextDouble() * sum;
                int part = 0;
                while (part + 1 < upTo.length && upTo[part] <= u) {
                    part++;
                }
                drawn[part]++;
            }
            if (chiSquare(drawn, expected) >= statistic - TIE * Math.max(1, statistic)) {
                atLeast++;
            }
        }
        return (1.0 + atLeast) / (simulations + 1.0);
    }

    private static double chiSquare(int[] observed, double[] expected) {
        double sum = 0;
        for (int part = 0; part < observed.length; part++) {
            double off = observed[part] - expected[part];
            sum += off * off / expected[part];
        }
        return sum;
    }
}
