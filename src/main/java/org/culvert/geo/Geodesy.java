package org.culvert.geo;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;

/**
 * Geodesics on an ellipsoid: the shortest line between two positions, and where a line leads. Metres and degrees.
 *
 * <p>Accurate to some nanometres for any pair of positions, nearly antipodal ones too: C. F. F. Karney, Algorithms for
 * geodesics, Journal of Geodesy 87 (2013) 43-55, doi:10.1007/s00190-012-0578-z. Immutable and safe for several threads.
 */
public final class Geodesy {
    /** World Geodetic System 1984: a = 6378137 m, 1/f = 298.257223563. All distances of the project are measured on it. */
    public static final Geodesy WGS84 = new Geodesy(6378137, 1 / 298.257223563);

    /** Geodetic Reference System 1980: a = 6378137 m, 1/f = 298.257222101. */
    public static final Geodesy GRS80 = new Geodesy(6378137, 1 / 298.257222101);

    private final Geodesic geodesic;

    private Geodesy(double equatorialRadiusMetres, double flattening) {
        this.geodesic = new Geodesic(equatorialRadiusMetres, flattening);
    }

    /** Metres between two positions along the shortest line on WGS 84. */
    public static double metresBetween(Position one, Position other) {
        return WGS84.metres(one.latitude(), one.longitude(), other.latitude(), other.longitude());
    }

    /** Metres between two points given as latitude and longitude, for flat arrays. */
    public double metres(double latitude1, double longitude1, double latitude2, double longitude2) {
        return geodesic.Inverse(latitude1, longitude1, latitude2, longitude2, GeodesicMask.DISTANCE).s12;
    }

    /**
     * Distance and azimuths of the shortest line from one position to another. Azimuths are clockwise from north, 0 (in)
     * to 360 (ex); the azimuth at the end is that of the line going on. For coincident positions they mean nothing.
     */
    public Line inverse(Position from, Position to) {
        GeodesicData line = geodesic.Inverse(from.latitude(), from.longitude(), to.latitude(), to.longitude());
        return new Line(line.s12, fullCircle(line.azi1), fullCircle(line.azi2));
    }

    /** The position reached from one by going some metres along the geodesic that starts at an azimuth. */
    public Position direct(Position from, double azimuthDegrees, double metres) {
        GeodesicData line = geodesic.Direct(from.latitude(), from.longitude(), azimuthDegrees, metres);
        return new Position(line.lat2, line.lon2);
    }

    private static double fullCircle(double degrees) {
        double positive = degrees < 0 ? degrees + 360 : degrees;
        return positive >= 360 ? 0 : positive;
    }

    /**
     * A geodesic line.
     *
     * @param metres its length
     * @param azimuthAtStartDegrees clockwise from north
     * @param azimuthAtEndDegrees clockwise from north, of the line going on; the way back is this plus 180
     */
    public record Line(double metres, double azimuthAtStartDegrees, double azimuthAtEndDegrees) {
        /** The azimuth from the end back to the start. */
        public double azimuthBackDegrees() {
            return (azimuthAtEndDegrees + 180) % 360;
        }
    }
}
