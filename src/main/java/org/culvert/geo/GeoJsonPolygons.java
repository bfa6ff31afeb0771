package org.culvert.geo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.algorithm.Orientation;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.MultiPolygon;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/**
 * Reads and writes polygons of GeoJSON (H. Butler et al., The GeoJSON Format, RFC 7946, IETF 2016, sections 3.1.6 and 3.1.7)
 * as lists in lists of numbers: longitude before latitude, on WGS 84. Heights are not kept.
 *
 * <p>What is read is valid in the sense of the OGC Simple Features (JTS {@code IsValidOp}), stays on one side of the
 * antimeridian, and has its outer rings counterclockwise, whichever way they came.
 */
public final class GeoJsonPolygons {
    public static final int MOST_POSITIONS = 100_000;

    private static final String POLYGON = "Polygon";
    private static final String MULTI_POLYGON = "MultiPolygon";
    private static final int FEWEST_POSITIONS_OF_A_RING = 4;
    private static final double HALF_THE_EARTH_DEGREES = 180;

    private final List<Polygon> polygons = new ArrayList<>();
    private int positions;

    private GeoJsonPolygons() {}

    /**
     * The polygon, or polygons.
     *
     * @param type {@code Polygon} or {@code MultiPolygon}
     * @param coordinates of a Polygon its rings, of a MultiPolygon its polygons
     * @throws CoordinateException naming the part of {@code coordinates} that is wrong, such as {@code coordinates.0.3}
     */
    public static Geometry read(String type, List<?> coordinates) {
        var reader = new GeoJsonPolygons();
        String at = "coordinates";
        if (type.equals(POLYGON)) {
            reader.readPolygon(at, coordinates);
        } else if (type.equals(MULTI_POLYGON)) {
            if (coordinates.isEmpty()) {
                throw wrong(at, "There is no polygon in it.", "at least one polygon");
            }
            for (int i = 0; i < coordinates.size(); i++) {
                reader.readPolygon(at + "." + i, list(at + "." + i, coordinates.get(i), "a list of rings"));
            }
        } else {
            throw wrong("type", "This is no land.", POLYGON + " or " + MULTI_POLYGON);
        }
        Geometry shape =
                type.equals(POLYGON) ? reader.polygons.get(0) : Shapes.multiPolygon(List.copyOf(reader.polygons));
        requireValid(shape);
        return type.equals(POLYGON) ? turned(reader.polygons.get(0)) : turned(reader.polygons);
    }

    /** {@code Polygon} or {@code MultiPolygon}. */
    public static String type(Geometry shape) {
        return shape instanceof MultiPolygon ? MULTI_POLYGON : POLYGON;
    }

    /**
     * The {@code coordinates} of a polygon or of several.
     *
     * @throws IllegalArgumentException for any other geometry
     */
    public static List<Object> coordinates(Geometry shape) {
        if (shape instanceof Polygon polygon) {
            return rings(polygon);
        }
        if (!(shape instanceof MultiPolygon)) {
            throw new IllegalArgumentException("no polygon but a " + shape.getGeometryType());
        }
        List<Object> all = new ArrayList<>();
        for (int i = 0; i < shape.getNumGeometries(); i++) {
            all.add(rings((Polygon) shape.getGeometryN(i)));
        }
        return all;
    }

    private static List<Object> rings(Polygon polygon) {
        List<Object> rings = new ArrayList<>();
        rings.add(ring(polygon.getExteriorRing()));
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            rings.add(ring(polygon.getInteriorRingN(i)));
        }
        return rings;
    }

    private static List<double[]> ring(LineString line) {
        List<double[]> ring = new ArrayList<>();
        for (int i = 0; i < line.getNumPoints(); i++) {
            ring.add(new double[] {
                line.getCoordinateN(i).getX(), line.getCoordinateN(i).getY()
            });
        }
        return ring;
    }

    private void readPolygon(String at, List<?> rings) {
        if (rings.isEmpty()) {
            throw wrong(at, "This polygon has no ring.", "an outer ring, and further rings for holes");
        }
        List<double[]> read = new ArrayList<>();
        for (int i = 0; i < rings.size(); i++) {
            read.add(readRing(at + "." + i, list(at + "." + i, rings.get(i), "a ring: a list of positions")));
        }
        polygons.add(Shapes.polygon(read));
    }

    private double[] readRing(String at, List<?> ring) {
        if (ring.size() < FEWEST_POSITIONS_OF_A_RING) {
            throw wrong(at, "This ring has too few positions.", "four or more, of which the last is the first");
        }
        positions += ring.size();
        if (positions > MOST_POSITIONS) {
            throw wrong("coordinates", "These are too many positions.", "at most " + MOST_POSITIONS + " in all");
        }
        double[] flat = new double[2 * ring.size()];
        for (int i = 0; i < ring.size(); i++) {
            Position position = position(at + "." + i, ring.get(i));
            flat[2 * i] = position.longitude();
            flat[2 * i + 1] = position.latitude();
            if (i > 0 && Math.abs(flat[2 * i] - flat[2 * i - 2]) > HALF_THE_EARTH_DEGREES) {
                throw wrong(
                        at + "." + i,
                        "From the position before to this one it goes more than half around the Earth.",
                        "two polygons of a MultiPolygon, cut at the antimeridian (RFC 7946, section 3.1.9)");
            }
        }
        int last = flat.length - 2;
        if (flat[0] != flat[last] || flat[1] != flat[last + 1]) {
            throw wrong(at, "This ring is not closed.", "the first position once more at its end");
        }
        return flat;
    }

    private static Position position(String at, Object given) {
        List<?> numbers = list(at, given, "a position: longitude, latitude");
        if (numbers.size() < 2 || numbers.size() > 3) {
            throw wrong(at, "This is no position.", "longitude, latitude, and perhaps a height");
        }
        for (int i = 0; i < numbers.size(); i++) {
            if (!(numbers.get(i) instanceof Number)) {
                throw wrong(at + "." + i, "This is no number.", "degrees as a number");
            }
        }
        double longitude = ((Number) numbers.get(0)).doubleValue();
        double latitude = ((Number) numbers.get(1)).doubleValue();
        if (!(Math.abs(latitude) <= 90)) {
            throw new CoordinateException(
                    at + ".1",
                    "There is no latitude " + latitude + ".",
                    "longitude first, then latitude from -90 to 90",
                    otherReading(longitude, latitude));
        }
        if (!(Math.abs(longitude) <= HALF_THE_EARTH_DEGREES)) {
            throw wrong(at + ".0", "There is no longitude " + longitude + ".", "degrees from -180 to 180");
        }
        return new Position(latitude, longitude);
    }

    private static @Nullable Position otherReading(double longitude, double latitude) {
        return Math.abs(longitude) <= 90 && Math.abs(latitude) <= HALF_THE_EARTH_DEGREES
                ? new Position(longitude, latitude)
                : null;
    }

    private static void requireValid(Geometry shape) {
        TopologyValidationError error = new IsValidOp(shape).getValidationError();
        if (error != null) {
            throw wrong(
                    "coordinates",
                    String.format(
                            Locale.ROOT,
                            "Near longitude %.7f, latitude %.7f %s.",
                            error.getCoordinate().getX(),
                            error.getCoordinate().getY(),
                            words(error.getErrorType())),
                    "rings that neither cross nor run along themselves or one another, holes inside their outer ring");
        }
    }

    private static String words(int error) {
        return switch (error) {
            case TopologyValidationError.HOLE_OUTSIDE_SHELL -> "a hole lies outside its outer ring";
            case TopologyValidationError.NESTED_HOLES -> "a hole lies within a hole";
            case TopologyValidationError.DISCONNECTED_INTERIOR -> "rings cut the inside in two";
            case TopologyValidationError.RING_SELF_INTERSECTION -> "a ring touches itself";
            case TopologyValidationError.NESTED_SHELLS -> "a polygon lies within another";
            case TopologyValidationError.DUPLICATE_RINGS -> "a ring is there twice";
            case TopologyValidationError.TOO_FEW_POINTS -> "a ring has too few different positions";
            default -> "the border crosses itself or runs along itself";
        };
    }

    private static Geometry turned(List<Polygon> all) {
        return Shapes.multiPolygon(all.stream().map(GeoJsonPolygons::turned).toList());
    }

    /** With the outer ring counterclockwise and holes clockwise (RFC 7946, section 3.1.6). */
    private static Polygon turned(Polygon polygon) {
        List<double[]> rings = new ArrayList<>();
        rings.add(Shapes.longitudeLatitude(turned(polygon.getExteriorRing(), true)));
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            rings.add(Shapes.longitudeLatitude(turned(polygon.getInteriorRingN(i), false)));
        }
        return Shapes.polygon(rings);
    }

    private static LineString turned(LineString ring, boolean counterclockwise) {
        boolean isSo = Orientation.isCCW(ring.getCoordinateSequence());
        return isSo == counterclockwise ? ring : ring.reverse();
    }

    private static List<?> list(String at, Object given, String wanted) {
        if (given instanceof List<?> list) {
            return list;
        }
        throw wrong(at, "This is no list.", wanted);
    }

    private static CoordinateException wrong(String at, String what, String wanted) {
        return new CoordinateException(at, what, wanted, null);
    }
}
