package org.culvert.exchange.reading;

/**
 * Whether the two columns of coordinates stand under each other's headings, or have lost their minus signs. One row may be wrong
 * by itself; a whole file is told by how many of its points lie in the region as they stand, how many with the axes swapped, and
 * how many with a minus sign.
 */
public final class Axes {
    /** The region, in degrees on WGS 84. */
    public record Box(double south, double west, double north, double east) {
        boolean has(double latitude, double longitude) {
            return latitude >= south && latitude <= north && longitude >= west && longitude <= east;
        }
    }

    /** How the axes of a file stand. */
    public enum Standing {
        /** Most points lie in the region as they stand. */
        right,
        /** Most would with the axes swapped, and hardly one does as it stands: ask. */
        swapped,
        /** Most would with a minus sign before what has none, and hardly one does as it stands: ask. */
        withoutSign,
        /** None of these. */
        unclear
    }

    /** Below that many points nothing is said of a whole file. */
    private static final int FEWEST = 5;

    private final Box region;
    private long asTheyStand;
    private long swapped;
    private long signed;
    private long all;

    public Axes(Box region) {
        this.region = region;
    }

    /** Takes one row's coordinates, as they are headed. */
    public void take(double latitude, double longitude) {
        all++;
        if (region.has(latitude, longitude)) {
            asTheyStand++;
        }
        if (region.has(longitude, latitude)) {
            swapped++;
        }
        if (latitude > 0 && region.has(-latitude, longitude)
                || longitude > 0 && region.has(latitude, -longitude)
                || latitude > 0 && longitude > 0 && region.has(-latitude, -longitude)) {
            signed++;
        }
    }

    /**
     * Points taken; those within the region as they stand; those within it with the axes swapped; those within it with a minus
     * sign before one coordinate or both.
     */
    public long[] counts() {
        return new long[] {all, asTheyStand, swapped, signed};
    }

    public Standing standing() {
        if (all < FEWEST) {
            return Standing.unclear;
        }
        if (asTheyStand * 2 > all) {
            return Standing.right;
        }
        if (asTheyStand * 20 > all) {
            return Standing.unclear;
        }
        return swapped * 2 > all ? Standing.swapped : signed * 2 > all ? Standing.withoutSign : Standing.unclear;
    }
}
