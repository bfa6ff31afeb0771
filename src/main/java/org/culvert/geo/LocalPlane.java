package org.culvert.geo;

import org.locationtech.jts.geom.Envelope;

/**
 * A plane in metres laid on WGS 84 around a centre: x to the east, y to the north, both 0 at the centre.
 *
 * <p>Transverse Mercator with its central meridian through the centre and scale 1 on it. At a distance d east or west of
 * it, lengths come out larger by d&sup2;/(2R&sup2;): 12 mm in 100 m at 100 km, 0.3 m in 100 m at 500 km. It serves to
 * search and to compare; what is reported is measured on the ellipsoid.
 *
 * <p>Kr&uuml;ger's series to the fourth order in the third flattening, as in C. F. F. Karney, Transverse Mercator with an
 * accuracy of a few nanometers, Journal of Geodesy 85 (2011) 475-485, doi:10.1007/s00190-011-0445-3: well under a
 * millimetre within 3,000 km of the central meridian. Not for positions more than 60 degrees of longitude away:
 * {@link #covers}. The antimeridian is no border. Immutable.
 */
public final class LocalPlane {
    private static final double A = 6378137;
    private static final double F = 1 / 298.257223563;
    private static final double N = F / (2 - F);
    private static final double E2 = F * (2 - F);
    private static final double E = Math.sqrt(E2);
    private static final double RECTIFYING_RADIUS = A / (1 + N) * (1 + N * N / 4 + Math.pow(N, 4) / 64);
    private static final double[] FORWARD = {
        N / 2 - 2 * N * N / 3 + 5 * Math.pow(N, 3) / 16 + 41 * Math.pow(N, 4) / 180,
        13 * N * N / 48 - 3 * Math.pow(N, 3) / 5 + 557 * Math.pow(N, 4) / 1440,
        61 * Math.pow(N, 3) / 240 - 103 * Math.pow(N, 4) / 140,
        49561 * Math.pow(N, 4) / 161280
    };
    private static final double[] INVERSE = {
        N / 2 - 2 * N * N / 3 + 37 * Math.pow(N, 3) / 96 - Math.pow(N, 4) / 360,
        N * N / 48 + Math.pow(N, 3) / 15 - 437 * Math.pow(N, 4) / 1440,
        17 * Math.pow(N, 3) / 480 - 37 * Math.pow(N, 4) / 840,
        4397 * Math.pow(N, 4) / 161280
    };
    private static final double WIDEST_DEGREES = 60;

    private final Position centre;
    private final double northingOfCentre;

    private LocalPlane(Position centre) {
        this.centre = centre;
        this.northingOfCentre = project(centre.latitude(), 0)[1];
    }

    public static LocalPlane around(Position centre) {
        return new LocalPlane(centre);
    }

    public Position centre() {
        return centre;
    }

    /** Whether a position is near enough to the central meridian for this plane to mean anything. */
    public boolean covers(Position position) {
        return Math.abs(fromCentre(position.longitude())) <= WIDEST_DEGREES;
    }

    /** x and y in metres of a position. */
    public double[] forward(Position position) {
        return forward(position.latitude(), position.longitude());
    }

    /** x and y in metres of a latitude and longitude, for flat arrays. */
    public double[] forward(double latitude, double longitude) {
        double[] xy = project(latitude, fromCentre(longitude));
        xy[1] -= northingOfCentre;
        return xy;
    }

    /** The position at x and y in metres. */
    public Position inverse(double x, double y) {
        double xi = (y + northingOfCentre) / RECTIFYING_RADIUS;
        double eta = x / RECTIFYING_RADIUS;
        double xiPrime = xi;
        double etaPrime = eta;
        for (int k = 1; k <= INVERSE.length; k++) {
            xiPrime -= INVERSE[k - 1] * Math.sin(2 * k * xi) * Math.cosh(2 * k * eta);
            etaPrime -= INVERSE[k - 1] * Math.cos(2 * k * xi) * Math.sinh(2 * k * eta);
        }
        double sinhEta = Math.sinh(etaPrime);
        double cosXi = Math.cos(xiPrime);
        double tauPrime = Math.sin(xiPrime) / Math.hypot(sinhEta, cosXi);
        double longitude = centre.longitude() + Math.toDegrees(Math.atan2(sinhEta, cosXi));
        double latitude = Math.toDegrees(Math.atan(geographicTangent(tauPrime)));
        return new Position(
                latitude, longitude > 180 ? longitude - 360 : longitude < -180 ? longitude + 360 : longitude);
    }

    /** A box of this plane that holds a box of latitudes and longitudes and little more; its edges, curved here, are sampled. */
    public Envelope envelopeOf(Bounds bounds) {
        Envelope envelope = new Envelope();
        double width =
                bounds.west() <= bounds.east() ? bounds.east() - bounds.west() : bounds.east() + 360 - bounds.west();
        int steps = 16;
        for (int i = 0; i <= steps; i++) {
            double longitude = bounds.west() + width * i / steps;
            double latitude = bounds.south() + (bounds.north() - bounds.south()) * i / steps;
            include(envelope, bounds.south(), longitude);
            include(envelope, bounds.north(), longitude);
            include(envelope, latitude, bounds.west());
            include(envelope, latitude, bounds.east());
        }
        envelope.expandBy(0.01 * Math.max(envelope.getWidth(), envelope.getHeight()) + 0.01);
        return envelope;
    }

    private void include(Envelope envelope, double latitude, double longitude) {
        double away = fromCentre(longitude);
        double held = Math.max(-WIDEST_DEGREES, Math.min(WIDEST_DEGREES, away));
        double[] xy = project(latitude, held);
        envelope.expandToInclude(xy[0], xy[1] - northingOfCentre);
    }

    private double fromCentre(double longitude) {
        return Math.IEEEremainder(longitude - centre.longitude(), 360);
    }

    private static double[] project(double latitude, double degreesFromMeridian) {
        double phi = Math.toRadians(latitude);
        double lambda = Math.toRadians(degreesFromMeridian);
        double tauPrime = conformalTangent(Math.tan(phi));
        double cosLambda = Math.cos(lambda);
        double xiPrime = Math.atan2(tauPrime, cosLambda);
        double etaPrime = asinh(Math.sin(lambda) / Math.hypot(tauPrime, cosLambda));
        double xi = xiPrime;
        double eta = etaPrime;
        for (int k = 1; k <= FORWARD.length; k++) {
            xi += FORWARD[k - 1] * Math.sin(2 * k * xiPrime) * Math.cosh(2 * k * etaPrime);
            eta += FORWARD[k - 1] * Math.cos(2 * k * xiPrime) * Math.sinh(2 * k * etaPrime);
        }
        return new double[] {RECTIFYING_RADIUS * eta, RECTIFYING_RADIUS * xi};
    }

    private static double conformalTangent(double tau) {
        double tau1 = Math.hypot(1, tau);
        double sigma = Math.sinh(E * atanh(E * tau / tau1));
        return tau * Math.hypot(1, sigma) - sigma * tau1;
    }

    /** Newton's method on {@link #conformalTangent}, three steps reach the last bit. */
    private static double geographicTangent(double tauPrime) {
        double tau = tauPrime / (1 - E2);
        for (int i = 0; i < 5; i++) {
            double there = conformalTangent(tau);
            double step = (tauPrime - there)
                    * (1 + (1 - E2) * tau * tau)
                    / ((1 - E2) * Math.hypot(1, tau) * Math.hypot(1, there));
            tau += step;
            if (Math.abs(step) < 1e-15 * Math.max(1, Math.abs(tau))) {
                break;
            }
        }
        return tau;
    }

    private static double asinh(double x) {
        double size = Math.abs(x);
        double result = Math.log1p(size + size * size / (Math.hypot(1, size) + 1));
        return x < 0 ? -result : result;
    }

    private static double atanh(double x) {
        return 0.5 * Math.log1p(2 * x / (1 - x));
    }
}
