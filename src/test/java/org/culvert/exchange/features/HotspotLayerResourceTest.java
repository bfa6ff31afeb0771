package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.hotspot.EvidenceRuns;
import org.culvert.support.Api;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Hotspots of the latest whole annual run as a layer, by right; small counts and times of sensitive groups stay hidden. */
@QuarkusTest
class HotspotLayerResourceTest {
    private List<String> runs;

    @BeforeEach
    void makeWorld() {
        EvidenceRuns.make();
        runs = EvidenceRuns.annual(
                "[{\"taxonGroup\":\"macropods\"},{\"taxonGroup\":\"macropods\",\"months\":[6,7]},{\"taxonGroup\":\"turtles\"}]");
    }

    @AfterEach
    void closeAgain() {
        open(false, 5);
        settle("{\"reason\":\"after the test\"}");
    }

    private static void open(boolean toEverybody, int smallest) {
        Api.as(ADMIN)
                .header("If-Match", Api.tag(ADMIN, "/api/disclosure-settings"))
                .body("{\"smallestCount\":%d,\"publicDelayDays\":30,\"publicHotspots\":%s,\"source\":\"for a test\"}"
                        .formatted(smallest, toEverybody))
                .put("/api/disclosure-settings")
                .then()
                .statusCode(200);
    }

    private static void settle(String sensitivity) {
        String taxon = Api.get(COORDINATOR, "/api/taxa?q=Wallabia").getString("[0].id");
        Api.as(COORDINATOR)
                .header("If-Match", Api.tag(COORDINATOR, "/api/taxa/" + taxon))
                .body(sensitivity)
                .put("/api/taxa/" + taxon + "/sensitivity")
                .then()
                .statusCode(200);
    }

    private static void sensitive(String grid) {
        settle("{\"gridDegrees\":" + grid + ",\"reason\":\"for this test\",\"reviewBy\":\"2090-01-01\"}");
    }

    /** What the files of the runs tell the same asker, by the identifier that the layer gives it. */
    private List<String> identifiersOfFiles(String role) {
        List<String> all = new ArrayList<>();
        for (String run : runs) {
            Api.get(role, "/api/hotspot-runs/" + run + "/hotspots.geojson")
                    .<Integer>getList("features.id")
                    .forEach(rank -> all.add(run + "-" + rank));
        }
        return all;
    }

    private static List<Object> identifiers(List<Map<String, Object>> features) {
        return features.stream().map(feature -> feature.get("id")).toList();
    }

    @Test
    void theLayerHasTheStretchesOfEveryCellOfTheLatestAnnualRun() {
        List<Map<String, Object>> all = Layers.all(ROADS_AUTHORITY, "hotspots", "limit=1");
        assertThat(identifiers(all)).isEqualTo(identifiersOfFiles(ROADS_AUTHORITY));
        Map<String, Object> first = all.get(0);
        assertThat(Layers.properties(first))
                .containsEntry("road", "Row Road 4")
                .containsEntry("incidents", 8)
                .containsEntry("taxonGroup", "macropods")
                .containsEntry("periodTo", EvidenceRuns.year() + "-12-31")
                .containsEntry("season", "all months");
        assertThat(Layers.get(ROADS_AUTHORITY, "/collections/hotspots/items/" + first.get("id"))
                        .getString("properties.road"))
                .isEqualTo("Row Road 4");
        assertThat(Layers.all(ROADS_AUTHORITY, "hotspots", "taxonGroup=turtles"))
                .allSatisfy(one -> assertThat(Layers.properties(one)).containsEntry("taxonGroup", "turtles"));
        assertThat(Layers.all(ROADS_AUTHORITY, "hotspots", "taxonGroup=macropods&season=all%20months"))
                .hasSize(1);
        assertThat(Layers.all(ROADS_AUTHORITY, "hotspots", "road=Row%20Road%203"))
                .isEmpty();
        // Row Road 4 lies along 31.42 S
        assertThat(Layers.all(ROADS_AUTHORITY, "hotspots", "bbox=150.5,-31.43,150.7,-31.41&season=all%20months"))
                .hasSize(1);
        assertThat(Layers.all(ROADS_AUTHORITY, "hotspots", "bbox=150.5,-31.41,150.7,-31.40"))
                .noneMatch(one -> Layers.properties(one).get("road").equals("Row Road 4"));
        assertThat(Layers.all(ROADS_AUTHORITY, "hotspots", "datetime=../" + (EvidenceRuns.year() - 1) + "-12-31"))
                .isEmpty();
        assertThat(Layers.by(ROADS_AUTHORITY)
                        .get(Layers.root() + "/collections/hotspots/items?cursor=" + EvidenceRuns.wallabies() + "-1")
                        .statusCode())
                .isEqualTo(400);
    }

    @Test
    void whatARoadsAuthorityIsNotToldInFilesIsNotInTheLayer() {
        sensitive("0");
        assertThat(Layers.all(ROADS_AUTHORITY, "hotspots", "taxonGroup=macropods"))
                .isEmpty();
        assertThat(Layers.all(COORDINATOR, "hotspots", "taxonGroup=macropods")).isNotEmpty();
        sensitive("0.01");
        List<Map<String, Object>> cells = Layers.all(ROADS_AUTHORITY, "hotspots", "");
        assertThat(identifiers(cells)).isEqualTo(identifiersOfFiles(ROADS_AUTHORITY));
        Map<String, Object> exact = Layers.all(COORDINATOR, "hotspots", "").get(0);
        assertThat(cells.get(0).get("geometry")).isNotEqualTo(exact.get("geometry"));
        assertThat(Layers.properties(cells.get(0)).get("fromChainageMetres"))
                .isNotEqualTo(Layers.properties(exact).get("fromChainageMetres"));
        // Eight collisions, where counts from nine are told
        open(false, 9);
        assertThat(Layers.all(ROADS_AUTHORITY, "hotspots", "taxonGroup=macropods"))
                .isEmpty();
        assertThat(Layers.all(COORDINATOR, "hotspots", "taxonGroup=macropods")).isNotEmpty();
    }

    @Test
    void othersHaveNoHotspotsUntilTheNetworkOpensThem() {
        for (String role : List.of(CARER, OFFICER, RECIPIENT)) {
            assertThat(Layers.status(role, "/collections/hotspots/items")).isEqualTo(403);
        }
        assertThat(Layers.status(null, "/collections/hotspots/items")).isEqualTo(401);
        open(true, 5);
        for (String role : new String[] {null, CARER, OFFICER, RECIPIENT}) {
            assertThat(Layers.get(role, "/collections").<String>getList("collections.id"))
                    .contains("hotspots");
            assertThat(Layers.all(role, "hotspots", "taxonGroup=macropods&limit=1"))
                    .isNotEmpty();
        }
        List<Map<String, Object>> open = Layers.all(null, "hotspots", "");
        assertThat(open)
                .allSatisfy(one -> assertThat((Integer) Layers.properties(one).get("incidents"))
                        .isGreaterThanOrEqualTo(5));
        assertThat(Layers.status(null, "/api/hotspot-runs/" + runs.get(0))).isNotEqualTo(200);
        open(true, 9);
        assertThat(Layers.all(null, "hotspots", "taxonGroup=macropods"))
                .as("eight collisions, where counts from nine are told")
                .isEmpty();
    }

    @Test
    void ofASensitiveGroupThePublicIsToldNoSeasonAndNoExactPlace() {
        open(true, 5);
        sensitive("0.01");
        List<Map<String, Object>> cells = Layers.all(null, "hotspots", "taxonGroup=macropods");
        assertThat(cells)
                .isNotEmpty()
                .allSatisfy(one -> assertThat(Layers.properties(one))
                        .containsEntry("season", null)
                        .containsEntry("periodTo", null)
                        .containsEntry("errorRateSentence", null)
                        .containsEntry("taxonGroup", "macropods"));
        assertThat(cells.toString()).doesNotContain("June", "July", "months");
        assertThat(Layers.all(null, "hotspots", "taxonGroup=macropods&season=all%20months"))
                .as("who is told no season is not answered by it")
                .isEmpty();
        assertThat(Layers.all(ROADS_AUTHORITY, "hotspots", "taxonGroup=macropods&season=all%20months"))
                .hasSize(1);
        sensitive("0");
        assertThat(Layers.all(null, "hotspots", "taxonGroup=macropods")).isEmpty();
    }
}
