package org.culvert.geo;

/**
 * A box of latitudes and longitudes on WGS 84, edges included. Where {@code west > east} the box crosses the antimeridian.
 */
public record Bounds(double south, double west, double north, double east) {
    /** WGS 84's least radius of curvature: that of the meridian at the equator, a(1 - e2), in metres. */
    private static final double LEAST_RADIUS_METRES = 6335439.3;

    /** By how much the angle of a circle is widened for rounding, in radians: some micrometres. */
    private static final double ROUNDING = 1e-12;

    public Bounds {
        if (!(south >= -90 && north <= 90 && south <= north)) {
            throw new IllegalArgumentException("south and north must be latitudes, south first");
        }
        if (!(Math.abs(west) <= 180 && Math.abs(east) <= 180)) {
            throw new IllegalArgumentException("west and east must be longitudes");
        }
    }

    /**
     * A box that holds every position within some metres of a centre, and on each side at most 1.1 hundredths more of them.
     *
     * <p>On a sphere of the ellipsoid's least radius of curvature no line between two latitudes and longitudes is longer than
     * on the ellipsoid, so that its cap holds the circle: of angle a = metres / radius, with poles or else longitudes up to
     * asin(sin a / cos latitude) away.
     *
     * @throws IllegalArgumentException if the metres are negative or no finite number
     */
    public static Bounds around(Position centre, double metres) {
        if (!(metres >= 0) || Double.isInfinite(metres)) {
            throw new IllegalArgumentException("a circle of " + metres + " m is not possible");
        }
        double angle = metres / LEAST_RADIUS_METRES + ROUNDING;
        double latitude = Math.toRadians(centre.latitude());
        double south = Math.max(-90, centre.latitude() - Math.toDegrees(angle));
        double north = Math.min(90, centre.latitude() + Math.toDegrees(angle));
        if (Math.abs(latitude) + angle >= Math.PI / 2) {
            return new Bounds(south, -180, north, 180);
        }
        double aside = Math.toDegrees(Math.asin(Math.min(1, Math.sin(angle) / Math.cos(latitude))));
        return new Bounds(south, wrapped(centre.longitude() - aside), north, wrapped(centre.longitude() + aside));
    }

    public boolean contains(Position position) {
        double latitude = position.latitude();
        return latitude >= south && latitude <= north && holdsLongitude(position.longitude());
    }

    /** Whether the two have a position in common. */
    public boolean meets(Bounds other) {
        return south <= other.north
                && other.south <= north
                && (holdsLongitude(other.west) || other.holdsLongitude(west));
    }

    private boolean holdsLongitude(double longitude) {
        return west <= east ? longitude >= west && longitude <= east : longitude >= west || longitude <= east;
    }

    /** The middle of the box, in degrees. */
    public Position centre() {
        double width = west <= east ? east - west : east + 360 - west;
        double longitude = west + width / 2;
        return new Position((south + north) / 2, longitude > 180 ? longitude - 360 : longitude);
    }

    /** This box grown on every side by a number of degrees, stopping at the poles; never wider than the Earth. */
    public Bounds grownBy(double degrees) {
        double width = (west <= east ? east - west : east + 360 - west) + 2 * degrees;
        double newSouth = Math.max(-90, south - degrees);
        double newNorth = Math.min(90, north + degrees);
        if (width >= 360) {
            return new Bounds(newSouth, -180, newNorth, 180);
        }
        return new Bounds(newSouth, wrapped(west - degrees), newNorth, wrapped(east + degrees));
    }

    private static double wrapped(double longitude) {
        return longitude > 180 ? longitude - 360 : longitude < -180 ? longitude + 360 : longitude;
    }
}
