package org.culvert.web.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.culvert.care.CareWorld;
import org.culvert.care.CareWorld.Patient;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Pictures;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The pages of rescuers and carers as they come from the server, and their forms. */
@QuarkusTest
class HandPageResourceTest {
    private CareWorld care;
    private Patient turtle;

    @BeforeEach
    void makeWorld() {
        care = new CareWorld();
        turtle = care.patient(4);
        turtle.plan(
                care.today.minusDays(4),
                String.join(
                        ",",
                        CareWorld.step("swim", 3, 15, "daily", "minutes", ",\"low\":15,\"high\":20"),
                        CareWorld.step("wound", 4, 15, "daily", "yesNo", "")));
    }

    private static String page(String role, String path) {
        return Api.as(role)
                .get(path)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    private Answer send(String role, String path, Map<String, String> fields) {
        String secret = Api.as(role).get("/sign-in").cookie("culvert-form");
        Map<String, String> whole =
                new HashMap<>(Map.of("key", UUID.randomUUID().toString()));
        whole.putAll(fields);
        return Api.as(role)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParams(whole)
                .post(path)
                .then();
    }

    private Map<String, String> ofTurtle(String... more) {
        Map<String, String> fields = new HashMap<>(Map.of("caseId", turtle.caseId()));
        for (int i = 0; i < more.length; i += 2) {
            fields.put(more[i], more[i + 1]);
        }
        return fields;
    }

    private String outing() {
        String incident = World.call("Wallabia bicolor", 150.0567, "").getString("incidentId");
        return Api.make(DISPATCHER, "/api/incidents/" + incident + "/attendances", """
                        {"leadMemberId":"%s","helperMemberIds":["%s"],"overrideReason":"the police stand there"}
                        """.formatted(
                                care.world.rescuer, care.world.helper))
                .getString("id");
    }

    @Test
    void whatIsOverdueComesBeforeWhatIsDueAndEachSaysByWhomItIsSigned() {
        String said = page(CARER, "/hand");
        String overdue = "t-" + turtle.caseId() + "-swim-3";
        String due = "t-" + turtle.caseId() + "-swim-4";
        assertThat(said)
                .contains("Overdue.", "The vet’s limits: 15 to 20 min", "data-low=\"15.0\"")
                .contains("(test-carer), with the time at which you tap.")
                .contains("The vet’s limits: No water until the third day.")
                .contains("ring the clinic");
        assertThat(said.indexOf(overdue)).isPositive().isLessThan(said.indexOf(due));
        assertThat(page(RESCUER, "/hand")).doesNotContain(turtle.caseId());
        Api.as(CLINIC).get("/hand").then().statusCode(403);
        Api.as(OFFICER).get("/hand").then().statusCode(403);
    }

    @Test
    void aPageSaysWhoseItIsAndIsKeptByNobodyElse() {
        String account = Api.as(CARER)
                .get("/hand/standing")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getString("accountId");
        Api.as(CARER)
                .get("/hand")
                .then()
                .header("Culvert-Account", equalTo(account))
                .header("Cache-Control", equalTo("no-store"));
        assertThat(Api.get(RESCUER, "/hand/standing").getString("accountId")).isNotEqualTo(account);
        Request.given().get("/hand/standing").then().statusCode(401);
        Request.given()
                .get("/hand/offline")
                .then()
                .statusCode(200)
                .header("Culvert-Account", nullValue())
                .body(containsString("No signal"));
    }

    @Test
    void aPageSpeaksTheLanguageOfItsBrowser() {
        String said = Api.as(CARER)
                .header("Accept-Language", "de-AT,de;q=0.9,en;q=0.5")
                .get("/hand")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(said).contains("Überfällig.", "Bei Ihnen", "lang=\"de\"").doesNotContain("Overdue.");
    }

    @Test
    void aTickIsTakenOnceAndWhatWasTypedStandsThereAgain() {
        String again = send(
                        CARER,
                        "/hand/entries",
                        ofTurtle(
                                "stepKey", "swim", "day", "4", "value", "many", "words", "<i>quick</i>", "act", "done"))
                .statusCode(400)
                .extract()
                .asString();
        assertThat(again)
                .contains("This cannot be read: many.", "value=\"many\"", "&lt;i&gt;quick&lt;/i&gt;")
                .contains("aria-describedby=\"t-" + turtle.caseId() + "-swim-4-value-wrong\"")
                .doesNotContain("<i>quick");
        Map<String, String> tick =
                ofTurtle("stepKey", "swim", "day", "4", "value", "17,5", "act", "done", "key", "k-" + turtle.caseId());
        send(CARER, "/hand/entries", tick).statusCode(303).header("Location", endsWith("/hand"));
        send(CARER, "/hand/entries", tick).statusCode(303).header("Location", endsWith("/hand"));
        assertThat(Api.get(CARER, turtle.path() + "/care-entries").getList("items"))
                .hasSize(1);
        // What was overdue is done since, and its form is gone; what is wrong is said all the same
        send(CARER, "/hand/entries", ofTurtle("stepKey", "swim", "day", "3", "value", "many", "act", "done"))
                .statusCode(400)
                .body(containsString("This cannot be read: many."));
        send(CARER, "/hand/entries", ofTurtle("kind", "food", "act", "add"))
                .statusCode(400)
                .body(containsString("It does not say what was seen."));
    }

    @Test
    void anEntryNamesAPhotographOfItsAnimal() {
        String animal = "/hand/animals/" + turtle.caseId();
        assertThat(page(CARER, animal)).doesNotContain("name=\"photographId\"");
        String photograph = Api.make(
                        CARER,
                        turtle.path() + "/photographs",
                        Pictures.sent(
                                "image/png", Pictures.file("png", Pictures.bars(64, 48)), ",\"caption\":\"the rim\""))
                .getString("id");
        assertThat(page(CARER, animal)).containsPattern("<option value=\"" + photograph + "\">[^<]+, the rim</option>");
        Patient second = care.patient(3);
        String other = second.caseId();
        send(
                        CARER,
                        "/hand/entries",
                        Map.of(
                                "caseId",
                                other,
                                "kind",
                                "wound",
                                "words",
                                "red",
                                "act",
                                "add",
                                "photographId",
                                photograph,
                                "key",
                                UUID.randomUUID().toString()))
                .statusCode(400)
                .body(containsString("That case has no such photograph."));
        send(
                        CARER,
                        "/hand/entries",
                        ofTurtle("kind", "wound", "words", "red", "act", "add", "photographId", photograph))
                .statusCode(303);
        assertThat(Api.get(CARER, turtle.path() + "/care-entries").<String>getList("items.photographId"))
                .containsExactly(photograph);
        assertThat(Api.as(COORDINATOR)
                        .get("/care-day?member=" + care.world.carer)
                        .asString())
                .contains("<select id=\"photograph-" + turtle.caseId() + "\"", photograph);

        second.plan(care.today.minusDays(3), CareWorld.step("picture", 3, 15, "daily", "photograph", ""));
        String task = "t-" + other + "-picture-3-photograph";
        assertThat(page(CARER, "/hand"))
                .contains("No photograph of the animal is kept that could be named here.")
                .doesNotContain(task);
        Api.make(
                CARER,
                second.path() + "/photographs",
                Pictures.sent("image/png", Pictures.file("png", Pictures.bars(64, 48)), ""));
        assertThat(page(CARER, "/hand")).contains("<select id=\"" + task + "Id\"");
        assertThat(Api.as(COORDINATOR)
                        .get("/care-day?member=" + care.world.carer)
                        .asString())
                .contains("<select id=\"" + task + "\"");
    }

    @Test
    void anOutingShowsWhatToMindFirstAndTakesEachStepOnce() {
        String outing = outing();
        assertThat(page(RESCUER, "/hand")).contains("You are asked to go", "/hand/attendances/" + outing);
        String path = "/hand/attendances/" + outing;
        String said = page(RESCUER, path);
        assertThat(said.indexOf("Before you go")).isPositive().isLessThan(said.indexOf("Your next step"));
        assertThat(said).contains("swamp wallaby, alive", "Mill Road", "geo:-30.5", "the police stand there");

        send(RESCUER, path + "/steps", Map.of("act", "accept")).statusCode(303).header("Location", endsWith(path));
        send(RESCUER, path + "/steps", Map.of("act", "accept"))
                .statusCode(409)
                .body(containsString("entered that step before"));
        send(RESCUER, path + "/steps", Map.of("act", "fly")).statusCode(400);
        send(RESCUER, path + "/steps", Map.of("act", "depart")).statusCode(303);
        assertThat(page(RESCUER, "/hand")).contains("Next: I am there");
        send(RESCUER, path + "/steps", Map.of("act", "arrive")).statusCode(303);
        send(RESCUER, path + "/outcome", Map.of("outcome", "passedOn", "words", "a broken wing"))
                .statusCode(400)
                .body(containsString("not said to whom"))
                .body(containsString("a broken wing"));
        send(RESCUER, path + "/outcome", Map.of("outcome", "collected", "youngFound", "-1"))
                .statusCode(400)
                .body(containsString("youngFound-wrong"));
        send(RESCUER, path + "/outcome", Map.of("outcome", "deadChecked", "carcassSigned", "yes", "words", "cold"))
                .statusCode(303);
        send(RESCUER, path + "/outcome", Map.of("outcome", "notFound"))
                .statusCode(409)
                .body(containsString("This attendance has ended already"));
        Json told = Api.get(RESCUER, "/api/attendances/" + outing);
        assertThat(told.getString("outcome")).isEqualTo("deadChecked");
        assertThat(told.getBoolean("carcassSigned")).isTrue();
        assertThat(told.getString("words")).isEqualTo("cold");
        assertThat(Api.get(OFFICER, "/api/attendances/" + outing).getString("words"))
                .as("words of a scene are for those who were there, and the desk")
                .isNull();
        Api.correct(
                        RESCUER,
                        "/api/attendances/" + outing,
                        "{\"words\":\"cold, one ear torn\",\"reason\":\"forgotten\"}")
                .statusCode(200)
                .body("words", equalTo("cold, one ear torn"));
        assertThat(page(RESCUER, "/hand")).doesNotContain(outing);
        assertThat(page(CARER, path)).contains("Only rescuers who go out enter its steps.");
    }

    @Test
    void anAnimalIsOfferedTakenAndHandedOn() {
        String handOver = Api.make(
                        CARER,
                        turtle.path() + "/hand-overs",
                        "{\"taker\":{\"memberId\":\"%s\"}}".formatted(care.world.rescuer))
                .getString("id");
        assertThat(page(CARER, "/hand/animals/" + turtle.caseId())).contains("waits for their yes");
        assertThat(page(RESCUER, "/hand")).contains("An animal is offered to you", "answers for it until you say");
        Api.as(RESCUER).get("/hand/animals/" + turtle.caseId()).then().statusCode(404);
        send(RESCUER, "/hand/hand-overs/" + handOver, Map.of("act", "refuse"))
                .statusCode(400)
                .body(containsString("It does not say why."));
        send(RESCUER, "/hand/hand-overs/" + handOver, Map.of("act", "take")).statusCode(303);
        assertThat(page(RESCUER, "/hand/animals/" + turtle.caseId()))
                .contains("Macquarie turtle", "Hand it over")
                .doesNotContain("Write down what you saw");
        Api.as(CARER).get("/hand/animals/" + turtle.caseId()).then().statusCode(404);

        String path = "/hand/animals/" + turtle.caseId() + "/hand-overs";
        send(RESCUER, path, Map.of("organisationId", "")).statusCode(400).body(containsString("not said to whom"));
        send(RESCUER, path, Map.of("callSign", "nobody at all"))
                .statusCode(400)
                .body(containsString("Nobody of the network has that call sign."));
        send(RESCUER, path, Map.of("organisationId", care.world.clinic)).statusCode(303);
        Json told = Api.get(COORDINATOR, turtle.path());
        assertThat(told.getString("pendingHandOver.taker.organisationId")).isEqualTo(care.world.clinic);
        assertThat(told.getString("state")).isEqualTo("handOverPending");
    }

    @Test
    void whatIsNotTheirsIsNotThere() {
        Api.as(RESCUER).get("/hand/attendances/" + UUID.randomUUID()).then().statusCode(404);
        send(CARER, "/hand/entries", Map.of("caseId", UUID.randomUUID().toString(), "kind", "note", "words", "a"))
                .statusCode(404);
        send(CARER, "/hand/attendances/" + outing() + "/steps", Map.of("act", "accept"))
                .statusCode(403);
        Api.as(CARER)
                .contentType(Request.FORM)
                .formParam("caseId", turtle.caseId())
                .post("/hand/entries")
                .then()
                .statusCode(403)
                .body(containsString("not sent from a page"));
    }
}
