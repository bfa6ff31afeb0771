package org.culvert.geo;

/**
 * A square of the map of the world in Web Mercator (EPSG:3857), as vector tiles and XYZ addresses have it: at zoom z the world is
 * 2<sup>z</sup> tiles wide and high, counted from 180&deg; west and from the north. Positions within a tile are in units of which
 * it has {@link #EXTENT} on a side, x to the east and y to the south (Mapbox Vector Tile specification 2.1, section 4.3.1).
 */
public record MercatorTile(int zoom, int x, int y) {
    public static final int EXTENT = 4096;
    public static final int DEEPEST = 22;

    /** Where the map of the world ends, to the north and to the south: atan(sinh &pi;) in degrees. */
    private static final double LAST_LATITUDE = Math.toDegrees(Math.atan(Math.sinh(Math.PI)));

    /** @throws IllegalArgumentException if there is no such tile */
    public MercatorTile {
        if (zoom < 0 || zoom > DEEPEST) {
            throw new IllegalArgumentException("zoom is 0 to " + DEEPEST);
        }
        int last = (1 << zoom) - 1;
        if (x < 0 || x > last || y < 0 || y > last) {
            throw new IllegalArgumentException("at zoom " + zoom + " tiles are counted from 0 to " + last);
        }
    }

    /** @param margin by which the box is wider on each side, in units of the tile */
    public Bounds bounds(double margin) {
        double share = margin / EXTENT;
        return new Bounds(
                latitude(Math.min(tiles(), y + 1 + share)),
                longitude(Math.max(0, x - share)),
                latitude(Math.max(0, y - share)),
                longitude(Math.min(tiles(), x + 1 + share)));
    }

    /** Position in the tile, which it may lie outside of. */
    public double[] place(double latitude, double longitude) {
        double bounded = Math.max(-LAST_LATITUDE, Math.min(LAST_LATITUDE, latitude));
        double world = (double) tiles() * EXTENT;
        double east = (longitude + 180) / 360 * world;
        double south = (1 - asinh(Math.tan(Math.toRadians(bounded))) / Math.PI) / 2 * world;
        return new double[] {east - (double) x * EXTENT, south - (double) y * EXTENT};
    }

    private int tiles() {
        return 1 << zoom;
    }

    private double longitude(double tile) {
        return tile / tiles() * 360 - 180;
    }

    private double latitude(double tile) {
        return Math.toDegrees(Math.atan(Math.sinh(Math.PI * (1 - 2 * tile / tiles()))));
    }

    private static double asinh(double value) {
        return Math.signum(value) * Math.log(Math.abs(value) + Math.sqrt(value * value + 1));
    }
}
