package org.culvert.exchange.occurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.equalTo;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.culvert.platform.Role;
import org.culvert.platform.sight.Sight;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What leaks, if anything does, of a species whose places are withheld and of one told to a tenth of a degree. */
@QuarkusTest
class OccurrenceResourceTest {
    private static final String WITHHELD = "Occultus omnino";
    private static final String TENTH = "Rarus decimus";
    private static final String COMMON = "Vulgaris communis";
    private static final String WORDS = "-30.5001230, 150.0476540";

    @Inject
    AgroalDataSource database;

    @BeforeEach
    void makeWorld() {
        World.shared();
        Api.post(COORDINATOR, "/api/taxon-groups", """
                        [{"key":"occult","name":"occult animals","pouch":false,"clutches":false,"introduced":false},
                         {"key":"rare","name":"rare animals","pouch":false,"clutches":false,"introduced":false},
                         {"key":"common","name":"common animals","pouch":false,"clutches":false,"introduced":false}]
                        """).statusCode(200);
        Api.post(COORDINATOR, "/api/taxa", """
                        [{"scientificName":"%s","vernacularName":"hidden one","taxonRank":"species","taxonGroup":"occult",
                          "sensitivityGridDegrees":0,"sensitivityReason":"poached","sensitivityReviewBy":"2090-01-01"},
                         {"scientificName":"%s","vernacularName":"rare one","taxonRank":"species","taxonGroup":"rare",
                          "sensitivityGridDegrees":0.1,"sensitivityReason":"kept","sensitivityReviewBy":"2020-01-01"},
                         {"scientificName":"%s","vernacularName":"common one","taxonRank":"species",
                          "taxonGroup":"common"}]
                        """.formatted(WITHHELD, TENTH, COMMON))
                .statusCode(200);
    }

    private static String found(String animals, String at) {
        return Api.make(DISPATCHER, "/api/calls", """
                        {"receivedAt":"%s","happenedAt":"%s","cause":"collisionWithVehicle","animals":[%s],
                         "words":"by the hidden spring",
                         "place":{"decimalDegrees":{"latitude":"-30.5001230","longitude":"150.0476540"}}}
                        """.formatted(at, at, animals))
                .getString("incidentId");
    }

    private static double degrees(Object number) {
        return ((Number) number).doubleValue();
    }

    private static String one(String scientificName) {
        return "{\"scientificName\":\"" + scientificName + "\"}";
    }

    /** Every row of a filter, page after page, as a role or nobody sees it. */
    private static List<Map<String, Object>> all(@Nullable String role, String filter) {
        List<Map<String, Object>> all = new ArrayList<>();
        String cursor = "";
        while (cursor != null) {
            Json page = (role == null ? Request.given() : Api.as(role))
                    .get("/api/occurrences?limit=1000" + filter + cursor)
                    .then()
                    .statusCode(200)
                    .extract()
                    .jsonPath();
            all.addAll(page.getList("items"));
            cursor = page.getString("next") == null ? null : "&cursor=" + page.getString("next");
        }
        return all;
    }

    @Test
    void whatIsWithheldIsInNoPublicAnswerAndOfficersSeeItExactly() {
        String incident = found(one(WITHHELD), "1998-03-05T08:00:00Z");
        for (String role : Role.ALL) {
            if (!List.of(COORDINATOR, OFFICER).contains(role)) {
                assertThat(all(role, "&taxonGroup=occult")).as(role).isEmpty();
                assertThat(all(role, "").toString()).as(role).doesNotContain(WITHHELD, "hidden one", incident);
            }
        }
        assertThat(all(null, "&taxonGroup=occult&bbox=149,-32,152,-29")).isEmpty();
        assertThat(all(OFFICER, "&taxonGroup=occult")).anySatisfy(row -> {
            assertThat(row).containsEntry("incidentId", incident).containsEntry("eventDate", "1998-03-05T08:00:00Z");
            assertThat(degrees(row.get("decimalLatitude"))).isCloseTo(-30.500123, within(1e-5));
        });
    }

    @Test
    void aTenthOfADegreeIsTheCentreOfTheCellAndTheYear() {
        String incident = found(one(TENTH), "1997-03-05T08:00:00Z");
        Map<String, Object> row =
                all(null, "&taxonGroup=rare&from=1997-01-01&to=1997-12-31").get(0);
        assertThat(row.get("decimalLatitude")).hasToString("-30.55");
        assertThat(row.get("decimalLongitude")).hasToString("150.05");
        assertThat(((Number) row.get("coordinateUncertaintyInMeters")).doubleValue())
                .isGreaterThan(7_000);
        assertThat(row).containsEntry("eventDate", "1997").containsEntry("scientificName", TENTH);
        assertThat(row.get("dataGeneralizations").toString()).contains("0.1 degree");
        assertThat(row.get("informationWithheld").toString()).contains("season");
        assertThat(row).doesNotContainKeys("verbatimLocality", "locality", "incidentId", "day", "strictness", "own");
        for (String role : List.of(ROADS_AUTHORITY, DISPATCHER, CARER, ADMIN, RECIPIENT)) {
            String told = all(role, "").toString();
            assertThat(told)
                    .as(role)
                    .doesNotContain("-30.5001", "150.0476", WORDS, "hidden spring", incident, "1997-03");
        }
    }

    @Test
    void filtersWorkOnWhatIsTold() {
        found(one(TENTH), "1996-03-05T08:00:00Z");
        String year = "&taxonGroup=rare&from=1996-01-01&to=1996-12-31";
        String exactly = "&bbox=150.0476,-30.5002,150.0477,-30.5001";
        String centre = "&bbox=150.0499,-30.5501,150.0501,-30.5499";
        assertThat(all(null, year)).hasSize(1);
        assertThat(all(null, year + exactly)).as("about the place itself").isEmpty();
        assertThat(all(null, year + centre)).as("about the centre of its cell").hasSize(1);
        assertThat(all(OFFICER, year + exactly)).hasSize(1);
        assertThat(all(OFFICER, year + centre)).isEmpty();
        // Any days of the year give the same answer: none of them tells the season.
        for (String days : List.of("&from=1996-03-05&to=1996-03-05", "&from=1996-09-01&to=1996-09-02")) {
            assertThat(all(null, "&taxonGroup=rare" + days)).as(days).hasSize(1);
        }
        assertThat(all(OFFICER, "&taxonGroup=rare&from=1996-09-01&to=1996-09-02"))
                .isEmpty();
    }

    @Test
    void theStrictestOfAllAnimalsAtAPlaceCounts() {
        found(one(COMMON), "1995-03-05T08:00:00Z");
        found(one(COMMON) + "," + one(TENTH), "1994-03-05T08:00:00Z");
        found(one(COMMON) + ",{\"taxonGroup\":\"rare\"}", "1993-03-05T08:00:00Z");
        found(one(COMMON) + "," + one(WITHHELD), "1992-03-05T08:00:00Z");
        String common = "&taxonGroup=common&from=%1$d-01-01&to=%1$d-12-31";
        Map<String, Object> alone = all(null, common.formatted(1995)).get(0);
        assertThat(alone.get("decimalLatitude")).hasToString("-30.505");
        assertThat(alone).containsEntry("eventDate", "1995-03-05");
        for (int year : List.of(1994, 1993)) {
            Map<String, Object> row = all(null, common.formatted(year)).get(0);
            assertThat(row.get("decimalLatitude")).as("in " + year).hasToString("-30.55");
            assertThat(row).containsEntry("eventDate", Integer.toString(year));
        }
        assertThat(all(null, common.formatted(1992))).isEmpty();
    }

    /** Single records are asked of one view, lists of the other. */
    @Test
    void anIncidentIsAsStrictAloneAsAmongAll() throws SQLException {
        String hidden = found(one(WITHHELD), "1998-04-05T08:00:00Z");
        String common = found(one(COMMON), "1998-04-06T08:00:00Z");
        found("{\"taxonGroup\":\"rare\"}", "1998-04-07T08:00:00Z");
        found("{\"verbatimIdentification\":\"something\"}", "1998-04-08T08:00:00Z");
        Api.as(DISPATCHER)
                .body("{\"incidentId\":\"%s\",\"reason\":\"one animal\"}".formatted(common))
                .post("/api/incidents/" + hidden + "/joins")
                .then()
                .statusCode(200);
        try (var connection = database.getConnection();
                var told = connection.createStatement().executeQuery("""
                        select alone.id, alone.strictness, among.strictness
                        from incident_strictness alone full join every_incident_strictness among on among.id = alone.id
                        """)) {
            Map<String, Double> strictness = new HashMap<>();
            while (told.next()) {
                assertThat(told.getObject(3)).as(told.getString(1)).isEqualTo(told.getObject(2));
                strictness.put(told.getString(1), told.getDouble(3));
            }
            assertThat(strictness).containsEntry(common, Sight.WITHHELD).containsEntry(hidden, Sight.WITHHELD);
            assertThat(new HashSet<>(strictness.values())).hasSizeGreaterThan(2);
        }
    }

    @Test
    void nothingNewIsPublicAndIdentifiersTellNothing() {
        String incident =
                Api.make(DISPATCHER, "/api/calls", """
                        {"cause":"collisionWithVehicle","animals":[{"scientificName":"%s"}],
                         "place":{"decimalDegrees":{"latitude":"-30.5001230","longitude":"150.0476540"}}}
                        """.formatted(COMMON)).getString("incidentId");
        List<Map<String, Object>> exact = all(OFFICER, "&taxonGroup=common");
        Object identifier = exact.stream()
                .filter(row -> incident.equals(row.get("incidentId")))
                .map(row -> row.get("occurrenceID"))
                .findFirst()
                .orElseThrow();
        assertThat(all(null, "&taxonGroup=common")).noneMatch(row -> identifier.equals(row.get("occurrenceID")));
        assertThat(exact)
                .allSatisfy(row -> assertThat((String) row.get("occurrenceID")).matches("[0-9a-f]{32}"));
        assertThat(identifier.toString()).isNotEqualTo(incident.replace("-", ""));
    }

    @Test
    void aRecipientSeesExactlyUnderAnAgreementUntilItEndsAndItIsKept() {
        found(one(TENTH), "1991-03-05T08:00:00Z");
        String filter = "&taxonGroup=rare&from=1991-03-05&to=1991-03-05";
        assertThat(all(RECIPIENT, filter)).allSatisfy(row -> assertThat(row).containsEntry("eventDate", "1991"));
        agree("2010-01-01", "2011-01-01");
        assertThat(all(RECIPIENT, filter))
                .as("an agreement that is over")
                .allSatisfy(row -> assertThat(row).containsEntry("eventDate", "1991"));

        String agreement = agree("2010-01-01", "2090-01-01");
        Map<String, Object> row = all(RECIPIENT, filter).get(0);
        assertThat(row).containsEntry("eventDate", "1991-03-05T08:00:00Z").containsEntry("locality", "Mill Road");
        assertThat(degrees(row.get("decimalLongitude"))).isCloseTo(150.047654, within(2e-5));
        assertThat(row).doesNotContainKeys("incidentId", "verbatimLocality");
        assertThat(all(RECIPIENT, "&taxonGroup=occult"))
                .as("what the agreement does not cover")
                .isEmpty();
        Json kept = Api.get(OFFICER, "/api/disclosures?limit=1");
        assertThat(kept.getString("items[0].agreementId")).isEqualTo(agreement);
        assertThat(kept.getInt("items[0].records")).isEqualTo(1);
        assertThat(kept.getString("items[0].filter")).contains("taxonGroup=rare", "from=1991-03-05");

        Api.change(COORDINATOR, "/api/agreements/" + agreement, "/ending", "{\"reason\":\"the study is over\"}")
                .statusCode(200);
        assertThat(all(RECIPIENT, filter)).allSatisfy(told -> assertThat(told).containsEntry("eventDate", "1991"));
        assertThat(Api.get(OFFICER, "/api/disclosures?limit=1").getString("items[0].id"))
                .isEqualTo(kept.getString("items[0].id"));
    }

    private static String agree(String from, String to) {
        return Api.make(COORDINATOR, "/api/agreements", """
                        {"recipient":"test-recipient","purpose":"a study of roads","documentReference":"shelf 3",
                         "taxonGroups":["rare"],"box":{"south":-31,"west":150,"north":-30,"east":151},
                         "validFrom":"%s","validTo":"%s"}
                        """.formatted(from, to)).getString("id");
    }

    @Test
    void releaseSitesOfSensitiveAnimalsAreToldAsRoughlyAsFoundPlaces() {
        String rare = site("\"rare\"");
        String occult = site("\"occult\"");
        String common = site("\"common\"");
        for (String role : List.of(CLINIC, CARER)) {
            Json told = Api.get(role, "/api/release-sites/" + rare);
            assertThat(told.<Object>get("decimalLatitude")).hasToString("-30.55");
            assertThat(told.<Object>get("name")).isNull();
            assertThat(told.<Object>get("catchment")).isNull();
            assertThat(told.getString("habitat")).isEqualTo("wetland");
            Json hidden = Api.get(role, "/api/release-sites/" + occult);
            assertThat(hidden.<Object>get("decimalLatitude")).isNull();
            assertThat(degrees(Api.get(role, "/api/release-sites/" + common).get("decimalLatitude")))
                    .isCloseTo(-30.500123, within(1e-5));
        }
        assertThat(degrees(Api.get(OFFICER, "/api/release-sites/" + occult).get("decimalLatitude")))
                .isCloseTo(-30.500123, within(1e-5));
    }

    private static String site(String groups) {
        return Api.make(COORDINATOR, "/api/release-sites", """
                        {"name":"Hidden spring","jurisdiction":"XZ","decimalLatitude":-30.500123,
                         "decimalLongitude":150.047654,"coordinateUncertaintyInMeters":20,"habitat":"wetland",
                         "taxonGroups":[%s],"catchment":"the hidden creek"}
                        """.formatted(groups))
                .getString("id");
    }

    @Test
    void aCategoryIsSetWithReasonAndReviewAndReviewsPastDueAreListed() {
        String id = Api.get(OFFICER, "/api/taxa?q=Rarus").getString("[0].id");
        assertThat(Api.get(OFFICER, "/api/taxa/sensitivity-reviews").getList("scientificName"))
                .contains(TENTH)
                .doesNotContain(WITHHELD);
        String path = "/api/taxa/" + id + "/sensitivity";
        for (String wrong : List.of(
                "{\"gridDegrees\":0.5,\"reason\":\"r\",\"reviewBy\":\"2090-01-01\"}",
                "{\"gridDegrees\":0.1,\"reason\":\"r\"}",
                "{\"gridDegrees\":0.1,\"reviewBy\":\"2090-01-01\"}")) {
            Api.as(COORDINATOR)
                    .header("If-Match", Api.tag(COORDINATOR, "/api/taxa/" + id))
                    .body(wrong)
                    .put(path)
                    .then()
                    .statusCode(400);
        }
        Api.as(COORDINATOR)
                .header("If-Match", Api.tag(COORDINATOR, "/api/taxa/" + id))
                .body("{\"gridDegrees\":0.1,\"reason\":\"looked again\",\"reviewBy\":\"2020-01-01\"}")
                .put(path)
                .then()
                .statusCode(200);
        assertThat(Api.get(OFFICER, "/api/taxa/" + id).getString("sensitivityReason"))
                .isEqualTo("looked again");
        assertThat(Api.get(CARER, "/api/taxa/" + id).<Object>get("sensitivityReason"))
                .isNull();
    }

    @Test
    void roadsAuthoritiesGetNoSmallCountsAndNoRoadsOfSensitiveAnimals() {
        for (int i = 0; i < 3; i++) {
            found(one(COMMON), "1989-03-0" + (i + 1) + "T08:00:00Z");
            found(one(TENTH), "1988-03-0" + (i + 1) + "T08:00:00Z");
        }
        Api.as(ROADS_AUTHORITY)
                .get("/api/collision-counts?from=1989-01-02&to=1989-12-31")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("from"));
        Api.as(ROADS_AUTHORITY)
                .get("/api/collision-counts?from=1989-01-01&to=1989-12-30")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("to"));
        String common = "/api/collision-counts?taxonGroup=common&from=1989-01-01&to=1989-12-31";
        Json whole = Api.get(COORDINATOR, common);
        assertThat(whole.getInt("roads[0].incidents[0]")).isEqualTo(3);
        assertThat(whole.getString("roads[0].roadName")).isEqualTo("Mill Road");
        Json told = Api.get(ROADS_AUTHORITY, common);
        assertThat(told.getInt("smallestCount")).isEqualTo(5);
        assertThat(told.<Object>get("roads[0].incidents[0]")).isNull();
        assertThat(told.<Object>get("roads[0].total")).isNull();
        assertThat(told.<Object>get("total")).isNull();
        String rare = "/api/collision-counts?taxonGroup=rare&from=1988-01-01&to=1988-12-31";
        assertThat(Api.get(COORDINATOR, rare).getList("roads")).hasSize(1);
        assertThat(Api.get(ROADS_AUTHORITY, rare).getList("roads")).isEmpty();
    }

    @Test
    void whatCannotBeAskedIsNamed() {
        for (Map.Entry<String, String> wrong : Map.of(
                        "from=yesterday", "from",
                        "bbox=1,2,3", "bbox",
                        "bbox=NaN,0,1,1", "bbox",
                        "cursor=1", "cursor",
                        "asOf=2020-01-01T00:00:00Z", "asOf")
                .entrySet()) {
            Request.given()
                    .get("/api/occurrences?" + wrong.getKey())
                    .then()
                    .statusCode(400)
                    .body("errors[0].field", org.hamcrest.Matchers.equalTo(wrong.getValue()));
        }
    }

    @Test
    void whoKeepsTheRecordsReadsThemAsTheyWere() throws InterruptedException {
        World.shared();
        Json receipt = World.call("Chelodina longicollis", 150.02, ",\"receivedAt\":\"1987-05-01T00:00:00Z\"");
        String before = java.time.Instant.now().toString();
        Api.correct(
                        COORDINATOR,
                        "/api/incidents/" + receipt.getString("incidentId"),
                        "{\"cause\":\"attackByDog\",\"reason\":\"seen since\"}")
                .statusCode(200);
        String path = "/api/occurrences?from=1987-05-01&to=1987-05-02&limit=100";
        assertThat(Api.get(COORDINATOR, path).getList("items.cause")).containsOnly("attackByDog");
        assertThat(Api.get(COORDINATOR, path + "&asOf=" + before).getList("items.cause"))
                .containsOnly("collisionWithVehicle");
    }
}
