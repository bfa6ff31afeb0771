package org.culvert.care.health;

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
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class SuspicionResourceTest {
    private static final String FLYING_FOX = "Pteropus poliocephalus";
    private static final String OTHER_DISEASE = "01920000-0000-7000-8000-000000049003";

    @Inject
    DataSource database;

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private String newCase() {
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-02-10T02:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(
                                World.call(FLYING_FOX, 150.08, "").getString("incidentId"), FLYING_FOX, world.rescuer))
                .getString("id");
    }

    private static String condition(String more) {
        return Api.make(COORDINATOR, "/api/notifiable-conditions", """
                        {"jurisdiction":"XS","name":"Condition %s","taxonGroups":["flying-foxes"],
                         "signs":"as the source has them","source":"made for a test","readOn":"2026-01-01",
                         "reviewBy":"2090-01-01"%s}
                        """.formatted(UUID.randomUUID(), more))
                .getString("id");
    }

    private static String suspicion(String condition, String more) {
        return "{\"conditionId\":\"%s\",\"signs\":\"it cannot fly\",\"suspectedBy\":\"Dr Vet\",\"at\":\"2026-02-10T03:00:00Z\"%s}"
                .formatted(condition, more);
    }

    /** What is shipped names lyssavirus, avian influenza and other emergency diseases, and makes up no number. */
    @Test
    void whatIsShippedHasNoNumberThatNobodyRead() {
        Json shipped = Api.get(RESCUER, "/api/notifiable-conditions");
        String ours = "findAll { it.id.startsWith('01920000-0000-7000-8000-00000004900') }";
        assertThat(shipped.getList(ours + ".name"))
                .containsExactlyInAnyOrder(
                        "lyssavirus in a bat", "avian influenza", "another emergency animal disease");
        assertThat(shipped.getList(ours + ".hotline")).containsOnlyNulls();
        assertThat(shipped.getList(ours + ".source", String.class)).allMatch(source -> !source.isBlank());
        assertThat(shipped.getList(ours + ".signs", String.class)).allMatch(signs -> signs.contains("of your state"));
    }

    /** One suspicion is enough for the hotline and a stop on transfers; common practice, no source. */
    @Test
    void oneSuspicionHoldsTheAnimalAndSaysWhomToRing() {
        String caseId = newCase();
        String cases = "/api/cases/" + caseId;
        Json made = Api.make(RESCUER, cases + "/disease-suspicions", suspicion(OTHER_DISEASE, ""));
        assertThat(made.getString("advice[0].sentence"))
                .startsWith(
                        "No hotline is on record here: ring the emergency animal disease hotline of your state now");
        assertThat(made.getString("advice[1].sentence"))
                .contains("One suspicion is enough", "neither handed on nor released nor disposed of")
                .contains("check your local code and your licensed vet");
        assertThat(made.getString("told")).isNull();
        assertThat(Api.get(COORDINATOR, "/api/holds/" + made.getString("holdId"))
                        .getString("kind"))
                .isEqualTo("notifiableDisease");

        String known = condition(
                ",\"hotline\":{\"name\":\"the hotline of a test\",\"number\":\"0491 570 006\",\"source\":\"made for a test\",\"readOn\":\"2026-01-01\",\"reviewBy\":\"2090-01-01\"}");
        Json second = Api.make(COORDINATOR, cases + "/disease-suspicions", suspicion(known, ""));
        assertThat(second.getString("advice[0].sentence")).isEqualTo("Ring the hotline of a test now: 0491 570 006.");
        assertThat(second.getString("advice[0].source")).isEqualTo("made for a test, read on 2026-01-01");
        assertThat(second.getString("holdId")).isEqualTo(made.getString("holdId"));

        Api.post(COORDINATOR, cases + "/hand-overs", "{\"taker\":{\"memberId\":\"%s\"}}".formatted(world.helper))
                .statusCode(409)
                .body("detail", containsString("hotline"));
        String path = "/api/disease-suspicions/" + made.getString("id");
        Api.change(RESCUER, path, "/telling", """
                        {"to":"the hotline","by":"A Rescuer","at":"2026-02-10T02:00:00Z"}
                        """).statusCode(400).body("errors[0].field", equalTo("at"));
        Api.change(RESCUER, path, "/telling", """
                        {"to":"the hotline","by":"A Rescuer","at":"2026-02-10T03:30:00Z","reference":"EAD-7"}
                        """).statusCode(200).body("told.reference", equalTo("EAD-7"));
        Api.correct(RESCUER, path, "{\"signs\":\"it cannot fly, and bites\",\"reason\":\"seen again\"}")
                .statusCode(200)
                .body("signs", equalTo("it cannot fly, and bites"));
        Api.change(COORDINATOR, "/api/holds/" + made.getString("holdId"), "/clearing", """
                        {"by":"authority","name":"the chief vet","reference":"EAD-8"}
                        """)
                .statusCode(200);
        Api.as(RESCUER).get(path).then().body("advice", hasSize(0)).body("clearedAt", startsWith("20"));
        Api.post(COORDINATOR, cases + "/hand-overs", "{\"taker\":{\"memberId\":\"%s\"}}".formatted(world.helper))
                .statusCode(201);
    }

    @Test
    void aHandOverOfferedBeforeIsNotAcceptedUnderSuspicion() {
        String caseId = newCase();
        String offered = Api.make(
                        RESCUER,
                        "/api/cases/" + caseId + "/hand-overs",
                        "{\"taker\":{\"memberId\":\"%s\"},\"at\":\"2026-02-10T02:30:00Z\"}".formatted(world.helper))
                .getString("id");
        Api.make(RESCUER, "/api/cases/" + caseId + "/disease-suspicions", suspicion(OTHER_DISEASE, ""));
        Api.change(COORDINATOR, "/api/hand-overs/" + offered, "/acceptance", "{}")
                .statusCode(409)
                .body("detail", containsString("hotline"));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + caseId).getString("state"))
                .isEqualTo("handOverPending");
        // Where it went before the signs were seen is a matter of record
        Api.change(COORDINATOR, "/api/hand-overs/" + offered, "/acceptance", "{\"at\":\"2026-02-10T02:45:00Z\"}")
                .statusCode(200);
    }

    @Test
    void aHotlineIsLookedUpAgain() {
        String path = "/api/notifiable-conditions/" + condition("");
        String hotline = """
                {"name":"a line","number":"0491 570 007","source":"a page","readOn":"2020-01-01","reviewBy":"%s"}
                """;
        Api.change(COORDINATOR, path, "/hotline", hotline.formatted("2020-01-01"))
                .statusCode(400)
                .body("errors[0].field", equalTo("reviewBy"));
        Api.change(COORDINATOR, path, "/hotline", hotline.formatted("2021-01-01"))
                .statusCode(200)
                .body("hotline.reviewIsDue", equalTo(true));
        Api.change(COORDINATOR, path, "/hotline", hotline.formatted("2090-01-01"))
                .statusCode(200)
                .body("hotline.reviewIsDue", equalTo(false));
        Api.correct(COORDINATOR, path, "{\"taxonGroups\":[\"no-such-group\"],\"reason\":\"a slip\"}")
                .statusCode(400)
                .body("errors.field", hasItem("taxonGroups"));
        for (String role : List.of(DISPATCHER, RESCUER, CLINIC, CARER, OFFICER)) {
            assertThat(Api.get(role, path).getString("hotline.number")).isEqualTo("0491 570 007");
            Api.post(role, path + "/hotline", hotline.formatted("2090-01-01")).statusCode(403);
        }
    }

    @Test
    void suspicionsAreSeenByWhoSeesTheCase() {
        String theirs = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"holder":{"organisationId":"%s"}}
                        """.formatted(
                                World.call(FLYING_FOX, 150.08, "").getString("incidentId"),
                                FLYING_FOX,
                                Api.make(ADMIN, "/api/organisations", """
                                                {"kind":"shelter","name":"Shelter %s","xRay":false,"surgery":false}
                                                """.formatted(UUID.randomUUID()))
                                        .getString("id")))
                .getString("id");
        String id = Api.make(DISPATCHER, "/api/cases/" + theirs + "/disease-suspicions", suspicion(OTHER_DISEASE, ""))
                .getString("id");
        for (String role : List.of(RESCUER, CLINIC, CARER)) {
            Api.as(role).get("/api/disease-suspicions/" + id).then().statusCode(404);
            Api.as(role)
                    .get("/api/cases/" + theirs + "/disease-suspicions")
                    .then()
                    .statusCode(404);
            Api.as(role).get("/api/records/" + id + "/revisions").then().statusCode(404);
        }
        for (String role : List.of(DISPATCHER, COORDINATOR, OFFICER)) {
            assertThat(Api.get(role, "/api/cases/" + theirs + "/disease-suspicions")
                            .getList("id"))
                    .containsExactly(id);
        }
        for (String role : List.of(ROADS_AUTHORITY, ADMIN)) {
            Api.as(role).get("/api/disease-suspicions/" + id).then().statusCode(403);
        }
        Api.post(DISPATCHER, "/api/cases/" + theirs + "/disease-suspicions", suspicion(theirs, ""))
                .statusCode(400)
                .body("errors[0].field", equalTo("conditionId"));
    }

    @Test
    void theDatabaseRefusesWhatIsNoSuspicion() throws SQLException {
        Json one = Api.make(RESCUER, "/api/cases/" + newCase() + "/disease-suspicions", suspicion(OTHER_DISEASE, ""));
        Json other = Api.make(RESCUER, "/api/cases/" + newCase() + "/disease-suspicions", suspicion(OTHER_DISEASE, ""));
        refused(
                "update disease_suspicions set told_at = now() where id = '" + one.getString("id") + "'",
                "telling_of_a_suspicion_has_time_whom_and_name");
        refused(
                "update disease_suspicions set told_at = happened_at - interval '1 second', told_to = 'x', told_by = 'x'"
                        + " where id = '" + one.getString("id") + "'",
                "a_suspicion_is_told_afterwards");
        refused(
                "insert into disease_suspicions select gen_random_uuid(), 0, case_id, condition_id, '"
                        + other.getString("holdId") + "', signs, suspected_by, null, null, null, null, happened_at,"
                        + " recorded_at, recorded_by from disease_suspicions where id = '" + one.getString("id") + "'",
                "a_suspicion_has_a_hold_of_its_case");
        refused(
                "update notifiable_conditions set hotline_number = '1' where id = '" + OTHER_DISEASE + "'",
                "a_hotline_is_whole");
        refused(
                "update notifiable_conditions set review_by = read_on where id = '" + OTHER_DISEASE + "'",
                "a_condition_is_read_again_later");
    }

    private void refused(String sql, String message) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.executeUpdate(sql)).as(sql).hasMessageContaining(message);
        }
    }
}
