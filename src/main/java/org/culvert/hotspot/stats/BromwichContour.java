package org.culvert.hotspot.stats;

/**
 * Where a Laplace transform F is wanted, and with which weights, to have its original at one time:
 * {@code f(t) = 2 Re sum_k w_k F(z_k)}.
 *
 * <p>The hyperbola {@code z = mu (1 + sin(i theta - alpha))} by the midpoint rule, with the parameters of Weideman and
 * Trefethen (2007), Parabolic and hyperbolic contours for computing the Bromwich integral, Mathematics of Computation 76,
 * 1341-1356: for F analytic off the negative real axis the error falls as {@code 10.1^-n} with n points. Immutable.
 */
final class BromwichContour {
    private static final double ALPHA = 1.172104229;
    private static final double STEP = 1.081792140;
    private static final double SCALE = 4.492075287;

    private final double[] re;
    private final double[] im;
    private final double[] weightRe;
    private final double[] weightIm;

    /**
     * @param points how many, at least 1
     * @param time t, greater than zero
     */
    BromwichContour(int points, double time) {
        re = new double[points];
        im = new double[points];
        weightRe = new double[points];
        weightIm = new double[points];
        double step = STEP / points;
        double mu = SCALE * points / time;
        for (int k = 0; k < points; k++) {
            double theta = (k + 0.5) * step;
            re[k] = mu * (1 - Math.cosh(theta) * Math.sin(ALPHA));
            im[k] = mu * Math.sinh(theta) * Math.cos(ALPHA);
            // exp(z t) dz / (2 pi i), and dz = i mu cos(i theta - alpha) dtheta
            double size = step * mu / (2 * Math.PI) * Math.exp(re[k] * time);
            double slopeRe = Math.cosh(theta) * Math.cos(ALPHA);
            double slopeIm = Math.sinh(theta) * Math.sin(ALPHA);
            double cos = Math.cos(im[k] * time);
            double sin = Math.sin(im[k] * time);
            weightRe[k] = size * (slopeRe * cos - slopeIm * sin);
            weightIm[k] = size * (slopeRe * sin + slopeIm * cos);
        }
    }

    double re(int k) {
        return re[k];
    }

    double im(int k) {
        return im[k];
    }

    double weightRe(int k) {
        return weightRe[k];
    }

    double weightIm(int k) {
        return weightIm[k];
    }
}
