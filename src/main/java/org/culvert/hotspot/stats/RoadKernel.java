package org.culvert.hotspot.stats;

/**
 * A symmetric probability density on a straight road, per metre, of mass one.
 *
 * <p>Silverman, B. W. (1986), Density Estimation for Statistics and Data Analysis.
 */
public sealed interface RoadKernel {
    /** The density per metre at a distance of {@code metres >= 0}; zero beyond {@link #reachMetres}. */
    double density(double metres);

    /** The mass between 0 and {@code metres >= 0} on one side of the event: from 0 up to one half. */
    double massWithin(double metres);

    /** The distance in metres beyond which the kernel is zero. */
    double reachMetres();

    /** Over how many metres of road the kernel averages: one over the integral of its square. */
    double averagedMetres();

    /**
     * Epanechnikov's kernel {@code 0.75 (1 - z^2) / h}, z = d / h. Its standard deviation is {@code h / sqrt(5)}.
     *
     * @param halfWidthMetres h, greater than zero
     */
    record Epanechnikov(double halfWidthMetres) implements RoadKernel {
        public Epanechnikov {
            requirePositive(halfWidthMetres);
        }

        @Override
        public double density(double metres) {
            double z = metres / halfWidthMetres;
            return z >= 1 ? 0 : 0.75 * (1 - z * z) / halfWidthMetres;
        }

        @Override
        public double massWithin(double metres) {
            double z = Math.min(1, metres / halfWidthMetres);
            return 0.75 * z - 0.25 * z * z * z;
        }

        @Override
        public double reachMetres() {
            return halfWidthMetres;
        }

        @Override
        public double averagedMetres() {
            return halfWidthMetres / 0.6;
        }
    }

    /**
     * The normal density, cut where what is left (1e-23 of the mass at 10 standard deviations) no longer shows in a
     * double.
     *
     * @param sdMetres its standard deviation, greater than zero
     */
    record Gaussian(double sdMetres) implements RoadKernel {
        private static final double CUT = 10;
        private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

        public Gaussian {
            requirePositive(sdMetres);
        }

        @Override
        public double density(double metres) {
            double z = metres / sdMetres;
            return z >= CUT ? 0 : Math.exp(-0.5 * z * z) / (sdMetres * ROOT_TWO_PI);
        }

        @Override
        public double massWithin(double metres) {
            return 0.5 * org.apache.commons.numbers.gamma.Erf.value(Math.min(CUT, metres / sdMetres) / Math.sqrt(2));
        }

        @Override
        public double reachMetres() {
            return CUT * sdMetres;
        }

        @Override
        public double averagedMetres() {
            return 2 * sdMetres * Math.sqrt(Math.PI);
        }
    }

    private static void requirePositive(double metres) {
        if (!(metres > 0) || Double.isInfinite(metres)) {
            throw new IllegalArgumentException("a kernel needs a width greater than zero, not " + metres);
        }
    }
}
