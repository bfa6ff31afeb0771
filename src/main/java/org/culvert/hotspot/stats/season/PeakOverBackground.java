package org.culvert.hotspot.stats.season;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.hotspot.stats.season.CircularSample.Moment;

/**
 * One von Mises peak over an even background, and whether a sample has more somewhere than that explains.
 *
 * <p>Density {@code w vonMises(mu, kappa) + (1 - w) / (2 pi)}, fitted by {@value #STEPS} steps of expectation and maximisation
 * (Dempster, Laird and Rubin 1977, Journal of the Royal Statistical Society B 39, 1-38). The statistic is the greatest standardised excess of the smoothed counts over those
 * of the fit, anywhere on the circle and for two widths of smoothing; its p is got by drawing from the fit, and fitting each
 * draw anew (parametric bootstrap: Efron and Tibshirani 1993, An Introduction to the Bootstrap, section 16.4). All on a grid of
 * degrees. Own construction of known parts.
 */
final class PeakOverBackground {
    private static final int GRID = 360;
    private static final double[] WIDTHS_DEGREES = {15, 30};
    private static final double[][] KERNELS =
            Arrays.stream(WIDTHS_DEGREES).mapToObj(PeakOverBackground::kernel).toArray(double[][]::new);
    private static final double SHARPEST = 400;
    private static final int STEPS = 40;
    private static final double[] COSINE = new double[GRID];

    static {
        for (int at = 0; at < GRID; at++) {
            COSINE[at] = Math.cos(CircularSample.FULL_TURN * at / GRID);
        }
    }

    private final double[] density = new double[GRID];

    private PeakOverBackground(double[] counts, double total) {
        double[] ofPeak = counts.clone();
        double weight = 0.75;
        Moment vector = moment(counts, total);
        double mu = vector.direction();
        double kappa = concentration(vector.length() / weight);
        for (int step = 0; step < STEPS; step++) {
            double sum = 0;
            for (int at = 0; at < GRID; at++) {
                density[at] = Math.exp(kappa * (COSINE[(at - toGrid(mu) + GRID) % GRID] - 1));
                sum += density[at];
            }
            double peak = 0;
            for (int at = 0; at < GRID; at++) {
                double fromPeak = weight * density[at] / sum;
                density[at] = fromPeak + (1 - weight) / GRID;
                ofPeak[at] = counts[at] * (fromPeak / density[at]);
                peak += ofPeak[at];
            }
            if (step + 1 < STEPS && peak > 0) {
                weight = peak / total;
                vector = moment(ofPeak, peak);
                mu = vector.direction();
                kappa = concentration(vector.length());
            }
        }
    }

    private static double concentration(double length) {
        return Math.min(SHARPEST, VonMises.approximateKappa(Math.min(0.9999, length)));
    }

    private static int toGrid(double radians) {
        return (int) (radians / CircularSample.FULL_TURN * GRID) % GRID;
    }

    /** The p-value of nothing more than one peak over an even background. */
    static double chance(CircularSample sample, int simulations, long seed) {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
        int total = sample.count();
        double[] counts = new double[GRID];
        for (int i = 0; i < total; i++) {
            counts[toGrid(sample.ascending(i))]++;
        }
        var fit = new PeakOverBackground(counts, total);
        double observed = fit.greatestExcess(counts, total);
        double[] upTo = new double[GRID];
        double sum = 0;
        for (int at = 0; at < GRID; at++) {
            sum += fit.density[at];
            upTo[at] = sum;
        }
        int atLeast = 0;
        for (int simulation = 0; simulation < simulations; simulation++) {
            double[] drawn = new double[GRID];
            for (int i = 0; i < total; i++) {
                drawn[firstOver(upTo, random.nextDouble() * sum)]++;
            }
            if (new PeakOverBackground(drawn, total).greatestExcess(drawn, total) >= observed) {
                atLeast++;
            }
        }
        return (1.0 + atLeast) / (simulations + 1.0);
    }

    private double greatestExcess(double[] counts, double total) {
        double greatest = 0;
        for (double[] kernel : KERNELS) {
            int reach = kernel.length / 2;
            double[] around = around(counts, reach);
            double[] expected = around(density, reach);
            for (int at = 0; at < GRID; at++) {
                double seen = 0;
                double mean = 0;
                double square = 0;
                for (int i = 0; i < kernel.length; i++) {
                    double k = kernel[i];
                    double there = expected[at + i];
                    seen += k * around[at + i];
                    mean += k * there;
                    square += k * k * there;
                }
                double variance = total * Math.max(square - mean * mean, 1e-12);
                greatest = Math.max(greatest, (seen - total * mean) / Math.sqrt(variance));
            }
        }
        return greatest;
    }

    /** A circle with as much of it again before its beginning and after its end as a kernel reaches. */
    private static double[] around(double[] circle, int reach) {
        double[] around = new double[GRID + 2 * reach];
        System.arraycopy(circle, GRID - reach, around, 0, reach);
        System.arraycopy(circle, 0, around, reach, GRID);
        System.arraycopy(circle, 0, around, reach + GRID, reach);
        return around;
    }

    private static double[] kernel(double width) {
        int reach = (int) Math.ceil(3 * width);
        double[] kernel = new double[2 * reach + 1];
        for (int off = -reach; off <= reach; off++) {
            kernel[off + reach] = Math.exp(-0.5 * off * off / (width * width));
        }
        return kernel;
    }

    private static Moment moment(double[] counts, double total) {
        double cosine = 0;
        double sine = 0;
        for (int at = 0; at < GRID; at++) {
            cosine += counts[at] * COSINE[at];
            sine += counts[at] * COSINE[(at + GRID - GRID / 4) % GRID];
        }
        return new Moment(cosine / total, sine / total);
    }

    private static int firstOver(double[] upTo, double value) {
        int low = 0;
        int high = upTo.length - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (upTo[middle] > value) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
