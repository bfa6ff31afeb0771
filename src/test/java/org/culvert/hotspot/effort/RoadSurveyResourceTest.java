package org.culvert.hotspot.effort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.hotspot.EvidenceRuns;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class RoadSurveyResourceTest {
    private static final String BY_SURVEYS = ",\"chance\":\"per-survey-effort\",\"simulations\":199";

    @Inject
    DataSource database;

    private static String network;

    @BeforeEach
    void makeWorld() {
        EvidenceRuns.make();
        network = Api.get(ADMIN, "/api/organisations?kind=network").getString("[0].id");
    }

    /** On Row Road 1 by the sixth of January 1990, where nothing else is surveyed. */
    private static String entry(String more) {
        return survey("Row Road 1", 1000, 3000, "1990-01-06T01:00:00Z", "1990-01-06T02:30:00Z", more);
    }

    private static String survey(String road, double from, double to, String startedAt, String endedAt, String more) {
        return String.format(
                Locale.ROOT,
                "{\"organisationId\":\"%s\",\"road\":\"%s\",\"fromChainageMetres\":%.1f,\"toChainageMetres\":%.1f,"
                        + "\"startedAt\":\"%s\",\"endedAt\":\"%s\",\"travelledBy\":\"motorVehicle\"%s}",
                network,
                road,
                from,
                to,
                startedAt,
                endedAt,
                more.contains("taxonGroups") ? more : more + ",\"taxonGroups\":[]");
    }

    @Test
    void aSurveyIsEnteredListedAndRead() {
        String id = Api.post(
                        COORDINATOR,
                        "/api/road-surveys",
                        entry(
                                ",\"speedKmh\":40,\"observers\":2,\"words\":\"both verges\",\"taxonGroups\":[\"turtles\"]"))
                .statusCode(201)
                .header("Location", containsString("/api/road-surveys/"))
                .body("road", equalTo("Row Road 1"))
                .body("withdrawnAt", equalTo(null))
                .extract()
                .path("id");
        Json read = Api.get(ROADS_AUTHORITY, "/api/road-surveys/" + id);
        assertThat(read.getString("record.happenedAt")).isEqualTo("1990-01-06T01:00:00Z");
        assertThat(read.getString("endedAt")).isEqualTo("1990-01-06T02:30:00Z");
        assertThat(read.getDouble("speedKmh")).isEqualTo(40);
        assertThat(read.getInt("observers")).isEqualTo(2);
        assertThat(read.getList("taxonGroups")).containsExactly("turtles");
        assertThat(read.getInt("networkNumber"))
                .isEqualTo(Api.get(ADMIN, "/api/road-networks").getInt("[0].number"));
        assertThat(read.getInt("record.revision")).isEqualTo(1);
        assertThat(read.getLong("record.lateByHours")).isGreaterThan(1);
        String unknown = Api.make(OFFICER, "/api/road-surveys", entry("")).getString("id");
        Json open = Api.get(OFFICER, "/api/road-surveys/" + unknown);
        assertThat(open.<Object>get("speedKmh")).isNull();
        assertThat(open.<Object>get("observers")).isNull();
        assertThat(open.getList("taxonGroups")).isEmpty();
    }

    @Test
    void surveysAreListedByPeriodAndRoadAPageAtATime() {
        List<String> ids = new ArrayList<>();
        for (int day = 1; day <= 3; day++) {
            ids.add(0, made("Row Road 2", "1991-02-0" + day));
        }
        made("Row Road 3", "1991-02-02");
        String asked = "/api/road-surveys?from=1991-02-01&to=1991-02-03&road=row road 2";
        assertThat(Api.get(COORDINATOR, asked).getList("items.id")).isEqualTo(ids);
        assertThat(Api.get(COORDINATOR, "/api/road-surveys?from=1991-02-01&to=1991-02-03")
                        .getList("items"))
                .hasSize(4);
        assertThat(Api.get(COORDINATOR, "/api/road-surveys?from=1991-02-02&to=1991-02-02")
                        .getList("items.road"))
                .containsExactly("Row Road 3", "Row Road 2");
        assertThat(Api.get(COORDINATOR, asked + "x").getList("items")).isEmpty();
        Json page = Api.get(COORDINATOR, asked + "&limit=2");
        assertThat(page.getList("items.id")).isEqualTo(ids.subList(0, 2));
        assertThat(Api.get(COORDINATOR, asked + "&limit=2&cursor=" + page.getString("next"))
                        .getList("items.id"))
                .isEqualTo(ids.subList(2, 3));
        for (String wrong : List.of("from=1991-02-30", "to=soon", "from=1991-02-02&to=1991-02-01", "limit=0")) {
            Api.as(COORDINATOR).get("/api/road-surveys?" + wrong).then().statusCode(400);
        }
    }

    private static String made(String road, String day) {
        return Api.make(
                        COORDINATOR,
                        "/api/road-surveys",
                        survey(road, 0, 5000, day + "T01:00:00Z", day + "T03:00:00Z", ""))
                .getString("id");
    }

    @Test
    void aCorrectionIsARevisionAndAWithdrawalIsKept() {
        String id = Api.make(COORDINATOR, "/api/road-surveys", entry("")).getString("id");
        String path = "/api/road-surveys/" + id;
        Api.correct(OFFICER, path, "{\"speedKmh\":30,\"toChainageMetres\":4000,\"reason\":\"read again\"}")
                .statusCode(200)
                .body("speedKmh", equalTo(30.0))
                .body("toChainageMetres", equalTo(4000.0))
                .body("record.revision", equalTo(2));
        for (String[] wrong : new String[][] {
            {"\"endedAt\":\"1990-01-06T00:59:00Z\"", "endedAt"},
            {"\"endedAt\":\"1990-01-07T01:00:01Z\"", "endedAt"},
            {"\"startedAt\":null", "startedAt"},
            {"\"toChainageMetres\":1000", "toChainageMetres"},
            {"\"road\":\"No Such Road\"", "road"},
            {"\"speedKmh\":0", "speedKmh"},
            {"\"observers\":101", "observers"},
            {"\"taxonGroups\":[\"dragons\"]", "taxonGroups"},
            {"\"taxonGroups\":null", "taxonGroups"}
        }) {
            Api.correct(COORDINATOR, path, "{" + wrong[0] + ",\"reason\":\"wrong\"}")
                    .statusCode(400)
                    .body("errors.field", hasItem(wrong[1]));
        }
        Api.post(COORDINATOR, path + "/withdrawal", "{\"reason\":\"wrong\"}").statusCode(428);
        Api.change(COORDINATOR, path, "/withdrawal", "{\"reason\":\" \"}").statusCode(400);
        Api.change(COORDINATOR, path, "/withdrawal", "{\"reason\":\"it was Row Road 3\"}")
                .statusCode(200)
                .body("withdrawnBecause", equalTo("it was Row Road 3"));
        assertThat(Api.get(ROADS_AUTHORITY, path).getString("withdrawnAt")).isNotNull();
        Api.change(COORDINATOR, path, "/withdrawal", "{\"reason\":\"again\"}")
                .statusCode(409)
                .body("detail", containsString("it was Row Road 3"));
        Api.correct(COORDINATOR, path, "{\"speedKmh\":20,\"reason\":\"again\"}").statusCode(409);
        assertThat(Api.get(COORDINATOR, "/api/records/" + id + "/revisions").getList("reason"))
                .containsExactly(null, "read again", "it was Row Road 3");
    }

    @Test
    void whatIsWrongWithASurveyIsSaidByField() {
        String start = "1990-01-06T01:00:00Z";
        String end = "1990-01-06T02:00:00Z";
        for (String[] wrong : new String[][] {
            {survey("No Such Road", 0, 100, start, end, ""), "road"},
            {survey("Row Road 1", 500, 500, start, end, ""), "toChainageMetres"},
            {survey("Row Road 1", 4000, 90000, start, end, ""), "toChainageMetres"},
            {survey("Row Road 1", -500, 900, start, end, ""), "fromChainageMetres"},
            {survey("Row Road 1", 0, 900, end, start, ""), "endedAt"},
            {survey("Row Road 1", 0, 900, start, "1990-01-08T01:00:00Z", ""), "endedAt"},
            {survey("Row Road 1", 0, 900, "2190-01-06T01:00:00Z", "2190-01-06T02:00:00Z", ""), "startedAt"},
            {survey("Row Road 1", 0, 900, "1190-01-06T01:00:00Z", "1190-01-06T02:00:00Z", ""), "startedAt"},
            {entry(",\"speedKmh\":0"), "speedKmh"},
            {entry(",\"observers\":0"), "observers"},
            {entry(",\"taxonGroups\":[\"dragons\"]"), "taxonGroups"},
            {entry(",\"taxonGroups\":null"), "taxonGroups"}
        }) {
            Api.post(COORDINATOR, "/api/road-surveys", wrong[0])
                    .statusCode(400)
                    .body("type", containsString("invalid"))
                    .body("errors.field", hasItem(wrong[1]));
        }
        Api.post(
                        COORDINATOR,
                        "/api/road-surveys",
                        entry("").replace(network, UUID.randomUUID().toString()))
                .statusCode(404)
                .body("detail", containsString("organisation"));
        Api.post(COORDINATOR, "/api/road-surveys", entry("").replace("motorVehicle", "broomstick"))
                .statusCode(400);
    }

    /** Whoever is told only counts of five and more must not choose by surveys what is counted. */
    @Test
    void surveysAreWrittenByThoseWhoSeeWhatWasFound() {
        String id = Api.make(ADMIN, "/api/road-surveys", entry("")).getString("id");
        Api.post(ROADS_AUTHORITY, "/api/road-surveys", entry("")).statusCode(403);
        for (String role : List.of(DISPATCHER, RESCUER, CLINIC, CARER, RECIPIENT)) {
            Api.as(role).get("/api/road-surveys").then().statusCode(403);
            Api.as(role).get("/api/road-surveys/" + id).then().statusCode(403);
            Api.post(role, "/api/road-surveys", entry("")).statusCode(403);
        }
    }

    @Test
    void theDatabaseRefusesWhatNoSurveyCanBe() throws SQLException {
        String id = Api.make(COORDINATOR, "/api/road-surveys", entry("")).getString("id");
        for (String[] wrong : new String[][] {
            {"ended_at = happened_at", "surveys_end_within_a_day_of_their_beginning"},
            {"ended_at = happened_at + interval '25 hours'", "surveys_end_within_a_day_of_their_beginning"},
            {"to_chainage_metres = from_chainage_metres", "surveys_go_from_a_chainage_to_a_greater_one"},
            {"travelled_by = 'broomstick'", "surveys_are_travelled_in_a_known_way"},
            {"withdrawn_at = now()", "withdrawing_a_survey_has_time_and_reason"},
            {"speed_kmh = 0", "road_surveys_speed_kmh_check"},
            {"observers = 0", "road_surveys_observers_check"},
            {"taxon_groups = '{}'", "road_surveys_taxon_groups_check"},
            {"happened_at = null", "not-null"}
        }) {
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                assertThatThrownBy(() -> statement.executeUpdate("update road_surveys set " + wrong[0]
                                + ", version = version + 1, revised_at = now(), revised_by = recorded_by where id = '"
                                + id + "'"))
                        .as(wrong[0])
                        .hasMessageContaining(wrong[1]);
            }
        }
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.executeUpdate("delete from road_surveys where id = '" + id + "'"))
                    .hasMessageContaining("permission denied");
        }
    }

    /**
     * Eight wallabies lie within 150 m of Row Road 4, each of another day; the others are strewn over all roads
     * and days. Where the road was surveyed from end to end on those days the eight stand out; where only the two hundred
     * metres about them were, again and again, they do not.
     */
    @Test
    void whatWasFoundIsJudgedByHowOftenSomebodyLooked() {
        assertThat(failure("")).contains("No survey", "this group", "per-traffic-and-class");
        List<LocalDate> days = EvidenceRuns.plantedDays();
        LocalDate dayBefore = days.get(0).minusDays(1);
        List<String> surveys = new ArrayList<>();
        // Looked for others alone, in another season, or on a day when nothing was found there
        surveys.add(daily(0, 9400, days.get(0), ",\"taxonGroups\":[\"turtles\"]"));
        assertThat(failure("")).contains("No survey");
        surveys.add(daily(0, 9400, dayBefore, ""));
        assertThat(failure("")).contains("No collision", "surveys: 1", "too few");
        assertThat(failure(",\"months\":[1,2]")).contains("No survey");

        // From ten in the evening until one in the morning of the first one's day, in the region's zone
        surveys.add(survey(0, 9400, dayBefore + "T12:00:00Z", dayBefore + "T15:00:00Z", ""));
        Json night = result("");
        assertThat(night.getInt("inputs.collisionsCounted")).isEqualTo(1);
        assertThat(night.getList("hotspots")).isEmpty();

        days.forEach(day -> surveys.add(daily(0, 9400, day, "")));
        Json even = result("");
        assertThat(even.getInt("inputs.collisionsCounted")).isEqualTo(days.size());
        int leftOut = leftOut(even).get("not on ground that was surveyed on its day");
        assertThat(leftOut).isGreaterThan(20);
        assertThat(even.getInt("inputs.incidentsInPeriod"))
                .isEqualTo(days.size()
                        + leftOut(even).values().stream()
                                .mapToInt(Integer::intValue)
                                .sum());
        assertThat(even.getList("hotspots")).hasSize(1);
        assertThat(even.getString("hotspots[0].road")).isEqualTo("Row Road 4");
        assertThat(even.getBoolean("errorRate.claimed")).isFalse();
        assertThat(even.getString("errorRate.sentence"))
                .contains("every kilometre that a survey went over", "(10 surveys, 94 km)", "caller reported");
        assertThat(leftOut(Api.get(COORDINATOR, "/api/hotspot-runs/" + EvidenceRuns.wallabies() + "/result")))
                .doesNotContainKey("not on ground that was surveyed on its day");

        // One survey from end to end stays, and 150 of a short stretch come to it: 9 km and 30 km
        withdraw(surveys.subList(0, surveys.size() - 1));
        surveys.subList(0, surveys.size() - 1).clear();
        for (int i = 0; i < 150; i++) {
            surveys.add(daily(4720, 4920, days.get(i % days.size()), ""));
        }
        Json uneven = result("");
        assertThat(uneven.getInt("inputs.collisionsCounted")).isEqualTo(days.size());
        assertThat(uneven.getString("inputs.sha256")).isNotEqualTo(even.getString("inputs.sha256"));
        assertThat(uneven.getString("errorRate.sentence")).contains("(151 surveys, 39 km)");
        assertThat(uneven.getList("hotspots")).isEmpty();
        withdraw(surveys);
        assertThat(failure("")).contains("No survey");
    }

    private static void withdraw(List<String> surveys) {
        surveys.forEach(id -> Api.change(COORDINATOR, "/api/road-surveys/" + id, "/withdrawal", "{\"reason\":\"done\"}")
                .statusCode(200));
    }

    private static Map<String, Integer> leftOut(Json result) {
        Map<String, Integer> leftOut = new java.util.HashMap<>();
        for (Map<String, Object> reason : result.<Map<String, Object>>getList("leftOut")) {
            leftOut.put((String) reason.get("reason"), (Integer) reason.get("incidents"));
        }
        return leftOut;
    }

    private static String daily(double from, double to, LocalDate day, String more) {
        return survey(from, to, day + "T01:00:00Z", day + "T03:00:00Z", more);
    }

    private static String survey(double from, double to, String startedAt, String endedAt, String more) {
        return Api.make(COORDINATOR, "/api/road-surveys", survey("Row Road 4", from, to, startedAt, endedAt, more))
                .getString("id");
    }

    private static Json result(String more) {
        String id = EvidenceRuns.wallabies(BY_SURVEYS + more);
        return Api.get(COORDINATOR, "/api/hotspot-runs/" + id + "/result");
    }

    private static String failure(String more) {
        String id = EvidenceRuns.wallabies(BY_SURVEYS + more);
        Json run = Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id);
        assertThat(run.getString("state")).isEqualTo("failed");
        Api.as(ROADS_AUTHORITY)
                .get("/api/hotspot-runs/" + id + "/result")
                .then()
                .statusCode(409);
        return run.getString("failure");
    }
}
