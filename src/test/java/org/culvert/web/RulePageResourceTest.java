package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.hotspot.HostileEvidence;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Release rules on a page: what each says, entering one, and reviewing one. */
@QuarkusTest
class RulePageResourceTest {
    private static int laws;

    /** ISO 3166 leaves XA to XZ to users. */
    private String jurisdiction;

    @BeforeEach
    void makeWorld() {
        World.shared();
        jurisdiction = "XP-" + ++laws;
    }

    private static String page(String role) {
        return Api.as(role)
                .get("/release-rules?state=all")
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    /** What the page says of one rule. */
    private static String card(String html, String id) {
        int start = html.indexOf("id=\"rule-" + id + "\"");
        assertThat(start).as("the rule is on the page").isPositive();
        return html.substring(start, html.indexOf("</article>", start));
    }

    /** A form as the page sends it: with the secret that the page was given. */
    private static Answer send(String role, String path, Map<String, String> fields) {
        String secret = Api.as(role).get("/release-rules").cookie("culvert-form");
        return Api.as(role)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParam("key", UUID.randomUUID().toString())
                .formParams(fields)
                .post(path)
                .then();
    }

    private Map<String, String> whole() {
        Map<String, String> fields = new HashMap<>();
        fields.put("jurisdiction", jurisdiction);
        fields.put("kind", "statute");
        fields.put("scientificName", "Elseya dentata");
        fields.put("exceptScientificNames", "Elseya dentata una\r\n\r\n Elseya dentata duo ");
        fields.put("appliesTo", "adult");
        fields.put("appliesDefinition", "one that was not raised here");
        fields.put("test", "greatestDistance");
        fields.put("greatestDistanceMetres", "1500");
        fields.put("originKnownWithinMetres", "62.5");
        fields.put("orderOfPreference", "where it was found\nthe same pond");
        fields.put("allowedGrounds", "burnt: the place was burnt\ndry: the pond: it is dry");
        fields.put("unknownOrigin", "withinRangeWithApproval");
        fields.put("consents", "of whoever owns the pond");
        fields.put("words", "No farther than a kilometre and a half.");
        fields.put("source", "made for a test, section 3");
        fields.put("readOn", "2020-01-02");
        fields.put("reviewBy", "2021-03-04");
        fields.put("validFrom", "2019-05-06");
        fields.put("validTo", "2090-07-08");
        return fields;
    }

    private String enter() {
        String to = send(COORDINATOR, "/release-rules", whole())
                .statusCode(303)
                .extract()
                .header("Location");
        return to.substring(to.lastIndexOf('/') + 1);
    }

    @Test
    void rulesOfOneJurisdictionAreShownAlone() {
        String id = enter();
        assertThat(pageOf(jurisdiction)).contains("id=\"rule-" + id + "\"", "value=\"" + jurisdiction + "\" selected");
        assertThat(pageOf("AU-QLD")).doesNotContain(id).contains("id=\"of-AU-QLD\"");
        assertThat(pageOf("XX-NONE"))
                .doesNotContain("id=\"of-XX-NONE\"", "id=\"of-AU-QLD\"", id)
                .contains("None have been entered of XX-NONE yet.");
        assertThat(page(CARER)).contains("id=\"rule-" + id + "\"", "id=\"of-AU-QLD\"");
    }

    @Test
    void whatIsAskedForIsShownInALineEachAndWholeAtItsAddress() {
        String id = enter();
        assertThat(asked("jurisdiction", jurisdiction, "words", "KILOMETRE and a half"))
                .contains("id=\"rule-" + id + "\"", "due for review</strong>")
                .containsPattern(
                        "4 Mar 2021: since then its source is to be read again[^<]*<a href=\"/release-rules/" + id)
                .doesNotContain("<details open>");
        assertThat(asked("jurisdiction", jurisdiction, "words", "nobody wrote this"))
                .doesNotContain(id)
                .contains("That says what was entered, and not what may be done");
        assertThat(asked("jurisdiction", jurisdiction, "whole", "yes")).contains("<details open>");
        for (String state : List.of("now", "due", "all", "nonsense")) {
            assertThat(asked("jurisdiction", jurisdiction, "state", state))
                    .as(state)
                    .contains(id);
        }
        assertThat(asked("jurisdiction", jurisdiction, "state", "ended")).doesNotContain("id=\"rule-" + id);
        assertThat(asked("jurisdiction", jurisdiction, "group", "snapping-turtles"))
                .contains("id=\"rule-" + id + "\"");
        assertThat(asked("jurisdiction", jurisdiction, "group", "macropods")).doesNotContain("id=\"rule-" + id);

        Map<String, String> over = whole();
        over.put("validTo", "2020-01-01");
        String to = send(COORDINATOR, "/release-rules", over)
                .statusCode(303)
                .extract()
                .header("Location");
        String ended = to.substring(to.lastIndexOf('/') + 1);
        assertThat(asked("jurisdiction", jurisdiction, "words", ""))
                .doesNotContain(ended)
                .contains("Not shown, since they no longer hold: 1.");
        assertThat(asked("jurisdiction", jurisdiction, "state", "ended"))
                .contains("id=\"rule-" + ended + "\"", "no longer in force</strong>");

        String whole = Api.as(CARER)
                .get("/release-rules/" + id)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(whole)
                .contains("made for a test, section 3", "Check your local code and your licensed vet.")
                .doesNotContain("<form method=\"post\" action=\"/release-rules");
        Api.as(CARER).get("/release-rules/" + UUID.randomUUID()).then().statusCode(404);
        Api.as(DISPATCHER).get("/release-rules/" + id).then().statusCode(403);
    }

    private static String asked(String... parameters) {
        var request = Api.as(CARER);
        for (int i = 0; i < parameters.length; i += 2) {
            request.queryParam(parameters[i], parameters[i + 1]);
        }
        return request.get("/release-rules").then().statusCode(200).extract().asString();
    }

    private static String pageOf(String code) {
        return Api.as(CARER)
                .queryParam("jurisdiction", code)
                .get("/release-rules")
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }

    @Test
    void aRuleThatIsEnteredIsTheOneThatTheApiTellsAndThePageShows() {
        String id = enter();
        Json rule = Api.get(COORDINATOR, "/api/release-rules/" + id);
        whole().forEach((field, typed) -> {
            if (!List.of("exceptScientificNames", "orderOfPreference", "allowedGrounds")
                    .contains(field)) {
                assertThat(rule.getString(field)).as(field).startsWith(typed);
            }
        });
        assertThat(rule.getList("exceptScientificNames")).containsExactly("Elseya dentata una", "Elseya dentata duo");
        assertThat(rule.getList("orderOfPreference")).containsExactly("where it was found", "the same pond");
        assertThat(rule.getList("allowedGrounds.key")).containsExactly("burnt", "dry");
        assertThat(rule.getList("allowedGrounds.words")).containsExactly("the place was burnt", "the pond: it is dry");

        String html = page(CARER);
        assertThat(html).contains("Check your local code and your licensed vet.");
        assertThat(card(html, id))
                .contains(
                        "It goes no farther than 1,500 m from where it was found.",
                        "statute: only a permit with its number and document lifts it",
                        "Elseya dentata, but not Elseya dentata una, Elseya dentata duo",
                        "adults, and calls them: one that was not raised here",
                        "<ol><li>where it was found</li><li>the same pond</li></ol>",
                        "the place was burnt <code>burnt</code>",
                        "only when it is known within 62.5 m",
                        "once that is approved",
                        "of whoever owns the pond",
                        "made for a test, section 3",
                        "<dt>Read on</dt><dd>2 Jan 2020</dd>",
                        "<dt>Review by</dt><dd>4 Mar 2021</dd>",
                        "From 6 May 2019 until the day before 8 Jul 2090.")
                .contains("Due for review since 4 Mar 2021")
                .doesNotContain("no longer holds")
                .doesNotContainPattern("(?i)lawful|legal|\\bsafe");
        assertThat(html).as("no inline scripts or styles").doesNotContain("<script", "style=\"", "onclick");
    }

    @Test
    void aReviewIsKeptAndTheRuleIsNoLongerDue() {
        String id = enter();
        String version = Api.get(COORDINATOR, "/api/release-rules/" + id).getString("version");
        Map<String, String> review = new HashMap<>(Map.of(
                "version", version,
                "readOn", "2026-01-02",
                "reviewBy", "2089-01-02",
                "reason", "the same words"));
        send(ADMIN, "/release-rules/" + id + "/reviews", review)
                .statusCode(303)
                .header("Location", containsString("/release-rules/" + id));
        assertThat(card(page(OFFICER), id))
                .contains("<dd>2 Jan 2026</dd>", "<dd>2 Jan 2089</dd>", "made for a test, section 3")
                .doesNotContain("Due for review");

        // Whoever saw it before that is told so, and what was typed stands
        review.put("reason", "read by two at once");
        String stale = send(COORDINATOR, "/release-rules/" + id + "/reviews", review)
                .statusCode(412)
                .extract()
                .asString();
        assertThat(stale)
                .contains("id=\"rule-" + id + "\"", "Somebody changed this rule in between", "read by two at once");

        review.put("version", Api.get(COORDINATOR, "/api/release-rules/" + id).getString("version"));
        review.put("reviewBy", "2025-12-31");
        review.put("source", "another edition");
        String refused = send(COORDINATOR, "/release-rules/" + id + "/reviews", review)
                .statusCode(400)
                .extract()
                .asString();
        assertThat(refused)
                .contains(
                        "<details class=\"act\" id=\"act-review\" open>",
                        "value=\"2025-12-31\"",
                        "another edition",
                        "It would be due at once.")
                .contains("id=\"review-reviewBy-wrong\"");
        review.put("reviewBy", "2089-01-02");
        review.put("validTo", "2019-05-06");
        send(COORDINATOR, "/release-rules/" + id + "/reviews", review)
                .statusCode(400)
                .body(containsString("It ends before it begins."));
        review.put("validTo", "2020-05-06");
        send(COORDINATOR, "/release-rules/" + id + "/reviews", review).statusCode(303);
        assertThat(card(page(CLINIC), id)).contains("It no longer holds.", "another edition");
    }

    @Test
    void whatIsWrongStandsBesideItsFieldAndWhatWasTypedIsKept() {
        Map<String, String> fields = whole();
        fields.put("jurisdiction", "Queensland");
        fields.put("readOn", "last week");
        fields.put("greatestDistanceMetres", "NaN");
        fields.put("allowedGrounds", "burnt");
        fields.remove("words");
        String html = send(COORDINATOR, "/release-rules", fields)
                .statusCode(400)
                .contentType("text/html")
                .extract()
                .asString();
        String form = html.substring(html.indexOf("id=\"act-enter\""), html.indexOf("role=\"search\""));
        for (String field : List.of("jurisdiction", "readOn", "greatestDistanceMetres", "allowedGrounds", "words")) {
            assertThat(form)
                    .contains("id=\"enter-" + field + "-wrong\"", "aria-describedby=\"enter-" + field + "-wrong\"");
        }
        assertThat(form)
                .contains("Not entered.", "value=\"Queensland\"", "value=\"last week\"", "value=\"NaN\"")
                .contains("This cannot be read: last week.", "A ground has a key and words: burnt.")
                .contains("<option value=\"statute\" selected>", "<option value=\"greatestDistance\" selected>")
                .contains("Elseya dentata duo", "made for a test, section 3</textarea>")
                .doesNotContain("id=\"enter-source-wrong\"");
        // What the rules of rules refuse, and not the form
        fields = whole();
        fields.remove("greatestDistanceMetres");
        send(COORDINATOR, "/release-rules", fields)
                .statusCode(400)
                .body(containsString("id=\"enter-greatestDistanceMetres-wrong\""));
        fields = whole();
        fields.put("jurisdiction", "network");
        send(COORDINATOR, "/release-rules", fields).statusCode(400).body(containsString("policy is the network"));
        fields = whole();
        fields.put("asksSecondPerson", "true");
        send(COORDINATOR, "/release-rules", fields)
                .statusCode(400)
                .body(containsString("id=\"enter-asksSecondPerson-wrong\""))
                .body(containsString("<option value=\"true\" selected>"));
        assertThat(page(COORDINATOR)).doesNotContain("id=\"of-" + jurisdiction + "\"");
    }

    @Test
    void ofPolicyASecondPersonMayBeAskedFor() {
        Map<String, String> fields = whole();
        fields.put("kind", "policy");
        fields.put("jurisdiction", "network");
        fields.put("asksSecondPerson", "true");
        fields.put("scientificName", "Testudo nullius");
        String to = send(COORDINATOR, "/release-rules", fields)
                .statusCode(303)
                .extract()
                .header("Location");
        String id = to.substring(to.lastIndexOf('/') + 1);
        assertThat(Api.get(COORDINATOR, "/api/release-rules/" + id).getBoolean("asksSecondPerson"))
                .isTrue();
        assertThat(card(page(CARER), id)).contains("only once a second person agrees", "a named person lifts it");
    }

    @Test
    void textsThatArePagesComeBackAsTexts() {
        String text = HostileEvidence.TEXT;
        Map<String, String> fields = whole();
        for (String field : List.of(
                "words", "source", "consents", "appliesDefinition", "exceptScientificNames", "orderOfPreference")) {
            fields.put(field, text);
        }
        fields.put("allowedGrounds", text + ": " + text);
        String to = send(COORDINATOR, "/release-rules", fields)
                .statusCode(303)
                .extract()
                .header("Location");
        String card = card(page(COORDINATOR), to.substring(to.lastIndexOf('/') + 1));
        assertThat(card).contains("&lt;script&gt;window.pwned=2", "{1+1}").doesNotContain("<script", "<img");
        fields.replaceAll((field, typed) -> text);
        String refused = send(COORDINATOR, "/release-rules", fields)
                .statusCode(400)
                .extract()
                .asString();
        assertThat(refused)
                .contains("value=\"&quot;&gt;&lt;img src=x", "This cannot be read: &quot;&gt;&lt;img")
                .doesNotContain("<script", "<img");
    }

    @Test
    void whoMayReadThemReadsThemAndWhoMayEnterThemHasForms() {
        String id = enter();
        for (String role : List.of(COORDINATOR, CLINIC, CARER, RESCUER, OFFICER, ADMIN)) {
            boolean enters = role.equals(COORDINATOR) || role.equals(ADMIN);
            assertThat(page(role).contains("<form method=\"post\" action=\"/release-rules"))
                    .isEqualTo(enters);
            Api.as(role).get("/").then().body(containsString("href=\"/release-rules\""));
            if (!enters) {
                send(role, "/release-rules", whole()).statusCode(403);
                send(role, "/release-rules/" + id + "/reviews", Map.of("version", "0"))
                        .statusCode(403);
            }
        }
        for (String role : List.of(DISPATCHER, ROADS_AUTHORITY, RECIPIENT)) {
            Api.as(role).get("/release-rules").then().statusCode(403);
            Api.as(role).get("/").then().body(not(containsString("href=\"/release-rules\"")));
        }
    }
}
