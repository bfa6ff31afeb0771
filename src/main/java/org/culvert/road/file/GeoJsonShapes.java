package org.culvert.road.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.culvert.geo.GeoPackageGeometry;
import org.culvert.geo.GeoPackageGeometry.Kind;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** Geometries of GeoJSON (RFC 7946, section 3.1) as the other kind of file has them. */
final class GeoJsonShapes {
    private GeoJsonShapes() {}

    /**
     * Null where there is none.
     *
     * @param at where its feature is in the file
     */
    static @Nullable GeoPackageGeometry read(String at, JsonNode geometry) {
        if (geometry.isMissingNode() || geometry.isNull()) {
            return null;
        }
        JsonNode coordinates = geometry.path("coordinates");
        String where = at + ".geometry.coordinates";
        List<List<double[]>> parts = new ArrayList<>();
        switch (geometry.path("type").asText()) {
            case "Point" -> parts.add(List.of(position(where, coordinates)));
            case "Polygon" -> addPolygon(where, coordinates, parts);
            case "MultiPolygon" -> list(where, coordinates).forEach(polygon -> addPolygon(where, polygon, parts));
            case "LineString" -> {
                addLine(where, coordinates, parts);
                return new GeoPackageGeometry(Kind.LINE, parts);
            }
            case "MultiLineString" -> {
                list(where, coordinates).forEach(line -> addLine(where, line, parts));
                return new GeoPackageGeometry(Kind.LINE, parts);
            }
            default -> {
                return new GeoPackageGeometry(Kind.OTHER, List.of());
            }
        }
        boolean point = geometry.path("type").asText().equals("Point");
        return new GeoPackageGeometry(point ? Kind.POINT : Kind.POLYGON, parts);
    }

    /** What is empty is none (section 3.1), but a polygon of which a ring is empty says nothing that can be meant. */
    private static void addPolygon(String where, JsonNode polygon, List<List<double[]>> parts) {
        List<double[]> rings = new ArrayList<>();
        for (JsonNode ring : list(where, polygon)) {
            double[] positions = line(where, ring);
            if (positions.length == 0) {
                throw InvalidException.of(
                        where,
                        "A ring has no position.",
                        "four positions or more, the last the same as the first (RFC 7946, section 3.1.6)");
            }
            rings.add(positions);
        }
        if (!rings.isEmpty()) {
            parts.add(rings);
        }
    }

    private static void addLine(String where, JsonNode line, List<List<double[]>> parts) {
        double[] positions = line(where, line);
        if (positions.length > 0) {
            parts.add(List.of(positions));
        }
    }

    private static double[] line(String where, JsonNode line) {
        double[] positions = new double[2 * list(where, line).size()];
        for (int i = 0; i < line.size(); i++) {
            double[] position = position(where, line.get(i));
            positions[2 * i] = position[0];
            positions[2 * i + 1] = position[1];
        }
        return positions;
    }

    private static JsonNode list(String where, JsonNode node) {
        if (!node.isArray()) {
            throw InvalidException.of(where, "This is no list.", "the coordinates of RFC 7946, section 3.1");
        }
        return node;
    }

    private static double[] position(String where, JsonNode position) {
        if (!position.isArray()
                || position.size() < 2
                || !position.get(0).isNumber()
                || !position.get(1).isNumber()) {
            throw InvalidException.of(where, "This is no position.", "longitude, latitude, and perhaps a height");
        }
        return new double[] {position.get(0).asDouble(), position.get(1).asDouble()};
    }
}
