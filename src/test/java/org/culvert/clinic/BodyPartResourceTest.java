package org.culvert.clinic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The scutes of a turtle are those of the textbooks, from memory: 5 vertebrals, 4 pairs of costals, 12 pairs of marginals. */
@QuarkusTest
class BodyPartResourceTest {
    private static final String TURTLE = "Chelodina articulata";
    private static final String BAT = "Pteropus articulatus";

    private World world;

    @Inject
    DataSource database;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
        Api.post(ADMIN, "/api/taxon-groups", """
                [{"key":"part-turtles","name":"turtles of a test","pouch":false,"clutches":true,"introduced":false,
                  "bodyPlan":"turtle"},
                 {"key":"part-bats","name":"bats of a test","pouch":false,"clutches":false,"introduced":false,
                  "bodyPlan":"bat"},
                 {"key":"part-others","name":"others of a test","pouch":false,"clutches":false,"introduced":false}]
                """).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"turtle of a test","taxonRank":"species",
                  "taxonGroup":"part-turtles"},
                 {"scientificName":"%s","vernacularName":"bat of a test","taxonRank":"species","taxonGroup":"part-bats"},
                 {"scientificName":"Aliud articulatum","vernacularName":"other of a test","taxonRank":"species",
                  "taxonGroup":"part-others"}]
                """.formatted(TURTLE, BAT)).statusCode(200);
    }

    private String visit(String taxon) {
        String incident = World.call(taxon, 150.03, "").getString("incidentId");
        String caseId = Api.make(COORDINATOR, "/api/cases", """
                        {"animal":{"scientificName":"%s"},"incidentId":"%s","foundAt":"2026-11-01T08:00:00Z",
                         "holder":{"organisationId":"%s"}}
                        """.formatted(taxon, incident, world.clinic))
                .getString("id");
        return "/api/visits/"
                + Api.make(CLINIC, "/api/visits", """
                                {"caseId":"%s","clinicId":"%s"}
                                """.formatted(caseId, world.clinic))
                        .getString("id");
    }

    private static Answer find(String visit, String more) {
        return Api.post(CLINIC, visit + "/findings", "{\"finding\":\"as the vet says\"," + more + "}");
    }

    @Test
    void everyScuteOfAShellHasItsName() {
        List<String> parts =
                Api.get(CARER, "/api/body-parts?taxonGroup=part-turtles").getList("key");
        assertThat(parts)
                .containsAll(IntStream.rangeClosed(1, 12)
                        .mapToObj(i -> "marginal-" + i)
                        .toList())
                .containsAll(
                        IntStream.rangeClosed(1, 4).mapToObj(i -> "costal-" + i).toList())
                .containsAll(IntStream.rangeClosed(1, 5)
                        .mapToObj(i -> "vertebral-" + i)
                        .toList())
                .contains("nuchal", "bridge", "gular", "humeral", "pectoral", "abdominal", "femoral", "anal")
                .doesNotContain("marginal-13", "costal-5", "vertebral-6", "wing", "plagiopatagium")
                .doesNotHaveDuplicates();
        assertThat(Api.get(CARER, "/api/body-parts?taxonGroup=part-bats").<String>getList("key"))
                .contains("plagiopatagium", "uropatagium", "eye", "hind-limb")
                .doesNotContain("carapace", "marginal-1");
        assertThat(Api.get(CARER, "/api/body-parts?taxonGroup=part-others").getList("key"))
                .hasSameSizeAs(Api.get(CARER, "/api/body-parts").getList("key"));
        Api.as(CARER).get("/api/body-parts?taxonGroup=nobody").then().statusCode(400);
    }

    @Test
    void aPairedPartHasItsSideAndNoOtherHas() {
        String turtle = visit(TURTLE);
        find(turtle, "\"part\":\"marginal-7\",\"side\":\"right\",\"kind\":\"fracture\"")
                .statusCode(201)
                .body("findings[0].part", equalTo("marginal-7"))
                .body("findings[0].bodyPart", equalTo("marginal scute 7"))
                .body("findings[0].kind", equalTo("fracture"))
                .body("findings[0].finding", equalTo("as the vet says"));
        find(turtle, "\"part\":\"marginal-7\",\"kind\":\"fracture\"")
                .statusCode(400)
                .body("errors[0].field", equalTo("side"));
        find(turtle, "\"part\":\"marginal-7\",\"side\":\"middle\"")
                .statusCode(400)
                .body("errors[0].field", equalTo("side"));
        for (String side : List.of("left", "both", "middle")) {
            find(turtle, "\"part\":\"nuchal\",\"side\":\"" + side + "\"")
                    .statusCode(400)
                    .body("errors[0].field", equalTo("side"));
        }
        find(turtle, "\"part\":\"nuchal\"").statusCode(201);
        find(turtle, "\"part\":\"wing\",\"side\":\"left\"").statusCode(400).body("errors[0].field", equalTo("part"));
        find(turtle, "\"part\":\"flank\",\"side\":\"left\"").statusCode(400).body("errors[0].field", equalTo("part"));
        find(visit(BAT), "\"part\":\"wing\",\"side\":\"left\",\"bodyPart\":\"near the tip\"")
                .statusCode(201)
                .body("findings[0].bodyPart", equalTo("near the tip"));
        // Nobody said how others are built
        find(visit("Aliud articulatum"), "\"part\":\"wing\",\"side\":\"left\"").statusCode(201);
    }

    @Test
    void wordsAloneAreTakenAsBefore() {
        String turtle = visit(TURTLE);
        String finding = find(turtle, "\"bodyPart\":\"pelvis\",\"side\":\"left\"")
                .statusCode(201)
                .body("findings[0].part", nullValue())
                .body("findings[0].side", equalTo("left"))
                .extract()
                .path("findings[0].id");
        find(turtle, "\"side\":\"left\"").statusCode(400).body("errors[0].field", equalTo("bodyPart"));
        // A correction is held to the same
        Api.correct(CLINIC, turtle, "/findings/" + finding, "{\"part\":\"pelvis\",\"reason\":\"named\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("side"));
        Api.correct(
                        CLINIC,
                        turtle,
                        "/findings/" + finding,
                        "{\"part\":\"ilium\",\"kind\":\"fracture\",\"reason\":\"named\"}")
                .statusCode(200)
                .body("findings[0].part", equalTo("ilium"))
                .body("findings[0].bodyPart", equalTo("pelvis"))
                .body("findings[0].kind", equalTo("fracture"));
    }

    @Test
    void ofAVisitTheFindingThatIsWrongIsNamed() {
        String incident = World.call(TURTLE, 150.03, "").getString("incidentId");
        String caseId = Api.make(COORDINATOR, "/api/cases", """
                        {"animal":{"scientificName":"%s"},"incidentId":"%s","foundAt":"2026-11-01T08:00:00Z",
                         "holder":{"organisationId":"%s"}}
                        """.formatted(TURTLE, incident, world.clinic))
                .getString("id");
        Api.post(CLINIC, "/api/visits", """
                        {"caseId":"%s","clinicId":"%s","findings":[{"part":"nuchal","finding":"a crack"},
                         {"part":"costal-2","finding":"a crack"}]}
                        """.formatted(caseId, world.clinic))
                .statusCode(400)
                .body("errors[0].field", equalTo("findings[1].side"));
    }

    @Test
    void theDatabaseKeepsSidesToo() throws SQLException {
        String turtle = visit(TURTLE);
        String id = find(turtle, "\"part\":\"costal-2\",\"side\":\"left\"")
                .statusCode(201)
                .extract()
                .path("findings[0].id");
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            String update = "update findings set side = '%s', version = version + 1 where id = '" + id + "'";
            assertThatThrownBy(() -> statement.execute(update.formatted("notApplicable")))
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining("side of a part");
            statement.execute(update.formatted("both"));
        }
    }
}
