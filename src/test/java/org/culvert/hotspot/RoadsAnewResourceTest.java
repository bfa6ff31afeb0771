package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import net.sf.geographiclib.Geodesic;
import org.culvert.platform.Patience;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

/** The roads are imported once more: what was recorded on the old ones follows, and counts. */
@QuarkusTest
class RoadsAnewResourceTest {
    /** About two metres, within what a link may differ by and be the same; these roads are written to five decimals. */
    private static final double TWO_METRES = 0.00002;

    /** Meets Row Road 4 between two junctions, just beside the planted wallabies, and so cuts its link. */
    private static final String NEW_LANE = ",{\"type\":\"Feature\",\"properties\":{\"name\":\"New Lane\"},\"geometry\":"
            + "{\"type\":\"LineString\",\"coordinates\":[[150.556,%1$s],[150.556,%2$s]]}}";

    private static Json run() {
        String id = EvidenceWorld.run(",\"taxonGroup\":\"macropods\"");
        return Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id + "/result");
    }

    private static int onOlderRoads(Json result) {
        Map<String, Integer> leftOut = new HashMap<>();
        for (Map<String, Object> reason : result.<Map<String, Object>>getList("leftOut")) {
            leftOut.put((String) reason.get("reason"), (Integer) reason.get("incidents"));
        }
        return leftOut.get("placed on an older version of the roads");
    }

    private static Json moved(String network) {
        String location = Api.as(COORDINATOR)
                .post("/api/road-networks/" + network + "/place-moves")
                .then()
                .statusCode(202)
                .extract()
                .header("Location");
        String path = location.substring(location.indexOf("/api/"));
        Patience.until(
                "the places to be moved",
                () -> List.of("done", "failed")
                        .contains(Api.get(COORDINATOR, path).getString("state")));
        return Api.get(COORDINATOR, path);
    }

    @Test
    void oldCollisionsCountOnTheNewRoads() {
        // In a year that no other test has strewn roads with
        World.shared();
        EvidenceWorld.make();
        Json before = run();
        int counted = before.getInt("inputs.collisionsCounted");
        assertThat(counted).isGreaterThan(EvidenceWorld.PLANTED);
        assertThat(onOlderRoads(before)).isZero();
        String place = Api.get(ROADS_AUTHORITY, "/api/road-networks/current/links?limit=1")
                .getString("features[0].properties.lastingId");

        EvidenceWorld.importRoads("evidence roads, surveyed anew", TWO_METRES, "");
        Json network = Api.get(ADMIN, "/api/road-networks");
        assertThat(network.getInt("[0].keptLinks"))
                .isEqualTo(network.getInt("[0].links"))
                .isGreaterThan(50);
        Json links = Api.get(ROADS_AUTHORITY, "/api/road-networks/current/links?limit=1");
        assertThat(links.getString("features[0].properties.lastingId"))
                .isEqualTo(place)
                .isNotEqualTo(links.getString("features[0].id"));
        Json between = run();
        assertThat(between.getInt("inputs.collisionsCounted")).isZero();
        assertThat(onOlderRoads(between)).isGreaterThanOrEqualTo(counted);

        Json told = moved(network.getString("[0].id"));
        assertThat(told.getString("state")).isEqualTo("done");
        assertThat(told.getInt("done")).isEqualTo(told.getInt("places")).isGreaterThanOrEqualTo(counted);
        assertThat(told.getInt("outcomes.moved")).isGreaterThanOrEqualTo(counted);
        assertThat(told.getDouble("farthestMetres"))
                .isCloseTo(Geodesic.WGS84.Inverse(-31.4, 150.5, -31.4 + TWO_METRES, 150.5).s12, within(0.02));
        Json after = run();
        assertThat(after.getInt("inputs.collisionsCounted")).isEqualTo(counted);
        assertThat(after.getInt("inputs.collisionsOfAllAnimals"))
                .isEqualTo(before.getInt("inputs.collisionsOfAllAnimals"));
        assertThat(onOlderRoads(after)).isZero();
        assertThat(after.getList("hotspots.road"))
                .isEqualTo(before.getList("hotspots.road"))
                .isNotEmpty();
    }

    @Test
    void aPlaceWhoseRoadWasCutFollowsAndOneWhoseRoadIsGoneIsTold() {
        EvidenceWorld.make();
        String lane = NEW_LANE.formatted("-31.42", "-31.415");
        String goneRoad = ",{\"type\":\"Feature\",\"properties\":{\"name\":\"Gone Road\",\"start\":0},\"geometry\":"
                + "{\"type\":\"LineString\",\"coordinates\":[[150.7,-31.3],[150.75,-31.3]]}}";
        EvidenceWorld.importRoads("evidence roads with one more", 0, goneRoad);
        String cut = incident("{\"decimalDegrees\":{\"latitude\":\"-31.42003\",\"longitude\":\"150.55400\"}}");
        String said = incident("{\"roadAndChainage\":{\"road\":\"Row Road 3\",\"chainageKilometres\":\"1.25\"}}");
        String gone = incident("{\"decimalDegrees\":{\"latitude\":\"-31.30002\",\"longitude\":\"150.72000\"}}");
        Json cutBefore = Api.get(COORDINATOR, "/api/incidents/" + cut);
        assertThat(cutBefore.getString("place.roadName")).isEqualTo("Row Road 4");

        Instant before = Instant.now();

        EvidenceWorld.importRoads("evidence roads, cut", 0, lane);
        Json network = Api.get(ADMIN, "/api/road-networks");
        Json told = moved(network.getString("[0].id"));
        assertThat(told.getInt("networkNumber")).isEqualTo(network.getInt("[0].number"));
        assertThat(told.getInt("outcomes.noRoad")).isPositive();
        assertThat(told.getInt("outcomes.moved")).isPositive();
        int all = told.getInt("outcomes.moved")
                + told.getInt("outcomes.noRoad")
                + told.getInt("outcomes.roadInDoubt")
                + told.getInt("outcomes.otherChainage");
        assertThat(told.getInt("done")).isEqualTo(all);

        Json cutAfter = Api.get(COORDINATOR, "/api/incidents/" + cut);
        assertThat(cutAfter.getString("place.roadName")).isEqualTo("Row Road 4");
        assertThat(cutAfter.getString("place.roadLinkId")).isNotEqualTo(cutBefore.getString("place.roadLinkId"));
        assertThat(cutAfter.getString("place.verbatim")).isEqualTo(cutBefore.getString("place.verbatim"));
        assertThat(cutAfter.getDouble("place.chainageMetres"))
                .isCloseTo(cutBefore.getDouble("place.chainageMetres"), within(0.5));
        assertThat(Api.get(COORDINATOR, "/api/incidents/" + said).getDouble("place.chainageMetres"))
                .isCloseTo(1250, within(0.5));
        assertThat(Api.get(COORDINATOR, "/api/incidents/" + gone).getString("place.roadName"))
                .isEqualTo("Gone Road");

        Map<String, Object> row = find(told.getString("id"), "noRoad", gone);
        assertThat(row).containsEntry("metres", null).containsEntry("toLinkId", null);
        Map<String, Object> followed = find(told.getString("id"), "moved", cut);
        assertThat(((Number) followed.get("metres")).doubleValue()).isLessThan(0.5);
        // What it was before is kept
        Json asItWas = Api.get(COORDINATOR, "/api/incidents/" + cut + "?asOf=" + before);
        assertThat(asItWas.getString("place.roadLinkId")).isEqualTo(cutBefore.getString("place.roadLinkId"));
    }

    private static String incident(String place) {
        return Api.make(DISPATCHER, "/api/calls", """
                {"cause":"collisionWithVehicle","animals":[{"scientificName":"Wallabia bicolor","vitality":"dead"}],
                 "place":%s}
                """.formatted(place)).getString("incidentId");
    }

    private static Map<String, Object> find(String move, String outcome, String incident) {
        String cursor = "";
        while (cursor != null) {
            Json page = Api.get(
                    COORDINATOR,
                    "/api/place-moves/" + move + "/places?limit=100&outcome=" + outcome
                            + (cursor.isEmpty() ? "" : "&cursor=" + cursor));
            for (Map<String, Object> row : page.<Map<String, Object>>getList("items")) {
                assertThat(row).containsEntry("outcome", outcome);
                if (incident.equals(row.get("incidentId"))) {
                    return row;
                }
            }
            cursor = page.getString("next");
        }
        throw new AssertionError("incident " + incident + " is in no row");
    }

    @Test
    void onlyToTheCurrentRoadsAndOnlyByThoseWhoLookAfterThem() {
        EvidenceWorld.make();
        Json networks = Api.get(ADMIN, "/api/road-networks");
        String older = networks.getString("[1].id");
        Api.as(COORDINATOR)
                .post("/api/road-networks/" + older + "/place-moves")
                .then()
                .statusCode(409);
        Api.as(COORDINATOR)
                .post("/api/road-networks/" + UUID.randomUUID() + "/place-moves")
                .then()
                .statusCode(404);
        Api.as(DISPATCHER)
                .post("/api/road-networks/" + networks.getString("[0].id") + "/place-moves")
                .then()
                .statusCode(403);
        Json done = moved(networks.getString("[0].id"));
        Api.as(COORDINATOR)
                .get("/api/place-moves/" + done.getString("id") + "/places?outcome=lost")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("outcome"));
        assertThat(Api.get(COORDINATOR, "/api/road-networks/" + networks.getString("[0].id") + "/place-moves")
                        .getString("[0].id"))
                .isEqualTo(done.getString("id"));
    }
}
