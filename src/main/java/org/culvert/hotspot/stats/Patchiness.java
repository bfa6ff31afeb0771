package org.culvert.hotspot.stats;

import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * How much the background differs from patch to patch, as far as the counts can tell: probabilities of a coefficient of
 * variation from 0 to 1.5.
 *
 * <p>Counts are negative binomial, {@code variance = m + cv^2 m^2} (the mixture of Poisson counts by gamma multipliers of mean 1:
 * Greenwood and Yule 1920, Journal of the Royal Statistical Society 83, 255-279), all values of cv equally likely beforehand.
 * A count that Poisson chance would pass in one patch of a hundred says only that it is large: else one true hotspot would be
 * taken for a rough background, and hide itself. Few events tell little, so that many values of cv stay likely, and a search
 * that draws from them is the more careful. Immutable.
 */
final class Patchiness {
    private static final double STEP = 0.1;
    private static final int VALUES = 16;
    private static final double LARGE = 0.01;

    private final double[] upTo = new double[VALUES];

    /**
     * @param expected events expected in each patch
     * @param counted events in each
     */
    Patchiness(double[] expected, int[] counted) {
        double[] log = new double[VALUES];
        for (int value = 0; value < VALUES; value++) {
            double variation = value * STEP;
            for (int patch = 0; patch < expected.length; patch++) {
                if (expected[patch] > 0) {
                    log[value] += logLikelihood(expected[patch], counted[patch], variation * variation);
                }
            }
        }
        double greatest = Double.NEGATIVE_INFINITY;
        for (double one : log) {
            greatest = Math.max(greatest, one);
        }
        double sum = 0;
        for (int value = 0; value < VALUES; value++) {
            sum += Math.exp(log[value] - greatest);
            upTo[value] = sum;
        }
        for (int value = 0; value < VALUES; value++) {
            upTo[value] /= sum;
        }
    }

    private static double logLikelihood(double mean, int count, double squared) {
        int large = 1;
        double below = Math.exp(-mean);
        double term = below;
        while (1 - below >= LARGE) {
            term *= mean / large;
            below += term;
            large++;
        }
        large = Math.max(2, large);
        if (count < large) {
            return logProbability(mean, count, squared);
        }
        double smaller = 0;
        for (int x = 0; x < large; x++) {
            smaller += Math.exp(logProbability(mean, x, squared));
        }
        return Math.log(Math.max(1e-300, 1 - smaller));
    }

    private static double logProbability(double mean, int count, double squared) {
        if (squared == 0) {
            return count * Math.log(mean) - mean - LogGamma.value(count + 1.0);
        }
        double shape = 1 / squared;
        return LogGamma.value(count + shape)
                - LogGamma.value(shape)
                - LogGamma.value(count + 1.0)
                + shape * Math.log(shape / (shape + mean))
                + count * Math.log(mean / (shape + mean));
    }

    /** A coefficient of variation, as likely as the counts make it. */
    double draw(UniformRandomProvider random) {
        double u = random.nextDouble();
        int value = 0;
        while (value < VALUES - 1 && upTo[value] <= u) {
            value++;
        }
        return value * STEP;
    }

    /** The mean of the square of the coefficient of variation. */
    double meanSquare() {
        double sum = 0;
        double before = 0;
        for (int value = 0; value < VALUES; value++) {
            sum += (upTo[value] - before) * value * STEP * value * STEP;
            before = upTo[value];
        }
        return sum;
    }
}
