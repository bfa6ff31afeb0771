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
            case "Polygon" -> parts.add(rings(where, coordinates));
            case "MultiPolygon" -> list(where, coordinates).forEach(polygon -> parts.add(rings(where, polygon)));
            case "LineString" -> {
                return new GeoPackageGeometry(Kind.LINE, List.of(List.of(line(where, coordinates))));
            }
            case "MultiLineString" -> {
                List<List<double[]>> lines = new ArrayList<>();
                list(where, coordinates).forEach(line -> lines.add(List.of(line(where, line))));
                return new GeoPackageGeometry(Kind.LINE, lines);
            }
            default -> {
                return new GeoPackageGeometry(Kind.OTHER, List.of());
            }
        }
        boolean point = geometry.path("type").asText().equals("Point");
        return new GeoPackageGeometry(point ? Kind.POINT : Kind.POLYGON, parts);
    }

    private static List<double[]> rings(String where, JsonNode polygon) {
        List<double[]> rings = new ArrayList<>();
        for (JsonNode ring : list(where, polygon)) {
            rings.add(line(where, ring));
        }
        return rings;
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
