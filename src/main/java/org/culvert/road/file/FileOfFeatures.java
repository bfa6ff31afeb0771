package org.culvert.road.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.GeoPackageGeometry;
import org.culvert.geo.GeoPackageGeometry.Kind;
import org.culvert.geo.Grid;
import org.culvert.geo.Position;
import org.culvert.geo.Projections;
import org.culvert.platform.InvalidException;
import org.culvert.platform.file.TemporaryCopy;
import org.culvert.platform.geojson.GeoJsonFile;
import org.culvert.platform.geopackage.GeoPackage;
import org.jspecify.annotations.Nullable;

/** Reads features of GeoJSON or of a GeoPackage one after another, brings them to WGS 84, and counts what is left out. */
public final class FileOfFeatures {
    private static final int MOST_FEATURES = 10_000;
    private static final int MOST_COLUMNS = 1000;
    private static final String USUAL_CRS = "CRS84";
    private static final String LONGEST = "any map of land";

    /**
     * A feature.
     *
     * @param at where it is in the file, for what is said of it: {@code features.3}
     * @param shape longitude before latitude, on WGS 84
     */
    public record Feature(String at, JsonNode properties, GeoPackageGeometry shape) {
        /** A text of an attribute, or null where it has none. */
        public @Nullable String text(@Nullable String attribute) {
            JsonNode value = attribute == null ? null : properties.get(attribute);
            String text = value == null || value.isNull() || value.isContainerNode()
                    ? ""
                    : value.asText().strip();
            return text.isEmpty() ? null : text;
        }

        /** The same, of at most so many characters. */
        public @Nullable String text(@Nullable String attribute, int longest) {
            String text = text(attribute);
            if (text != null && text.length() > longest) {
                throw InvalidException.of(
                        at + ".properties." + attribute,
                        "This is longer than can be kept.",
                        "at most " + longest + " characters");
            }
            return text;
        }
    }

    /** Takes one feature after another. */
    @FunctionalInterface
    public interface Taker {
        void take(Feature feature);

        /**
         * A feature whose geometry is wrong, which ends the reading unless somebody goes on.
         *
         * @param at where it is in the file
         */
        default void refuse(String at, InvalidException wrong) {
            throw wrong;
        }
    }

    /**
     * What was read.
     *
     * @param leftOut number of features that were not taken, by reason
     */
    public record Told(int features, Map<String, Integer> leftOut) {}

    private final ObjectMapper mapper;
    private final SentFile sent;
    private final TemporaryCopy copy;
    private final Collection<Kind> wanted;
    private final Collection<String> attributes;
    private final Taker taker;
    private final Map<String, Integer> leftOut = new TreeMap<>();
    private int features;

    /**
     * @param wanted kinds of geometry that are taken
     * @param attributes that are read
     */
    public FileOfFeatures(
            ObjectMapper mapper,
            SentFile sent,
            TemporaryCopy copy,
            Collection<Kind> wanted,
            Collection<String> attributes,
            Taker taker) {
        this.mapper = mapper;
        this.sent = sent;
        this.copy = copy;
        this.wanted = wanted;
        this.attributes = attributes;
        this.taker = taker;
    }

    /** @throws InvalidException naming what is wrong, and where it lies */
    public Told read() {
        if (sent.geoPackage()) {
            readGeoPackage();
        } else {
            readGeoJson();
        }
        return new Told(features, leftOut);
    }

    private void readGeoPackage() {
        try (GeoPackage file = GeoPackage.open(copy.open())) {
            GeoPackage.Layer layer = file.layer(sent.layer());
            List<String> columns = file.columns(layer);
            for (String attribute : attributes) {
                if (!columns.contains(attribute)) {
                    throw InvalidException.of(
                            "attributes",
                            "The layer has no attribute " + attribute + ".",
                            "one of: " + String.join(", ", columns));
                }
            }
            Grid grid = gridOf(layer);
            file.read(layer, attributes, (key, geometry, properties) -> {
                String at = "features." + key;
                take(at, properties, () -> geometry == null ? null : read(at, geometry), grid);
            });
        }
    }

    private Grid gridOf(GeoPackage.Layer layer) {
        if (sent.crs() != null) {
            return named(sent.crs());
        }
        if (layer.srsId() == 0 || layer.srsId() == -1) {
            throw InvalidException.of(
                    "crs", "The layer says no reference system.", "the name of its reference system, e.g. EPSG:28356");
        }
        String name = layer.organisation().strip() + ":" + layer.code();
        try {
            return Projections.named(name);
        } catch (CoordinateException unknown) {
            try {
                return Projections.ofText(name, layer.definition());
            } catch (CoordinateException unreadable) {
                throw invalid("crs", unreadable);
            }
        }
    }

    private static Grid named(String name) {
        try {
            return Projections.named(name);
        } catch (CoordinateException unknown) {
            throw invalid("crs", unknown);
        }
    }

    private static InvalidException invalid(String field, CoordinateException wrong) {
        String what = wrong.whatIsWrong();
        String sentence = Character.toUpperCase(what.charAt(0)) + what.substring(1);
        return InvalidException.of(field, sentence.endsWith(".") ? sentence : sentence + ".", wrong.whatWouldBeRight());
    }

    private static GeoPackageGeometry read(String at, byte[] geometry) {
        try {
            return GeoPackageGeometry.read(geometry);
        } catch (IllegalArgumentException broken) {
            throw InvalidException.of(
                    at + ".geometry", "Here " + broken.getMessage() + ".", "a geometry as a GeoPackage has it");
        }
    }

    private void readGeoJson() {
        String asked = sent.crs();
        Grid[] grid = new Grid[1];
        String last = GeoJsonFile.read(mapper, copy.open(), LONGEST, (number, feature, crs) -> {
            if (grid[0] == null) {
                grid[0] = named(asked != null ? asked : crs != null ? crs : USUAL_CRS);
            }
            String at = "features." + (number - 1);
            take(at, feature.path("properties"), () -> GeoJsonShapes.read(at, feature.path("geometry")), grid[0]);
        });
        if (asked == null
                && last != null
                && grid[0] != null
                && !named(last).name().equals(grid[0].name())) {
            throw InvalidException.of(
                    "crs", "The file names its reference system after its features.", "the crs parameter: " + last);
        }
    }

    private void take(String at, JsonNode properties, Supplier<@Nullable GeoPackageGeometry> geometry, Grid grid) {
        features++;
        if (features > MOST_FEATURES) {
            throw InvalidException.of(
                    "body", "These are too many features.", "at most " + MOST_FEATURES + " in one file");
        }
        Feature feature;
        try {
            GeoPackageGeometry shape = geometry.get();
            if (shape == null || shape.isEmpty() && wanted.contains(shape.kind())) {
                leftOut.merge("no geometry", 1, Integer::sum);
                return;
            }
            if (!wanted.contains(shape.kind())) {
                leftOut.merge("a " + shape.kind().word(), 1, Integer::sum);
                return;
            }
            feature = new Feature(at, properties, onEarth(at, shape, grid));
        } catch (InvalidException wrong) {
            taker.refuse(at, wrong);
            return;
        }
        taker.take(feature);
    }

    /** Names of all attributes, in the order in which the file has them. */
    public static List<String> columns(ObjectMapper mapper, SentFile sent, TemporaryCopy copy) {
        if (sent.geoPackage()) {
            try (GeoPackage file = GeoPackage.open(copy.open())) {
                return file.columns(file.layer(sent.layer()));
            }
        }
        Set<String> names = new LinkedHashSet<>();
        GeoJsonFile.read(mapper, copy.open(), LONGEST, (number, feature, crs) -> {
            if (names.size() < MOST_COLUMNS) {
                feature.path("properties").fieldNames().forEachRemaining(names::add);
            }
        });
        return List.copyOf(names);
    }

    private static GeoPackageGeometry onEarth(String at, GeoPackageGeometry shape, Grid grid) {
        List<List<double[]>> parts = new ArrayList<>();
        for (List<double[]> part : shape.parts()) {
            List<double[]> moved = new ArrayList<>();
            for (double[] line : part) {
                moved.add(onEarth(at, line, grid));
            }
            parts.add(moved);
        }
        return new GeoPackageGeometry(shape.kind(), parts);
    }

    private static double[] onEarth(String at, double[] line, Grid grid) {
        boolean plain = grid.name().equals("OGC:CRS84") || grid.name().equals("EPSG:4326");
        double[] moved = new double[line.length];
        for (int i = 0; i < line.length; i += 2) {
            try {
                Position position = plain ? new Position(line[i + 1], line[i]) : grid.inverse(line[i], line[i + 1]);
                moved[i] = position.longitude();
                moved[i + 1] = position.latitude();
            } catch (CoordinateException impossible) {
                throw invalid(at + ".geometry", impossible);
            }
        }
        return moved;
    }
}
