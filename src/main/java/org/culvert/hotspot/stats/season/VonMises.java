package org.culvert.hotspot.stats.season;

/**
 * The concentration of a von Mises distribution and the length of its mean vector.
 *
 * <p>{@code A1(kappa) = I1(kappa) / I0(kappa)}, a ratio of modified Bessel functions, by its continued fraction (Gauss;
 * NIST Handbook of Mathematical Functions 10.33.1), which is evaluated from the far end and so stays stable.
 */
public final class VonMises {
    private static final double LARGE = 1e4;

    private VonMises() {}

    /**
     * Length of the mean vector at a concentration.
     *
     * @param kappa zero or more
     */
    public static double a1(double kappa) {
        if (!(kappa >= 0)) {
            throw new IllegalArgumentException("a concentration is zero or more, not " + kappa);
        }
        if (kappa > LARGE) {
            double u = 1 / kappa;
            return 1 - u * (0.5 + u * (0.125 + u * 0.125));
        }
        double x2 = kappa * kappa;
        double tail = 0;
        int terms = 40 + (int) (3 * Math.sqrt(kappa) * Math.max(1, Math.sqrt(kappa) / 4) + kappa);
        for (int term = terms; term >= 1; term--) {
            tail = x2 / (2 * (term + 1) + tail);
        }
        return kappa / (2 + tail);
    }

    /**
     * The maximum-likelihood concentration, the inverse of {@link #a1}: begun by {@link #approximateKappa} and finished by
     * Newton's method. Programs that print the approximation differ from it by up to 1 %.
     *
     * @param resultantLength length of the mean vector, 0 to 1
     * @return infinity for 1
     */
    public static double kappa(double resultantLength) {
        double r = resultantLength;
        if (!(r >= 0 && r <= 1)) {
            throw new IllegalArgumentException("the length of a mean vector is between 0 and 1, not " + r);
        }
        if (r == 0) {
            return 0;
        }
        if (1 - r < 1e-12) {
            return Double.POSITIVE_INFINITY;
        }
        double kappa = approximateKappa(r);
        for (int i = 0; i < 50; i++) {
            double a = a1(kappa);
            double slope = kappa > LARGE ? 0.5 / (kappa * kappa) : 1 - a / kappa - a * a;
            double next = Math.max(kappa / 2, kappa - (a - r) / slope);
            if (Math.abs(next - kappa) <= 1e-13 * next) {
                return next;
            }
            kappa = next;
        }
        return kappa;
    }

    /** The approximation of Fisher (1993), Statistical Analysis of Circular Data, section 4.5.5. */
    static double approximateKappa(double r) {
        if (r < 0.53) {
            return 2 * r + r * r * r + 5 * Math.pow(r, 5) / 6;
        }
        return r < 0.85 ? -0.4 + 1.39 * r + 0.43 / (1 - r) : 1 / (r * r * r - 4 * r * r + 3 * r);
    }

    /**
     * A concentration corrected for its bias in small samples: Best and Fisher (1981), The bias of the maximum likelihood
     * estimators of the von Mises-Fisher concentration parameters, Communications in Statistics B 10, 493-502.
     */
    public static double corrected(double kappa, int count) {
        double n = count;
        return kappa < 2 ? Math.max(kappa - 2 / (n * kappa), 0) : Math.pow(n - 1, 3) * kappa / (n * n * n + n);
    }
}
