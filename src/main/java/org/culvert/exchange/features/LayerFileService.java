package org.culvert.exchange.features;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.apache.commons.csv.CSVPrinter;
import org.culvert.exchange.geopackage.GeoPackageFile;
import org.culvert.geo.Position;
import org.culvert.geo.Shapes;
import org.culvert.platform.CsvText;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/**
 * Writes whole layers to files. What the asker may see of a feature is told by what it would be as JSON, so that no form of an
 * answer tells more than another. Files are temporary, and gone when they are sent.
 */
@ApplicationScoped
class LayerFileService {
    /** Some sources look at everything for each page: so there are few. */
    private static final int PAGE = QueryReader.MAXIMUM_LIMIT;

    private static final String ID = "id";

    private final FeatureCatalogue catalogue;
    private final QueryReader reader;
    private final ObjectMapper mapper;
    private final Clock clock;

    LayerFileService(FeatureCatalogue catalogue, QueryReader reader, ObjectMapper mapper, Clock clock) {
        this.catalogue = catalogue;
        this.reader = reader;
        this.mapper = mapper;
        this.clock = clock;
    }

    /** Something that writes a file. */
    private interface Writer {
        void write(Path file, Iterator<JsonNode> features) throws IOException, SQLException;
    }

    /** One layer, named as the collection, with the identifier of each feature in a column of its own. */
    public InputStream geoPackage(FeatureSource source, Map<String, String> parameters) {
        List<FeatureProperty> properties = catalogue.properties(source);
        List<GeoPackageFile.Column> columns = new ArrayList<>();
        columns.add(new GeoPackageFile.Column(ID, GeoPackageFile.Type.TEXT));
        properties.forEach(property -> columns.add(new GeoPackageFile.Column(property.name(), type(property))));
        var layer = new GeoPackageFile.Layer(
                source.id().replace('-', '_'),
                source.title(),
                source.description(),
                source.shapeType().geoJson().toUpperCase(Locale.ROOT),
                columns,
                clock.instant());
        return file(".gpkg", source, parameters, (file, features) -> {
            Iterator<Integer> keys = IntStream.iterate(1, key -> key + 1).iterator();
            GeoPackageFile.writeTo(file, layer, map(features, feature -> {
                List<@Nullable Object> values = new ArrayList<>();
                values.add(feature.get(ID).asText());
                properties.forEach(property ->
                        values.add(value(property, feature.get("properties").get(property.name()))));
                return new GeoPackageFile.Feature(keys.next(), shape(feature), values);
            }));
        });
    }

    public InputStream table(FeatureSource source, Map<String, String> parameters) {
        List<FeatureProperty> properties = catalogue.properties(source);
        boolean points = source.shapeType() == ShapeType.POINT;
        List<String> header = Stream.of(
                        Stream.of(ID),
                        properties.stream().map(FeatureProperty::name),
                        points ? Stream.of("lon", "lat") : Stream.of("WKT"))
                .flatMap(names -> names)
                .toList();
        return file(".csv", source, parameters, (file, features) -> {
            try (BufferedWriter out = Files.newBufferedWriter(file);
                    CSVPrinter printer = CsvText.printer(out, header)) {
                while (features.hasNext()) {
                    JsonNode feature = features.next();
                    List<@Nullable Object> row = new ArrayList<>();
                    row.add(feature.get(ID).asText());
                    for (FeatureProperty property : properties) {
                        row.add(CsvText.harmless(
                                value(property, feature.get("properties").get(property.name()))));
                    }
                    Geometry shape = shape(feature);
                    if (points) {
                        row.add(shape == null ? null : shape.getCoordinate().getX());
                        row.add(shape == null ? null : shape.getCoordinate().getY());
                    } else {
                        row.add(shape == null ? null : shape.toText());
                    }
                    printer.printRecord(row);
                }
            }
        });
    }

    public InputStream geoJson(FeatureSource source, Map<String, String> parameters) {
        return file(".geojson", source, parameters, (file, features) -> {
            try (JsonGenerator out =
                    mapper.getFactory().createGenerator(Files.newBufferedWriter(file, StandardCharsets.UTF_8))) {
                out.writeStartObject();
                out.writeStringField("type", "FeatureCollection");
                out.writeArrayFieldStart("features");
                while (features.hasNext()) {
                    mapper.writeTree(out, features.next());
                }
                out.writeEndArray();
                out.writeEndObject();
            }
        });
    }

    private InputStream file(String ending, FeatureSource source, Map<String, String> parameters, Writer writer) {
        FeatureQuery query = reader.query(source, parameters);
        try {
            Path file = Files.createTempFile("culvert-layer", ending);
            try {
                writer.write(file, new Pages(source, query));
                return Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE);
            } catch (IOException | SQLException | RuntimeException e) {
                Files.deleteIfExists(file);
                throw e;
            }
        } catch (IOException | SQLException e) {
            throw new IllegalStateException("a layer cannot be written", e);
        }
    }

    /** All features, read a page at a time. */
    private final class Pages implements Iterator<JsonNode> {
        private final FeatureSource source;
        private final FeatureQuery query;
        private Iterator<MapFeature> page;
        private @Nullable String next;

        Pages(FeatureSource source, FeatureQuery query) {
            this.source = source;
            this.query = query;
            FeatureSource.Slice first = source.page(query, PAGE, null);
            this.page = first.features().iterator();
            this.next = first.next();
        }

        @Override
        public boolean hasNext() {
            while (!page.hasNext() && next != null) {
                FeatureSource.Slice slice = source.page(query, PAGE, next);
                page = slice.features().iterator();
                next = slice.next();
            }
            return page.hasNext();
        }

        @Override
        public JsonNode next() {
            return mapper.valueToTree(page.next());
        }
    }

    private static <T> Iterator<T> map(Iterator<JsonNode> features, Function<JsonNode, T> to) {
        Iterable<JsonNode> all = () -> features;
        return StreamSupport.stream(all.spliterator(), false).map(to).iterator();
    }

    private static GeoPackageFile.Type type(FeatureProperty property) {
        if (property.format() != null) {
            return property.format().equals("date") ? GeoPackageFile.Type.DATE : GeoPackageFile.Type.DATETIME;
        }
        return switch (property.type()) {
            case "integer" -> GeoPackageFile.Type.INTEGER;
            case "number" -> GeoPackageFile.Type.REAL;
            case "boolean" -> GeoPackageFile.Type.BOOLEAN;
            default -> GeoPackageFile.Type.TEXT;
        };
    }

    private static @Nullable Object value(FeatureProperty property, @Nullable JsonNode value) {
        if (value == null || value.isNull()) {
            return null;
        }
        if (property.format() != null && property.format().equals("date-time")) {
            return GeoPackageFile.instant(Instant.parse(value.asText()));
        }
        return switch (property.type()) {
            case "integer" -> value.asLong();
            case "number" -> value.asDouble();
            case "boolean" -> value.asBoolean();
            default -> value.asText();
        };
    }

    private static @Nullable Geometry shape(JsonNode feature) {
        JsonNode geometry = feature.get("geometry");
        if (geometry == null || geometry.isNull()) {
            return null;
        }
        JsonNode coordinates = geometry.get("coordinates");
        return switch (geometry.get("type").asText()) {
            case "Point" ->
                Shapes.point(new Position(
                        coordinates.get(1).asDouble(), coordinates.get(0).asDouble()));
            case "LineString" -> Shapes.line(flat(coordinates));
            case "MultiLineString" -> {
                List<double[]> lines = new ArrayList<>();
                coordinates.forEach(line -> lines.add(flat(line)));
                yield Shapes.lines(lines);
            }
            default -> throw new IllegalStateException("layers have no " + geometry.get("type"));
        };
    }

    private static double[] flat(JsonNode positions) {
        double[] flat = new double[2 * positions.size()];
        for (int i = 0; i < positions.size(); i++) {
            flat[2 * i] = positions.get(i).get(0).asDouble();
            flat[2 * i + 1] = positions.get(i).get(1).asDouble();
        }
        return flat;
    }
}
