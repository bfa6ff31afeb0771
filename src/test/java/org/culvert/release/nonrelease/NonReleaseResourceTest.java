package org.culvert.release.nonrelease;

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

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.culvert.release.ReleaseWorld;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class NonReleaseResourceTest {
    private static final byte[] PERMIT = "%PDF-1.4 the permit".getBytes(StandardCharsets.US_ASCII);
    private static final String DECISION = """
            {"grounds":["injury","cannotBreedSafely"],"words":"the healed pelvis may not pass eggs","vetName":"Dr Vet",
             "vetRegistration":"V-1","decidedAt":"2021-12-10T02:00:00Z"%s}
            """;
    private static final String OPINION =
            "{\"vetName\":\"%s\",\"vetRegistration\":\"%s\",\"agrees\":%s,\"words\":\"as the film shows\","
                    + "\"at\":\"2021-12-12T02:00:00Z\"}";

    @Inject
    DataSource database;

    private ReleaseWorld turtles;

    @BeforeEach
    void makeWorld() {
        turtles = new ReleaseWorld();
    }

    private String decide(String caseId, String more) {
        return "/api/non-release-decisions/"
                + Api.make(CLINIC, "/api/cases/" + caseId + "/non-release-decisions", DECISION.formatted(more))
                        .getString("id");
    }

    private static String permit(String more) {
        return "{\"number\":\"K-7\",\"issuedBy\":\"the wildlife authority\",\"documentName\":\"permit.pdf\","
                + "\"documentMediaType\":\"application/pdf\",\"document\":\"%s\",\"validFrom\":\"2022-01-01\"%s}"
                        .formatted(Base64.getEncoder().encodeToString(PERMIT), more);
    }

    private static List<String> due(String before) {
        return Api.get(COORDINATOR, "/api/non-release-decisions?limit=1000&dueBefore=" + before)
                .getList("items.id", String.class);
    }

    /**
     * Common practice, no source: a female whose healed pelvis may not pass eggs is normally not returned to the wild, a
     * ground of its own.
     */
    @Test
    void sheWhosePelvisNoLongerPassesEggsIsKept() {
        Json opened = turtles.newCase();
        String id = opened.getString("id");
        Json made = Api.make(CLINIC, "/api/cases/" + id + "/non-release-decisions", DECISION.formatted(""));
        String path = "/api/non-release-decisions/" + made.getString("id");
        assertThat(made.getString("standing")).isEqualTo("stands");
        assertThat(made.getList("grounds")).containsExactly("injury", "cannotBreedSafely");
        assertThat(made.getLong("caseNumber")).isEqualTo(opened.getLong("number"));
        assertThat(made.getList("saidPlainly", String.class))
                .containsExactly(
                        "No second opinion is recorded.",
                        "No authority is recorded as told.",
                        "No permit to keep it is recorded for today.",
                        "No day is set for a welfare review.",
                        "This records what was decided, and no more. Check your local code and your licensed vet.");

        // A second opinion is another's, however the same vet is written
        for (List<String> same : List.of(List.of("Somebody", "v 1"), List.of("dr. vet", "V-2"))) {
            Api.post(CLINIC, path + "/second-opinion", OPINION.formatted(same.get(0), same.get(1), true))
                    .statusCode(409)
                    .body("detail", containsString("another vet"));
        }
        Api.post(CLINIC, path + "/second-opinion", OPINION.formatted("Another Vet", "V-2", true))
                .statusCode(200)
                .body("standing", equalTo("stands"))
                .body("secondOpinions[0].agrees", equalTo(true))
                .body("secondOpinions[0].vetName", equalTo("Another Vet"));
        Api.post(COORDINATOR, path + "/authority-notice", """
                {"authority":"the wildlife authority","reference":"A-22","at":"2021-12-14T02:00:00Z"}
                """)
                .statusCode(200)
                .body("authorityNotices[0].reference", equalTo("A-22"));
        Json permitted = Api.post(COORDINATOR, path + "/permit-to-keep", permit(",\"validTo\":\"2090-01-01\""))
                .statusCode(200)
                .extract()
                .jsonPath();
        String permitId = permitted.getString("permitsToKeep[0].id");
        String document = path + "/permits-to-keep/" + permitId;
        assertThat(Api.as(OFFICER)
                        .accept("*/*")
                        .get(document)
                        .then()
                        .statusCode(200)
                        .contentType("application/pdf")
                        .header("X-Content-Type-Options", "nosniff")
                        .header("Content-Disposition", containsString("attachment"))
                        .extract()
                        .asByteArray())
                .isEqualTo(PERMIT);
        Api.as(CLINIC).accept("*/*").get(document).then().statusCode(403);

        // The review: a day, then held, then the next
        Api.correct(CLINIC, path, "{\"reviewDueOn\":\"2022-03-01\",\"reason\":\"as the permit asks\"}")
                .statusCode(200)
                .body("reviewDueOn", equalTo("2022-03-01"))
                .body("saidPlainly", hasItem("The welfare review was due by 2022-03-01."));
        assertThat(due("2022-03-02")).contains(made.getString("id"));
        assertThat(due("2022-03-01")).doesNotContain(made.getString("id"));
        Api.change(CLINIC, path, "/welfare-review", """
                        {"reviewedBy":"Another Vet","words":"eats well, shell sound","at":"2022-02-27T02:00:00Z",
                         "nextDueOn":"2089-02-27"}
                        """)
                .statusCode(200)
                .body("welfareReviews[0].words", equalTo("eats well, shell sound"))
                .body("reviewDueOn", equalTo("2089-02-27"));
        assertThat(due("2022-03-02")).doesNotContain(made.getString("id"));

        Json placed = Api.change(COORDINATOR, path, "/outcome", """
                        {"outcome":"placement","placedWith":"the zoo","permitToKeepId":"%s","at":"2022-03-05T02:00:00Z"}
                        """.formatted(permitId))
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(placed.getString("outcomes[0].placedWith")).isEqualTo("the zoo");
        assertThat(placed.getList("saidPlainly", String.class))
                .containsExactly(
                        "A placement does not end the case: its custody says who holds the animal.",
                        "This records what was decided, and no more. Check your local code and your licensed vet.");
        Api.change(COORDINATOR, path, "/outcome", "{\"outcome\":\"placement\",\"placedWith\":\"the museum\"}")
                .statusCode(409)
                .body("detail", containsString("recorded already"));
        // Kept under permit is a state, not an end
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("state")).isEqualTo("inCare");
        assertThat(placed.prettify()).doesNotContainPattern("(?i)lawful|legal|\\bsafe\\b");

        // And while it stands she is not let go
        Api.post(COORDINATOR, "/api/releases", turtles.release(List.of(id), ""))
                .statusCode(422)
                .body("type", containsString("refused"))
                .body("reasons", hasSize(1))
                .body("reasons[0]", containsString("Case " + opened.getLong("number")))
                .body("reasons[0]", containsString("cannotBreedSafely"));
        assertThat(Api.get(CARER, "/api/cases/" + id + "/non-release-decisions").getList("id"))
                .containsExactly(made.getString("id"));
    }

    @Test
    void aSecondOpinionThatDoesNotAgreeIsShownBesideTheDecision() {
        String id = turtles.newCase().getString("id");
        String path = decide(id, "");
        Json disputed = Api.post(CLINIC, path + "/second-opinion", OPINION.formatted("Another Vet", "V-2", false))
                .statusCode(200)
                .body("standing", equalTo("inDispute"))
                .extract()
                .jsonPath();
        assertThat(disputed.getString("saidPlainly[0]")).contains("in dispute").contains("both are shown");
        assertThat(disputed.getString("vetName")).isEqualTo("Dr Vet");
        // A third that agrees does not settle it
        Api.post(CLINIC, path + "/second-opinion", OPINION.formatted("A Third", "V-3", true))
                .statusCode(200)
                .body("standing", equalTo("inDispute"))
                .body("secondOpinions", hasSize(2));
        Api.post(COORDINATOR, "/api/releases", turtles.release(List.of(id), ""))
                .statusCode(422)
                .body("reasons[0]", containsString("disputes"));
        // Who decided cannot take the other's opinion away
        String part = "/parts/" + disputed.getString("secondOpinions[0].id") + "/withdrawal";
        Api.change(CLINIC, path, part, "{\"reason\":\"we disagree\"}").statusCode(403);
        Api.change(COORDINATOR, path, part, "{\"reason\":\"they looked at the film again\"}")
                .statusCode(200)
                .body("standing", equalTo("stands"))
                .body("secondOpinions[0].withdrawnBecause", equalTo("they looked at the film again"));
        Api.change(COORDINATOR, path, part, "{\"reason\":\"x\"}").statusCode(409);
        Api.change(COORDINATOR, path, "/parts/" + UUID.randomUUID() + "/withdrawal", "{\"reason\":\"x\"}")
                .statusCode(404);
    }

    @Test
    void aWithdrawnDecisionLetsTheAnimalGoBackAfterAll() {
        String id = turtles.newCase().getString("id");
        String path = decide(id, "");
        Api.post(CLINIC, "/api/cases/" + id + "/non-release-decisions", DECISION.formatted(""))
                .statusCode(409)
                .body("detail", containsString("stands already"));
        Api.as(CLINIC)
                .body("{\"reason\":\"healed\"}")
                .post(path + "/withdrawal")
                .then()
                .statusCode(428);
        Api.change(CLINIC, path, "/withdrawal", "{\"reason\":\" \"}").statusCode(400);
        Instant before = Clocks.now();
        Api.change(CLINIC, path, "/withdrawal", "{\"reason\":\"healed better than anybody thought\"}")
                .statusCode(200)
                .body("standing", equalTo("withdrawn"))
                .body("withdrawnBecause", equalTo("healed better than anybody thought"));
        // As it was before, it stood
        assertThat(Api.get(OFFICER, path + "?asOf=" + before).getString("standing"))
                .isEqualTo("stands");
        String record = path.substring(path.lastIndexOf('/') + 1);
        assertThat(Api.get(CLINIC, "/api/records/" + record + "/revisions").getList("reason"))
                .containsExactly(null, "healed better than anybody thought");
        for (String act : List.of("/second-opinion", "/authority-notice")) {
            Api.post(
                            COORDINATOR,
                            path + act,
                            act.equals("/second-opinion")
                                    ? OPINION.formatted("Another Vet", "V-2", true)
                                    : "{\"authority\":\"a\"}")
                    .statusCode(409)
                    .body("detail", containsString("withdrawn"));
        }
        Api.make(COORDINATOR, "/api/releases", turtles.release(List.of(id), ""));
        Api.post(CLINIC, "/api/cases/" + id + "/non-release-decisions", DECISION.formatted(""))
                .statusCode(409)
                .body("detail", containsString("released"));
        assertThat(Api.get(OFFICER, "/api/cases/" + id + "/non-release-decisions")
                        .getList("standing"))
                .containsExactly("withdrawn");
    }

    @Test
    void euthanasiaIsDecidedHereAndIsRecordedAsTheFateOfTheCase() {
        String id = turtles.newCase().getString("id");
        String path = decide(id, ",\"reviewDueOn\":\"2022-01-15\"");
        String decision = path.substring(path.lastIndexOf('/') + 1);
        assertThat(due("2022-02-01")).contains(decision);
        Api.change(CLINIC, path, "/outcome", "{\"outcome\":\"euthanasia\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("approvedBy"));
        Api.change(
                        CLINIC,
                        path,
                        "/outcome",
                        "{\"outcome\":\"euthanasia\",\"approvedBy\":\"Dr Vet\",\"at\":\"2022-01-10T02:00:00Z\"}")
                .statusCode(200)
                .body("outcomes[0].approvedBy", equalTo("Dr Vet"))
                .body("saidPlainly", hasItem(containsString("fate of its case")));
        Json still = Api.get(COORDINATOR, "/api/cases/" + id);
        assertThat(still.getMap("fate")).isNull();
        assertThat(still.getString("state")).isEqualTo("inCare");
        Api.post(CLINIC, "/api/cases/" + id + "/fate", """
                        {"fate":"euthanased","method":"as the vet chose","authority":"registration V-1","approvedBy":"Dr Vet",
                         "deathConfirmedBy":"Dr Vet","at":"2022-01-10T03:00:00Z"}
                        """).statusCode(200);
        assertThat(due("2022-02-01")).doesNotContain(decision);
        // Entered late, after the end: before it, and not after
        String late = turtles.newCase().getString("id");
        Api.post(CLINIC, "/api/cases/" + late + "/fate", "{\"fate\":\"died\",\"at\":\"2021-12-09T03:00:00Z\"}")
                .statusCode(200);
        Api.post(CLINIC, "/api/cases/" + late + "/non-release-decisions", DECISION.formatted(""))
                .statusCode(400)
                .body("errors[0].field", equalTo("decidedAt"));
    }

    @Test
    void whatIsWrongIsNamed() {
        String id = turtles.newCase().getString("id");
        String cases = "/api/cases/" + id + "/non-release-decisions";
        String good = DECISION.formatted("");
        for (List<String> wrong : List.of(
                List.of("grounds", good.replace("\"injury\",\"cannotBreedSafely\"", "")),
                List.of("grounds", good.replace("cannotBreedSafely", "looksSad")),
                List.of("vetRegistration", good.replace("\"V-1\"", "\" \"")),
                List.of("decidedAt", good.replace("2021-12-10", "2090-12-10")),
                List.of("decidedAt", good.replace("2021-12-10", "2021-11-10")),
                List.of("reviewDueOn", DECISION.formatted(",\"reviewDueOn\":\"2021-12-10\"")))) {
            Api.post(CLINIC, cases, wrong.get(1)).statusCode(400).body("errors[0].field", containsString(wrong.get(0)));
        }
        String path = decide(id, "");
        Api.post(
                        CLINIC,
                        path + "/second-opinion",
                        OPINION.formatted("Another", "V-2", true).replace("2021-12-12", "2021-12-01"))
                .statusCode(400)
                .body("errors[0].field", equalTo("at"));
        Api.post(COORDINATOR, path + "/permit-to-keep", permit(",\"validTo\":\"2021-01-01\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("validTo"));
        Api.post(COORDINATOR, path + "/permit-to-keep", permit("").replace("application/pdf", "image/png"))
                .statusCode(400)
                .body("errors[0].field", equalTo("document"));
        Api.change(CLINIC, path, "/welfare-review", """
                        {"reviewedBy":"a","words":"w","at":"2022-02-27T02:00:00Z","nextDueOn":"2022-02-27"}
                        """).statusCode(400).body("errors[0].field", equalTo("nextDueOn"));
        Api.change(CLINIC, path, "/welfare-review", """
                        {"reviewedBy":"a","words":"w","at":"2021-12-09T02:00:00Z","nextDueOn":"2022-02-27"}
                        """).statusCode(400).body("errors[0].field", equalTo("at"));
        Api.change(CLINIC, path, "/outcome", "{\"outcome\":\"placement\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("placedWith"));
        Api.change(
                        CLINIC,
                        path,
                        "/outcome",
                        "{\"outcome\":\"placement\",\"placedWith\":\"a\",\"permitToKeepId\":\"%s\"}"
                                .formatted(UUID.randomUUID()))
                .statusCode(400)
                .body("errors[0].field", equalTo("permitToKeepId"));
        Api.correct(CLINIC, path, "{\"grounds\":[],\"reason\":\"none\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("grounds"));
        Api.correct(CLINIC, path, "{\"grounds\":[\"imprinted\"],\"reason\":\"it follows people\"}")
                .statusCode(200)
                .body("grounds", equalTo(List.of("imprinted")))
                .body("record.revisionReason", equalTo("it follows people"));
        Api.as(COORDINATOR)
                .get("/api/non-release-decisions?dueBefore=soon")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("dueBefore"));
    }

    @Test
    void theDatabaseKeepsItToo() throws SQLException {
        String first = decide(turtles.newCase().getString("id"), ",\"reviewDueOn\":\"2022-01-15\"");
        String id = first.substring(first.lastIndexOf('/') + 1);
        Api.post(CLINIC, first + "/second-opinion", OPINION.formatted("Another Vet", "V-2", true))
                .statusCode(200);
        Api.change(CLINIC, first, "/outcome", "{\"outcome\":\"euthanasia\",\"approvedBy\":\"Dr Vet\"}")
                .statusCode(200);
        Api.change(
                        CLINIC,
                        first,
                        "/welfare-review",
                        "{\"reviewedBy\":\"a\",\"words\":\"w\",\"nextDueOn\":\"2089-02-27\"}")
                .statusCode(200);
        String ofIt = " where decision_id = '" + id + "'";
        refused("""
                insert into second_opinions (id, decision_id, vet_name, vet_registration, agrees, words, happened_at, recorded_at,
                    recorded_by)
                select gen_random_uuid(), decision_id, 'DR VET', 'V-9', agrees, words, happened_at, recorded_at, recorded_by
                from second_opinions""" + ofIt, "the second opinion is of who decided");
        refused("""
                insert into non_release_decisions (id, case_id, grounds, words, vet_name, vet_registration, happened_at,
                    recorded_at, recorded_by)
                select gen_random_uuid(), case_id, grounds, words, vet_name, vet_registration, happened_at, recorded_at, recorded_by
                from non_release_decisions where id = '%s'
                """.formatted(id), "one_non_release_decision_stands_for_a_case");
        refused("update non_release_outcomes set approved_by = null" + ofIt, "euthanasia_has_its_approver");
        refused(
                "update welfare_reviews set happened_at = decided_at - interval '1 second'" + ofIt,
                "a_welfare_review_comes_after_the_decision");
        refused(
                "update welfare_reviews set decided_at = decided_at - interval '1 year'" + ofIt,
                "a_welfare_review_is_of_a_decision_at_its_time");
        refused("update welfare_reviews set next_due_on = '2020-01-01'" + ofIt, "the_next_welfare_review_comes_later");
        refused(
                "update non_release_decisions set review_due_on = '2021-12-01' where id = '" + id + "'",
                "a_welfare_review_is_due_after_the_decision");
        refused(
                "update non_release_decisions set grounds = '[]' where id = '" + id + "'",
                "a_non_release_decision_has_its_grounds");
        refused(
                "update non_release_decisions set grounds = '[\"sad\"]' where id = '" + id + "'",
                "a_non_release_decision_has_its_grounds");
        refused("update non_release_outcomes set outcome = 'placement'" + ofIt, "a_placement_is_with_somebody");
        refused("update second_opinions set decision_id = gen_random_uuid()" + ofIt, "is never changed");
    }

    private void refused(String sql, String because) throws SQLException {
        try (Connection connection = database.getConnection();
                var change = connection.createStatement()) {
            assertThatThrownBy(() -> change.executeUpdate(sql))
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining(because);
        }
    }

    @Test
    void ofADecisionAndAReleaseAtOnceOneStands() throws Exception {
        for (int round = 0; round < 3; round++) {
            String id = turtles.newCase().getString("id");
            String release = turtles.release(List.of(id), "");
            ExecutorService two = Executors.newFixedThreadPool(2);
            try {
                Callable<Integer> letGo = () ->
                        Api.as(COORDINATOR).body(release).post("/api/releases").statusCode();
                Callable<Integer> decide = () -> Api.as(CLINIC)
                        .body(DECISION.formatted(""))
                        .post("/api/cases/" + id + "/non-release-decisions")
                        .statusCode();
                List<Integer> answers = new ArrayList<>();
                for (Future<Integer> answer : two.invokeAll(List.of(letGo, decide))) {
                    answers.add(answer.get());
                }
                assertThat(answers).isIn(List.of(201, 409), List.of(422, 201));
            } finally {
                two.shutdownNow();
            }
        }
    }

    @Test
    void whoMayDoAndSeeWhat() {
        String id = turtles.newCase().getString("id");
        String path = decide(id, "");
        for (String role : List.of(CARER, CLINIC, COORDINATOR, OFFICER)) {
            assertThat(Api.get(role, path).getString("words")).contains("pelvis");
        }
        for (String role : List.of(RESCUER, DISPATCHER, ROADS_AUTHORITY, ADMIN)) {
            Api.as(role).get(path).then().statusCode(403);
        }
        for (String role : List.of(CARER, CLINIC, RESCUER, ADMIN)) {
            Api.as(role).get("/api/non-release-decisions").then().statusCode(403);
        }
        Api.as(OFFICER).get("/api/non-release-decisions").then().statusCode(200);
        for (String role : List.of(CARER, RESCUER, OFFICER)) {
            Api.post(role, "/api/cases/" + id + "/non-release-decisions", DECISION.formatted(""))
                    .statusCode(403);
            Api.post(role, path + "/second-opinion", "{}").statusCode(403);
        }
        Api.post(CLINIC, path + "/permit-to-keep", "{}").statusCode(403);

        String shelter = Api.make(ADMIN, "/api/organisations", """
                        {"kind":"shelter","name":"Shelter %s","xRay":false,"surgery":false}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        String incident = World.call(ReleaseWorld.TURTLE, 150.0412, "").getString("incidentId");
        String theirs = Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2021-11-20T09:30:00Z",
                         "holder":{"organisationId":"%s"}}
                        """.formatted(incident, ReleaseWorld.TURTLE, shelter))
                .getString("id");
        Api.post(CLINIC, "/api/cases/" + theirs + "/non-release-decisions", DECISION.formatted(""))
                .statusCode(404);
        String of = "/api/non-release-decisions/"
                + Api.make(COORDINATOR, "/api/cases/" + theirs + "/non-release-decisions", DECISION.formatted(""))
                        .getString("id");
        for (String role : List.of(CARER, CLINIC)) {
            Api.as(role).get(of).then().statusCode(404);
            Api.as(role)
                    .get("/api/cases/" + theirs + "/non-release-decisions")
                    .then()
                    .statusCode(404);
        }
        Api.post(CLINIC, of + "/second-opinion", OPINION.formatted("Another Vet", "V-2", true))
                .statusCode(404);
        Api.as(CLINIC)
                .get("/api/records/" + of.substring(of.lastIndexOf('/') + 1) + "/revisions")
                .then()
                .statusCode(404);
    }
}
