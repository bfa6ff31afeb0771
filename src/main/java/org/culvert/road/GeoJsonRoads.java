package org.culvert.road;

import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.util.JsonParserDelegate;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.culvert.platform.InvalidException;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadLine;
import org.jspecify.annotations.Nullable;

/**
 * Reads roads from a GeoJSON feature collection (RFC 7946, and the {@code crs} member of its 2008 forerunner), one feature
 * at a time. Features without a line are left out by reason; what is broken is refused and says where.
 */
final class GeoJsonRoads {
    private static final int TOKENS_OF_A_POSITION = 4;
    private static final int MOST_TOKENS_OF_A_FEATURE = 1_000_000;

    private static final int MOST_NAMES_SHOWN = 60;

    /** What was read. */
    record Source(
            List<RoadLine> lines,
            List<Integer> featureOfLine,
            Map<String, String> leftOutByKey,
            Map<String, Integer> notUnderstood,
            @Nullable String crsName) {}

    private final ObjectReader part;
    private final AttributeNames names;
    private final AttributeReader attributes;
    private final List<RoadLine> lines = new ArrayList<>();
    private final List<Integer> featureOfLine = new ArrayList<>();
    private final Map<String, String> leftOut = new LinkedHashMap<>();
    private final TreeSet<String> seen = new TreeSet<>();
    private @Nullable String crsName;
    private int features;

    GeoJsonRoads(ObjectMapper mapper, AttributeNames names) {
        // After each part the rest of the file is still to come
        this.part = mapper.reader().without(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
        this.names = names;
        this.attributes = new AttributeReader(names);
    }

    Source read(InputStream in) {
        boolean collection = false;
        try (JsonParser parser = part.getFactory().createParser(in)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw notACollection();
            }
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                String field = parser.currentName();
                parser.nextToken();
                switch (field) {
                    case "features" -> {
                        readFeatures(parser);
                        collection = true;
                    }
                    case "crs" -> readCrs(part.readTree(parser));
                    default -> parser.skipChildren();
                }
            }
        } catch (JsonParseException broken) {
            throw InvalidException.of(
                    "body",
                    "This is not well-formed JSON near line "
                            + broken.getLocation().getLineNr() + ", after feature " + features + ".",
                    "a GeoJSON feature collection (RFC 7946)");
        } catch (IOException broken) {
            throw InvalidException.of(
                    "body", "The file could not be read to its end.", "a GeoJSON feature collection (RFC 7946)");
        }
        if (!collection) {
            throw notACollection();
        }
        checkNames();
        return new Source(lines, featureOfLine, leftOut, attributes.notUnderstood(), crsName);
    }

    private static InvalidException notACollection() {
        return InvalidException.of(
                "body", "This is no GeoJSON feature collection.", "an object with a list named features (RFC 7946)");
    }

    private void readFeatures(JsonParser parser) throws IOException {
        if (parser.currentToken() != JsonToken.START_ARRAY) {
            throw notACollection();
        }
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            if (parser.currentToken() == null) {
                throw InvalidException.of("body", "The file ends within its features.", "the whole file");
            }
            JsonNode feature = part.readTree(new OneFeature(parser));
            features++;
            readFeature(feature);
        }
    }

    /** Counts the parts of one feature, which is held whole: a file may be long, a single road not. */
    private final class OneFeature extends JsonParserDelegate {
        private int tokens;

        OneFeature(JsonParser file) {
            super(file);
        }

        @Override
        public JsonToken nextToken() throws IOException {
            if (++tokens > MOST_TOKENS_OF_A_FEATURE) {
                throw InvalidException.of(
                        "body",
                        "Feature " + (features + 1) + " is longer than any road.",
                        "features of at most " + MOST_TOKENS_OF_A_FEATURE / TOKENS_OF_A_POSITION + " positions");
            }
            return super.nextToken();
        }

        @Override
        public @Nullable String nextFieldName() throws IOException {
            return nextToken() == JsonToken.FIELD_NAME ? currentName() : null;
        }
    }

    private void readFeature(JsonNode feature) {
        JsonNode properties = feature.path("properties");
        properties.fieldNames().forEachRemaining(name -> {
            if (seen.size() < 10_000) {
                seen.add(name);
            }
        });
        String key = "line " + features;
        JsonNode geometry = feature.path("geometry");
        if (geometry.isMissingNode() || geometry.isNull()) {
            leftOut.put(key, "no course");
            return;
        }
        JsonNode coordinates = geometry.path("coordinates");
        switch (geometry.path("type").asText()) {
            case "LineString" -> addLine(key, properties, coordinates, attributes.startMeasureMetres(properties));
            case "MultiLineString" -> {
                if (!coordinates.isArray()) {
                    throw bad("the coordinates are no list of lines");
                }
                if (coordinates.isEmpty()) {
                    leftOut.put(key, "no course");
                }
                Double start = attributes.startMeasureMetres(properties);
                for (int part = 0; part < coordinates.size(); part++) {
                    addLine(key + "." + (part + 1), properties, coordinates.get(part), part == 0 ? start : null);
                }
            }
            case "" -> throw bad("the geometry has no type");
            default ->
                leftOut.put(key, "not a line but a " + geometry.path("type").asText());
        }
    }

    private void addLine(String key, JsonNode properties, JsonNode coordinates, @Nullable Double startMeasure) {
        if (!coordinates.isArray()) {
            throw bad("the coordinates are no list of positions");
        }
        double[] vertices = new double[2 * coordinates.size()];
        for (int i = 0; i < coordinates.size(); i++) {
            JsonNode position = coordinates.get(i);
            if (!position.isArray()
                    || position.size() < 2
                    || !position.get(0).isNumber()
                    || !position.get(1).isNumber()) {
                throw bad("position " + (i + 1) + " is not two numbers");
            }
            vertices[2 * i] = position.get(0).asDouble();
            vertices[2 * i + 1] = position.get(1).asDouble();
        }
        RoadAttributes known = attributes.attributes(properties);
        lines.add(new RoadLine(key, known, startMeasure, vertices));
        featureOfLine.add(features);
    }

    private InvalidException bad(String what) {
        return badFeature(features, what);
    }

    /** @param feature its number, from 1 */
    static InvalidException badFeature(int feature, String what) {
        return InvalidException.of(
                "features." + (feature - 1) + ".geometry",
                "In feature " + feature + " " + what + ".",
                "a LineString or MultiLineString of positions, each at least two numbers");
    }

    private void readCrs(JsonNode crs) {
        if (crs.isNull()) {
            return;
        }
        String name = crs.path("properties").path("name").asText();
        if (name.isEmpty()) {
            throw InvalidException.of(
                    "crs",
                    "The file's crs member has no name.",
                    "a named reference system in the file, or the crs parameter");
        }
        crsName = name;
    }

    private void checkNames() {
        List<InvalidException.FieldError> errors = new ArrayList<>();
        List<String> named = seen.stream().filter(name -> !name.isBlank()).toList();
        String known = named.isEmpty()
                ? "a file whose features have attributes"
                : String.join(", ", named.subList(0, Math.min(MOST_NAMES_SHOWN, named.size())));
        names.named().forEach((as, attribute) -> {
            if (!seen.contains(attribute)) {
                errors.add(new InvalidException.FieldError(
                        as, "No feature has an attribute " + attribute + ".", known, null));
            }
        });
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
    }
}
