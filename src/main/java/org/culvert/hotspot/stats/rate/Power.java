package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.statistics.distribution.PoissonDistribution;

/**
 * How likely it is that works which do help will be seen to, said before anyone builds.
 *
 * <p>Counts before and after are Poisson; the test is the exact conditional one on their sum, that of
 * {@link CountTests#compare}: works are seen to help where {@code P(Binomial(K + A, tA/(tA + tB)) <= A)} is at most the
 * probability allowed to the lower tail. The power is the sum of the probabilities of all pairs of counts for which it is;
 * nothing is simulated, and what is cut off is less than 10^-12 (J. Przyborowski and H. Wilenski 1940, Biometrika 31,
 * 313-323; for the power by summing, K. Krishnamoorthy and J. Thomson 2004, Journal of Statistical Planning and Inference
 * 119, 23-35, doi:10.1016/S0378-3758(02)00408-1).
 *
 * <p>It is the power of counts that differ by nothing but the works: numbers of animals that come and go, and reporting
 * that changes, make it less; a safety performance function that pins down what was usual before makes it more, up to
 * {@link Year#atBest()}.
 */
public final class Power {
    private Power() {}

    /** Where the probability of error goes. */
    public enum Sides {
        /** All of alpha is for seeing fewer: the question was asked beforehand, and more would be no finding. */
        LOWER,
        /** Half of alpha is for seeing fewer: fewer and more would both be findings. The same as a 1 - alpha interval. */
        EQUAL_TAILS
    }

    /**
     * What is assumed.
     *
     * @param incidentsPerYear on the stretch without works, above 0 and at most 1000
     * @param reduction share that the works prevent, above 0 and at most 1, such as 0.5
     * @param yearsBefore years of records before, above 0 and at most 100
     * @param alpha probability of seeing an effect where there is none
     * @param sides where alpha goes
     */
    public record Assumptions(
            double incidentsPerYear, double reduction, double yearsBefore, double alpha, Sides sides) {
        public Assumptions {
            if (!(incidentsPerYear > 0 && incidentsPerYear <= 1000) || !(yearsBefore > 0 && yearsBefore <= 100)) {
                throw new IllegalArgumentException(
                        "incidents a year are above 0 and at most 1000, years before above 0 and at most 100");
            }
            if (!(reduction > 0 && reduction <= 1)) {
                throw new IllegalArgumentException(
                        "a reduction is a share above 0 and at most 1, such as 0.5 for half");
            }
            Interval.requireLevel(alpha);
        }

        double tail() {
            return sides == Sides.LOWER ? alpha : alpha / 2;
        }
    }

    /**
     * The power after so many years.
     *
     * @param yearsAfter years of records after
     * @param power probability of seeing fewer
     * @param atBest the same if what would have come without works were known exactly
     */
    public record Year(int yearsAfter, double power, double atBest) {}

    /** After each of 1 to a number of years. */
    public static List<Year> byYear(Assumptions assumptions, int mostYears) {
        if (mostYears < 1 || mostYears > 100) {
            throw new IllegalArgumentException("years after are 1 to 100, not " + mostYears);
        }
        List<Year> years = new ArrayList<>();
        for (int year = 1; year <= mostYears; year++) {
            years.add(after(assumptions, year));
        }
        return years;
    }

    /** After a number of years. */
    public static Year after(Assumptions assumptions, int yearsAfter) {
        double before = assumptions.incidentsPerYear() * assumptions.yearsBefore();
        double without = assumptions.incidentsPerYear() * yearsAfter;
        double after = without * (1 - assumptions.reduction());
        double shareAfter = yearsAfter / (yearsAfter + assumptions.yearsBefore());
        return new Year(
                yearsAfter,
                conditional(before, after, shareAfter, assumptions.tail()),
                known(without, after, assumptions.tail()));
    }

    /** Power of the conditional test. The greatest count after that shows an effect rises with the count before. */
    private static double conditional(double before, double after, double shareAfter, double tail) {
        double spread = 8 * Math.sqrt(before) + 40;
        int first = (int) Math.max(0, Math.floor(before - spread));
        int last = (int) Math.ceil(before + spread);
        var countBefore = PoissonDistribution.of(before);
        double sum = 0;
        int critical = -1;
        for (int k = first; k <= last; k++) {
            while (lowerTail(critical + 1, k, shareAfter) <= tail) {
                critical++;
            }
            if (critical >= 0) {
                sum += countBefore.probability(k) * CountTests.poissonLowerTail(after, critical);
            }
        }
        return Math.min(1, sum);
    }

    /** {@code P(Binomial(after + before, share) <= after)}. */
    private static double lowerTail(int after, int before, double share) {
        return before == 0 ? 1 : RegularizedBeta.complement(share, after + 1.0, before);
    }

    private static double known(double without, double after, double tail) {
        int critical = -1;
        while (CountTests.poissonLowerTail(without, critical + 1) <= tail) {
            critical++;
        }
        return critical < 0 ? 0 : CountTests.poissonLowerTail(after, critical);
    }
}
