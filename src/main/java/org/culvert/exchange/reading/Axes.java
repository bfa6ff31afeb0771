package org.culvert.exchange.reading;

/**
 * Whether the two columns of coordinates stand under each other's headings. One row may be wrong by itself; a whole file is
 * told by how many of its points lie in the region as they stand, and how many with the axes swapped.
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
        /** Neither. */
        unclear
    }

    /** Below that many points nothing is said of a whole file. */
    private static final int FEWEST = 5;

    private final Box region;
    private long asTheyStand;
    private long swapped;
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
    }

    /** Points taken; those within the region as they stand; those within it with the axes swapped. */
    public long[] counts() {
        return new long[] {all, asTheyStand, swapped};
    }

    public Standing standing() {
        if (all < FEWEST) {
            return Standing.unclear;
        }
        if (asTheyStand * 2 > all) {
            return Standing.right;
        }
        return swapped * 2 > all && asTheyStand * 20 <= all ? Standing.swapped : Standing.unclear;
    }
}
