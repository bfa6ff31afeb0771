package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.culvert.care.CareWorld;
import org.culvert.care.CareWorld.Patient;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A carer's day on a page: what is due, ticks, skips with a reason, and what was seen beside the plan. */
@QuarkusTest
class CareDayPageResourceTest {
    private CareWorld care;
    private Patient turtle;

    @BeforeEach
    void makeWorld() {
        care = new CareWorld();
        turtle = care.patient(4);
        turtle.plan(
                care.today.minusDays(4),
                "Keep her door shut.",
                String.join(
                        ",",
                        CareWorld.step("swim", 3, 15, "daily", "minutes", ",\"low\":15,\"high\":20"),
                        CareWorld.step("wound", 4, 15, "daily", "yesNo", ",\"flagAnswer\":false"),
                        CareWorld.step("dry", 4, 15, "daily", "none", "")));
    }

    private static String page(String role, String query) {
        return Api.as(role)
                .get("/care-day" + query)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    /** What the page says of one animal. */
    private String ofTurtle(String html) {
        int start = html.indexOf("id=\"animal-" + turtle.caseId() + "\"");
        assertThat(start).as("the animal is on the page").isPositive();
        return html.substring(start, html.indexOf("</section>", start));
    }

    /** An entry for the carer, by whoever they rang. */
    private Answer send(String role, Map<String, String> fields) {
        Map<String, String> ofCarer = new HashMap<>(fields);
        ofCarer.put("member", care.world.carer);
        return send(role, "/care-day/entries", ofCarer);
    }

    private Answer send(String role, String path, Map<String, String> fields) {
        String secret = Api.as(role).get("/account").cookie("culvert-form");
        Map<String, String> whole = new HashMap<>(
                Map.of("caseId", turtle.caseId(), "key", UUID.randomUUID().toString()));
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

    @Test
    void whatIsDueStandsThereWithTheVetsWords() {
        String said = ofTurtle(page(CARER, ""));
        assertThat(said)
                .contains("No water until the third day.")
                .contains("Dry two days, then short swims.", "Keep her door shut.")
                .contains("Seen there again by 4 January 2089.")
                .contains("swim, as the vet says")
                .contains("Overdue.")
                .contains("The vet&#39;s limits: 15 to 20 min");
        assertThat(page(CARER, "")).contains("If it is worse than yesterday, ring the clinic.", "href=\"/hand\"");
        assertThat(said).as("carers tick on their own page").doesNotContain("<form", "Add something");
        assertThat(ofTurtle(page(COORDINATOR, "?member=" + care.world.carer)))
                .contains("swim, as the vet says")
                .contains("value=\"yes\"", "value=\"no\"")
                .contains("Skip it, for this reason");
        assertThat(page(COORDINATOR, "")).contains("no member&#39;s");
        Api.as(RESCUER).get("/care-day").then().statusCode(403);
    }

    @Test
    void aTickASkipAndAnEntryBesideAreKept() {
        Map<String, String> swim = Map.of("stepKey", "swim", "day", "4", "value", "17,5", "act", "done");
        send(COORDINATOR, swim)
                .statusCode(303)
                .header(
                        "Location",
                        containsString("/care-day?member=" + care.world.carer + "#animal-" + turtle.caseId()));
        send(COORDINATOR, Map.of("stepKey", "wound", "day", "4", "act", "no", "words", "a little wet"))
                .statusCode(303);
        send(COORDINATOR, Map.of("stepKey", "swim", "day", "3", "act", "skip", "skippedBecause", "no time"))
                .statusCode(303);
        send(COORDINATOR, Map.of("kind", "food", "words", "<b>two worms</b>", "act", "add"))
                .statusCode(303);

        Json kept = Api.get(CARER, turtle.path() + "/care-entries");
        assertThat(kept.getList("items.kind")).containsExactly("food", "task", "task", "task");
        assertThat(kept.getDouble("items.find { it.stepKey == 'swim' && it.day == 4 }.value"))
                .isEqualTo(17.5);
        String said = ofTurtle(page(COORDINATOR, "?member=" + care.world.carer));
        assertThat(said)
                .contains("done; 17.5 min")
                .contains("skipped: no time")
                .contains("no; a little wet; the vet wants to hear of that: ring the clinic")
                .contains("&lt;b&gt;two worms&lt;/b&gt;")
                .contains("dry, as the vet says")
                .doesNotContain("value=\"yes\"");

        // Ticked on another telephone in the meantime
        send(COORDINATOR, swim).statusCode(409).body(containsString("has its entry already"));
    }

    @Test
    void aFormThatIsSentTwiceIsTakenOnce() {
        String key = ofTurtle(page(COORDINATOR, "?member=" + care.world.carer))
                .replaceFirst("(?s).*name=\"key\" value=\"([^\"]+)\".*", "$1");
        assertThat(key).endsWith("-" + turtle.caseId());
        Map<String, String> food = Map.of("kind", "food", "words", "two worms", "act", "add", "key", key);
        String next = send(COORDINATOR, food).statusCode(303).extract().header("Location");
        send(COORDINATOR, food).statusCode(303).header("Location", next);
        assertThat(Api.get(CARER, turtle.path() + "/care-entries").getList("items"))
                .hasSize(1);

        send(COORDINATOR, Map.of("kind", "food", "words", "three worms", "act", "add", "key", key))
                .statusCode(422)
                .body(containsString("sent before"))
                .body(containsString("three worms"));
        send(COORDINATOR, Map.of("kind", "food", "words", "three worms", "act", "add", "key", ""))
                .statusCode(400)
                .body(containsString("no key of a form"));
        assertThat(Api.get(CARER, turtle.path() + "/care-entries").getList("items"))
                .hasSize(1);
        // Another key: something more was seen
        send(COORDINATOR, Map.of("kind", "food", "words", "two worms", "act", "add"))
                .statusCode(303);
        assertThat(Api.get(CARER, turtle.path() + "/care-entries").getList("items"))
                .hasSize(2);
    }

    @Test
    void anAddressOfACalendarIsShownOnceAndRevoked() {
        CareWorld.calendar(CARER);
        String id = Api.get(CARER, "/api/members/" + care.world.carer + "/calendars")
                .getString("find { it.revokedAt == null }.id");
        assertThat(page(CARER, "")).contains("Revoke the address").doesNotContain("Make an address");
        send(CARER, "/care-day/calendar", Map.of()).statusCode(409).body(containsString("revoke it"));
        send(CARER, "/care-day/calendar/" + id + "/revocation", Map.of())
                .statusCode(303)
                .header("Location", endsWith("/care-day#calendar"));
        String made = send(CARER, "/care-day/calendar", Map.of())
                .statusCode(200)
                .extract()
                .asString();
        String address = made.replaceFirst("(?s).*id=\"address\"[^>]*>([^<]+)<.*", "$1");
        Request.given().get(address).then().statusCode(200).contentType(startsWith("text/calendar"));
        assertThat(page(CARER, "")).contains("Revoke the address").doesNotContain(address);
        // Clinics read the day of a carer, and have no part in the address
        assertThat(page(CLINIC, "?member=" + care.world.carer)).doesNotContain("Revoke the address");
        send(CLINIC, "/care-day/calendar", Map.of()).statusCode(403);
    }

    @Test
    void whatIsToComeIsShownWithoutATick() {
        String ofCarer = "?member=" + care.world.carer;
        String tomorrow = ofTurtle(page(COORDINATOR, ofCarer + "&date=" + care.today.plusDays(1)));
        assertThat(tomorrow)
                .contains("dry, as the vet says", "It can be ticked from that day on.")
                .doesNotContain("name=\"day\" value=\"5\"", "Add something that was seen");
        // What is overdue can be done
        assertThat(tomorrow).contains("name=\"day\" value=\"3\"");
        assertThat(ofTurtle(page(COORDINATOR, ofCarer)))
                .contains("name=\"day\" value=\"4\"", "Add something that was seen")
                .doesNotContain("It can be ticked from that day on.");
    }

    @Test
    void whatWasTypedStandsThereAgainWhereItIsNotTaken() {
        String again = send(
                        COORDINATOR,
                        Map.of("stepKey", "swim", "day", "4", "value", "many", "words", "she was quick", "act", "done"))
                .statusCode(400)
                .extract()
                .asString();
        assertThat(ofTurtle(again))
                .contains("This cannot be read: many.")
                .contains("value=\"many\"")
                .contains("she was quick");
        send(COORDINATOR, Map.of("stepKey", "swim", "day", "4", "act", "done"))
                .statusCode(400)
                .body(containsString("asks for a number"));
        send(COORDINATOR, Map.of("stepKey", "swim", "day", "4", "act", "skip"))
                .statusCode(400)
                .body(containsString("It does not say why."));
        send(COORDINATOR, Map.of("kind", "weight", "value", "0", "act", "add"))
                .statusCode(400)
                .body(containsString("more than 0"));
        assertThat(Api.get(CARER, turtle.path() + "/care-entries").getList("items"))
                .isEmpty();
    }

    @Test
    void aFormIsTakenFromThePageAloneAndOfOwnAnimalsAlone() {
        Api.as(COORDINATOR)
                .contentType(Request.FORM)
                .formParam("caseId", turtle.caseId())
                .post("/care-day/entries")
                .then()
                .statusCode(403)
                .body(containsString("not sent from a page"));
        send(CLINIC, Map.of("caseId", care.world.carer, "kind", "note", "words", "a", "act", "add"))
                .statusCode(404);
        send(CARER, Map.of("kind", "note", "words", "a", "act", "add")).statusCode(403);
        assertThat(page(CLINIC, "?member=" + care.world.carer)).contains("swim, as the vet says");
    }
}
