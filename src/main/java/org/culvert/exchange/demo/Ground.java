package org.culvert.exchange.demo;

/**
 * The plane on which the region is drawn: metres east ({@code x}) and north ({@code y}) of its south-west corner, near
 * enough for drawing. Lengths that people will read are measured on the ellipsoid, by {@link Spot#metresTo}.
 */
final class Ground {
    private static final double METRES_PER_DEGREE_NORTH = 110_860;
    private static final double METRES_PER_DEGREE_EAST = 96_480;

    private final double westLongitude;
    private final double southLatitude;
    private final double widthMetres;
    private final double heightMetres;

    Ground(double westLongitude, double southLatitude, double widthMetres, double heightMetres) {
        this.westLongitude = westLongitude;
        this.southLatitude = southLatitude;
        this.widthMetres = widthMetres;
        this.heightMetres = heightMetres;
    }

    double widthMetres() {
        return widthMetres;
    }

    double heightMetres() {
        return heightMetres;
    }

    Spot spot(double x, double y) {
        return new Spot((int) StrictMath.round((westLongitude + x / METRES_PER_DEGREE_EAST) * 1e7), (int)
                StrictMath.round((southLatitude + y / METRES_PER_DEGREE_NORTH) * 1e7));
    }

    double x(Spot spot) {
        return (spot.longitude() - westLongitude) * METRES_PER_DEGREE_EAST;
    }

    double y(Spot spot) {
        return (spot.latitude() - southLatitude) * METRES_PER_DEGREE_NORTH;
    }

    double distance(Spot a, Spot b) {
        return hypotenuse(x(a) - x(b), y(a) - y(b));
    }

    Spot moved(Spot spot, double east, double north) {
        return spot(x(spot) + east, y(spot) + north);
    }

    boolean contains(double x, double y, double marginMetres) {
        return x >= marginMetres
                && y >= marginMetres
                && x <= widthMetres - marginMetres
                && y <= heightMetres - marginMetres;
    }

    static double hypotenuse(double a, double b) {
        return StrictMath.sqrt(a * a + b * b);
    }
}
