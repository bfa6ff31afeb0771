package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;

import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.release.ReleaseWorld;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Releases on pages: one that is recorded, what is known since, and decisions that an animal does not go back. */
@QuarkusTest
class ReleasePageResourceTest {
    private ReleaseWorld turtles;

    @BeforeEach
    void makeWorld() {
        turtles = new ReleaseWorld();
    }

    private static Answer send(String role, String path, Map<String, String> fields) {
        String secret = Api.as(role).get("/account").cookie("culvert-form");
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

    /** As a browser sends a form in which a file may be chosen and none was (RFC 7578). */
    private static Answer sendInParts(String path, Map<String, String> fields) {
        String secret = Api.as(COORDINATOR).get("/account").cookie("culvert-form");
        Map<String, String> whole = new HashMap<>(fields);
        whole.put("csrf", secret);
        whole.putIfAbsent("key", UUID.randomUUID().toString());
        StringBuilder body = new StringBuilder();
        whole.forEach((name, value) -> body.append("--part\r\nContent-Disposition: form-data; name=\"")
                .append(name)
                .append("\"\r\n\r\n")
                .append(value)
                .append("\r\n"));
        body.append("--part--\r\n");
        return Api.as(COORDINATOR)
                .contentType("multipart/form-data; boundary=part")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .body(body.toString())
                .post(path)
                .then();
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

    @Test
    void aReleaseIsRecordedByItsAssessmentAndFollowed() {
        Json made = turtles.newCase();
        String id = made.getString("id");
        String assessment = turtles.assess(id);
        assertThat(page(COORDINATOR, "/releases/new?assessmentId=" + assessment))
                .contains("case " + made.getString("number"), "name=\"assessmentIds\" value=\"" + assessment + "\"");
        Map<String, String> fields = new HashMap<>(Map.of("assessmentIds", assessment, "manner", "soft"));
        sendInParts("/releases", fields)
                .statusCode(400)
                .body(containsString("id=\"release-approvedBy-wrong\""))
                .body(containsString("<option value=\"soft\" selected>"));
        String refused = sendInParts(
                        "/releases",
                        Map.of(
                                "assessmentIds",
                                assessment,
                                "approvedBy",
                                "x".repeat(201),
                                "weather",
                                "x".repeat(501),
                                "releasedBy",
                                "nobody at all",
                                "at",
                                "yesterday"))
                .statusCode(400)
                .extract()
                .asString();
        for (String field : List.of("approvedBy", "weather", "releasedBy", "at")) {
            assertThat(refused).contains("id=\"release-" + field + "-wrong\"", "<a href=\"#release-" + field + "\">");
        }
        fields.put("approvedBy", "Dr <b>Vet</b>");
        fields.put("supportFeedingUntil", "2090-01-01");
        fields.put("key", UUID.randomUUID().toString());
        String to = sendInParts("/releases", fields).statusCode(303).extract().header("Location");
        assertThat(sendInParts("/releases", fields).statusCode(303).extract().header("Location"))
                .as("sent twice, taken once")
                .isEqualTo(to);
        String path = to.substring(to.indexOf("/releases/"));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getString("fate.fate"))
                .isEqualTo("released");
        assertThat(page(OFFICER, path))
                .contains(
                        "<a href=\"/cases/" + id + "\">case " + made.getString("number"),
                        "Dr &lt;b&gt;Vet",
                        "soft: fed at the place")
                .contains("who is not seen is not known to be dead, nor to be alive")
                .doesNotContain("<form method=\"post\" action=\"/releases");
        assertThat(page(CARER, "/releases")).contains("href=\"" + path + "\"", "To be fed there until 1 Jan 2090.");

        send(CARER, path + "/sightings", Map.of("caseId", id, "alive", "yes"))
                .statusCode(400)
                .body(containsString("id=\"sighting-knownBy-wrong\""));
        send(
                        CARER,
                        path + "/sightings",
                        Map.of("caseId", id, "alive", "yes", "knownBy", "tracked", "words", "at the dam"))
                .statusCode(303);
        send(CARER, path + "/support-feeding-end", Map.of("endedBy", "a neighbour"))
                .statusCode(303);
        String after = page(COORDINATOR, path);
        assertThat(after)
                .contains("alive; tracked; at the dam", "1 were seen alive since", "said a neighbour.")
                .doesNotContain("act-feeding");
        send(CARER, path + "/withdrawals", Map.of("part", "animal:" + id, "reason", "it was another"))
                .statusCode(403);
        send(COORDINATOR, path + "/withdrawals", Map.of("part", "animal:" + id, "reason", "it was another"))
                .statusCode(303);
        assertThat(page(COORDINATOR, path)).contains("taken back: it was another");
    }

    @Test
    void whatStandsInTheWayIsSaidAndWhatWasTypedStays() {
        Json made = turtles.newCase();
        String assessment = turtles.assess(made.getString("id"));
        String decision = Api.make(CLINIC, "/api/cases/" + made.getString("id") + "/non-release-decisions", """
                        {"grounds":["injury"],"words":"a lost leg","vetName":"Dr Vet","vetRegistration":"V 1"}
                        """)
                .getString("id");
        sendInParts("/releases", Map.of("assessmentIds", assessment, "approvedBy", "Dr Typed"))
                .statusCode(422)
                .body(containsString("a vet decided that this animal does not go back"))
                .body(containsString("value=\"Dr Typed\""));

        String path = "/non-release-decisions/" + decision;
        assertThat(page(COORDINATOR, "/releases")).contains("href=\"" + path + "\"");
        send(
                        CLINIC,
                        path,
                        Map.of("what", "opinion", "vetName", "Dr Other", "vetRegistration", "V 2", "agrees", "false"))
                .statusCode(400)
                .body(containsString("id=\"opinion-words-wrong\""));
        send(
                        CLINIC,
                        path,
                        Map.of(
                                "what", "opinion",
                                "vetName", "Dr Other",
                                "vetRegistration", "V 2",
                                "agrees", "false",
                                "words", "it swims well"))
                .statusCode(303);
        send(CLINIC, path + "/notices", Map.of("what", "notice", "authority", "the office"))
                .statusCode(403);
        send(COORDINATOR, path + "/notices", Map.of("what", "notice", "authority", "the office"))
                .statusCode(303);
        assertThat(page(OFFICER, path))
                .contains("in dispute", "Dr Other, V 2: does not agree; it swims well", "the office")
                .doesNotContain("<form method=\"post\" action=\"/non-release");
        send(
                        CLINIC,
                        path,
                        Map.of(
                                "what", "review",
                                "reviewedBy", "Dr Other",
                                "words", "It eats well.",
                                "nextDueOn", "2090-01-02"))
                .statusCode(303);
        assertThat(page(OFFICER, path))
                .contains("Dr Other, next by 2 Jan 2090: It eats well.")
                .doesNotContain(".;");
        assertThat(sendInParts(path + "/permits", Map.of("number", " ", "validFrom", "soon"))
                        .statusCode(400)
                        .extract()
                        .asString())
                .contains(
                        "<a href=\"#permit-number\">",
                        "<a href=\"#permit-issuedBy\">",
                        "<a href=\"#permit-validFrom\">",
                        "<a href=\"#permit-document\">");
        send(CLINIC, path, Map.of("what", "withdrawal", "reason", "it may go")).statusCode(303);
        assertThat(page(CLINIC, path)).contains("withdrawn", "it may go");
    }

    @Test
    void whoMayNotSeeReleasesDoesNot() {
        for (String role : List.of(DISPATCHER, RESCUER)) {
            Api.as(role).get("/releases").then().statusCode(403);
        }
        for (String role : List.of(CLINIC, CARER, OFFICER)) {
            Api.as(role).get("/releases/new").then().statusCode(403);
        }
        assertThat(page(COORDINATOR, "/releases/new")).contains("Choose an assessment first");
        Api.as(CARER).get("/releases/" + UUID.randomUUID()).then().statusCode(404);
        assertThat(Api.as(OFFICER)
                        .header("Accept-Language", "de")
                        .get("/releases")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .contains("Freilassungen", "Entscheidungen, dass ein Tier nicht zurückgeht");
    }
}
