package org.culvert.geo;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.MultiLineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.PrecisionModel;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;
import org.locationtech.jts.io.WKBWriter;

/** JTS geometry on WGS 84 from positions: longitude as x, latitude as y, SRID 4326. The only place where it is made. */
public final class Shapes {
    private static final int SRID = 4326;
    private static final GeometryFactory FACTORY = new GeometryFactory(new PrecisionModel(), SRID);

    private Shapes() {}

    public static Point point(Position position) {
        return FACTORY.createPoint(new Coordinate(position.longitude(), position.latitude()));
    }

    public static Position position(Point point) {
        return new Position(point.getY(), point.getX());
    }

    /** A line from longitudes and latitudes in turn: longitude, latitude, longitude, latitude. */
    public static LineString line(double[] longitudeLatitude) {
        return FACTORY.createLineString(coordinates(longitudeLatitude));
    }

    /** Positions one after the other, each as longitude and latitude. */
    public static double[] flat(double[][] positions) {
        double[] flat = new double[2 * positions.length];
        for (int i = 0; i < positions.length; i++) {
            flat[2 * i] = positions[i][0];
            flat[2 * i + 1] = positions[i][1];
        }
        return flat;
    }

    /** Lines, each as longitude and latitude in turn. */
    public static MultiLineString lines(List<double[]> lines) {
        return FACTORY.createMultiLineString(lines.stream().map(Shapes::line).toArray(LineString[]::new));
    }

    /**
     * A polygon from rings of longitudes and latitudes in turn, the outer one first. Whether it is valid is not looked at.
     *
     * @throws IllegalArgumentException if there is no ring, or one is not closed or has fewer than four positions
     */
    public static Polygon polygon(List<double[]> rings) {
        if (rings.isEmpty()) {
            throw new IllegalArgumentException("a polygon has an outer ring");
        }
        List<LinearRing> made = rings.stream()
                .map(ring -> FACTORY.createLinearRing(coordinates(ring)))
                .toList();
        return FACTORY.createPolygon(made.get(0), made.subList(1, made.size()).toArray(new LinearRing[0]));
    }

    public static MultiPolygon multiPolygon(List<Polygon> polygons) {
        return FACTORY.createMultiPolygon(polygons.toArray(new Polygon[0]));
    }

    private static Coordinate[] coordinates(double[] longitudeLatitude) {
        Coordinate[] coordinates = new Coordinate[longitudeLatitude.length / 2];
        for (int i = 0; i < coordinates.length; i++) {
            coordinates[i] = new Coordinate(longitudeLatitude[2 * i], longitudeLatitude[2 * i + 1]);
        }
        return coordinates;
    }

    /** The longitudes and latitudes of a line in turn. */
    public static double[] longitudeLatitude(LineString line) {
        double[] values = new double[2 * line.getNumPoints()];
        for (int i = 0; i < line.getNumPoints(); i++) {
            values[2 * i] = line.getCoordinateN(i).getX();
            values[2 * i + 1] = line.getCoordinateN(i).getY();
        }
        return values;
    }

    /** Well-known binary in two dimensions, without SRID. */
    public static byte[] wkb(Geometry geometry) {
        return new WKBWriter(2).write(geometry);
    }

    /** @throws IllegalArgumentException if the bytes are no well-known binary */
    public static Geometry fromWkb(byte[] bytes) {
        try {
            return new WKBReader(FACTORY).read(bytes);
        } catch (ParseException broken) {
            throw new IllegalArgumentException("not well-known binary", broken);
        }
    }
}
