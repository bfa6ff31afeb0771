package org.culvert.hotspot.stats.season;

/**
 * Whether directions come from all around the circle alike.
 *
 * <p>{@link #rayleigh} is the strongest against one peak and blind to two opposite ones; the others see any shape. All take
 * the bare circle as the rule: where calls are taken more in some months than in others, ask {@link AgainstEffort} instead.
 * Directions in whole days are tied; with more than a few events a day the p-values of {@link #raoSpacing} become too small.
 */
public final class Uniformity {
    private static final int TERMS = 100;

    private Uniformity() {}

    /**
     * Rayleigh's test, {@code z = n R^2}. p by the series of Greenwood and Durand (1955), The distribution of length and
     * components of the sum of n random unit vectors, Annals of Mathematical Statistics 26, 233-246, while {@code z^2 <= 4 n};
     * beyond, where the series fails, by {@code exp(sqrt(1 + 4n + 4(n^2 - (nR)^2)) - (1 + 2n))} of Zar (1999), Biostatistical
     * Analysis, section 27.1.
     *
     * @throws IllegalArgumentException if there are fewer than 5 directions
     */
    public static Verdict rayleigh(CircularSample sample) {
        double n = atLeast(5, sample);
        double length = sample.moment(1).length();
        double z = n * length * length;
        if (z * z <= 4 * n) {
            double series = 1
                    + (2 * z - z * z) / (4 * n)
                    - (24 * z - 132 * z * z + 76 * z * z * z - 9 * z * z * z * z) / (288 * n * n);
            return new Verdict("Rayleigh", z, bounded(Math.exp(-z) * series), "series of Greenwood and Durand 1955");
        }
        double zar = Math.exp(Math.sqrt(Math.max(0, 1 + 4 * n + 4 * (n * n - n * z))) - (1 + 2 * n));
        return new Verdict("Rayleigh", z, bounded(zar), "closed form of Zar 1999");
    }

    /**
     * Kuiper's test: {@code V = D+ + D-}, modified for the size of the sample to {@code V (sqrt n + 0.155 + 0.24 / sqrt n)}
     * (Stephens 1970, Use of the Kolmogorov-Smirnov, Cramer-von Mises and related statistics without extensive tables, Journal
     * of the Royal Statistical Society B 32, 115-122). p by the asymptotic series of Kuiper (1960).
     *
     * @throws IllegalArgumentException if there are fewer than 5 directions
     */
    public static Verdict kuiper(CircularSample sample) {
        double n = atLeast(5, sample);
        double plus = 0;
        double minus = 0;
        for (int i = 0; i < sample.count(); i++) {
            double u = sample.ascending(i) / CircularSample.FULL_TURN;
            plus = Math.max(plus, (i + 1) / n - u);
            minus = Math.max(minus, u - i / n);
        }
        double root = Math.sqrt(n);
        double v = (plus + minus) * (root + 0.155 + 0.24 / root);
        double p = 0;
        for (int j = 1; j <= TERMS; j++) {
            double jv2 = (double) j * j * v * v;
            p += 2 * (4 * jv2 - 1) * Math.exp(-2 * jv2);
        }
        return new Verdict(
                "Kuiper", v, v < 0.4 ? 1 : bounded(p), "asymptotic series of Kuiper 1960, modified by Stephens 1970");
    }

    /**
     * Watson's U2, modified for the size of the sample to {@code (U2 - 0.1/n + 0.1/n^2)(1 + 0.8/n)} (Stephens 1970, as in
     * {@link #kuiper}). p by the asymptotic series of Watson (1961), Goodness-of-fit tests on a circle, Biometrika 48, 109-114.
     *
     * @throws IllegalArgumentException if there are fewer than 5 directions
     */
    public static Verdict watson(CircularSample sample) {
        double n = atLeast(5, sample);
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < sample.count(); i++) {
            double u = sample.ascending(i) / CircularSample.FULL_TURN;
            double off = u - (2 * i + 1) / (2 * n);
            sum += u;
            squares += off * off;
        }
        double off = sum / n - 0.5;
        double u2 = squares + 1 / (12 * n) - n * off * off;
        double modified = (u2 - 0.1 / n + 0.1 / (n * n)) * (1 + 0.8 / n);
        double p = 0;
        for (int k = 1; k <= TERMS; k++) {
            p += (k % 2 == 1 ? 2 : -2) * Math.exp(-2 * k * k * Math.PI * Math.PI * modified);
        }
        return new Verdict(
                "Watson U2",
                modified,
                modified < 0.01 ? 1 : bounded(p),
                "asymptotic series of Watson 1961, modified by Stephens 1970");
    }

    /**
     * Rao's spacing test: half the sum of how far the arcs between neighbours are from {@code 360 / n} degrees (Rao 1976, Some
     * tests based on arc-lengths for the circle, Sankhya B 38, 329-338). p as {@link RaoSpacing} says.
     *
     * @throws IllegalArgumentException if there are fewer than 4 directions
     */
    public static Verdict raoSpacing(CircularSample sample) {
        int n = atLeast(4, sample);
        double excess = RaoSpacing.excess(sample);
        return new Verdict("Rao spacing", 360 * excess, RaoSpacing.chanceOfMore(excess, n), RaoSpacing.by(n));
    }

    private static int atLeast(int least, CircularSample sample) {
        if (sample.count() < least) {
            throw new IllegalArgumentException(
                    "the test needs at least " + least + " directions, there are " + sample.count());
        }
        return sample.count();
    }

    private static double bounded(double p) {
        return Math.max(Double.MIN_NORMAL, Math.min(1, p));
    }
}
