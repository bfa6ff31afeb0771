package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.culvert.platform.Patience;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
@OnOldestDatabase
class HotspotRunResourceTest {
    private static final String WALLABIES = ",\"taxonGroup\":\"macropods\"";

    @BeforeEach
    void makeWorld() {
        EvidenceWorld.make();
    }

    private static Json result(String id) {
        return Api.get(COORDINATOR, "/api/hotspot-runs/" + id + "/result");
    }

    @Test
    void thePlantedStretchIsFoundAndNothingElse() {
        Json result = result(EvidenceWorld.run(WALLABIES));
        assertThat(result.getList("hotspots")).hasSize(1);
        assertThat(result.getString("hotspots[0].road")).isEqualTo("Row Road 4");
        assertThat(result.getString("hotspots[0].owner")).isEqualTo("Lower Shire");
        assertThat(result.getInt("hotspots[0].incidents")).isEqualTo(EvidenceWorld.PLANTED);
        assertThat(result.getDouble("hotspots[0].adjustedP")).isEqualTo(0.001);
        // 0.05 degrees of longitude at 31.42 S from the road's start are 4.75 km; the eight lie within 134 m
        assertThat(result.getDouble("hotspots[0].fromChainageMetres")).isBetween(4650.0, 4760.0);
        assertThat(result.getDouble("hotspots[0].toChainageMetres")).isBetween(4880.0, 4990.0);
        assertThat(result.getDouble("hotspots[0].from.decimalLatitude")).isEqualTo(EvidenceWorld.SOUTH + 0.08);
        assertThat(result.getBoolean("errorRate.claimed")).isTrue();
        assertThat(result.getString("errorRate.sentence"))
                .contains("a random pick from the reports of collisions with all animals", "5 %", "exploratory");
    }

    @Test
    void everyIncidentIsCountedOnceOrLeftOutForAReason() {
        Json result = result(EvidenceWorld.run(WALLABIES));
        int wallabies = EvidenceWorld.PLANTED + EvidenceWorld.SCATTERED_WALLABIES + 2;
        assertThat(result.getInt("inputs.placedByJunction")).isEqualTo(1);
        assertThat(result.getInt("inputs.collisionsCounted")).isEqualTo(wallabies);
        assertThat(result.getInt("inputs.collisionsOfAllAnimals"))
                .isEqualTo(wallabies + EvidenceWorld.SCATTERED_TURTLES);
        Map<String, Integer> leftOut = new java.util.HashMap<>();
        for (Map<String, Object> reason : result.<Map<String, Object>>getList("leftOut")) {
            leftOut.put((String) reason.get("reason"), (Integer) reason.get("incidents"));
        }
        assertThat(leftOut)
                .containsEntry("joined to another incident, which counts", 1)
                .containsEntry("the cause is not a collision", 1)
                .containsEntry("no place was given", 1)
                .containsEntry("no road is near the place", 1)
                .containsEntry("roads that do not meet near there are equally likely", 1)
                .containsEntry("the time is not known well enough to say whether it was in the season", 1)
                .containsEntry("another kind of animal", EvidenceWorld.SCATTERED_TURTLES)
                .containsEntry("outside the season", 0);
        int all = leftOut.values().stream().mapToInt(Integer::intValue).sum();
        assertThat(result.getInt("inputs.incidentsInPeriod")).isEqualTo(wallabies + all);
        assertThat(result.<Integer>getList("months.incidents").stream()
                        .mapToInt(Integer::intValue)
                        .sum())
                .isEqualTo(wallabies);
    }

    @Test
    void theSameRunTwiceGivesTheSameBytes() {
        String one = EvidenceWorld.run(WALLABIES);
        String two = EvidenceWorld.run(WALLABIES);
        assertThat(two).isNotEqualTo(one);
        byte[] bytes = bytes(one);
        assertThat(bytes(two)).isEqualTo(bytes);
        assertThat(new String(bytes, java.nio.charset.StandardCharsets.UTF_8)).doesNotContain(one);
        String other = EvidenceWorld.run(WALLABIES + ",\"seed\":2");
        assertThat(bytes(other)).isNotEqualTo(bytes);
    }

    private static byte[] bytes(String id) {
        return Api.as(ROADS_AUTHORITY)
                .get("/api/hotspot-runs/" + id + "/result")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
    }

    @Test
    void aRunIsTakenOnAtOnceAndTellsHowFarItHasCome() {
        String location = Api.post(COORDINATOR, "/api/hotspot-runs", EvidenceWorld.entry(null))
                .statusCode(202)
                .header("Location", containsString("/api/hotspot-runs/"))
                .body("simulationsTotal", equalTo(999))
                .body("declared", equalTo(false))
                .body("settings.chance", equalTo("per-traffic-and-class"))
                .extract()
                .header("Location");
        Patience.until(
                "the run to be done",
                () -> Api.as(COORDINATOR)
                        .get(location)
                        .then()
                        .statusCode(200)
                        .extract()
                        .jsonPath()
                        .getString("state")
                        .equals("done"));
        Json run = Api.as(COORDINATOR).get(location).then().extract().jsonPath();
        assertThat(run.getInt("simulationsDone")).isEqualTo(999);
        assertThat(run.getInt("timesBegun")).isEqualTo(1);
        assertThat(run.getString("documentSha256")).hasSize(64);
        assertThat(run.getString("result.geoJson")).endsWith("/hotspots.geojson");
    }

    @Test
    void anotherSeasonHasAnotherAnswer() {
        Json result = result(EvidenceWorld.run(WALLABIES + ",\"months\":[1,2,3]"));
        assertThat(result.getList("hotspots")).isEmpty();
        assertThat(result.getList("settings.season.months", Integer.class)).containsExactly(1, 2, 3);
        assertThat(result.getInt("inputs.collisionsCounted")).isLessThan(EvidenceWorld.SCATTERED_WALLABIES);
    }

    @Test
    void anAuthoritySeesItsOwnStretchesOnly() {
        assertThat(result(EvidenceWorld.run(WALLABIES + ",\"owner\":\"Lower Shire\""))
                        .getList("hotspots"))
                .hasSize(1);
        assertThat(result(EvidenceWorld.run(WALLABIES + ",\"owner\":\"Upper Shire\""))
                        .getList("hotspots"))
                .isEmpty();
    }

    @Test
    void aRunThatDoesNotControlReportingClaimsNoErrorRate() {
        Json result = result(EvidenceWorld.run(WALLABIES + ",\"chance\":\"per-kilometre\""));
        assertThat(result.getBoolean("errorRate.claimed")).isFalse();
        assertThat(result.getString("errorRate.sentence"))
                .contains("not claimed of the real roads", "every kilometre", "near towns");
        assertThat(result.getList("errorRate.notControlled")).hasSizeGreaterThanOrEqualTo(2);
    }

    @Test
    void runsThatWereDecidedOnTogetherShareTheErrorRate() {
        Json result = result(
                EvidenceWorld.run(WALLABIES + ",\"declaration\":{\"cells\":10,\"plan\":\"minutes of 1 July 2018\"}"));
        assertThat(result.getDouble("errorRate.alpha")).isEqualTo(0.005);
        assertThat(result.getString("errorRate.sentence"))
                .contains("one of 10 runs")
                .doesNotContain("exploratory");
    }

    /** RFC 7946: longitude before latitude, no crs member; flat properties, every one always there. */
    @Test
    void hotspotsAreGeoJson() {
        Json features = Api.as(ROADS_AUTHORITY)
                .get("/api/hotspot-runs/" + EvidenceWorld.run(WALLABIES) + "/hotspots.geojson")
                .then()
                .statusCode(200)
                .contentType("application/geo+json")
                .extract()
                .jsonPath();
        assertThat(features.getString("type")).isEqualTo("FeatureCollection");
        assertThat(features.<Object>get("crs")).isNull();
        assertThat(features.getString("features[0].geometry.type")).isEqualTo("LineString");
        assertThat(features.getDouble("features[0].geometry.coordinates[0][0]")).isBetween(150.54, 150.56);
        assertThat(features.getDouble("features[0].geometry.coordinates[0][1]")).isEqualTo(EvidenceWorld.SOUTH + 0.08);
        Map<String, Object> properties = features.getMap("features[0].properties");
        assertThat(properties)
                .containsEntry("rank", 1)
                .containsEntry("chance", "per-all-reports")
                .containsKeys("owner", "adjustedP", "expected", "errorRateClaimed");
        assertThat(properties.values()).noneMatch(value -> value instanceof Map || value instanceof List);
    }

    /** RFC 4180. */
    @Test
    void hotspotsAreCsv() throws IOException {
        String csv = Api.as(ROADS_AUTHORITY)
                .get("/api/hotspot-runs/" + EvidenceWorld.run(WALLABIES) + "/hotspots.csv")
                .then()
                .statusCode(200)
                .contentType(startsWith("text/csv"))
                .extract()
                .asString();
        assertThat(csv).contains("\r\n");
        List<CSVRecord> rows = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new StringReader(csv))
                .getRecords();
        assertThat(rows).hasSize(1);
        assertThat(rows.get(0).get("road")).isEqualTo("Row Road 4");
        assertThat(rows.get(0).get("incidents")).isEqualTo("8");
        assertThat(rows.get(0).get("fromDecimalLongitude")).startsWith("150.5");
    }

    @ParameterizedTest
    @ValueSource(strings = {DISPATCHER, RESCUER, CLINIC, CARER, OFFICER})
    void otherRolesAreNotEntitled(String role) {
        Api.post(role, "/api/hotspot-runs", EvidenceWorld.entry(null)).statusCode(403);
        Api.as(role).get("/api/hotspot-runs").then().statusCode(403);
        Api.as(role).get("/hotspots").then().statusCode(403);
    }

    @Test
    void whatARoadsAuthorityGetsNamesNoPersonAndNoAnimal() {
        String text = new String(bytes(EvidenceWorld.run(WALLABIES)), java.nio.charset.StandardCharsets.UTF_8);
        assertThat(text).doesNotContainIgnoringCase("caller", "carer", "Wallabia", "incidentId", "happenedAt");
        Api.as(ROADS_AUTHORITY).get("/api/incidents").then().statusCode(403);
    }

    @Test
    void whatIsWrongIsSaidAllAtOnceWithWhatWouldBeRight() {
        Api.post(ADMIN, "/api/hotspot-runs", """
                        {"periodFrom":"2019-12-31","periodTo":"2019-01-01","taxonGroup":"dragons","owner":"Nobody",
                         "chance":"per-head","simulations":19,"alpha":0.01,"pieceMetres":400}
                        """)
                .statusCode(400)
                .contentType("application/problem+json")
                .body("errors.field", hasItem("periodTo"))
                .body("errors.field", hasItem("taxonGroup"))
                .body("errors.field", hasItem("owner"))
                .body("errors.field", hasItem("chance"))
                .body("errors.field", hasItem("pieceMetres"))
                .body("errors.find { it.field == 'simulations' }.wanted", equalTo("at least 99"))
                .body("errors.find { it.field == 'owner' }.wanted", containsString("Upper Shire"));
        Api.post(ADMIN, "/api/hotspot-runs", EvidenceWorld.entry(",\"chance\":\"per-all-reports\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("chance"));
        Api.post(ADMIN, "/api/hotspot-runs", "{}").statusCode(400).body("errors.field", hasItem("periodFrom"));
        Api.post(ADMIN, "/api/hotspot-runs", EvidenceWorld.entry(",\"months\":[13]"))
                .statusCode(400)
                .body("errors[0].field", startsWith("months"));
        Api.as(ADMIN)
                .get("/api/hotspot-runs/00000000-0000-7000-8000-000000000000")
                .then()
                .statusCode(404);
    }

    /** From 1 November across the new year to 31 January: an invented window, for the southern hemisphere. */
    @Test
    void aSeasonWindowIsDataAndMayCrossTheNewYear() {
        String name = "test window " + System.nanoTime();
        Api.make(COORDINATOR, "/api/season-windows", """
                {"taxonGroup":"turtles","name":"%s","hemisphere":"southern","from":"--11-01","to":"--01-31",
                 "source":"invented for a test","readOn":"2020-01-01","validFrom":"2010-01-01"}
                """.formatted(name));
        Json result = result(EvidenceWorld.run(",\"taxonGroup\":\"turtles\",\"seasonWindow\":\"" + name + "\""));
        List<Integer> months = result.getList("months.incidents", Integer.class);
        assertThat(months.subList(1, 10)).containsOnly(0);
        assertThat(months.get(0)).isPositive();
        assertThat(months.get(11)).isPositive();
        assertThat(result.getString("settings.season.source")).isEqualTo("invented for a test");
        Api.post(
                        ROADS_AUTHORITY,
                        "/api/hotspot-runs",
                        EvidenceWorld.entry(WALLABIES + ",\"seasonWindow\":\"" + name + "\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("seasonWindow"));
        Api.post(ROADS_AUTHORITY, "/api/season-windows", "{}").statusCode(403);
        Api.post(COORDINATOR, "/api/season-windows", """
                        {"taxonGroup":"turtles","name":"%s","hemisphere":"southern","from":"--11-01","to":"--01-31",
                         "source":"twice","readOn":"2020-01-01","validFrom":"2015-01-01"}
                        """.formatted(name))
                .statusCode(409)
                .body("detail", containsString("already"));
    }

    @Test
    void aGroupThatIsAllThereIsCannotBeComparedWithAllReports() {
        int year = EvidenceWorld.year() - 1;
        for (int i = 0; i < 3; i++) {
            EvidenceWorld.call(
                    "Wallabia bicolor",
                    EvidenceWorld.SOUTH + EvidenceWorld.STEP,
                    EvidenceWorld.WEST + 0.005,
                    year + "-03-0" + (i + 1));
        }
        String period = ",\"periodFrom\":\"" + year + "-01-01\",\"periodTo\":\"" + year + "-11-30\"";
        String id = Api.post(ROADS_AUTHORITY, "/api/hotspot-runs", "{\"taxonGroup\":\"macropods\"" + period + "}")
                .statusCode(202)
                .extract()
                .path("id");
        Patience.until(
                "the run to fail",
                () -> Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id)
                        .getString("state")
                        .equals("failed"));
        assertThat(Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id).getString("failure"))
                .contains("nothing to compare", "per-traffic-and-class");
        Api.as(ROADS_AUTHORITY)
                .get("/api/hotspot-runs/" + id + "/result")
                .then()
                .statusCode(409);
        Api.as(ROADS_AUTHORITY)
                .get("/hotspots/" + id)
                .then()
                .statusCode(200)
                .body(containsString("could not be computed"));
    }

    @Test
    void exploratoryRunsAreCounted() {
        long before = Api.get(ROADS_AUTHORITY, "/api/hotspot-runs?limit=1").getLong("items[0].exploratoryRunsSoFar");
        EvidenceWorld.run(",\"simulations\":19");
        Json list = Api.get(ROADS_AUTHORITY, "/api/hotspot-runs?limit=1");
        assertThat(list.getLong("items[0].exploratoryRunsSoFar")).isEqualTo(before + 1);
        assertThat(list.getString("next")).isNotEmpty();
    }

    @Test
    void aRoadsAuthorityIsToldNoSmallNumberOfAMonth() {
        String id = EvidenceWorld.run(WALLABIES);
        List<Integer> whole = result(id).getList("months.incidents", Integer.class);
        List<Integer> told = Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id + "/result")
                .getList("months.incidents", Integer.class);
        assertThat(told.stream().filter(java.util.Objects::isNull).count()).isNotEqualTo(1);
        for (int month = 0; month < 12; month++) {
            Integer shown = told.get(month);
            assertThat(shown == null || shown.equals(whole.get(month))).isTrue();
            assertThat(shown == null || shown == 0 || shown >= 5).isTrue();
        }
    }

    @Test
    void aRoadsAuthorityIsToldNoStretchOfASensitiveAnimal() {
        String id = EvidenceWorld.run(WALLABIES);
        String taxon = Api.get(COORDINATOR, "/api/taxa?q=Wallabia").getString("[0].id");
        settle(taxon, "{\"gridDegrees\":0,\"reason\":\"for this test\",\"reviewBy\":\"2090-01-01\"}");
        try {
            Json told = Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id + "/result");
            assertThat(told.getList("hotspots")).isEmpty();
            assertThat(told.getString("informationWithheld")).contains("sensitive");
            assertThat(Api.as(ROADS_AUTHORITY)
                            .get("/api/hotspot-runs/" + id + "/hotspots.geojson")
                            .jsonPath()
                            .getList("features"))
                    .isEmpty();
            assertThat(Api.as(ROADS_AUTHORITY)
                            .get("/api/hotspot-runs/" + id + "/hotspots.csv")
                            .asString()
                            .lines())
                    .hasSize(1);
            assertThat(Api.as(ROADS_AUTHORITY).get("/hotspots/" + id).asString())
                    .contains("are not told to you")
                    .doesNotContain("hotspot-1");
            assertThat(result(id).getList("hotspots")).isNotEmpty();
        } finally {
            settle(taxon, "{\"reason\":\"after the test\"}");
        }
        assertThat(Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id + "/result")
                        .getList("hotspots"))
                .isNotEmpty();
    }

    @Test
    void aRoadsAuthorityIsToldStretchesOfASensitiveAnimalByCellsOfItsCategory() {
        String id = EvidenceWorld.run(WALLABIES);
        String taxon = Api.get(COORDINATOR, "/api/taxa?q=Wallabia").getString("[0].id");
        settle(taxon, "{\"gridDegrees\":0.01,\"reason\":\"for this test\",\"reviewBy\":\"2090-01-01\"}");
        try {
            List<Map<String, Object>> exact = result(id).getList("hotspots");
            Json told = Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id + "/result");
            List<Map<String, Object>> general = told.getList("hotspots");
            assertThat(general).isNotEmpty();
            assertThat(told.getString("informationWithheld")).contains("0.01 degree");
            for (Map<String, Object> stretch : general) {
                Map<String, Object> whole = exact.stream()
                        .filter(other -> other.get("rank").equals(stretch.get("rank")))
                        .findFirst()
                        .orElseThrow();
                assertThat(stretch.get("road")).isEqualTo(whole.get("road"));
                assertThat(metres(stretch, "fromChainageMetres"))
                        .isLessThanOrEqualTo(metres(whole, "fromChainageMetres"));
                assertThat(metres(stretch, "toChainageMetres"))
                        .isGreaterThanOrEqualTo(metres(whole, "toChainageMetres"));
                assertThat(metres(stretch, "fromChainageMetres") % 1111).isZero();
                assertThat((int) stretch.get("incidents")).isGreaterThanOrEqualTo(5);
            }
            // What is drawn is a box, the same on the page as in the files.
            assertThat(Api.as(ROADS_AUTHORITY)
                            .get("/api/hotspot-runs/" + id + "/hotspots.geojson")
                            .jsonPath()
                            .getList("features[0].geometry.coordinates"))
                    .hasSize(5);
            assertThat(Api.as(ROADS_AUTHORITY).get("/hotspots/" + id).asString())
                    .contains("within the box");
        } finally {
            settle(taxon, "{\"reason\":\"after the test\"}");
        }
    }

    private static double metres(Map<String, Object> stretch, String field) {
        return ((Number) stretch.get(field)).doubleValue();
    }

    private static void settle(String taxon, String sensitivity) {
        Api.as(COORDINATOR)
                .header("If-Match", Api.tag(COORDINATOR, "/api/taxa/" + taxon))
                .body(sensitivity)
                .put("/api/taxa/" + taxon + "/sensitivity")
                .then()
                .statusCode(200);
    }
}
