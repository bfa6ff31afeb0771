package org.culvert.release.holds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.release.rules.Hold;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class HoldResourceTest {
    private static final String FLYING_FOX = "Pteropus poliocephalus";
    private static final Instant SINCE = Instant.parse("2026-01-10T03:00:00Z");
    private static final String CLEARED =
            "{\"by\":\"authority\",\"name\":\"the public health unit\",\"reference\":\"PHU-9\",\"at\":\"2026-01-12T03:00:00Z\"}";

    @Inject
    HoldService holds;

    @Inject
    DataSource database;

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private String newCase() {
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(
                                World.call(FLYING_FOX, 150.06, "").getString("incidentId"), FLYING_FOX, world.rescuer))
                .getString("id");
    }

    private static String hold(String kind, String more) {
        return "{\"kind\":\"%s\",\"since\":\"%s\"%s}".formatted(kind, SINCE, more);
    }

    private static String set(String caseId, String kind, String more) {
        return Api.make(RESCUER, "/api/cases/" + caseId + "/holds", hold(kind, more))
                .getString("id");
    }

    /** What to do: Australian Immunisation Handbook and bat groups; "Cautions on the facts above" of the trade's facts. */
    @Test
    void whoSetsAHoldForAnExposureIsToldWhatToDoNow() {
        String id = newCase();
        Json made = Api.post(RESCUER, "/api/cases/" + id + "/holds", hold("exposure", ""))
                .statusCode(201)
                .header("Location", containsString("/api/holds/"))
                .body("askedBy", nullValue())
                .body("clearing", nullValue())
                .extract()
                .jsonPath();
        assertThat(String.join(" ", made.getList("advice", String.class)))
                .contains("at once and thoroughly", "5 or for 15 minutes")
                .contains("Ring the public health unit now, even if vaccinated")
                .contains("neither released nor disposed of until cleared");
        assertThat(made.getString("note"))
                .contains("Nothing overrides a hold", "Whom it concerns is not kept here")
                .contains("Check your local code and your licensed vet");
        assertThat(made.prettify()).doesNotContainPattern("(?i)lawful|legal|safe|dose");
        assertThat(made.getString("since")).isEqualTo(SINCE.toString());
        assertThat(Api.make(CARER, "/api/cases/" + id + "/holds", hold("notifiableDisease", ""))
                        .getList("advice", String.class))
                .first()
                .asString()
                .contains("hotline now", "one suspicion is enough");
    }

    @Test
    void whomItConcernsHasNoField() {
        String path = "/api/cases/" + newCase() + "/holds";
        for (String field : List.of("person", "whom", "personId", "words", "exposed")) {
            Api.post(RESCUER, path, hold("exposure", ",\"%s\":\"A Rescuer\"".formatted(field)))
                    .statusCode(400)
                    .body("errors.field", hasItem(field));
        }
        Api.post(RESCUER, path, hold("asked", "").replace("\"asked\"", "null"))
                .statusCode(400)
                .body("errors.field", hasItem("kind"));
        Api.post(RESCUER, path, hold("asked", ""))
                .statusCode(400)
                .body("errors[0].field", equalTo("askedBy"))
                .body("errors[0].wanted", containsString("never whom the matter concerns"));
    }

    @Test
    void aHoldStandsUntilTheAuthorityClearsItOnce() {
        String caseId = newCase();
        String id = set(caseId, "exposure", "");
        String path = "/api/holds/" + id;
        Api.correct(
                        RESCUER,
                        path,
                        "{\"askedBy\":\"the public health unit\",\"reference\":\"PHU-7\",\"reason\":\"rang\"}")
                .statusCode(200)
                .body("askedBy", equalTo("the public health unit"))
                .body("record.revision", equalTo(2));
        assertThat(holds.activeHolds(UUID.fromString(caseId), SINCE.minusSeconds(1)))
                .isEmpty();
        assertThat(holds.activeHolds(UUID.fromString(caseId), SINCE))
                .containsExactly(new Hold(Hold.Kind.exposure, SINCE));

        Api.post(COORDINATOR, path + "/clearing", CLEARED).statusCode(428);
        Api.change(COORDINATOR, path, "/clearing", CLEARED.replace("authority", "licensedVet"))
                .statusCode(400)
                .body("errors.field", hasItem("by"));
        Api.change(COORDINATOR, path, "/clearing", CLEARED.replace("PHU-9", " "))
                .statusCode(400)
                .body("errors.field", hasItem("reference"));
        Api.change(COORDINATOR, path, "/clearing", CLEARED.replace("2026-01-12", "2026-01-09"))
                .statusCode(400)
                .body("errors.field", hasItem("at"));
        Api.change(COORDINATOR, path, "/clearing", CLEARED.replace("2026-01-12", "2126-01-12"))
                .statusCode(400)
                .body("errors.field", hasItem("at"));
        for (String role : List.of(RESCUER, CARER, DISPATCHER)) {
            Api.as(role)
                    .header("If-Match", "*")
                    .body(CLEARED)
                    .post(path + "/clearing")
                    .then()
                    .statusCode(403);
        }
        Instant before = Clocks.now();
        Api.change(COORDINATOR, path, "/clearing", CLEARED)
                .statusCode(200)
                .body("clearing.by", equalTo("authority"))
                .body("clearing.reference", equalTo("PHU-9"))
                .body("advice.size()", equalTo(0));
        Api.change(COORDINATOR, path, "/clearing", CLEARED)
                .statusCode(409)
                .body("detail", containsString("the public health unit"));
        Api.correct(COORDINATOR, path, "{\"askedBy\":\"another\",\"reason\":\"again\"}")
                .statusCode(409);

        Instant cleared = Instant.parse("2026-01-12T03:00:00Z");
        assertThat(holds.activeHolds(UUID.fromString(caseId), cleared.minusSeconds(1)))
                .hasSize(1);
        assertThat(holds.activeHolds(UUID.fromString(caseId), cleared)).isEmpty();
        assertThat(Api.get(OFFICER, "/api/cases/" + caseId + "/holds").getList("clearing.name"))
                .containsExactly("the public health unit");
        assertThat(Api.get(OFFICER, "/api/cases/" + caseId + "/holds?asOf=" + before)
                        .getList("clearing"))
                .containsOnlyNulls()
                .hasSize(1);
        assertThat(Api.get(COORDINATOR, "/api/records/" + id + "/revisions").getList("reason"))
                .containsExactly(null, "rang", null);
    }

    @Test
    void aVetClearsWhatAVetAskedFor() {
        String caseId = newCase();
        String first = set(caseId, "asked", ",\"askedBy\":\"the clinic\"");
        set(caseId, "notifiableDisease", "");
        Api.change(
                        COORDINATOR,
                        "/api/holds/" + first,
                        "/clearing",
                        "{\"by\":\"licensedVet\",\"name\":\"Dr Vet\",\"reference\":\"V-1\"}")
                .statusCode(200)
                .body("clearing.name", equalTo("Dr Vet"));
        Api.correct(COORDINATOR, "/api/holds/" + set(caseId, "asked", ",\"askedBy\":\"the clinic\""), """
                        {"askedBy":null,"reason":"nobody did"}
                        """)
                .statusCode(400)
                .body("errors.field", hasItem("askedBy"));
        assertThat(holds.activeHolds(UUID.fromString(caseId), SINCE.plusSeconds(1)))
                .hasSize(3);
    }

    @Test
    void aBodyIsHeldAsWell() {
        String caseId = newCase();
        Api.change(COORDINATOR, "/api/cases/" + caseId, "/fate", "{\"fate\":\"died\"}")
                .statusCode(200);
        set(caseId, "exposure", "");
        assertThat(holds.activeHolds(UUID.fromString(caseId), SINCE)).hasSize(1);
        Api.change(COORDINATOR, "/api/cases/" + caseId, "/body/disposal", "{\"disposal\":\"incinerated\"}")
                .statusCode(409)
                .body("detail", containsString("until the hold has been cleared"));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + caseId).getString("body.disposal"))
                .isNull();
    }

    /** Emergency animal disease: ring the hotline and keep the animal where it is; common practice, no source. */
    @Test
    void underSuspicionAnAnimalGoesToNobodyButTheAuthority() {
        String caseId = newCase();
        set(caseId, "notifiableDisease", "");
        String handOvers = "/api/cases/" + caseId + "/hand-overs";
        Api.post(COORDINATOR, handOvers, "{\"taker\":{\"organisationId\":\"%s\"}}".formatted(World.shared().clinic))
                .statusCode(409)
                .body("detail", containsString("hotline"));
        String authority = Api.make(ADMIN, "/api/organisations", """
                        {"kind":"wildlifeAuthority","name":"Authority %s","xRay":false,"surgery":false}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        Api.post(COORDINATOR, handOvers, "{\"taker\":{\"organisationId\":\"%s\"}}".formatted(authority))
                .statusCode(201);
    }

    @Test
    void holdsAreSeenByWhoSeesTheCase() {
        String theirs = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"holder":{"organisationId":"%s"}}
                        """.formatted(
                                World.call(FLYING_FOX, 150.06, "").getString("incidentId"),
                                FLYING_FOX,
                                Api.make(ADMIN, "/api/organisations", """
                                                {"kind":"shelter","name":"Shelter %s","xRay":false,"surgery":false}
                                                """.formatted(UUID.randomUUID()))
                                        .getString("id")))
                .getString("id");
        String id = Api.make(DISPATCHER, "/api/cases/" + theirs + "/holds", hold("exposure", ""))
                .getString("id");
        for (String role : List.of(RESCUER, CLINIC, CARER)) {
            Api.as(role).get("/api/cases/" + theirs + "/holds").then().statusCode(404);
            Api.as(role).get("/api/holds/" + id).then().statusCode(404);
            Api.as(role).get("/api/records/" + id + "/revisions").then().statusCode(404);
            Api.post(role, "/api/cases/" + theirs + "/holds", hold("exposure", ""))
                    .statusCode(404);
        }
        for (String role : List.of(DISPATCHER, COORDINATOR, OFFICER)) {
            assertThat(Api.get(role, "/api/holds/" + id).getString("kind")).isEqualTo("exposure");
        }
        for (String role : List.of(ROADS_AUTHORITY, ADMIN)) {
            Api.as(role).get("/api/holds/" + id).then().statusCode(403);
        }
        Api.post(OFFICER, "/api/cases/" + theirs + "/holds", hold("exposure", ""))
                .statusCode(403);
        Api.post(DISPATCHER, "/api/cases/" + UUID.randomUUID() + "/holds", hold("exposure", ""))
                .statusCode(404);
        Api.post(
                        DISPATCHER,
                        "/api/cases/" + theirs + "/holds",
                        hold("exposure", "").replace("2026", "2126"))
                .statusCode(400)
                .body("errors.field", hasItem("since"));
    }

    @Test
    void theDatabaseRefusesWhatIsNoHold() throws SQLException {
        String id = set(newCase(), "exposure", "");
        String whole = ", cleared_by_name = 'x', cleared_reference = 'x', cleared_at = ";
        for (String[] wrong : new String[][] {
            {"cleared_at = now()", "clearing_a_hold_has_time_name_and_reference"},
            {"cleared_by = 'authority'" + whole + "happened_at", "a_hold_is_cleared_after_it_began"},
            {"cleared_by = 'licensedVet'" + whole + "now()", "an_authority_clears_its_holds"},
            {"kind = 'asked'", "who_asked_for_a_hold_is_named"},
            {"case_id = '" + UUID.randomUUID() + "'", "never changed"}
        }) {
            refused(id, wrong[0], wrong[1]);
        }
        Api.change(COORDINATOR, "/api/holds/" + id, "/clearing", CLEARED).statusCode(200);
        refused(
                id,
                "cleared_at = null, cleared_by = null, cleared_by_name = null, cleared_reference = null",
                "kept as they are");
        refused(id, "cleared_reference = 'another'", "kept as they are");
    }

    private void refused(String id, String change, String message) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.executeUpdate("update holds set " + change
                            + ", version = version + 1, revised_at = now(), revised_by = recorded_by where id = '" + id
                            + "'"))
                    .as(change)
                    .hasMessageContaining(message);
        }
    }
}
