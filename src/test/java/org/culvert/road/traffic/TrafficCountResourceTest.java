package org.culvert.road.traffic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.sql.DataSource;
import org.assertj.core.api.Assertions;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Counts of years long before those of any evidence of other tests. */
@QuarkusTest
class TrafficCountResourceTest {
    @Inject
    DataSource database;

    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    /** On Mill Road, 1,919 m (by hand, WGS 84: a degree of longitude is 95,967 m here) from its west end, which is km 2. */
    private static String entry(int year, double vehicles, String more) {
        return """
                {"place":{"decimalDegrees":{"latitude":"-30.5001","longitude":"150.0200"},"uncertaintyMetres":30},
                 "from":"%1$d-01-01","to":"%1$d-12-31","vehiclesPerDay":%2$s,"measure":"annualAverage",
                 "directions":"both","kind":"continuous","source":"made for a test"%3$s}
                """.formatted(year, vehicles, more);
    }

    /** At a station of its own, so that its years are no other test's. */
    private static String made(int year, double vehicles) {
        return madeAt("S-" + UUID.randomUUID(), year, vehicles);
    }

    private static String madeAt(String station, int year, double vehicles) {
        return Api.make(COORDINATOR, "/api/traffic-counts", entry(year, vehicles, ",\"station\":\"" + station + "\""))
                .getString("id");
    }

    @Test
    void aCountIsPutOnItsRoadListedAndRead() {
        String station = "S-" + UUID.randomUUID();
        String id = Api.post(
                        COORDINATOR,
                        "/api/traffic-counts",
                        entry(
                                1950,
                                4210.5,
                                ",\"standardError\":90,\"heavyVehicleShare\":0.12,\"station\":\"" + station + "\""))
                .statusCode(201)
                .header("Location", containsString("/api/traffic-counts/"))
                .extract()
                .path("id");
        Json read = Api.get(ROADS_AUTHORITY, "/api/traffic-counts/" + id);
        assertThat(read.getString("road")).isEqualTo("Mill Road");
        assertThat(read.getDouble("fromChainageMetres")).isCloseTo(2000 + 1919.5, within(2.0));
        assertThat(read.getDouble("toChainageMetres")).isEqualTo(read.getDouble("fromChainageMetres"));
        assertThat(read.getDouble("decimalLatitude")).isCloseTo(-30.5, within(1e-5));
        assertThat(read.getDouble("offsetMetres")).isCloseTo(11.1, within(0.2));
        assertThat(read.getDouble("vehiclesPerDay")).isEqualTo(4210.5);
        assertThat(read.getInt("year")).isEqualTo(1950);
        assertThat(read.getString("record.happenedAt")).isEqualTo("1949-12-31T14:00:00Z");
        assertThat(read.getLong("record.lateByHours")).isGreaterThan(1);
        for (String asked :
                List.of("road=mill road&year=1950&kind=continuous", "bbox=150.01,-30.51,150.03,-30.49", "year=1950")) {
            assertThat(Api.get(OFFICER, "/api/traffic-counts?station=" + station + "&" + asked)
                            .getList("items.id"))
                    .as(asked)
                    .containsExactly(id);
        }
        for (String asked :
                List.of("road=River Lane", "year=1951", "kind=estimated", "bbox=150.03,-30.51,150.04,-30.49")) {
            assertThat(Api.get(OFFICER, "/api/traffic-counts?station=" + station + "&" + asked)
                            .getList("items"))
                    .as(asked)
                    .isEmpty();
        }
        for (String wrong : List.of("year=12", "kind=guessed", "bbox=1,2,3", "limit=0", "cursor=x")) {
            Api.as(OFFICER).get("/api/traffic-counts?" + wrong).then().statusCode(400);
        }
        Api.post(CARER, "/api/traffic-counts", entry(1950, 1, "")).statusCode(403);
        Api.post(ROADS_AUTHORITY, "/api/traffic-counts", entry(1950, 1, "")).statusCode(403);
    }

    @Test
    void aCorrectionIsARevisionAndWhatWasTakenBackCountsNoMore() {
        String id = made(1951, 3000);
        String path = "/api/traffic-counts/" + id;
        Api.correct(
                        COORDINATOR,
                        path,
                        "{\"vehiclesPerDay\":3300,\"kind\":\"estimated\",\"place\":{\"roadAndChainage\":{\"road\":\"Mill"
                                + " Road\",\"chainageKilometres\":\"3.100\"}},\"reason\":\"read again\"}")
                .statusCode(200)
                .body("vehiclesPerDay", equalTo(3300.0))
                .body("kind", equalTo("estimated"))
                .body("record.revision", equalTo(2));
        assertThat(Api.get(COORDINATOR, path).getDouble("fromChainageMetres")).isCloseTo(3100, within(1.0));
        for (String[] wrong : new String[][] {
            {"\"to\":\"1950-12-31\"", "to"},
            {"\"to\":\"1952-06-30\"", "to"},
            {"\"from\":\"2090-01-01\",\"to\":\"2090-12-31\"", "from"},
            {"\"vehiclesPerDay\":-1", "vehiclesPerDay"},
            {"\"vehiclesPerDay\":null", "vehiclesPerDay"},
            {"\"daysCounted\":7", "daysCounted"},
            {"\"direction\":\"eastbound\"", "direction"},
            {"\"heavyVehicleShare\":12", "heavyVehicleShare"},
            {"\"place\":null", "place"},
            {"\"source\":\"\"", "source"}
        }) {
            Api.correct(COORDINATOR, path, "{" + wrong[0] + ",\"reason\":\"to see\"}")
                    .statusCode(400)
                    .body("errors[0].field", equalTo(wrong[1]));
        }
        Api.change(COORDINATOR, path, "/withdrawal", "{\"reason\":\"another road\"}")
                .statusCode(200)
                .body("withdrawnBecause", equalTo("another road"));
        Api.correct(COORDINATOR, path, "{\"vehiclesPerDay\":1,\"reason\":\"again\"}")
                .statusCode(409);
        assertThat(Api.get(COORDINATOR, path).getDouble("vehiclesPerDay")).isEqualTo(3300);
    }

    @Test
    void aPlaceIsOnARoadThatIsSure() {
        for (String[] wrong : new String[][] {
            {"\"decimalDegrees\":{\"latitude\":\"-30.6\",\"longitude\":\"150.02\"},\"uncertaintyMetres\":30", "place"},
            // At the crossing of Mill Road and River Lane
            {
                "\"decimalDegrees\":{\"latitude\":\"-30.50005\",\"longitude\":\"150.05005\"},\"uncertaintyMetres\":60",
                "place"
            },
            {"\"roadAndChainage\":{\"road\":\"No Road\",\"chainageKilometres\":\"3\"}", "place.roadAndChainage.road"}
        }) {
            Api.post(
                            COORDINATOR,
                            "/api/traffic-counts",
                            entry(1952, 100, "")
                                    .replaceFirst("\\{\"decimalDegrees\".*?\\},\"uncert.*?\\}", "{" + wrong[0] + "}"))
                    .statusCode(400)
                    .body("errors[0].field", equalTo(wrong[1]));
        }
    }

    /** Of Mill Road both links, since River Lane, which meets it, is residential; School Street knows its attribute alone. */
    @Test
    void aLinkHasTheTrafficOfTheNearestCountInItsYears() {
        String station = "S-" + UUID.randomUUID();
        String first = madeAt(station, 1960, 4000);
        String last = madeAt(station, 1964, 5000);
        List<Map<String, Object>> links =
                Api.get(COORDINATOR, "/api/road-networks/current/links").getList("features");
        int seen = 0;
        for (int i = 0; i < links.size(); i++) {
            Json link = Api.get(COORDINATOR, "/api/road-networks/current/links").under("features[" + i + "]");
            String traffic = "/api/road-links/" + link.getString("id") + "/traffic?yearFrom=1961&yearTo=1963";
            Json told = Api.get(ROADS_AUTHORITY, traffic);
            switch (link.getString("properties.roadName")) {
                case "Mill Road" -> {
                    // 4250, 4500 and 4750
                    assertThat(told.getDouble("vehiclesPerDay")).isCloseTo(4500, within(1e-9));
                    assertThat(told.getString("basis")).isEqualTo("counted");
                    assertThat(told.getInt("yearsKnown")).isEqualTo(3);
                    assertThat(told.<String>getList("trafficCountIds")).containsExactly(first, last);
                    assertThat(told.getString("rule")).contains("major junction");
                    seen++;
                }
                case "School Street" -> {
                    assertThat(told.getDouble("vehiclesPerDay")).isEqualTo(300);
                    assertThat(told.getString("basis")).isEqualTo("roadsFile");
                }
                default -> {
                    assertThat(told.<Object>get("vehiclesPerDay")).isNull();
                    assertThat(told.getString("basis")).isEqualTo("unknown");
                }
            }
        }
        assertThat(seen).isEqualTo(2);
        String mill = "/api/road-links/" + mill() + "/traffic?yearFrom=";
        // Never beyond the first and the last year; part of a period is told as part
        assertThat(Api.get(COORDINATOR, mill + "1965").getString("basis")).isEqualTo("roadsFile");
        Json partly = Api.get(COORDINATOR, mill + "1963&yearTo=1966");
        assertThat(partly.getInt("yearsKnown")).isEqualTo(2);
        assertThat(partly.getDouble("vehiclesPerDay")).isCloseTo(4875, within(1e-9));
        Api.change(COORDINATOR, "/api/traffic-counts/" + last, "/withdrawal", "{\"reason\":\"a wrong road\"}")
                .statusCode(200);
        assertThat(Api.get(COORDINATOR, mill + "1960").getDouble("vehiclesPerDay"))
                .isEqualTo(4000);
        assertThat(Api.get(COORDINATOR, mill + "1963").getString("basis")).isEqualTo("roadsFile");
        for (String wrong : List.of("1965&yearTo=1960", "1860", "1900&yearTo=1990", "soon")) {
            Api.as(COORDINATOR).get(mill + wrong).then().statusCode(400);
        }
        Api.as(COORDINATOR)
                .get("/api/road-links/" + UUID.randomUUID() + "/traffic")
                .then()
                .statusCode(404);
    }

    private static String mill() {
        return Api.get(COORDINATOR, "/api/road-networks/current/links?bbox=150.01,-30.501,150.02,-30.499")
                .getString("features[0].id");
    }

    @Test
    void oneDirectionSpeaksForBothOnlyWithTheOther() {
        String mill = "/api/road-links/" + mill() + "/traffic?yearFrom=1970";
        String station = ",\"station\":\"S-" + UUID.randomUUID() + "\"";
        String one = station + ",\"direction\":\"eastbound\"";
        Api.make(COORDINATOR, "/api/traffic-counts", entry(1970, 2100, one).replace("\"both\"", "\"one\""));
        assertThat(Api.get(COORDINATOR, mill).getString("basis")).isEqualTo("roadsFile");
        String other = station + ",\"direction\":\"westbound\"";
        Api.make(COORDINATOR, "/api/traffic-counts", entry(1970, 1900, other).replace("\"both\"", "\"one\""));
        Json told = Api.get(COORDINATOR, mill);
        assertThat(told.getDouble("vehiclesPerDay")).isEqualTo(4000);
        assertThat(told.getList("trafficCountIds")).hasSize(2);
        // An average of the days counted says nothing of the year
        Api.make(
                COORDINATOR,
                "/api/traffic-counts",
                entry(1971, 9000, "").replace("annualAverage", "averageOfDaysCounted"));
        assertThat(Api.get(COORDINATOR, mill.replace("1970", "1971")).getString("basis"))
                .isEqualTo("roadsFile");
    }

    @Test
    void theDatabaseHoldsWhatMustHold() throws SQLException {
        String id = made(1980, 100);
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            for (String[] wrong : new String[][] {
                {"to_day = '1990-01-01'", "traffic_is_of_a_year_at_most"},
                {"to_chainage_metres = from_chainage_metres - 1", "traffic_is_from_a_chainage_to_another"},
                {"direction = 'east'", "a_direction_is_of_traffic_in_one"},
                {"days_counted = 366, to_day = '1980-02-01'", "days_counted_are_of_the_period"},
                {"kind = 'estimated', days_counted = 3", "an_estimate_counts_no_days"},
                {"withdrawn_at = now()", "withdrawing_a_traffic_count_has_time_and_reason"}
            }) {
                Assertions.assertThatThrownBy(() -> statement.executeUpdate("UPDATE traffic_counts SET " + wrong[0]
                                + ", version = version + 1, revised_at = now(), revised_by = recorded_by,"
                                + " revision_reason = 'a test' WHERE id = '" + id + "'"))
                        .hasMessageContaining(wrong[1]);
            }
        }
    }
}
