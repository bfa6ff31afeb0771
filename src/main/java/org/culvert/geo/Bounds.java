package org.culvert.geo;

/**
 * A box of latitudes and longitudes on WGS 84, edges included. Where {@code west > east} the box crosses the antimeridian.
 */
public record Bounds(double south, double west, double north, double east) {
    public Bounds {
        if (!(south >= -90 && north <= 90 && south <= north)) {
            throw new IllegalArgumentException("south and north must be latitudes, south first");
        }
        if (!(Math.abs(west) <= 180 && Math.abs(east) <= 180)) {
            throw new IllegalArgumentException("west and east must be longitudes");
        }
    }

    public boolean contains(Position position) {
        double latitude = position.latitude();
        double longitude = position.longitude();
        boolean betweenMeridians =
                west <= east ? longitude >= west && longitude <= east : longitude >= west || longitude <= east;
        return latitude >= south && latitude <= north && betweenMeridians;
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
