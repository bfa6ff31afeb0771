package org.culvert.exchange.demo;

/**
 * A point of the region on a grid of 1e-7 degrees (about a centimetre), so that a junction is the same point for all its
 * roads down to the last written digit.
 */
record Spot(int longitudeE7, int latitudeE7) {
    private static final double SEMI_MAJOR_METRES = 6378137.0;
    private static final double ECCENTRICITY_SQUARED = 0.00669437999014;

    double longitude() {
        return longitudeE7 / 1e7;
    }

    double latitude() {
        return latitudeE7 / 1e7;
    }

    /**
     * Metres to another point less than some hundred metres away, on the WGS 84 ellipsoid by its two radii of curvature
     * at the middle latitude; off by less than a millimetre in a kilometre there.
     */
    double metresTo(Spot other) {
        double middle = StrictMath.toRadians((latitude() + other.latitude()) / 2);
        double sine = StrictMath.sin(middle);
        double w = 1 - ECCENTRICITY_SQUARED * sine * sine;
        double north = StrictMath.toRadians(other.latitude() - latitude())
                * SEMI_MAJOR_METRES
                * (1 - ECCENTRICITY_SQUARED)
                / (w * StrictMath.sqrt(w));
        double east = StrictMath.toRadians(other.longitude() - longitude())
                * SEMI_MAJOR_METRES
                * StrictMath.cos(middle)
                / StrictMath.sqrt(w);
        return StrictMath.sqrt(north * north + east * east);
    }

    /** The point at a share of the straight way to another. */
    Spot towards(Spot other, double share) {
        return new Spot(
                longitudeE7 + (int) StrictMath.round(share * (other.longitudeE7 - longitudeE7)),
                latitudeE7 + (int) StrictMath.round(share * (other.latitudeE7 - latitudeE7)));
    }
}
