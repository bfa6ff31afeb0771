package org.culvert.hotspot.stats.rate;

import org.apache.commons.numbers.gamma.LogGamma;

/**
 * The likelihood of counts under negative binomial distributions of known means, as a function of the overdispersion.
 *
 * <p>With {@code Var = mu + k mu^2}, the log-likelihood of a count is
 * {@code sum_{j < y} log(1 + k j) + y log mu - (y + 1/k) log(1 + k mu) - log y!}, and at k = 0 the Poisson one (J. F.
 * Lawless 1987, Canadian Journal of Statistics 15, 209-225). Written in k rather than in theta = 1/k it stays exact as k
 * falls to 0, where differences of gamma functions lose all digits. A count may have its own overdispersion
 * {@code k / share}.
 */
final class Overdispersion {
    private static final double SMALLEST = 1e-12;
    private static final double LARGEST = 1e12;

    private final int[] counts;
    private final double[] shares;
    private double logFactorials;

    /**
     * @param counts zero or more
     * @param shares what theta is multiplied by for each count, above 0; 1 for a common theta
     */
    Overdispersion(int[] counts, double[] shares) {
        this.counts = counts;
        this.shares = shares;
        for (int count : counts) {
            logFactorials += LogGamma.value(count + 1.0);
        }
    }

    double logLikelihood(double[] means, double k) {
        double sum = -logFactorials;
        for (int i = 0; i < counts.length; i++) {
            int y = counts[i];
            double mean = means[i];
            double own = k / shares[i];
            sum += y == 0 ? 0 : y * Math.log(mean);
            if (own * Math.max(mean, 1) < 1e-14) {
                sum -= mean;
                continue;
            }
            double log = Math.log1p(own * mean);
            for (int j = 1; j < y; j++) {
                sum += Math.log1p(own * j);
            }
            sum -= y * log + log / own;
        }
        return sum;
    }

    /** The derivative of the log-likelihood by k; at k = 0, half the sum of {@code (y - mu)^2 - y}. */
    double score(double[] means, double k) {
        double sum = 0;
        for (int i = 0; i < counts.length; i++) {
            int y = counts[i];
            double mean = means[i];
            double own = k / shares[i];
            double one = mean * mean * curvature(own * mean) - y * mean / (1 + own * mean);
            for (int j = 1; j < y; j++) {
                one += j / (1 + own * j);
            }
            sum += one / shares[i];
        }
        return sum;
    }

    /** {@code (log(1 + x) - x / (1 + x)) / x^2}, which is 1/2 at 0. */
    private static double curvature(double x) {
        if (x > 0.02) {
            return (Math.log1p(x) - x / (1 + x)) / (x * x);
        }
        double sum = 0;
        double power = 1;
        for (int n = 1; n <= 11; n++) {
            sum += power * n / (n + 1);
            power *= -x;
        }
        return sum;
    }

    /**
     * The k nearest to a start at which the score falls through 0, or 0 where it is negative all the way down, or positive
     * infinity where it is positive all the way up.
     */
    double mostLikely(double[] means, double start) {
        double low = start;
        double high = start;
        if (score(means, start) > 0) {
            do {
                low = high;
                high *= 2;
                if (high > LARGEST) {
                    return Double.POSITIVE_INFINITY;
                }
            } while (score(means, high) > 0);
        } else {
            do {
                high = low;
                low /= 2;
                if (low < SMALLEST) {
                    return 0;
                }
            } while (score(means, low) <= 0);
        }
        return falling(means, low, high);
    }

    /** By false position with the weights of the Illinois rule (M. Dowell and P. Jarratt 1971, BIT 11, 168-174). */
    private double falling(double[] means, double from, double to) {
        double low = from;
        double high = to;
        double atLow = score(means, low);
        double atHigh = score(means, high);
        int side = 0;
        for (int round = 0; round < 200 && high - low > 1e-14 * high && atHigh < 0; round++) {
            double k = low + (high - low) * (atLow / (atLow - atHigh));
            if (!(k > low && k < high)) {
                break;
            }
            double at = score(means, k);
            if (at > 0) {
                low = k;
                atLow = at;
                atHigh /= side > 0 ? 2 : 1;
                side = 1;
            } else if (at < 0) {
                high = k;
                atHigh = at;
                atLow /= side < 0 ? 2 : 1;
                side = -1;
            } else {
                return k;
            }
        }
        return Math.abs(score(means, low)) < Math.abs(score(means, high)) ? low : high;
    }

    /** Minus the second derivative of the log-likelihood by theta = 1/k. */
    double informationOnTheta(double[] means, double k) {
        double sum = 0;
        for (int i = 0; i < counts.length; i++) {
            int y = counts[i];
            double mean = means[i];
            double theta = shares[i] / k;
            double one = -1 / theta + 2 / (mean + theta) - (y + theta) / ((mean + theta) * (mean + theta));
            for (int j = 0; j < y; j++) {
                one += 1 / ((theta + j) * (theta + j));
            }
            sum += one * shares[i] * shares[i];
        }
        return sum;
    }
}
