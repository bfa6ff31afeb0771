package org.culvert.platform.geojson;

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
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * A feature collection of GeoJSON (RFC 7946, and the {@code crs} member of its 2008 forerunner), one feature at a time. Not
 * for use by several threads.
 */
public final class GeoJsonFile {
    private static final int TOKENS_OF_A_POSITION = 4;
    private static final int MOST_TOKENS_OF_A_FEATURE = 1_000_000;
    private static final String WANTED = "a GeoJSON feature collection (RFC 7946)";

    /** Takes one feature after another. */
    @FunctionalInterface
    public interface Taker {
        /**
         * @param number from 1
         * @param crsSoFar the reference system that the file has named before its features, or null
         */
        void take(int number, JsonNode feature, @Nullable String crsSoFar);
    }

    private final ObjectReader part;
    private final String longest;
    private final Taker taker;
    private @Nullable String crsName;
    private int features;

    private GeoJsonFile(ObjectMapper mapper, String longest, Taker taker) {
        // After each part the rest of the file is still to come
        this.part = mapper.reader().without(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
        this.longest = longest;
        this.taker = taker;
    }

    /**
     * Reads a file to its end.
     *
     * @param longest what is the longest thing that a feature may be, for people: {@code any road}
     * @return the reference system that the file names, if it does
     * @throws InvalidException saying where the file is broken
     */
    public static @Nullable String read(ObjectMapper mapper, InputStream in, String longest, Taker taker) {
        return new GeoJsonFile(mapper, longest, taker).read(in);
    }

    private @Nullable String read(InputStream in) {
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
                    WANTED);
        } catch (IOException broken) {
            throw InvalidException.of("body", "The file could not be read to its end.", WANTED);
        }
        if (!collection) {
            throw notACollection();
        }
        return crsName;
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
            taker.take(features, feature, crsName);
        }
    }

    /** Counts the parts of one feature, which is held whole: a file may be long, a single feature not. */
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
                        "Feature " + (features + 1) + " is longer than " + longest + ".",
                        "features of at most " + MOST_TOKENS_OF_A_FEATURE / TOKENS_OF_A_POSITION + " positions");
            }
            return super.nextToken();
        }

        @Override
        public @Nullable String nextFieldName() throws IOException {
            return nextToken() == JsonToken.FIELD_NAME ? currentName() : null;
        }
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
}
