package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.culvert.platform.Patience;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a report says beside its hotspots, on the evidence with one planted stretch. */
@QuarkusTest
class HotspotBesideResourceTest {
    private static final String ALL =
            ",\"taxonGroup\":\"macropods\",\"alsoAsk\":[\"secondary\",\"persistence\",\"sensitivity\"]";

    @BeforeEach
    void makeWorld() {
        EvidenceWorld.make();
    }

    private static String result(String role, String id) {
        return Api.as(role)
                .get("/api/hotspot-runs/" + id + "/result")
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }

    /** Of four years, of which everything happened in the last. */
    private static String fourYears() {
        int year = EvidenceWorld.year();
        String id = Api.post(
                        ROADS_AUTHORITY,
                        "/api/hotspot-runs",
                        "{\"periodFrom\":\"%d-01-01\",\"periodTo\":\"%d-12-31\",\"reachMetres\":300%s}"
                                .formatted(year - 3, year, ALL))
                .statusCode(202)
                .extract()
                .path("id");
        Patience.until("hotspot run " + id, () -> {
            String state = Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id).getString("state");
            return state.equals("done") || state.equals("failed");
        });
        return id;
    }

    @Test
    void aPlainRunSaysWhatIsNewAndWhatItRestsOnAndNoMore() {
        Json result = Json.from(result(COORDINATOR, EvidenceWorld.run(",\"taxonGroup\":\"macropods\"")));
        assertThat(result.getString("engine.version")).isEqualTo("6");
        assertThat(result.getString("isItNew.sentence")).contains("error rate of its own");
        assertThat(result.getInt("isItNew.simulations")).isEqualTo(999);
        assertThat(result.getInt("isItNew.longestWindowDays")).isEqualTo(182);
        assertThat(result.getList("restsOn.years")).hasSize(1);
        int counted = result.getInt("inputs.collisionsCounted");
        assertThat(result.getInt("restsOn.years[0].collisionsCounted")).isEqualTo(counted);
        assertThat(result.getInt("restsOn.years[0].collisionsOfAllAnimals"))
                .isEqualTo(result.getInt("inputs.collisionsOfAllAnimals"));
        // All incidents of the period but the one that stands under another
        assertThat(result.getInt("restsOn.years[0].incidents"))
                .isEqualTo(result.getInt("inputs.incidentsInPeriod") - 1);
        assertThat(result.getList("restsOn.positions.collisions", Integer.class).stream()
                        .mapToInt(Integer::intValue)
                        .sum())
                .isEqualTo(counted);
        for (String left : List.of("isItLasting", "sensitivity", "secondary")) {
            assertThat(result.<Object>get(left)).as(left).isNull();
        }
    }

    @Test
    void whatIsAskedBesidesIsAnsweredInTheSameBytesTwice() {
        String one = fourYears();
        String document = result(COORDINATOR, one);
        assertThat(result(COORDINATOR, fourYears())).isEqualTo(document);
        Json result = Json.from(document);
        assertThat(result.getList("settings.alsoAsk", String.class))
                .containsExactly("persistence", "sensitivity", "secondary");
        assertThat(result.getList("hotspots")).hasSize(1);
        assertThat(result.getList("isItLasting.windows")).hasSize(2);
        assertThat(result.getInt("isItLasting.simulations")).isEqualTo(199);
        assertThat(result.getList("isItLasting.hotspots[0].foundIn", Integer.class))
                .containsExactly(2);
        assertThat(result.getInt("isItLasting.hotspots[0].windowsApart")).isEqualTo(1);
        assertThat(result.getList("sensitivity.bandwidths.bandwidthMetres", Double.class))
                .containsExactly(150.0, 600.0);
        assertThat(result.getList("sensitivity.bandwidths[0].stay", Integer.class))
                .containsExactly(1);
        assertThat(result.getString("secondary.sentence")).contains("claim nothing");
        // Eight of 34 on one kilometre make the counts vary more than Poisson's, and so the test by segments finds less
        assertThat(result.getString("secondary.segments.method")).contains("negative binomial");
        assertThat(result.getInt("secondary.segments.tested")).isGreaterThan(100);
        assertThat(result.getInt("secondary.neighbours.tested")).isGreaterThan(100);
        assertThat(result.getList("secondary.groups.largest.incidents", Integer.class))
                .contains(EvidenceWorld.PLANTED);
        assertThat(result.getInt("secondary.together.simulations")).isEqualTo(99);
        String page = Api.as(ROADS_AUTHORITY).get("/hotspots/" + one).asString();
        assertThat(page)
                .contains("Is anything new?", "Is it lasting?", "Does it hang on the bandwidth?", "What it rests on")
                .contains("What other methods show", "class=\"rose\"", "class=\"petal\"", "Santos")
                .doesNotContain("style=\"", "<script>", "NOT_FOUND");
    }

    @Test
    void aQuestionThatThereIsNotIsNamed() {
        Api.post(COORDINATOR, "/api/hotspot-runs", EvidenceWorld.entry(",\"alsoAsk\":[\"tomorrow\"]"))
                .statusCode(400)
                .body("errors[0].field", equalTo("alsoAsk"))
                .body("errors[0].wanted", equalTo("persistence, sensitivity, secondary"));
        Api.post(
                        COORDINATOR,
                        "/api/hotspot-runs",
                        EvidenceWorld.entry(",\"alsoAsk\":[\"secondary\",\"secondary\",\"secondary\",\"secondary\"]"))
                .statusCode(400);
    }

    @Test
    void aRoadsAuthorityIsToldNoSmallNumbersBesideEither() {
        String id = fourYears();
        Json told = Json.from(result(ROADS_AUTHORITY, id));
        List<Integer> counts = new ArrayList<>();
        for (String list : List.of(
                "restsOn.years.incidents",
                "restsOn.years.collisionsOfAllAnimals",
                "restsOn.years.collisionsCounted",
                "restsOn.positions.collisions",
                "isItNew.places.incidents",
                "isItLasting.windows.collisions",
                "secondary.segments.found.incidents",
                "secondary.neighbours.found.incidents",
                "secondary.groups.largest.incidents")) {
            counts.addAll(told.getList(list, Integer.class));
        }
        assertThat(counts).isNotEmpty();
        assertThat(counts.stream().filter(Objects::nonNull)).allMatch(count -> count == 0 || count >= 5);
    }

    @Test
    void ofASensitiveAnimalNoPlaceIsToldBesideEither() {
        String id = fourYears();
        String taxon = Api.get(COORDINATOR, "/api/taxa?q=Wallabia").getString("[0].id");
        for (String grid : List.of("0", "0.01")) {
            settle(taxon, "{\"gridDegrees\":" + grid + ",\"reason\":\"for this test\",\"reviewBy\":\"2090-01-01\"}");
            try {
                Json told = Json.from(result(ROADS_AUTHORITY, id));
                for (String section : List.of("isItNew", "isItLasting", "sensitivity", "secondary")) {
                    assertThat(told.<Object>get(section))
                            .as(section + " at " + grid)
                            .isNull();
                }
                assertThat(told.getString("informationWithheld")).contains("sensitive", "what is new");
                assertThat(told.getList("restsOn.years")).hasSize(4);
                Api.as(ROADS_AUTHORITY).get("/hotspots/" + id).then().statusCode(200);
                assertThat(Json.from(result(COORDINATOR, id)).<Object>get("secondary"))
                        .isNotNull();
            } finally {
                settle(taxon, "{\"reason\":\"after the test\"}");
            }
        }
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
