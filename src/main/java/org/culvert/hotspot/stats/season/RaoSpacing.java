package org.culvert.hotspot.stats.season;

import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The distribution of the sum of the excesses of n random arcs over the mean arc {@code 1 / n}, the circle being 1.
 *
 * <p>The arcs are uniform on the simplex. Where j of them exceed {@code 1/n}, by s together, the other {@code n - j} fall
 * short of it by s together, so that the density is {@code (n-1)! sum_j C(n,j) s^(j-1)/(j-1)! n^(1+j-n) g_{n-j}(n s)}, with
 * {@code g_m} the density of a sum of m uniform variables (Rao 1976; Jammalamadaka and SenGupta 2001, Topics in Circular
 * Statistics, section 7.4.1, arrive at the same by the short arcs). {@code g_m} comes by the recurrence of B-splines, in which
 * nothing is subtracted. Up to {@value #EXACT_TO} arcs the density is integrated; for more, a normal distribution with the
 * exact mean {@code (1 - 1/n)^n} and variance stands in (Sherman 1950, A random variable related to the spacing of sample
 * values, Annals of Mathematical Statistics 21, 339-361).
 */
final class RaoSpacing {
    static final int EXACT_TO = 100;
    private static final int STEPS_AN_ARC = 8;
    private static final double BEFORE_THE_JUMP = 1e-12;

    private RaoSpacing() {}

    static String by(int n) {
        return n <= EXACT_TO ? "exact density, integrated" : "normal with exact mean and variance (Sherman 1950)";
    }

    /** The sum of the excesses in a sample. */
    static double excess(CircularSample sample) {
        int n = sample.count();
        double sum = 0;
        for (int i = 0; i < n; i++) {
            double next = i + 1 < n ? sample.ascending(i + 1) : sample.ascending(0) + CircularSample.FULL_TURN;
            sum += Math.abs((next - sample.ascending(i)) / CircularSample.FULL_TURN - 1.0 / n);
        }
        return sum / 2;
    }

    /**
     * @param excess 0 to {@code 1 - 1/n}
     * @param n how many arcs, at least 2
     */
    static double chanceOfMore(double excess, int n) {
        double greatest = 1 - 1.0 / n;
        if (excess >= greatest) {
            return 0;
        }
        if (n > EXACT_TO) {
            return NormalDistribution.of(mean(n), Math.sqrt(variance(n))).survivalProbability(excess);
        }
        if (excess <= 0) {
            return 1;
        }
        // The density is a polynomial between multiples of 1/n; Simpson's rule on each such piece.
        double sum = 0;
        double from = excess;
        while (from < greatest - 1e-12) {
            double to = Math.min(greatest, (Math.floor(from * n + 1e-9) + 1) / n);
            double step = (to - from) / STEPS_AN_ARC;
            double piece = density(from, n) + density(to - BEFORE_THE_JUMP, n);
            for (int k = 1; k < STEPS_AN_ARC; k++) {
                piece += (k % 2 == 1 ? 4 : 2) * density(from + k * step, n);
            }
            sum += piece * step / 3;
            from = to;
        }
        return Math.max(0, Math.min(1, sum));
    }

    static double mean(int n) {
        return Math.pow(1 - 1.0 / n, n);
    }

    static double variance(int n) {
        double same = 2 * Math.pow(1 - 1.0 / n, n + 1) / (n + 1);
        double other = (n - 1.0) / (n + 1) * Math.pow(1 - 2.0 / n, n + 1);
        return same + other - Math.pow(1 - 1.0 / n, 2.0 * n);
    }

    static double density(double s, int n) {
        double x = n * s;
        // uniforms[i] is g_m(x - i); it begins with m = 1 and is raised in place.
        double[] uniforms = new double[n];
        for (int i = 0; i < n; i++) {
            uniforms[i] = x - i >= 0 && x - i < 1 ? 1 : 0;
        }
        double sum = 0;
        for (int m = 1; m < n; m++) {
            if (m > 1) {
                for (int i = 0; i + m <= n; i++) {
                    double at = x - i;
                    uniforms[i] = (at * uniforms[i] + (m - at) * uniforms[i + 1]) / (m - 1);
                }
            }
            int j = n - m;
            if (uniforms[0] > 0 && s > 0) {
                sum += Math.exp(LogGamma.value(n)
                        + logChoose(n, j)
                        + (j - 1) * Math.log(s)
                        - LogGamma.value(j)
                        + (1 + j - n) * Math.log(n)
                        + Math.log(uniforms[0]));
            }
        }
        return sum;
    }

    private static double logChoose(int n, int k) {
        return LogGamma.value(n + 1.0) - LogGamma.value(k + 1.0) - LogGamma.value(n - k + 1.0);
    }
}
