package org.culvert.release.fitness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.culvert.release.rules.FitnessCheck;
import org.culvert.release.rules.FitnessCheck.Answer;
import org.culvert.release.rules.FitnessCheck.Aspect;
import org.culvert.release.rules.FitnessCheck.Item;
import org.culvert.release.rules.Site.Consent;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class FitnessResourceTest {
    private static final String TURTLE = "Chelodina longicollis";
    private static final String NAMED = ",\"vetName\":\"Dr Vet\",\"vetRegistration\":\"V-1\"";
    private static final String ITEMS =
            "[{\"aspect\":\"senses\",\"answer\":\"notLookedAt\"},{\"aspect\":\"movement\",\"answer\":\"fit\"}]";

    @Inject
    FitnessService checks;

    @Inject
    DataSource database;

    private World world;
    private String caseId;
    private String path;

    @BeforeEach
    void makeCase() {
        world = World.shared();
        caseId = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(
                                World.call(TURTLE, 150.06, "").getString("incidentId"), TURTLE, world.rescuer))
                .getString("id");
        Api.post(
                        RESCUER,
                        "/api/cases/" + caseId + "/whereabouts",
                        "{\"organisationId\":\"%s\"}".formatted(world.clinic))
                .statusCode(200);
        path = "/api/cases/" + caseId + "/fitness-checks";
    }

    private static String check(String at, String items, String more) {
        return "{\"at\":\"%s\",\"items\":%s%s}".formatted(at, items, more);
    }

    private String vet(String registration) {
        return Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"%s","name":"A Vet","attends":false,"cares":false,
                         "vetRegistration":%s}
                        """.formatted(world.clinic, UUID.randomUUID(), registration))
                .getString("id");
    }

    private FitnessCheck latest() {
        return checks.latest(UUID.fromString(caseId)).orElseThrow();
    }

    @Test
    void aVetSignsAndTheLatestCheckCounts() {
        assertThat(checks.latest(UUID.fromString(caseId))).isEmpty();
        Json made = Api.make(
                CLINIC,
                path,
                check("2026-02-01T01:00:00Z", ITEMS, NAMED + ",\"housedWithPets\":\"no\",\"words\":\"well\""));
        assertThat(made.getList("items.aspect")).containsExactly("movement", "senses");
        assertThat(made.getString("vetName")).isEqualTo("Dr Vet");
        assertThat(made.getString("note"))
                .contains("what was not looked at is not known", "Check your local code and your licensed vet");
        assertThat(made.prettify()).doesNotContainPattern("(?i)lawful|legal|safe");
        assertThat(latest())
                .isEqualTo(new FitnessCheck(
                        Instant.parse("2026-02-01T01:00:00Z"),
                        List.of(new Item(Aspect.movement, Answer.fit), new Item(Aspect.senses, Answer.notLookedAt)),
                        Consent.no,
                        false));
        Api.make(CLINIC, path, check("2026-02-03T01:00:00Z", ITEMS.replace("\"fit\"", "\"notFit\""), NAMED));
        Api.make(CLINIC, path, check("2026-02-02T01:00:00Z", ITEMS, NAMED));
        assertThat(latest().at()).isEqualTo("2026-02-03T01:00:00Z");
        assertThat(latest().items()).contains(new Item(Aspect.movement, Answer.notFit));
        assertThat(latest().housedWithPets()).isEqualTo(Consent.unknown);
        assertThat(Api.get(OFFICER, path).getList("at"))
                .containsExactly("2026-02-03T01:00:00Z", "2026-02-02T01:00:00Z", "2026-02-01T01:00:00Z");
    }

    @Test
    void aVisitAfterwardsMakesTheSignatureOld() {
        String visit = visit("2026-02-01T00:00:00Z");
        Api.make(CLINIC, path, check("2026-02-01T01:00:00Z", ITEMS, NAMED));
        assertThat(latest().seenAgainSince()).isFalse();
        Api.post(CLINIC, "/api/visits/" + visit + "/procedures", """
                        {"procedure":"a stitch","vetName":"Dr Vet","vetRegistration":"V-1","at":"2026-02-01T00:30:00Z"}
                        """).statusCode(201);
        assertThat(latest().seenAgainSince()).isFalse();
        Api.post(CLINIC, "/api/visits/" + visit + "/procedures", """
                        {"procedure":"a stitch","vetName":"Dr Vet","vetRegistration":"V-1","at":"2026-02-01T01:30:00Z"}
                        """).statusCode(201);
        assertThat(latest().seenAgainSince()).isTrue();
        Api.make(CLINIC, path, check("2026-02-02T01:00:00Z", ITEMS, NAMED));
        assertThat(latest().seenAgainSince()).isFalse();
        visit("2026-02-03T00:00:00Z");
        assertThat(latest().seenAgainSince()).isTrue();
        assertThat(Api.get(COORDINATOR, path).getList("seenAgainSince")).containsExactly(true, true);
    }

    private String visit(String at) {
        return Api.make(
                        CLINIC,
                        "/api/visits",
                        "{\"caseId\":\"%s\",\"clinicId\":\"%s\",\"arrivedAt\":\"%s\"}"
                                .formatted(caseId, world.clinic, at))
                .getString("id");
    }

    @Test
    void aMemberWhoSignsIsAVetOfThatDay() {
        String vet = vet("\"V-77\"");
        Api.post(CLINIC, path, check("2026-02-01T01:00:00Z", ITEMS, ",\"signedByMemberId\":\"%s\"".formatted(vet)))
                .statusCode(201)
                .body("signedByMemberId", equalTo(vet))
                .body("vetRegistration", equalTo("V-77"));
        Api.correct(ADMIN, "/api/members/" + vet, "{\"leftOn\":\"2026-02-02\",\"reason\":\"moved\"}")
                .statusCode(200);
        for (String[] wrong : new String[][] {
            {",\"signedByMemberId\":\"%s\"".formatted(world.rescuer), "no registration as a vet"},
            {",\"signedByMemberId\":\"%s\"".formatted(vet), "had left"},
            {",\"signedByMemberId\":\"%s\"".formatted(vet) + NAMED, "One vet signs"},
            {"", "One vet signs"}
        }) {
            Api.post(CLINIC, path, check("2026-02-03T01:00:00Z", ITEMS, wrong[0]))
                    .statusCode(400)
                    .body("errors[0].field", equalTo("signedByMemberId"))
                    .body("errors[0].detail", containsString(wrong[1]));
        }
    }

    @Test
    void whatIsWrongWithACheckIsSaidByField() {
        String twice = ITEMS.replace("senses", "movement");
        for (String[] wrong : new String[][] {
            {check("2026-02-01T01:00:00Z", twice, NAMED), "items.1.aspect"},
            {check("2026-02-01T01:00:00Z", "[]", NAMED), "items"},
            {check("2026-02-01T01:00:00Z", ITEMS.replace("\"fit\"", "\"good\""), NAMED), "items.1.answer"},
            {check("2026-02-01T01:00:00Z", ITEMS.replace("senses", "soul"), NAMED), "items.0.aspect"},
            {check("2126-02-01T01:00:00Z", ITEMS, NAMED), "at"},
            {check("2026-01-10T01:00:00Z", ITEMS, NAMED), "at"},
            {check("2026-02-01T01:00:00Z", ITEMS, ",\"vetName\":\"Dr Vet\""), "vetRegistration"},
            {check("2026-02-01T01:00:00Z", ITEMS, ",\"vetName\":\" \",\"vetRegistration\":\"V-1\""), "vetName"}
        }) {
            Api.post(CLINIC, path, wrong[0]).statusCode(400).body("errors.field", hasItem(wrong[1]));
        }
        Api.change(COORDINATOR, "/api/cases/" + caseId, "/fate", "{\"fate\":\"died\"}")
                .statusCode(200);
        Api.post(CLINIC, path, check("2026-02-01T01:00:00Z", ITEMS, NAMED)).statusCode(409);
    }

    @Test
    void checksAreSeenAndSignedByFew() {
        Api.make(COORDINATOR, path, check("2026-02-01T01:00:00Z", ITEMS, NAMED));
        for (String role : List.of(RESCUER, CARER, DISPATCHER, OFFICER, ADMIN)) {
            Api.post(role, path, check("2026-02-01T01:00:00Z", ITEMS, NAMED)).statusCode(403);
        }
        for (String role : List.of(RESCUER, DISPATCHER, ADMIN)) {
            Api.as(role).get(path).then().statusCode(403);
        }
        assertThat(Api.get(CLINIC, path).getList("vetRegistration")).containsExactly("V-1");
    }

    @Test
    void whatWasSignedIsNeverChanged() throws SQLException {
        String id = Api.make(CLINIC, path, check("2026-02-01T01:00:00Z", ITEMS, NAMED))
                .getString("id");
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() ->
                            statement.executeUpdate("update fitness_checks set words = 'x' where id = '" + id + "'"))
                    .hasMessageContaining("kept as they are");
        }
        for (String[] wrong : new String[][] {
            {"items", "'{}'", "what_is_looked_at_is_known"},
            {"items", "'[]'", "what_is_looked_at_is_known"},
            {"items", "'{\"soul\": \"fit\"}'", "what_is_looked_at_is_known"},
            {"items", "'{\"movement\": \"good\"}'", "what_is_looked_at_is_known"},
            {"items", "'{\"movement\": 7}'", "what_is_looked_at_is_known"},
            {"vet_name", "null", "one_vet_signs_a_check"},
            {"housed_with_pets", "'perhaps'", "fitness_checks_housed_with_pets_check"}
        }) {
            String columns =
                    "case_id, vet_name, vet_registration, items, housed_with_pets, happened_at, recorded_at, recorded_by";
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                assertThatThrownBy(() -> statement.executeUpdate("insert into fitness_checks (id, " + columns
                                + ") select gen_random_uuid(), "
                                + columns.replaceFirst("\\b" + wrong[0] + "\\b", wrong[1])
                                + " from fitness_checks where id = '" + id + "'"))
                        .as(wrong[1])
                        .hasMessageContaining(wrong[2]);
            }
        }
    }
}
