package org.culvert.road.traffic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class TrafficFileResourceTest {
    private static final String FILES = "/api/traffic-counts/files";
    private static final String ALL = "?measure=annualAverage&kind=shortTerm&directions=both&source=made-for-a-test";
    private static final String NAMED = ALL + "&stationAttribute=SITE_ID&roadAttribute=RD&yearAttribute=YEAR"
            + "&vehiclesPerDayAttribute=AADT&heavyVehicleAttribute=PC_HV&heavyVehicleUnit=percent";

    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    private static Answer send(String path, String... features) {
        return Api.as(COORDINATOR)
                .contentType("application/geo+json")
                .body("{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}")
                .post(path)
                .then();
    }

    private static String feature(String geometry, String properties) {
        return "{\"type\":\"Feature\",\"properties\":{" + properties + "},\"geometry\":" + geometry + "}";
    }

    private static String point(double longitude, double latitude) {
        return "{\"type\":\"Point\",\"coordinates\":[" + longitude + "," + latitude + "]}";
    }

    private static String site(String station, double longitude, double latitude, String road, int year, String aadt) {
        return feature(
                point(longitude, latitude),
                "\"SITE_ID\":\"%s\",\"RD\":%s,\"YEAR\":%d,\"AADT\":%s,\"PC_HV\":12.5"
                        .formatted(station, road == null ? "null" : "\"" + road + "\"", year, aadt));
    }

    @Test
    void aTrialTellsOfEveryRowAndKeepsNothing() {
        String station = "T-" + UUID.randomUUID();
        Json trial = send(
                        FILES + "/trials" + NAMED,
                        site(station, 150.02, -30.5001, "Mill Road", 1930, "\"4,210\""),
                        site(station, 150.02, -30.6, null, 1930, "4000"),
                        site(station, 150.05, -30.5, null, 1930, "4000"),
                        site(station, 150.05, -30.5, "River Lane", 1930, "150"),
                        site(station, 150.03, -30.5, "Nowhere Road", 1930, "150"),
                        site(station, 150.03, -30.5, "Mill Road", 1930, "\"many\""),
                        site(station, 150.03, -30.5, "Mill Road", 2199, "10"),
                        site(station, 150.02, -30.5001, "Mill Road", 1930, "4210"),
                        feature("{\"type\":\"Point\",\"coordinates\":[150.03,-130.5]}", "\"AADT\":1"),
                        feature(
                                "{\"type\":\"LineString\",\"coordinates\":[[150.01,-30.5],[150.03,-30.5]]}",
                                "\"AADT\":3900,\"YEAR\":\"1931\",\"SITE_ID\":\"" + station + "\""))
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(trial.getInt("features")).isEqualTo(10);
        assertThat(trial.getInt("understood")).isEqualTo(3);
        assertThat(trial.getInt("refused")).isEqualTo(7);
        assertThat(trial.getList("stillMissing")).isEmpty();
        assertThat(trial.getList("attributes")).containsExactly("SITE_ID", "RD", "YEAR", "AADT", "PC_HV");
        assertThat(trial.getString("rows[0].feature")).isEqualTo("features.0");
        assertThat(trial.getString("rows[0].count.road")).isEqualTo("Mill Road");
        assertThat(trial.getDouble("rows[0].count.vehiclesPerDay")).isEqualTo(4210);
        assertThat(trial.getDouble("rows[0].count.heavyVehicleShare")).isEqualTo(0.125);
        assertThat(trial.getDouble("rows[0].count.offsetMetres")).isCloseTo(11.1, within(0.2));
        assertThat(trial.getString("rows[0].count.to")).isEqualTo("1930-12-31");
        String[] refusals = {
            null,
            "place",
            "place",
            null,
            "place",
            "properties.AADT",
            "from",
            "vehiclesPerDay",
            "features.8.geometry",
            null
        };
        for (int i = 0; i < refusals.length; i++) {
            if (refusals[i] == null) {
                assertThat(trial.getList("rows[" + i + "].refused")).isEmpty();
            } else {
                assertThat(trial.getString("rows[" + i + "].refused[0].field")).isEqualTo(refusals[i]);
                assertThat(trial.<Object>get("rows[" + i + "].count")).isNull();
            }
        }
        assertThat(trial.getString("rows[3].count.road")).isEqualTo("River Lane");
        assertThat(trial.getString("rows[7].refused[0].detail")).contains("twice");
        // 959.7 and 2,879 m from the west end, which is km 2 (a degree of longitude is 95,967 m here)
        assertThat(trial.getDouble("rows[9].count.fromChainageMetres")).isCloseTo(2959.7, within(1.0));
        assertThat(trial.getDouble("rows[9].count.toChainageMetres")).isCloseTo(4879.0, within(2.0));
        assertThat(trial.getDouble("rows[9].count.decimalLongitude")).isCloseTo(150.02, within(1e-6));
        assertThat(Api.get(OFFICER, "/api/traffic-counts?station=" + station).getList("items"))
                .isEmpty();
    }

    @Test
    void columnsAreProposedByTheirNamesAndWhatIsMissingIsSaid() {
        String row = feature(
                point(150.02, -30.5),
                "\"Road Name\":\"Mill Road\",\"AADT\":4000,\"VPD\":3900,\"Year\":1932,\"Method\":\"tube\",\"dir\":\"both\"");
        Json trial = send(FILES + "/trials?source=a-test", row)
                .statusCode(200)
                .extract()
                .jsonPath();
        Map<String, Object> road = trial.get("columns.find { it.parameter == 'roadAttribute' }");
        assertThat(road).containsEntry("attribute", "Road Name").containsEntry("proposed", true);
        Map<String, Object> vehicles = trial.get("columns.find { it.parameter == 'vehiclesPerDayAttribute' }");
        assertThat(vehicles).containsEntry("attribute", null).containsEntry("others", List.of("AADT", "VPD"));
        assertThat(trial.getString("stillMissing[0].field")).isEqualTo("vehiclesPerDayAttribute");
        assertThat(trial.getList("rows")).isEmpty();
        Json next = send(FILES + "/trials?source=a-test&measure=annualAverage&vehiclesPerDayAttribute=VPD", row)
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(next.getInt("understood")).isEqualTo(1);
        assertThat(next.getString("rows[0].count.kind")).isEqualTo("shortTerm");
        assertThat(next.getString("rows[0].count.directions")).isEqualTo("both");
        assertThat(next.getDouble("rows[0].count.vehiclesPerDay")).isEqualTo(3900);
        // What is entered is named by a person
        send(FILES + "?source=a-test&measure=annualAverage&vehiclesPerDayAttribute=VPD", row)
                .statusCode(400)
                .body("errors[0].field", equalTo("yearAttribute"));
        send(FILES + "/trials?yearAttribute=JAHR", row)
                .statusCode(400)
                .body("errors[0].field", equalTo("yearAttribute"))
                .body("errors[0].wanted", containsString("Method"));
    }

    @Test
    void allOrNothingUnlessRefusedRowsAreLeftOutAndNeverTwice() {
        String station = "T-" + UUID.randomUUID();
        String good = site(station, 150.031, -30.5, "Mill Road", 1933, "4000");
        String bad = site(station, 150.02, -30.7, "Mill Road", 1933, "4000");
        send(FILES + NAMED, good, bad).statusCode(400).body("errors[0].field", equalTo("features.1.place"));
        assertThat(Api.get(OFFICER, "/api/traffic-counts?station=" + station).getList("items"))
                .isEmpty();
        Json made = send(FILES + NAMED + "&refusedRows=leaveOut", good, bad, feature("null", "\"AADT\":1"))
                .statusCode(201)
                .body("features", equalTo(3))
                .body("entered", equalTo(1))
                .body("refused[0].feature", equalTo("features.1"))
                .body("leftOut.'no geometry'", equalTo(1))
                .extract()
                .jsonPath();
        Json count = Api.get(OFFICER, "/api/traffic-counts/" + made.getString("ids[0]"));
        assertThat(count.getString("station")).isEqualTo(station);
        assertThat(count.getString("kind")).isEqualTo("shortTerm");
        assertThat(count.getString("source")).isEqualTo("made-for-a-test");
        assertThat(count.getDouble("coordinateUncertaintyInMeters")).isEqualTo(25);
        send(FILES + NAMED, good).statusCode(400).body("errors[0].detail", containsString("entered before"));
        for (String[] wrong : new String[][] {
            {"&kind=guessed", "kind"},
            {"&measure=some", "measure"},
            {"&directions=up", "directions"},
            {"&uncertaintyMetres=0", "uncertaintyMetres"},
            {"&refusedRows=maybe", "refusedRows"},
            {"&heavyVehicleUnit=tonnes", "heavyVehicleUnit"},
            {"&year=3", "year"},
            {"&crs=EPSG:1", "crs"}
        }) {
            send(
                            FILES + "?yearAttribute=YEAR&vehiclesPerDayAttribute=AADT&source=x"
                                    + (wrong[0].startsWith("&measure") ? "" : "&measure=annualAverage")
                                    + (wrong[0].startsWith("&kind") ? "" : "&kind=shortTerm")
                                    + (wrong[0].startsWith("&directions") ? "" : "&directions=both")
                                    + wrong[0],
                            good)
                    .statusCode(400)
                    .body("errors.field", hasItem(wrong[1]));
        }
    }
}
