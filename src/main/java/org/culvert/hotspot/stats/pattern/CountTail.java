package org.culvert.hotspot.stats.pattern;

import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;

/**
 * The chance of a count at least as great as one seen, {@code P(X >= x)}: not {@code P(X > x)}, which names one fewer.
 *
 * @param kind the distribution of counts
 * @param total of all counts, for {@link Kind#BINOMIAL}
 * @param dispersion k of {@code variance = mean + k mean^2}, for {@link Kind#NEGATIVE_BINOMIAL}
 */
public record CountTail(Kind kind, int total, double dispersion) {
    /** The distribution of counts by chance. */
    public enum Kind {
        /** The total is itself a matter of chance. */
        POISSON,
        /** The total is held as it is. */
        BINOMIAL,
        /** Counts vary more than chance alone lets them. */
        NEGATIVE_BINOMIAL
    }

    /**
     * @param count zero or more
     * @param expected greater than zero; for {@link Kind#BINOMIAL} not more than the total
     */
    public double chance(int count, double expected) {
        if (count <= 0) {
            return 1;
        }
        return switch (kind) {
            case POISSON -> PoissonDistribution.of(expected).survivalProbability(count - 1);
            case BINOMIAL ->
                BinomialDistribution.of(total, Math.min(1, expected / total)).survivalProbability(count - 1);
            case NEGATIVE_BINOMIAL ->
                RegularizedBeta.value(expected * dispersion / (1 + expected * dispersion), count, 1 / dispersion);
        };
    }

    /**
     * p of counts that vary no more than Poisson's: the score test against {@code mean + k mean^2} of Dean and Lawless (1989),
     * Tests for detecting overdispersion in Poisson regression models, Journal of the American Statistical Association 84,
     * 467-472: {@code sum((x - m)^2 - x) / sqrt(2 sum m^2)}, upper tail of the normal distribution.
     *
     * @param expected of each count, greater than zero
     */
    public static double overdispersionP(int[] counts, double[] expected) {
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < counts.length; i++) {
            double off = counts[i] - expected[i];
            sum += off * off - counts[i];
            squares += expected[i] * expected[i];
        }
        return NormalDistribution.of(0, 1).survivalProbability(sum / Math.sqrt(2 * squares));
    }

    /**
     * The dispersion k of greatest likelihood, the expected counts taken as known, between 1e-6 and 1e4: by golden section over
     * its logarithm.
     *
     * @param expected of each count, greater than zero
     */
    public static double dispersion(int[] counts, double[] expected) {
        double ratio = (Math.sqrt(5) - 1) / 2;
        double low = Math.log(1e-6);
        double high = Math.log(1e4);
        double left = high - ratio * (high - low);
        double right = low + ratio * (high - low);
        double atLeft = logLikelihood(counts, expected, left);
        double atRight = logLikelihood(counts, expected, right);
        while (high - low > 1e-9) {
            if (atLeft < atRight) {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + ratio * (high - low);
                atRight = logLikelihood(counts, expected, right);
            } else {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - ratio * (high - low);
                atLeft = logLikelihood(counts, expected, left);
            }
        }
        return Math.exp((low + high) / 2);
    }

    private static double logLikelihood(int[] counts, double[] expected, double logDispersion) {
        double shape = Math.exp(-logDispersion);
        double sum = 0;
        for (int i = 0; i < counts.length; i++) {
            // ln of shape (shape + 1) ... (shape + x - 1), which the difference of two logarithms of gamma loses for
            // large shapes
            double rising = 0;
            if (counts[i] < 50) {
                for (int j = 0; j < counts[i]; j++) {
                    rising += Math.log(shape + j);
                }
            } else {
                rising = LogGamma.value(counts[i] + shape) - LogGamma.value(shape);
            }
            sum += rising
                    - shape * Math.log1p(expected[i] / shape)
                    + counts[i] * (Math.log(expected[i]) - Math.log(shape + expected[i]));
        }
        return sum;
    }
}
