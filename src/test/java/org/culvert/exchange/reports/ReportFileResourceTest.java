package org.culvert.exchange.reports;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.culvert.hotspot.works.WorksWorlds;
import org.culvert.support.Api;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files of reports against the same reports in JSON, number by number. */
@QuarkusTest
class ReportFileResourceTest {
    private static final String OF_TURTLES = "?taxonGroup=turtles&yearFrom=2016&yearTo=2018";

    @TempDir
    Path folder;

    @BeforeEach
    void makeWorld() {
        WorksWorlds.make();
    }

    private static JsonNode json(String role, String path) throws Exception {
        return new ObjectMapper()
                .readTree(
                        Api.as(role).get(path).then().statusCode(200).extract().asString());
    }

    private static List<CSVRecord> table(String role, String path) throws Exception {
        String text = Api.as(role).get(path).then().statusCode(200).extract().asString();
        try (CSVParser parser = CSVParser.parse(
                new StringReader(text),
                CSVFormat.RFC4180
                        .builder()
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())) {
            return parser.getRecords();
        }
    }

    private static void requireSame(JsonNode told, CSVRecord row) {
        assertThat(row.getParser().getHeaderNames()).containsExactlyInAnyOrderElementsOf(told::fieldNames);
        told.fieldNames().forEachRemaining(name -> {
            String cell = row.get(name);
            JsonNode value = told.get(name);
            if (value.isNull()) {
                assertThat(cell).as(name).isEmpty();
            } else if (value.isNumber()) {
                assertThat(Double.parseDouble(cell)).as(name).isEqualTo(value.asDouble());
            } else {
                assertThat(cell).as(name).isEqualTo(value.asText());
            }
        });
    }

    @Test
    void windowsOfABurdenAreTheSameInEveryForm() throws Exception {
        JsonNode windows = json(COORDINATOR, "/api/burden" + OF_TURTLES).get("windows");
        assertThat(windows.size()).isPositive();
        List<CSVRecord> rows = table(COORDINATOR, "/api/burden/windows.csv" + OF_TURTLES);
        JsonNode features =
                json(COORDINATOR, "/api/burden/windows.geojson" + OF_TURTLES).get("features");
        assertThat(rows).hasSize(windows.size());
        assertThat(features.size()).isEqualTo(windows.size());
        for (int i = 0; i < windows.size(); i++) {
            requireSame(windows.get(i), rows.get(i));
            JsonNode properties = features.get(i).get("properties");
            windows.get(i)
                    .properties()
                    .forEach(one -> assertThat(properties.get(one.getKey()).asText())
                            .as(one.getKey())
                            .isEqualTo(one.getValue().asText()));
            assertThat(features.get(i).get("geometry").get("type").asText()).isEqualTo("MultiLineString");
            assertThat(features.get(i).get("geometry").get("coordinates").get(0).size())
                    .isGreaterThan(1);
        }
        Path file = folder.resolve("windows.gpkg");
        Files.write(
                file,
                Api.as(COORDINATOR)
                        .get("/api/burden/windows.gpkg" + OF_TURTLES)
                        .then()
                        .statusCode(200)
                        .contentType("application/geopackage+sqlite3")
                        .extract()
                        .asByteArray());
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                ResultSet row = connection
                        .createStatement()
                        .executeQuery("SELECT rank, road, excess, geom FROM burden_windows ORDER BY fid")) {
            for (JsonNode window : windows) {
                assertThat(row.next()).isTrue();
                assertThat(row.getInt(1)).isEqualTo(window.get("rank").asInt());
                assertThat(row.getString(2)).isEqualTo(window.get("road").asText());
                assertThat(row.getDouble(3)).isEqualTo(window.get("excess").asDouble());
                assertThat(row.getBytes(4)).startsWith('G', 'P');
            }
            assertThat(row.next()).isFalse();
        }
    }

    @Test
    void whatWorksDidIsATableOfItsParts() throws Exception {
        String id = WorksWorlds.fence();
        JsonNode parts = json(COORDINATOR, "/api/works/" + id + "/effect?taxonGroup=turtles")
                .get("parts");
        List<CSVRecord> rows = table(COORDINATOR, "/api/works/" + id + "/effect.csv?taxonGroup=turtles");
        assertThat(rows).hasSize(parts.size()).isNotEmpty();
        for (int i = 0; i < parts.size(); i++) {
            requireSame(parts.get(i), rows.get(i));
        }
        JsonNode features = json(COORDINATOR, "/api/works/" + id + "/effect.geojson?taxonGroup=turtles")
                .get("features");
        for (JsonNode feature : features) {
            boolean inside = feature.get("properties").get("part").asText().equals("inside");
            assertThat(feature.get("geometry").isNull()).isEqualTo(!inside);
        }
    }

    @Test
    void countsAreARowARoadAndAColumnAYear() throws Exception {
        String period = "?from=2016-01-01&to=2018-12-31&taxonGroup=turtles";
        for (String role : List.of(COORDINATOR, ROADS_AUTHORITY, OFFICER)) {
            JsonNode told = json(role, "/api/collision-counts" + period);
            List<CSVRecord> rows = table(role, "/api/collision-counts.csv" + period);
            assertThat(rows).hasSize(told.get("roads").size() + 1);
            for (int road = 0; road < told.get("roads").size(); road++) {
                JsonNode one = told.get("roads").get(road);
                assertThat(rows.get(road).get("roadName"))
                        .isEqualTo(one.get("roadName").asText());
                for (int year = 0; year < told.get("years").size(); year++) {
                    JsonNode count = one.get("incidents").get(year);
                    assertThat(rows.get(road).get(told.get("years").get(year).asText()))
                            .isEqualTo(count.isNull() ? "" : count.asText());
                }
            }
        }
        assertThat(json(COORDINATOR, "/api/collision-counts" + period)
                        .get("total")
                        .asInt())
                .isPositive();
    }

    @Test
    void seasonsAreRowsOfMonthsHoursAndLight() throws Exception {
        String period = "?periodFrom=2016-01-01&periodTo=2018-12-31&taxonGroup=turtles";
        JsonNode season = json(COORDINATOR, "/api/collision-seasons" + period).get("season");
        List<CSVRecord> rows = table(COORDINATOR, "/api/collision-seasons.csv" + period);
        List<CSVRecord> months =
                rows.stream().filter(row -> row.get("by").equals("month")).toList();
        assertThat(months).hasSize(12);
        int sum = 0;
        for (int month = 0; month < 12; month++) {
            assertThat(months.get(month).get("collisions"))
                    .isEqualTo(season.get("months").get(month).asText());
            sum += Integer.parseInt(months.get(month).get("collisions"));
        }
        assertThat(sum).isEqualTo(season.get("collisions").asInt()).isPositive();
        assertThat(rows.stream().filter(row -> row.get("by").equals("hour"))).hasSize(24);
        assertThat(rows.stream().filter(row -> row.get("by").equals("light")))
                .hasSize(season.get("light").get("classes").size());
    }

    @Test
    void otherFormsAndOtherAskersAreRefused() {
        Api.as(COORDINATOR).get("/api/burden/windows.xls" + OF_TURTLES).then().statusCode(404);
        Api.as(RESCUER).get("/api/burden/windows.csv" + OF_TURTLES).then().statusCode(403);
        Api.as(OFFICER).get("/api/burden/windows.csv" + OF_TURTLES).then().statusCode(403);
        Api.as(COORDINATOR)
                .get("/api/burden/windows.csv?yearFrom=nineteen")
                .then()
                .statusCode(400);
    }
}
