package org.culvert.hotspot.stats.rate;

/**
 * The exact interval for a ratio: the mean of a Poisson count over a mean that is itself uncertain.
 *
 * <p>Let the count be Poisson with mean {@code theta m}, and m be gamma with shape a and rate b. Over both, the count is
 * negative binomial, and {@code P(count >= x) = I(theta / (b + theta); x, a)} (regularised beta function). Either end of the
 * interval is the theta at which a count at least as far out has probability (1 - level)/2: the rule of C. J. Clopper and
 * E. S. Pearson (1934, Biometrika 26, 404-413) carried over to this distribution. It covers at least at its level, for every
 * theta, also where counts are small; an interval of plus and minus 1.96 standard errors does not.
 *
 * <p>Where m is known from a count alone, and not from sites alike, the lower end uses shape a + 1 and the upper end shape
 * a: with a the count before, that is the exact conditional interval of a ratio of two Poisson rates.
 */
final class GammaPoisson {
    private static final double AS_GOOD_AS_KNOWN = 1e10;

    private final double lowShape;
    private final double highShape;
    private final double rate;
    private final double mean;

    private GammaPoisson(double lowShape, double highShape, double rate, double mean) {
        this.lowShape = lowShape;
        this.highShape = highShape;
        this.rate = rate;
        this.mean = mean;
    }

    /** m has a posterior with this mean, above 0, and this variance, 0 or more. */
    static GammaPoisson fromPosterior(double mean, double variance) {
        double shape = mean * mean / variance;
        return new GammaPoisson(shape, shape, shape / mean, mean);
    }

    /**
     * m is a factor times the mean of a count.
     *
     * @param effectiveCount 0 or more: the count, made less by what is uncertain about the factor
     * @param factor above 0
     */
    static GammaPoisson fromCount(double effectiveCount, double factor) {
        return new GammaPoisson(effectiveCount + 1, effectiveCount, 1 / factor, effectiveCount * factor);
    }

    /** The interval with equal tails. At a count of 0 it starts at 0. */
    Interval interval(int count, double level) {
        double tail = (1 - level) / 2;
        return new Interval(low(count, tail), high(count, tail), level);
    }

    /** The value that theta is below with confidence {@code level}: the bound where a count of 0 gives no estimate. */
    double upperBound(int count, double level) {
        return high(count, 1 - level);
    }

    private double low(int count, double tail) {
        if (count == 0) {
            return 0;
        }
        if (!(lowShape < AS_GOOD_AS_KNOWN)) {
            return Quantiles.gamma(count, mean, tail);
        }
        return rate * Quantiles.betaOdds(count, lowShape, tail);
    }

    private double high(int count, double tail) {
        if (highShape == 0) {
            return Double.POSITIVE_INFINITY;
        }
        if (!(highShape < AS_GOOD_AS_KNOWN)) {
            return Quantiles.gamma(count + 1.0, mean, 1 - tail);
        }
        return rate * Quantiles.betaOdds(count + 1.0, highShape, 1 - tail);
    }
}
