package org.culvert.care.health;

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

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import net.sf.geographiclib.Geodesic;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class AlertResourceTest {
    private static final String WALLABY = "Wallabia bicolor";
    private static final double LATITUDE = -31.6;
    private static final double LONGITUDE = 149.2;

    @Inject
    DataSource database;

    private World world;
    private String syndrome;

    /** Three of a kind within 5 km and 7 days: the three of a New Zealand recovery centre's page, the rest invented. */
    @BeforeEach
    void makeWorld() {
        world = World.shared();
        syndrome = newSyndrome("");
        threshold(syndrome, 3, 5, 7);
    }

    private static String newSyndrome(String more) {
        return Api.make(COORDINATOR, "/api/syndromes", """
                        {"name":"Syndrome %s","words":"made for a test","source":"made for a test","readOn":"2026-01-01"%s}
                        """.formatted(UUID.randomUUID(), more))
                .getString("id");
    }

    private static void threshold(String syndrome, int count, double kilometres, int days) {
        Api.make(COORDINATOR, "/api/alert-thresholds", threshold(syndrome, count, kilometres, days, "2020-01-01"));
    }

    private static String threshold(String syndrome, int count, double kilometres, int days, String from) {
        return """
                {"syndromeId":"%s","smallestCount":%d,"withinKilometres":%s,"withinDays":%d,"source":"made for a test",
                 "readOn":"2026-01-01","validFrom":"%s"}
                """.formatted(syndrome, count, kilometres, days, from);
    }

    private String newCase(double metresEast) {
        var place = Geodesic.WGS84.Direct(LATITUDE, LONGITUDE, 90, metresEast);
        String incident = Api.make(
                        DISPATCHER, "/api/calls", String.format(Locale.ROOT, """
                        {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"unknown",
                         "animals":[{"scientificName":"%s","individualCount":1,"vitality":"alive"}],
                         "place":{"decimalDegrees":{"latitude":"%.8f","longitude":"%.8f"}}}
                        """, WALLABY, place.lat2, place.lon2))
                .getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-01T02:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, WALLABY, world.rescuer))
                .getString("id");
    }

    private Json report(String caseId, int day) {
        return Api.make(RESCUER, "/api/cases/" + caseId + "/syndrome-reports", """
                {"syndromeId":"%s","at":"%sT02:00:00Z","words":"it circles"}
                """.formatted(
                        syndrome, LocalDate.of(2026, 2, 1).plusDays(day)));
    }

    /** The report of a new animal, so many metres east and on such a day. */
    private Json seen(double metresEast, int day) {
        return report(newCase(metresEast), day);
    }

    private static String alertOf(Json report) {
        return Api.get(RESCUER, "/api/syndrome-reports/" + report.getString("id"))
                .getString("alertId");
    }

    private List<String> unread() {
        return Api.get(COORDINATOR, "/api/health-alerts?unread=true&limit=1000")
                .getList("items.findAll { it.syndromeId == '" + syndrome + "' }.id");
    }

    private static Json alert(String id) {
        return Api.get(COORDINATOR, "/api/health-alerts/" + id);
    }

    private static void read(String role, String id) {
        Api.make(role, "/api/health-alerts/" + id + "/acknowledgements", """
                {"name":"Dr Vet","words":"rang the wildlife health body"}
                """);
    }

    @Test
    void whatIsShippedIsThreeAndSaysWhatIsTheNetworksOwn() {
        Json shipped = Api.get(OFFICER, "/api/alert-thresholds/01920000-0000-7000-8000-000000049101");
        assertThat(shipped.getInt("smallestCount")).isEqualTo(3);
        assertThat(shipped.getString("syndromeId")).isNull();
        assertThat(shipped.getString("source")).contains("New Zealand", "no finding of anybody's", "enters its own");
        // A syndrome without a threshold of its own goes by it: 9.9 km and 14 days are near enough
        syndrome = newSyndrome("");
        seen(0, 0);
        seen(9_900, 0);
        assertThat(alertOf(seen(0, 14))).isNotNull();
    }

    @Test
    void threeAlikeRaiseOneAlertWhichGrows() {
        assertThat(alertOf(seen(0, 0))).isNull();
        Json second = seen(1_000, 2);
        assertThat(alertOf(second)).isNull();
        Json third = seen(2_000, 4);
        String id = third.getString("alertId");
        assertThat(alertOf(second)).isEqualTo(id).isNotNull();
        assertThat(third.getString("note")).contains("one animal is enough", "hotline");
        Json alert = alert(id);
        assertThat(alert.getInt("animals")).isEqualTo(3);
        assertThat(alert.getString("state")).isEqualTo("unread");
        assertThat(alert.getString("firstDay")).isEqualTo("2026-02-01");
        assertThat(alert.getString("lastDay")).isEqualTo("2026-02-05");
        assertThat(alert.getString("sentence")).contains("3 animals", "at least 2 others", "5 km", "7 days");
        assertThat(alert.getString("note")).contains("tells of no cause", "your local code and your licensed vet");
        // The middle of three places in a row is the second, and the ends are a kilometre from it
        var middle = Geodesic.WGS84.Direct(LATITUDE, LONGITUDE, 90, 1_000);
        assertThat(Geodesic.WGS84.Inverse(
                                middle.lat2,
                                middle.lon2,
                                alert.getDouble("decimalLatitude"),
                                alert.getDouble("decimalLongitude"))
                        .s12)
                .isLessThan(1);
        assertThat(alert.getDouble("coordinateUncertaintyInMeters")).isGreaterThan(1_000);
        assertThat(unread()).containsExactly(id);
        read(CLINIC, id);
        assertThat(alert(id).getString("state")).isEqualTo("read");
        assertThat(alert(id).getString("acknowledgements[0].words")).isEqualTo("rang the wildlife health body");
        assertThat(unread()).isEmpty();

        // Two that are near none of it, and one that is near both: one alert grows rather than many
        assertThat(seen(6_500, 12).getString("alertId")).isNull();
        assertThat(seen(6_000, 12).getString("alertId")).isNull();
        assertThat(seen(4_000, 6).getString("alertId")).isEqualTo(id);
        assertThat(alert(id).getInt("animals")).isEqualTo(6);
        assertThat(alert(id).getString("state")).isEqualTo("grownSince");
        assertThat(unread()).containsExactly(id);
        Api.as(RESCUER).get("/api/health-alerts").then().statusCode(403);
    }

    @Test
    void theEdgesOfDaysAndKilometresCount() {
        seen(0, 0);
        seen(5_000.3, 0);
        assertThat(seen(0, 7).getString("alertId")).isNotNull();
        syndrome = newSyndrome("");
        threshold(syndrome, 3, 5, 7);
        seen(0, 0);
        seen(5_000.8, 0);
        assertThat(seen(0, 7).getString("alertId")).isNull();
        syndrome = newSyndrome("");
        threshold(syndrome, 3, 5, 7);
        seen(0, 0);
        seen(5_000, 0);
        assertThat(seen(0, 8).getString("alertId")).isNull();
    }

    @Test
    void aReportBetweenTwoAlertsMakesOneOfThem() {
        String older = null;
        String younger = null;
        for (int i = 0; i < 3; i++) {
            older = seen(i, 0).getString("alertId");
        }
        for (int i = 0; i < 3; i++) {
            younger = seen(8_000 + i, 0).getString("alertId");
        }
        assertThat(older).isNotNull();
        assertThat(younger).isNotNull().isNotEqualTo(older);
        read(OFFICER, older);
        read(OFFICER, younger);
        assertThat(seen(4_000, 0).getString("alertId")).isEqualTo(older);
        assertThat(alert(older).getInt("animals")).isEqualTo(7);
        assertThat(alert(older).getString("state")).isEqualTo("grownSince");
        assertThat(alert(younger).getString("state")).isEqualTo("joined");
        assertThat(alert(younger).getString("joinedTo")).isEqualTo(older);
        assertThat(unread()).containsExactly(older);
        Api.post(COORDINATOR, "/api/health-alerts/" + younger + "/acknowledgements", "{\"name\":\"A\",\"words\":\"b\"}")
                .statusCode(409)
                .body("detail", containsString(older));
    }

    @Test
    void whatIsTakenBackLeavesTheAlertUntilItIsRead() {
        Json first = seen(0, 0);
        seen(0, 0);
        String third = newCase(0);
        Json last = report(third, 0);
        String id = last.getString("alertId");
        String path = "/api/syndrome-reports/" + last.getString("id");
        Api.post(RESCUER, "/api/cases/" + third + "/syndrome-reports", "{\"syndromeId\":\"%s\"}".formatted(syndrome))
                .statusCode(409);
        Api.change(RESCUER, path, "/withdrawal", "{\"reason\":\"another animal\"}")
                .statusCode(200);
        Api.change(RESCUER, path, "/withdrawal", "{\"reason\":\"again\"}").statusCode(409);
        assertThat(alert(id).getInt("animals")).isEqualTo(2);
        assertThat(alert(id).getList("reports.withdrawn")).containsExactlyInAnyOrder(false, false, true);
        assertThat(unread()).containsExactly(id);
        // What was taken back counts no more
        syndrome = newSyndrome("");
        threshold(syndrome, 3, 5, 7);
        Json gone = seen(0, 0);
        Api.change(RESCUER, "/api/syndrome-reports/" + gone.getString("id"), "/withdrawal", "{\"reason\":\"a slip\"}")
                .statusCode(200);
        seen(0, 0);
        assertThat(seen(0, 0).getString("alertId")).isNull();
        assertThat(first.getString("alertId")).isNull();
    }

    @Test
    void aCorrectedDayIsLookedAtAnew() {
        seen(0, 0);
        seen(0, 0);
        Json late = seen(0, 20);
        assertThat(late.getString("alertId")).isNull();
        Api.correct(RESCUER, "/api/syndrome-reports/" + late.getString("id"), """
                        {"at":"2026-02-03T02:00:00Z","reason":"the wrong month"}
                        """)
                .statusCode(200)
                .body("day", equalTo("2026-02-03"));
        assertThat(alertOf(late)).isNotNull();
    }

    @Test
    void withoutAPlaceItIsCountedWithNone() {
        seen(0, 0);
        seen(0, 0);
        String nowhere = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"originUnknown":true,
                         "holder":{"memberId":"%s"}}
                        """.formatted(
                                World.call(WALLABY, 150.09, "").getString("incidentId"), WALLABY, world.rescuer))
                .getString("id");
        Json report = report(nowhere, 0);
        assertThat(report.getBoolean("isPlaced")).isFalse();
        assertThat(report.getString("alertId")).isNull();
    }

    @Test
    void aSyndromeIsOfItsGroup() {
        String ofTurtles = newSyndrome(",\"taxonGroup\":\"turtles\"");
        Api.post(
                        RESCUER,
                        "/api/cases/" + newCase(0) + "/syndrome-reports",
                        "{\"syndromeId\":\"%s\"}".formatted(ofTurtles))
                .statusCode(400)
                .body("errors[0].field", equalTo("syndromeId"));
    }

    @Test
    void reportsAtOnceMakeOneAlert() throws Exception {
        for (int round = 0; round < 4; round++) {
            syndrome = newSyndrome("");
            threshold(syndrome, 3, 5, 7);
            seen(0, 0);
            List<Callable<Json>> atOnce = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                String caseId = newCase(i * 100);
                atOnce.add(() -> report(caseId, 0));
            }
            ExecutorService three = Executors.newFixedThreadPool(3);
            Set<String> alerts = new HashSet<>();
            try {
                for (Future<Json> made : three.invokeAll(atOnce)) {
                    alerts.add(alertOf(made.get()));
                }
            } finally {
                three.shutdownNow();
            }
            assertThat(alerts).hasSize(1).doesNotContainNull();
            assertThat(unread()).hasSize(1);
            assertThat(alert(unread().get(0)).getInt("animals")).isEqualTo(4);
        }
    }

    /** Alerts as reports come, against the groups of all of them worked out at once by pairs. */
    @Test
    void alertsAreTheGroupsOfAllPairs() {
        var random = new Random(20260201);
        List<double[]> told = new ArrayList<>();
        List<Json> reports = new ArrayList<>();
        for (int i = 0; i < 36; i++) {
            double metres = Math.round(random.nextDouble() * 60_000);
            int day = random.nextInt(20);
            told.add(new double[] {metres, day});
            reports.add(seen(metres, day));
        }
        Map<String, Set<Integer>> byAlert = new HashMap<>();
        for (int i = 0; i < reports.size(); i++) {
            String id = alertOf(reports.get(i));
            if (id != null) {
                byAlert.computeIfAbsent(id, key -> new HashSet<>()).add(i);
            }
        }
        List<Set<Integer>> groups = new ArrayList<>();
        for (double[] middle : told) {
            Set<Integer> near = new HashSet<>();
            for (int i = 0; i < told.size(); i++) {
                double[] other = told.get(i);
                // Along one geodesic the distance is the difference
                if (Math.abs(other[0] - middle[0]) <= 5_000 && Math.abs(other[1] - middle[1]) <= 7) {
                    near.add(i);
                }
            }
            if (near.size() >= 3) {
                groups.removeIf(group -> group.stream().anyMatch(near::contains) && near.addAll(group) | true);
                groups.add(near);
            }
        }
        assertThat(new HashSet<>(byAlert.values())).isEqualTo(new HashSet<>(groups));
        assertThat(groups).hasSizeGreaterThan(1);
    }

    @Test
    void alertsAreReadByFewAndCasesByFewer() {
        seen(0, 0);
        seen(0, 0);
        String id = seen(0, 0).getString("alertId");
        for (String role : List.of(DISPATCHER, RESCUER, CARER, ROADS_AUTHORITY, RECIPIENT, ADMIN)) {
            Api.as(role).get("/api/health-alerts/" + id).then().statusCode(403);
        }
        for (String role : List.of(COORDINATOR, OFFICER)) {
            assertThat(Api.get(role, "/api/health-alerts/" + id).getList("reports.caseId"))
                    .hasSize(3);
        }
        Map<String, Object> ofClinic =
                Api.get(CLINIC, "/api/health-alerts/" + id).getMap("$");
        assertThat(ofClinic).containsKeys("animals", "firstDay", "sentence").doesNotContainKey("reports");
    }

    @Test
    void oneThresholdHoldsAtATime() {
        Api.post(COORDINATOR, "/api/alert-thresholds", threshold(syndrome, 4, 5, 7, "2026-01-01"))
                .statusCode(409)
                .body("detail", containsString("one threshold at a time"));
        String id = Api.get(COORDINATOR, "/api/alert-thresholds")
                .getString("find { it.syndromeId == '" + syndrome + "' }.id");
        String path = "/api/alert-thresholds/" + id;
        Api.change(COORDINATOR, path, "/ending", "{\"validTo\":\"2019-01-01\",\"reason\":\"a slip\"}")
                .statusCode(400);
        Api.change(COORDINATOR, path, "/ending", "{\"validTo\":\"2026-01-01\",\"reason\":\"too many\"}")
                .statusCode(200);
        Api.make(COORDINATOR, "/api/alert-thresholds", threshold(syndrome, 2, 5, 7, "2026-01-01"));
        seen(0, 0);
        assertThat(seen(0, 0).getString("alertId")).isNotNull();
        Api.post(CLINIC, "/api/alert-thresholds", threshold(syndrome, 2, 5, 7, "2026-01-01"))
                .statusCode(403);
    }

    @Test
    void theDatabaseRefusesWhatIsNoAlert() throws SQLException {
        Json report = seen(0, 0);
        seen(0, 0);
        String id = seen(0, 0).getString("alertId");
        refused(
                "update health_alerts set joined_to = id, joined_at = now() where id = '" + id + "'",
                "an_alert_goes_on_in_another");
        refused("update health_alerts set joined_at = now() where id = '" + id + "'", "going_on_in_another_has_a_time");
        refused(
                "insert into health_alert_members select gen_random_uuid(), 0, alert_id, report_id, now(), now(), recorded_by"
                        + " from health_alert_members where alert_id = '" + id + "'",
                "a_report_is_in_one_alert");
        refused(
                "update syndrome_reports set withdrawn_at = now() where id = '" + report.getString("id") + "'",
                "withdrawing_a_report_has_time_and_reason");
        read(COORDINATOR, id);
        refused(
                "update health_alert_acknowledgements set name = 'x' where alert_id = '" + id + "'",
                "kept as they are");
    }

    private void refused(String sql, String message) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.executeUpdate(sql)).as(sql).hasMessageContaining(message);
        }
    }
}
