package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.culvert.platform.Role;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Collisions as a layer tell nobody more than occurrences do. */
@QuarkusTest
class CollisionLayerResourceTest {
    private static final String TENTH = "Stratus decimus";
    private static final String WITHHELD = "Stratus occultus";
    private static final String COMMON = "Stratus communis";
    private static final String EXACTLY = "bbox=150.0476,-30.5002,150.0477,-30.5001";

    @BeforeEach
    void makeWorld() {
        World.shared();
        Api.post(COORDINATOR, "/api/taxon-groups", """
                        [{"key":"strata","name":"animals of layers","pouch":false,"clutches":false,"introduced":false}]
                        """).statusCode(200);
        Api.post(COORDINATOR, "/api/taxa", """
                        [{"scientificName":"%s","vernacularName":"rare one","taxonRank":"species","taxonGroup":"strata",
                          "sensitivityGridDegrees":0.1,"sensitivityReason":"kept","sensitivityReviewBy":"2090-01-01"},
                         {"scientificName":"%s","vernacularName":"hidden one","taxonRank":"species","taxonGroup":"strata",
                          "sensitivityGridDegrees":0,"sensitivityReason":"kept","sensitivityReviewBy":"2090-01-01"},
                         {"scientificName":"%s","vernacularName":"common one","taxonRank":"species","taxonGroup":"strata"}]
                        """.formatted(TENTH, WITHHELD, COMMON))
                .statusCode(200);
    }

    private static void found(String name, String at, String cause) {
        Api.make(DISPATCHER, "/api/calls", """
                {"receivedAt":"%s","happenedAt":"%s","cause":"%s","animals":[{"scientificName":"%s"}],
                 "place":{"decimalDegrees":{"latitude":"-30.5001230","longitude":"150.0476540"}}}
                """.formatted(at, at, cause, name));
    }

    private static String of(String name, int year) {
        return "scientificName=" + name.replace(" ", "%20") + "&datetime=" + year + "-01-01/" + year + "-12-31";
    }

    @Test
    void collisionsAloneAreInTheLayer() {
        found(COMMON, "1990-03-05T08:00:00Z", "collisionWithVehicle");
        found(COMMON, "1990-03-06T08:00:00Z", "orphaned");
        assertThat(Layers.all(null, "collisions", of(COMMON, 1990))).hasSize(1);
        assertThat(Layers.all(OFFICER, "collisions", of(COMMON, 1990))).hasSize(1);
        assertThat(Layers.all(OFFICER, "collisions", of(COMMON, 1990) + "&cause=orphaned"))
                .isEmpty();
    }

    @Test
    void aPlaceIsTheCentreOfItsCellUnlessOneMaySeeIt() {
        found(COMMON, "1989-03-05T08:00:00Z", "collisionWithVehicle");
        found(TENTH, "1988-03-05T08:00:00Z", "collisionWithVehicle");
        found(WITHHELD, "1987-03-05T08:00:00Z", "collisionWithVehicle");
        for (String role : new String[] {null, ROADS_AUTHORITY, DISPATCHER, ADMIN, RECIPIENT}) {
            Map<String, Object> common =
                    Layers.all(role, "collisions", of(COMMON, 1989)).get(0);
            assertThat(common.get("geometry")).hasToString("{type=Point, coordinates=[150.045, -30.505]}");
            assertThat(Layers.properties(common))
                    .containsEntry("eventDay", "1989-03-05")
                    .containsEntry("eventYear", 1989)
                    .doesNotContainKeys("occurrence", "incidentId", "verbatimLocality");
            Map<String, Object> rare =
                    Layers.all(role, "collisions", of(TENTH, 1988)).get(0);
            assertThat(rare.get("geometry")).hasToString("{type=Point, coordinates=[150.05, -30.55]}");
            assertThat(Layers.properties(rare))
                    .containsEntry("eventDay", null)
                    .containsEntry("eventYear", 1988)
                    .containsEntry("scientificName", TENTH);
            assertThat(rare).doesNotContainKey("occurrence");
            // A recipient sees it of some: so it is in every feature
            assertThat(Layers.properties(rare).containsKey("locality")).isEqualTo(RECIPIENT.equals(role));
            assertThat(Layers.properties(rare).get("locality")).isNull();
            assertThat(Layers.all(role, "collisions", of(WITHHELD, 1987))).isEmpty();
            // Who is told a cell is answered by it: any days of the year, and its centre
            assertThat(Layers.all(role, "collisions", of(TENTH, 1988) + "&" + EXACTLY))
                    .isEmpty();
            assertThat(Layers.all(role, "collisions", of(TENTH, 1988) + "&bbox=150.04,-30.56,150.06,-30.54"))
                    .hasSize(1);
            assertThat(Layers.all(
                            role,
                            "collisions",
                            "scientificName=" + TENTH.replace(" ", "%20") + "&datetime=1988-09-01/1988-09-02"))
                    .hasSize(1);
        }
        Map<String, Object> exact = Layers.all(OFFICER, "collisions", of(WITHHELD, 1987) + "&" + EXACTLY)
                .get(0);
        assertThat(exact.get("geometry")).hasToString("{type=Point, coordinates=[150.047654, -30.500123]}");
        assertThat(Layers.properties(exact))
                .containsEntry("eventDay", "1987-03-05")
                .containsEntry("locality", "Mill Road");
        assertThat(Layers.get(OFFICER, "/collections/collisions/items/" + exact.get("id"))
                        .getString("properties.scientificName"))
                .isEqualTo(WITHHELD);
        for (String role : Role.ALL) {
            if (!List.of(COORDINATOR, OFFICER).contains(role)) {
                assertThat(Layers.status(role, "/collections/collisions/items/" + exact.get("id")))
                        .as(role)
                        .isEqualTo(404);
            }
        }
    }

    @Test
    void pagesOfTheLayerLeadToItsEnd() {
        for (int day = 1; day <= 7; day++) {
            found(COMMON, "1986-03-0" + day + "T08:00:00Z", "collisionWithVehicle");
        }
        for (String role : new String[] {null, OFFICER}) {
            assertThat(Layers.all(role, "collisions", of(COMMON, 1986) + "&limit=2"))
                    .hasSize(7);
            assertThat(Layers.all(
                            role, "collisions", "scientificName=Stratus%20communis&datetime=1986-03-03/1986-03-04"))
                    .hasSize(2);
        }
    }

    @Test
    void whatGoesOutExactlyUnderAnAgreementIsKept() {
        found(TENTH, "1985-03-05T08:00:00Z", "collisionWithVehicle");
        String agreement =
                Api.make(COORDINATOR, "/api/agreements", """
                        {"recipient":"test-recipient","purpose":"a study","documentReference":"shelf 1",
                         "scientificNames":["%s"],"validFrom":"2020-01-01","validTo":"2090-12-31"}
                        """.formatted(TENTH)).getString("id");
        try {
            Map<String, Object> exact =
                    Layers.all(RECIPIENT, "collisions", of(TENTH, 1985)).get(0);
            assertThat(exact.get("geometry")).hasToString("{type=Point, coordinates=[150.047654, -30.500123]}");
            Map<String, Object> kept = Api.get(COORDINATOR, "/api/disclosures?limit=1")
                    .<Map<String, Object>>getList("items")
                    .get(0);
            assertThat(kept).containsEntry("agreementId", agreement).containsEntry("records", 1);
            assertThat(kept.get("filter").toString()).contains("scientificName=" + TENTH, "collisions", "1985-01-01");
        } finally {
            Api.change(COORDINATOR, "/api/agreements/" + agreement, "/ending", "{\"reason\":\"the test is over\"}")
                    .statusCode(200);
        }
        assertThat(Layers.all(RECIPIENT, "collisions", of(TENTH, 1985)).get(0).get("geometry"))
                .hasToString("{type=Point, coordinates=[150.05, -30.55]}");
    }
}
