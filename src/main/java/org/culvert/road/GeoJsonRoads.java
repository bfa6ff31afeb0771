package org.culvert.road;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.culvert.platform.geojson.GeoJsonFile;

/**
 * Reads roads from a GeoJSON feature collection (RFC 7946, and the {@code crs} member of its 2008 forerunner), one feature
 * at a time. Features without a line are left out by reason; what is broken is refused and says where.
 */
final class GeoJsonRoads {
    private final ObjectMapper mapper;
    private final AttributeNames names;
    private final RoadLines lines;

    GeoJsonRoads(ObjectMapper mapper, AttributeNames names) {
        this.mapper = mapper;
        this.names = names;
        this.lines = new RoadLines(names);
    }

    RoadSource read(InputStream in) {
        String crsName =
                GeoJsonFile.read(mapper, in, "any road", (number, feature, crs) -> readFeature(number, feature));
        lines.requireNames(names);
        return lines.source(crsName, true);
    }

    private void readFeature(int number, JsonNode feature) {
        JsonNode properties = feature.path("properties");
        List<String> named = new ArrayList<>();
        properties.fieldNames().forEachRemaining(named::add);
        lines.saw(named);
        String key = "line " + number;
        JsonNode geometry = feature.path("geometry");
        if (geometry.isMissingNode() || geometry.isNull()) {
            lines.leaveOut(key, "no course");
            return;
        }
        JsonNode coordinates = geometry.path("coordinates");
        switch (geometry.path("type").asText()) {
            case "LineString" -> lines.add(number, key, false, properties, List.of(course(number, coordinates)));
            case "MultiLineString" -> {
                if (!coordinates.isArray()) {
                    throw RoadSource.badFeature(number, "the coordinates are no list of lines");
                }
                List<double[]> courses = new ArrayList<>();
                coordinates.forEach(line -> courses.add(course(number, line)));
                lines.add(number, key, true, properties, courses);
            }
            case "" -> throw RoadSource.badFeature(number, "the geometry has no type");
            default ->
                lines.leaveOut(key, "not a line but a " + geometry.path("type").asText());
        }
    }

    private static double[] course(int number, JsonNode coordinates) {
        if (!coordinates.isArray()) {
            throw RoadSource.badFeature(number, "the coordinates are no list of positions");
        }
        double[] vertices = new double[2 * coordinates.size()];
        for (int i = 0; i < coordinates.size(); i++) {
            JsonNode position = coordinates.get(i);
            if (!position.isArray()
                    || position.size() < 2
                    || !position.get(0).isNumber()
                    || !position.get(1).isNumber()) {
                throw RoadSource.badFeature(number, "position " + (i + 1) + " is not two numbers");
            }
            vertices[2 * i] = position.get(0).asDouble();
            vertices[2 * i + 1] = position.get(1).asDouble();
        }
        return vertices;
    }
}
