package org.culvert.web.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The desk by plain forms, as a browser without scripts sends them. */
@QuarkusTest
class DeskPageResourceTest {
    private static final String HURT = "Ask first: is anyone hurt?";

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private static Answer send(String path, Map<String, ?> fields) {
        String secret = Api.as(DISPATCHER).get("/desk").cookie("culvert-form");
        Map<String, Object> whole =
                new HashMap<>(Map.of("key", UUID.randomUUID().toString()));
        whole.putAll(fields);
        return Api.as(DISPATCHER)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParams(whole)
                .post(path)
                .then();
    }

    private static String incidentOf(Answer sent) {
        String next = sent.statusCode(303).extract().header("Location");
        assertThat(next).contains("/desk/incidents/");
        return next.replaceFirst(".*/desk/incidents/", "").replaceFirst("[?#].*", "");
    }

    private static String callOf(Answer sent) {
        return sent.extract().header("Location").replaceFirst(".*call=", "").replaceFirst("#.*", "");
    }

    private static String page(String path) {
        return Api.as(DISPATCHER)
                .get(path)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    @Test
    void aCallIsKeptByPlaceNumberAndConditionAlone() {
        Answer sent = send(
                "/desk/calls",
                Map.of(
                        "place",
                        "Mill Road 5.2",
                        "phone",
                        "0400 000 000",
                        "condition",
                        "lies still",
                        "animal",
                        "Swamp wallaby",
                        "vitality",
                        "alive",
                        "anyoneHurt",
                        "no",
                        "offTheRoad",
                        "yes"));
        Json incident = Api.get(DISPATCHER, "/api/incidents/" + incidentOf(sent));
        assertThat(incident.getString("place.roadName")).isEqualTo("Mill Road");
        assertThat(incident.getString("place.givenAs")).isEqualTo("roadAndChainage");
        assertThat(incident.getString("calls[0].caller.phone")).isEqualTo("0400 000 000");
        assertThat(incident.getString("calls[0].animals[0].condition")).isEqualTo("lies still");
        assertThat(incident.getString("calls[0].animals[0].scientificName")).isEqualTo("Wallabia bicolor");
        assertThat(incident.getString("calls[0].anyoneHurt")).isEqualTo("no");
        assertThat(page("/desk/incidents/" + incident.getString("id")))
                .contains("swamp wallaby", "Mill Road, km 5.20", "0400 000 000", "Nobody is on the way");
    }

    @Test
    void nothingThatCannotBeReadKeepsACallFromBeingKept() {
        Answer sent = send(
                "/desk/calls",
                Map.of(
                        "place",
                        "by the big gum",
                        "count",
                        "a few",
                        "since",
                        "at tea",
                        "phone",
                        "9".repeat(120),
                        "cause",
                        "magic",
                        "anyoneHurt",
                        "perhaps",
                        "words",
                        "It was just there."));
        Json call = Api.get(DISPATCHER, "/api/incidents/" + incidentOf(sent));
        assertThat(call.getString("calls[0].words"))
                .startsWith("It was just there.")
                .contains("by the big gum", "a few", "at tea", "9".repeat(120), "magic");
        assertThat(call.getString("calls[0].anyoneHurt")).isEqualTo("unknown");
        assertThat(call.getString("cause")).isEqualTo("unknown");
        assertThat((Object) call.get("place")).isNull();
    }

    /** As long as the API takes them: a letter of three octets has nine on its way. */
    @Test
    void aLongTaleKeepsNoCallFromBeingKept() {
        String tale = "\u20ac".repeat(20_000);
        Json call = Api.get(DISPATCHER, "/api/incidents/" + incidentOf(send("/desk/calls", Map.of("words", tale))));
        assertThat(call.getString("calls[0].words")).isEqualTo(tale);
    }

    @Test
    void anEmptyFormIsACallToo() {
        assertThat(incidentOf(send("/desk/calls", Map.of()))).isNotEmpty();
    }

    @Test
    void aFormThatIsSentTwiceIsOneCall() {
        Map<String, String> form = Map.of("key", "desk-" + UUID.randomUUID(), "words", "twice");
        String first = incidentOf(send("/desk/calls", form));
        assertThat(incidentOf(send("/desk/calls", form))).isEqualTo(first);
        assertThat(send("/desk/calls", Map.of("key", form.get("key"), "words", "another"))
                        .statusCode(422)
                        .extract()
                        .asString())
                .contains("sent before", "another");
    }

    @Test
    void whatIsToldLaterBecomesARevisionAndTheRestStays() {
        Answer sent = send("/desk/calls", Map.of("place", "Mill Road 5.2", "phone", "1", "words", "quick"));
        String incident = incidentOf(sent);
        String call = callOf(sent);
        Map<String, String> more = Map.of(
                "place",
                "Mill Road km 5.2",
                "phone",
                "1",
                "words",
                "quick",
                "animal",
                "a roo",
                "vitality",
                "alive",
                "condition",
                "sits up",
                "name",
                "A Caller",
                "cause",
                "collisionWithVehicle",
                "offTheRoad",
                "yes");
        incidentOf(send("/desk/incidents/" + incident + "/calls/" + call, more));
        Json now = Api.get(DISPATCHER, "/api/calls/" + call);
        assertThat(now.getString("caller.name")).isEqualTo("A Caller");
        assertThat(now.getString("caller.phone")).isEqualTo("1");
        assertThat(now.getString("words")).isEqualTo("quick");
        assertThat(now.getString("animals[0].verbatimIdentification")).isEqualTo("a roo");
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getString("cause"))
                .isEqualTo("collisionWithVehicle");
        int version = Api.get(DISPATCHER, "/api/records/" + call + "/revisions")
                .getList("$")
                .size();
        incidentOf(send("/desk/incidents/" + incident + "/calls/" + call, more));
        assertThat(Api.get(DISPATCHER, "/api/records/" + call + "/revisions").getList("$"))
                .hasSize(version);
        assertThat(Api.get(DISPATCHER, "/api/calls/" + call).getList("animals")).hasSize(1);
        incidentOf(send(
                "/desk/incidents/" + incident + "/calls/" + call,
                Map.of(
                        "place",
                        "Mill Road km 5.2",
                        "phone",
                        "1",
                        "words",
                        "quick",
                        "animal",
                        "koala",
                        "vitality",
                        "dead",
                        "condition",
                        "sits up",
                        "name",
                        "A Caller",
                        "cause",
                        "collisionWithVehicle",
                        "offTheRoad",
                        "yes")));
        assertThat(Api.get(DISPATCHER, "/api/calls/" + call).getString("animals[0].scientificName"))
                .isEqualTo("Phascolarctos cinereus");
    }

    @Test
    void whatIsSaidToTheCallerIsTickedOnceAndCanBeTakenBack() {
        String call = Api.make(DISPATCHER, "/api/calls", "{}").getString("callId");
        String path = "/api/calls/" + call + "/told-words";
        Api.get(DISPATCHER, "/api/calls/" + call + "/receipt");
        String told = Api.make(DISPATCHER, path, "{\"words\":\"" + HURT + "\"}").getString("id");
        Api.post(DISPATCHER, path, "{\"words\":\"" + HURT + "\"}")
                .statusCode(409)
                .body("detail", containsString("already"));
        Api.post(DISPATCHER, path, "{\"words\":\"Give it milk.\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("words"))
                .body("errors[0].wanted", containsString(HURT));
        Api.post(DISPATCHER, path, "{\"words\":\"" + HURT + "\",\"at\":\"2001-01-01T00:00:00Z\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("at"));
        Api.post(CARER, path, "{\"words\":\"" + HURT + "\"}").statusCode(403);
        Api.change(DISPATCHER, "/api/told-words/" + told, "/withdrawal", "{\"reason\":\"not said after all\"}")
                .statusCode(200)
                .body("withdrawnBecause", equalTo("not said after all"));
        Api.make(DISPATCHER, path, "{\"words\":\"" + HURT + "\"}");
        assertThat(Api.get(OFFICER, path).getList("$")).hasSize(2);
    }

    @Test
    void theDeskTicksASentence() {
        Answer sent = send("/desk/calls", Map.of("animal", "grey-headed flying-fox", "vitality", "alive"));
        String incident = incidentOf(sent);
        String call = callOf(sent);
        String path = "/desk/incidents/" + incident + "/calls/" + call + "/told";
        incidentOf(send(path, Map.of("words", HURT)));
        assertThat(page("/desk/incidents/" + incident))
                .contains("✓")
                .contains("said 0 min ago")
                .containsPattern("<time datetime=\"20[^\"]+Z\">\\d\\d:\\d\\d</time>");
        send(path, Map.of("words", "Give it milk.")).statusCode(400);
    }

    @Test
    void whatIsOpenStandsInOrderOfNeed() {
        String dead = World.call("Chelodina longicollis", 150.0311, "").getString("incidentId");
        Api.correct(
                DISPATCHER,
                "/api/calls/" + Api.get(DISPATCHER, "/api/incidents/" + dead).getString("calls[0].id"),
                "/animals/" + Api.get(DISPATCHER, "/api/incidents/" + dead).getString("calls[0].animals[0].id"),
                "{\"vitality\":\"dead\",\"reason\":\"seen\"}");
        String hurt = Api.make(DISPATCHER, "/api/calls", """
                {"people":{"anyoneHurt":"yes"},"animals":[{"verbatimIdentification":"roo","vitality":"dead"}],
                 "place":{"decimalDegrees":{"latitude":"-30.50000","longitude":"150.03220"}}}
                """).getString("incidentId");
        String alive = World.call("Wallabia bicolor", 150.0322, "").getString("incidentId");
        List<String> order = Api.get(DISPATCHER, "/api/open-incidents").getList("incidentId");
        assertThat(order).contains(dead, hurt, alive);
        assertThat(order.indexOf(hurt)).isLessThan(order.indexOf(alive));
        assertThat(order.indexOf(alive)).isLessThan(order.indexOf(dead));
        assertThat(page("/desk/open"))
                .contains("data-incident=\"" + hurt + "\" data-number=\""
                        + Api.get(DISPATCHER, "/api/incidents/" + hurt).getString("number") + "\" data-at=\"");
        incidentOf(send(
                "/desk/incidents/" + hurt + "/closings",
                Map.of(
                        "outcome",
                        "passedOn",
                        "passedOnTo",
                        "the ambulance",
                        "theirReference",
                        "A-1",
                        "because",
                        "people first")));
        assertThat(Api.get(DISPATCHER, "/api/open-incidents").getList("incidentId"))
                .doesNotContain(hurt);
        assertThat(page("/desk")).contains("Alive, nobody sent");
        Api.as(CARER).get("/api/open-incidents").then().statusCode(403);
        Api.as(CARER).get("/desk").then().statusCode(403);
    }

    @Test
    void peopleAreAskedAboutAndSentAndTheirStepsAreKept() {
        String incident = World.call("Wallabia bicolor", 150.0333, "").getString("incidentId");
        String path = "/desk/incidents/" + incident + "/attendances";
        assertThat(send(path, Map.of("act", "send")).statusCode(400).extract().asString())
                .contains("who leads");
        Answer asked = send(path, Map.of("act", "ask", "lead", world.rescuer));
        assertThat(asked.statusCode(200).extract().asString()).contains("The gate stops them", "limit 100 km/h");
        assertThat(send(path, Map.of("act", "send", "lead", world.rescuer))
                        .statusCode(422)
                        .extract()
                        .asString())
                .contains("speed", world.rescuer);
        incidentOf(send(
                path, Map.of("act", "send", "lead", world.rescuer, "helper", world.helper, "policeReference", "P-7")));
        String attendance = Api.get(DISPATCHER, "/api/incidents/" + incident + "/attendances")
                .getString("[0].id");
        for (String step : List.of("accept", "depart", "arrive")) {
            incidentOf(send(path + "/" + attendance + "/steps", Map.of("act", step)));
        }
        send(path + "/" + attendance + "/steps", Map.of("act", "fly")).statusCode(400);
        incidentOf(send(
                path + "/" + attendance + "/steps",
                Map.of(
                        "act",
                        "end",
                        "outcome",
                        "deadChecked",
                        "pouchChecked",
                        "yes",
                        "youngFound",
                        "1",
                        "carcassSigned",
                        "yes")));
        Json ended = Api.get(DISPATCHER, "/api/attendances/" + attendance);
        assertThat(ended.getString("outcome")).isEqualTo("deadChecked");
        assertThat(ended.getInt("youngFound")).isEqualTo(1);
        assertThat(ended.getBoolean("carcassSigned")).isTrue();
        send(path + "/" + attendance + "/steps", Map.of("act", "accept")).statusCode(409);
        String other = World.call("Wallabia bicolor", 150.0344, "").getString("incidentId");
        send("/desk/incidents/" + other + "/attendances/" + attendance + "/steps", Map.of("act", "accept"))
                .statusCode(404);
    }

    @Test
    void aCallThatIsAboutTheSameIsJoined() {
        String first = World.call("Phascolarctos cinereus", 150.0411, "").getString("incidentId");
        Answer sent = send("/desk/calls", Map.of("place", "-30.5, 150.0412", "animal", "koala"));
        String second = incidentOf(sent);
        String number = Api.get(DISPATCHER, "/api/incidents/" + first).getString("number");
        assertThat(page("/desk/incidents/" + second)).contains("It is incident " + number);
        send("/desk/incidents/" + second + "/joins", Map.of("incidentId", first))
                .statusCode(400);
        assertThat(incidentOf(send(
                        "/desk/incidents/" + second + "/joins",
                        Map.of("incidentId", first, "because", "the same bend"))))
                .isEqualTo(first);
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + second).getString("standsUnder"))
                .isEqualTo(first);
        assertThat(page("/desk/incidents/" + second)).contains("one with another incident");
    }

    @Test
    void aPlaceIsReadWhileItIsTyped() {
        String reading = page("/desk/reading?place=Mill+Road+5.2&animal=koala");
        assertThat(reading).contains("Mill Road, km 5.20", "Limit 100 km/h", "<svg", "class=\"its-road\"");
        assertThat(reading).contains("data-course=\"-30.5", "data-at=\"-30.5", "data-words=\"5.2\"", "data-within=\"");
        assertThat(page("/desk/reading?place=Mill")).contains("value=\"Mill Road \"", "2.0–", "not understood");
        assertThat(page("/desk/reading?place=Mill+Road+/+R")).contains("value=\"Mill Road / River Lane\"");
        assertThat(page("/desk/reading?place=Mill+Road")).contains("how far along it is not said");
        assertThat(page("/desk/reading?place=Nowhere+Road+km+3")).contains("no road called Nowhere Road");
        assertThat(page("/desk/reading")).contains("Begin to say where");
    }

    @Test
    void theRoadIsChosenWhereItIsInDoubt() {
        Answer sent = send("/desk/calls", Map.of("place", "Mill Road / River Lane"));
        String incident = incidentOf(sent);
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getBoolean("place.roadIsInDoubt"))
                .isTrue();
        incidentOf(send("/desk/incidents/" + incident + "/road", Map.of("road", "River Lane")));
        Json place = Api.get(DISPATCHER, "/api/incidents/" + incident);
        assertThat(place.getString("place.roadName")).isEqualTo("River Lane");
        send("/desk/incidents/" + incident + "/road", Map.of("road", "Elsewhere"))
                .statusCode(400);
    }

    @Test
    void itSpeaksTheLanguageThatABrowserAsksFor() {
        assertThat(Api.as(COORDINATOR)
                        .header("Accept-Language", "de-AT, de;q=0.9, en;q=0.5")
                        .get("/desk")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .contains("<html lang=\"de\">", "Ist jemand verletzt?");
        assertThat(Api.as(COORDINATOR)
                        .header("Accept-Language", "fr")
                        .get("/desk")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .contains("<html lang=\"en\">", "Is anyone hurt?");
    }

    /** A second caller who knows less does not take back what the first one told. */
    @Test
    void aCallThatKnowsLessLeavesTheCauseOfTheIncident() {
        String incident = World.call("Wallabia bicolor", 150.0355, "").getString("incidentId");
        String call = Api.make(DISPATCHER, "/api/calls", "{\"incidentId\":\"" + incident + "\"}")
                .getString("callId");
        String path = "/desk/incidents/" + incident + "/calls/" + call;
        incidentOf(send(path, Map.of("phone", "2")));
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getString("cause"))
                .isEqualTo("collisionWithVehicle");
        assertThat(Api.get(DISPATCHER, "/api/calls/" + call).getString("caller.phone"))
                .isEqualTo("2");
        incidentOf(send(path, Map.of("phone", "2", "cause", "entanglement")));
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getString("cause"))
                .isEqualTo("entanglement");
    }

    @Test
    void furtherAnimalsOfACallAreAdded() {
        String call = Api.make(DISPATCHER, "/api/calls", "{}").getString("callId");
        Api.post(
                        DISPATCHER,
                        "/api/calls/" + call + "/animals",
                        "{\"verbatimIdentification\":\"a joey\",\"vitality\":\"alive\"}")
                .statusCode(201)
                .body("animals.verbatimIdentification", hasItem("a joey"));
        Api.post(DISPATCHER, "/api/calls/" + call + "/animals", "{\"scientificName\":\"Nullus nullus\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("scientificName"));
    }
}
