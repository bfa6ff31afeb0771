package org.culvert.hotspot.stats.rate;

import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.numbers.gamma.RegularizedGamma;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Exact tests on counts.
 *
 * <p>A tail here always includes the count itself: {@code P(X >= x)}. The complement of the distribution function at x is
 * {@code P(X > x)}, and using that instead makes a count one too small look surprising.
 */
public final class CountTests {
    private CountTests() {}

    /**
     * {@code P(X >= x)} for a Poisson count (Johnson, Kemp and Kotz 2005, Univariate Discrete Distributions: the
     * regularised gamma function).
     *
     * @param mean 0 or more
     * @param count 0 or more
     */
    public static double poissonTail(double mean, int count) {
        requireMean(mean);
        requireCount(count);
        if (count == 0) {
            return 1;
        }
        return mean == 0 ? 0 : RegularizedGamma.P.value(count, mean);
    }

    /** {@code P(X <= x)} for a Poisson count. */
    public static double poissonLowerTail(double mean, int count) {
        requireMean(mean);
        requireCount(count);
        return mean == 0 ? 1 : RegularizedGamma.Q.value(count + 1.0, mean);
    }

    /**
     * The smallest count with {@code P(X >= count) < alpha}.
     *
     * @param mean 0 or more
     * @param alpha between 0 and 1
     */
    public static int poissonThreshold(double mean, double alpha) {
        Interval.requireLevel(alpha);
        requireMean(mean);
        int low = 0;
        int high = (int) Math.min(Integer.MAX_VALUE / 4, mean) + 1;
        while (poissonTail(mean, high) >= alpha) {
            low = high;
            high *= 2;
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (poissonTail(mean, middle) < alpha) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    /**
     * {@code P(X >= x)} for a count with {@code Var = mean + k mean^2}, by the regularised beta function.
     *
     * @param mean 0 or more
     * @param overdispersion k; 0 for a Poisson count
     * @param count 0 or more
     */
    public static double negativeBinomialTail(double mean, double overdispersion, int count) {
        if (overdispersion == 0) {
            return poissonTail(mean, count);
        }
        requireMean(mean);
        requireCount(count);
        if (!(overdispersion > 0)) {
            throw new IllegalArgumentException("the overdispersion is 0 or more, not " + overdispersion);
        }
        if (count == 0) {
            return 1;
        }
        double scatter = overdispersion * mean;
        return mean == 0 ? 0 : RegularizedBeta.value(scatter / (1 + scatter), count, 1 / overdispersion);
    }

    /**
     * {@code P(X >= x)} of one site's count where the number on all sites together is taken as given.
     *
     * @param all incidents on all sites
     * @param share of the exposure that the site has, from 0 to 1
     * @param count from 0 to {@code all}
     */
    public static double binomialTail(int all, double share, int count) {
        requireCount(count);
        return count == 0 ? 1 : BinomialDistribution.of(all, share).survivalProbability(count - 1);
    }

    /**
     * Two rates compared.
     *
     * @param ratio the first rate over the second; NaN where both counts are 0, infinite where the second is
     * @param interval exact interval of the ratio, with equal tails
     * @param p two-sided: the probability of all splits no more likely than this one
     * @param pFirstLower one-sided: {@code P(X <= x)} of the first count if the rates are equal
     * @param pFirstHigher one-sided: {@code P(X >= x)} of the first count if the rates are equal
     */
    public record RateRatio(double ratio, Interval interval, double p, double pFirstLower, double pFirstHigher) {}

    /**
     * Compares two Poisson rates, given the sum of their counts: the first is then binomial (J. Przyborowski and H.
     * Wilenski 1940, Biometrika 31, 313-323), and the interval is that of C. J. Clopper and E. S. Pearson 1934, Biometrika
     * 26, 404-413, carried over to the ratio.
     *
     * @param first count
     * @param firstExposure its time, or length times time, above 0
     * @param second count
     * @param secondExposure in the same unit
     * @param level of the interval
     */
    public static RateRatio compare(int first, double firstExposure, int second, double secondExposure, double level) {
        requireCount(first);
        requireCount(second);
        Interval.requireLevel(level);
        if (!(firstExposure > 0 && secondExposure > 0)) {
            throw new IllegalArgumentException("exposures are above 0");
        }
        double tail = (1 - level) / 2;
        double scale = secondExposure / firstExposure;
        double low = first == 0 ? 0 : scale * Quantiles.betaOdds(first, second + 1.0, tail);
        double high =
                second == 0 ? Double.POSITIVE_INFINITY : scale * Quantiles.betaOdds(first + 1.0, second, 1 - tail);
        double ratio = first == 0 && second == 0 ? Double.NaN : first / firstExposure / (second / secondExposure);
        var split = BinomialDistribution.of(first + second, firstExposure / (firstExposure + secondExposure));
        return new RateRatio(
                ratio,
                new Interval(low, high, level),
                noMoreLikely(split, first, first + second),
                split.cumulativeProbability(first),
                split.survivalProbability(first - 1));
    }

    /** Probability of all outcomes that are at most as likely as one, equal ones told by one part in 10^7. */
    private static double noMoreLikely(BinomialDistribution split, int count, int all) {
        double limit = split.probability(count) * (1 + 1e-7);
        double sum = 0;
        for (int i = 0; i <= all; i++) {
            double probability = split.probability(i);
            sum += probability <= limit ? probability : 0;
        }
        return Math.min(1, sum);
    }

    private static void requireMean(double mean) {
        if (!(mean >= 0 && Double.isFinite(mean))) {
            throw new IllegalArgumentException("a mean is 0 or more, not " + mean);
        }
    }

    private static void requireCount(int count) {
        if (count < 0) {
            throw new IllegalArgumentException("a count is 0 or more, not " + count);
        }
    }
}
