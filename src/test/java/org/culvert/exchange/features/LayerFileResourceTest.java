package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whole layers as files say what their pages say, to each what they may see. */
@QuarkusTest
class LayerFileResourceTest {
    @TempDir
    Path folder;

    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    private static byte[] file(@Nullable String role, String path) {
        return Layers.by(role)
                .get(Layers.root() + path)
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
    }

    /** RFC 7946: the same features, in the same words, as over all pages. */
    @Test
    void geoJsonHasTheFeaturesOfAllPages() throws Exception {
        JsonNode whole = new ObjectMapper().readTree(file(CARER, "/collections/road-links/layer.geojson"));
        assertThat(whole.get("type").asText()).isEqualTo("FeatureCollection");
        Set<String> ids = new HashSet<>();
        whole.get("features").forEach(feature -> ids.add(feature.get("id").asText()));
        assertThat(ids).hasSize(Layers.linksOfTheNetwork()).hasSizeGreaterThan(4);
        Set<String> paged = new HashSet<>();
        Layers.all(CARER, "road-links", "limit=2").forEach(feature -> paged.add((String) feature.get("id")));
        assertThat(ids).isEqualTo(paged);
    }

    /** RFC 4180: a header, commas, CRLF. */
    @Test
    void aTableHasARowAFeatureAndSaysTheSame() throws Exception {
        String text = new String(file(CARER, "/collections/road-links/layer.csv"), StandardCharsets.UTF_8);
        assertThat(text).contains("\r\n");
        try (CSVParser table = CSVParser.parse(
                new StringReader(text),
                CSVFormat.RFC4180
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())) {
            List<CSVRecord> rows = table.getRecords();
            assertThat(rows).hasSize(Layers.linksOfTheNetwork());
            assertThat(table.getHeaderNames()).startsWith("id", "roadName").endsWith("WKT");
            CSVRecord first = rows.get(0);
            JsonNode same = new ObjectMapper()
                    .readTree(file(CARER, "/collections/road-links/items/" + first.get("id")))
                    .get("properties");
            assertThat(first.get("roadName")).isEqualTo(same.get("roadName").asText());
            assertThat(Double.parseDouble(first.get("lengthMetres")))
                    .isEqualTo(same.get("lengthMetres").asDouble());
            assertThat(first.get("WKT")).startsWith("LINESTRING (");
        }
    }

    @Test
    void filtersBoxesAndDaysHoldForFilesToo() throws Exception {
        List<String> named = ids("road-links", "?roadName=River%20Lane");
        assertThat(named)
                .hasSize(
                        Layers.all(CARER, "road-links", "roadName=River%20Lane").size())
                .hasSizeBetween(2, Layers.linksOfTheNetwork() - 1);
        assertThat(ids("road-links", "?bbox=150.0499,-30.5001,150.0501,-30.4999"))
                .hasSize(4);
    }

    private List<String> ids(String collection, String query) throws Exception {
        Path path = folder.resolve("layer.gpkg");
        Files.write(path, file(CARER, "/collections/" + collection + "/layer.gpkg" + query));
        List<String> ids = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + path);
                ResultSet rows = connection
                        .createStatement()
                        .executeQuery("SELECT id FROM \"" + collection.replace('-', '_') + "\" ORDER BY fid")) {
            while (rows.next()) {
                ids.add(rows.getString(1));
            }
        }
        return ids;
    }

    /** A file tells nobody a column, a place or a row that a page would not tell them. */
    @Test
    void aFileTellsNoMoreThanAPage() throws Exception {
        Api.make(DISPATCHER, "/api/calls", """
                {"receivedAt":"1982-03-05T08:00:00Z","happenedAt":"1982-03-05T08:00:00Z","cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"Wallabia bicolor"}],
                 "place":{"decimalDegrees":{"latitude":"-30.5001230","longitude":"150.0476540"}}}
                """);
        String of = "?datetime=1982-01-01/1982-12-31";
        for (String role : new String[] {null, OFFICER, COORDINATOR}) {
            JsonNode paged = new ObjectMapper().readTree(file(role, "/collections/collisions/items" + of));
            JsonNode whole = new ObjectMapper().readTree(file(role, "/collections/collisions/layer.geojson" + of));
            assertThat(whole.get("features")).isEqualTo(paged.get("features"));
            assertThat(whole.get("features").size()).isPositive();
            JsonNode first = whole.get("features").get(0);
            try (CSVParser table = CSVParser.parse(
                    new StringReader(
                            new String(file(role, "/collections/collisions/layer.csv" + of), StandardCharsets.UTF_8)),
                    CSVFormat.RFC4180
                            .builder()
                            .setHeader()
                            .setSkipHeaderRecord(true)
                            .get())) {
                Set<String> told = new HashSet<>(table.getHeaderNames());
                told.removeAll(Set.of("id", "lon", "lat"));
                Set<String> shown = new HashSet<>();
                first.get("properties").fieldNames().forEachRemaining(shown::add);
                assertThat(told).isEqualTo(shown);
                CSVRecord row = table.getRecords().get(0);
                assertThat(Double.parseDouble(row.get("lat")))
                        .isEqualTo(
                                first.get("geometry").get("coordinates").get(1).asDouble());
            }
        }
        assertThat(Layers.status(null, "/collections/incidents/layer.csv")).isEqualTo(401);
        assertThat(Layers.status(ROADS_AUTHORITY, "/collections/incidents/layer.gpkg"))
                .isEqualTo(403);
        assertThat(Layers.status(CARER, "/collections/nothing/layer.gpkg")).isEqualTo(404);
    }

    @Test
    void whatIsNoParameterOfAFileIsRefusedByName() {
        for (String parameter : List.of("limit=5", "cursor=a", "colour=red", "bbox=1,2,3", "datetime=yesterday")) {
            String body = Layers.by(CARER)
                    .get(Layers.root() + "/collections/collisions/layer.csv?" + parameter)
                    .then()
                    .statusCode(400)
                    .extract()
                    .asString();
            assertThat(body).contains("\"" + parameter.replaceFirst("=.*", "") + "\"");
        }
    }

    @Test
    void aCollectionNamesItsFiles() {
        assertThat(Layers.get(CARER, "/collections/road-links").<String>getList("links.href"))
                .contains(
                        Layers.root() + "/collections/road-links/layer.gpkg",
                        Layers.root() + "/collections/road-links/layer.geojson",
                        Layers.root() + "/collections/road-links/layer.csv");
    }
}
