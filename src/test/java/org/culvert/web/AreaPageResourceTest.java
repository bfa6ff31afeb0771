package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.hotspot.HostileEvidence;
import org.culvert.release.ReleaseWorld;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Where an animal may go back, on a page: drawn, and in words. */
@QuarkusTest
class AreaPageResourceTest {
    private ReleaseWorld release;

    @BeforeEach
    void makeWorld() {
        release = new ReleaseWorld();
    }

    private void noFartherThan(int metres) {
        Api.make(COORDINATOR, "/api/release-rules", """
                {"jurisdiction":"%s","kind":"statute","scientificName":"%s","test":"greatestDistance",
                 "greatestDistanceMetres":%d,"words":"no farther","source":"made for a test","readOn":"2020-01-01",
                 "reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                """.formatted(release.jurisdiction, ReleaseWorld.TURTLE, metres));
    }

    private void site(String name, double latitude) {
        ReleaseWorld.site(name, release.jurisdiction, latitude, ReleaseWorld.LONGITUDE, "snapping-turtles");
    }

    private String page(String role, String caseId) {
        return Api.as(role)
                .get("/release-area?caseId=" + caseId + "&jurisdiction=" + release.jurisdiction)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    private static double attribute(String html, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(html);
        assertThat(found.find()).as(pattern).isTrue();
        return Double.parseDouble(found.group(1));
    }

    /** What paths enclose by the even-odd rule, where no ring of one crosses another: shells less holes (shoelace formula). */
    private static double enclosed(String html) {
        double sum = 0;
        Matcher paths = Pattern.compile("<path d=\"([^\"]+)\" class=\"area\"").matcher(html);
        while (paths.find()) {
            String[] rings = paths.group(1).split("Z");
            for (int i = 0; i < rings.length; i++) {
                String[] corners = rings[i].substring(1).split("[L ]");
                double twice = 0;
                for (int j = 0; j < corners.length; j += 2) {
                    int next = (j + 2) % corners.length;
                    twice += Double.parseDouble(corners[j]) * Double.parseDouble(corners[next + 1])
                            - Double.parseDouble(corners[next]) * Double.parseDouble(corners[j + 1]);
                }
                sum += (i == 0 ? 1 : -1) * Math.abs(twice) / 2;
            }
        }
        return sum;
    }

    @Test
    void thePictureIsAsLargeByItsScaleBarAsTheAreaIs() {
        noFartherThan(3000);
        Json made = release.newCase();
        String id = made.getString("id");
        site("Near the pond", ReleaseWorld.LATITUDE + 0.01);
        site("Far away", ReleaseWorld.LATITUDE - 0.2);
        String html = page(CARER, id);
        Json told = Api.get(CARER, "/api/cases/" + id + "/release-area?jurisdiction=" + release.jurisdiction);
        double bar = attribute(html, "m0 -4v8m0 -4h([0-9.]+)m0");
        double metres = 1000 * attribute(html, ">([0-9.]+) km</text>");
        double scale = metres / bar;
        double squareMetres = told.getDouble("properties.squareMetres");
        assertThat(enclosed(html) * scale * scale).isCloseTo(squareMetres, within(0.01 * squareMetres));
        double uncertainty = Api.get(CARER, "/api/cases/" + id).getDouble("foundPlace.coordinateUncertaintyInMeters");
        assertThat(scale * attribute(html, "r=\"([0-9.]+)\" class=\"uncertainty\""))
                .isCloseTo(uncertainty, within(0.1 * scale));
        assertThat(squareMetres).isLessThan(Math.PI * 3000 * 3000);

        // The site that is a hundredth of a degree north. A degree of latitude on WGS 84 has 111,132.95 - 559.82 cos 2p
        // + 1.18 cos 4p metres (from memory), 110,861 at 30.5 degrees
        double y = attribute(html, "<circle cx=\"[0-9.]+\" cy=\"([0-9.]+)\"");
        int rank = told.getInt("properties.sites.find { it.name == 'Near the pond' }.rank");
        double siteY = attribute(html, "<path d=\"M[0-9.]+ ([0-9.]+)m-5 0[^>]+></path><text [^>]+>" + rank + "</text>");
        assertThat((y - siteY) * scale).isCloseTo(1109, within(2 * scale));
        // Mill Road runs from west to east through where it was found: the sign is not across it from its place
        double placeLatitude = told.getDouble("properties.lookFirst.decimalLatitude");
        double starY = attribute(html, "<path d=\"M[0-9.]+ ([0-9.]+)m0 -9l2.6");
        assertThat(starY < y).isEqualTo(placeLatitude > ReleaseWorld.LATITUDE);
        assertThat(html).contains("aria-labelledby=\"area-title\"", "A map, north up,", "The area is hatched:");
        assertThat(html).as("no inline scripts or styles").doesNotContain("<script>", "style=\"", "onclick");
        assertThat(html).as("nothing of another host").doesNotContain("http://", "https://");
        assertThat(html.substring(html.indexOf("<svg"), html.indexOf("</svg>")).length())
                .as("simplified")
                .isLessThan(80_000);
    }

    @Test
    void wordsBesideItSayTheSame() {
        noFartherThan(3000);
        Json made = release.newCase();
        World.signFit(made.getString("id"), "2021-11-21T02:00:00Z");
        site("Near the pond", ReleaseWorld.LATITUDE + 0.01);
        Api.make(COORDINATOR, "/api/land-areas", """
                {"kind":"protectedArea","name":"Park of %1$s","source":"the gazette","from":"2020-01-01",
                 "geometry":{"type":"Polygon","coordinates":[[[150.04,-30.52],[150.05,-30.52],[150.05,-30.51],
                 [150.04,-30.51],[150.04,-30.52]]]}}
                """.formatted(release.jurisdiction));
        String html = page(OFFICER, made.getString("number"));
        Json told = Api.get(
                CARER, "/api/cases/" + made.getString("id") + "/release-area?jurisdiction=" + release.jurisdiction);
        assertThat(html)
                .contains("Where may case " + made.getString("number") + " go back?")
                .contains(told.getString("properties.words"))
                .contains("The place where it was found comes first.")
                .contains("no farther (statute, " + release.jurisdiction + ": made for a test)")
                .contains("Beyond it, only a permit with its number and document.")
                .contains("Nothing: no animal is let go on a road.")
                .contains("Its nearest point is ", "Look first ", "nobody has looked there yet")
                .contains("<li><b>a</b> Park or reserve: Park of " + release.jurisdiction + " (the gazette), ")
                .contains("Near the pond <button", "entered as fit for its kind", "yes, all of it")
                .contains("1.11 km, give or take ")
                .contains("Check your local code and your licensed vet.")
                .contains("href=\"/api/cases/" + made.getString("id") + "/release-area?jurisdiction="
                        + release.jurisdiction + "\"")
                .contains("value=\"" + made.getString("number") + "\"")
                .doesNotContainPattern("(?i)lawful|legal|\\bsafe");
    }

    @Test
    void whereNothingIsLeftItSaysWhatWouldOpenIt() {
        noFartherThan(5);
        String html = page(COORDINATOR, release.newCase().getString("id"));
        assertThat(html)
                .contains(
                        "Nothing is left.",
                        "What would open it:",
                        "The origin is known to",
                        "There is nothing to draw.")
                .doesNotContain("<svg");
    }

    @Test
    void aQuestionWithMistakesComesBackWithThemBesideTheirFields() {
        String id = release.newCase().getString("id");
        String html = Api.as(CARER)
                .queryParam("caseId", HostileEvidence.TEXT)
                .queryParam("jurisdiction", HostileEvidence.TEXT)
                .queryParam("withinMetres", "wide")
                .get("/release-area")
                .then()
                .statusCode(400)
                .extract()
                .asString();
        assertThat(html)
                .contains("id=\"ask-caseId-wrong\"", "id=\"ask-jurisdiction-wrong\"", "id=\"ask-withinMetres-wrong\"")
                .contains("value=\"&quot;&gt;&lt;img src=x", "value=\"wide\"")
                .doesNotContain("<script", "<img");
        for (String metres : List.of("0", "-1", "NaN", "200001")) {
            Api.as(CARER)
                    .get("/release-area?caseId=" + id + "&withinMetres=" + metres)
                    .then()
                    .statusCode(400)
                    .body(containsString("id=\"ask-withinMetres-wrong\""))
                    .body(containsString("value=\"" + id + "\""));
        }
        // No rule gives a distance, and how far its kind moves is not known
        Api.as(CARER)
                .get("/release-area?caseId=" + id + "&jurisdiction=" + release.jurisdiction)
                .then()
                .statusCode(400)
                .body(containsString("id=\"ask-withinMetres-wrong\""));
        for (String nobodys : List.of("999999999", "99999999999999999999", "case")) {
            Api.as(CARER)
                    .get("/release-area?caseId=" + nobodys)
                    .then()
                    .statusCode(400)
                    .body(containsString("id=\"ask-caseId-wrong\""));
        }
        Api.as(CARER)
                .get("/release-area?caseId=&jurisdiction=XR&withinMetres=")
                .then()
                .statusCode(400)
                .body(containsString("It is not said of which case."))
                .body(containsString("value=\"XR\""));
        Api.as(CARER)
                .get("/release-area?caseId=" + UUID.randomUUID() + "&withinMetres=500")
                .then()
                .statusCode(404)
                .contentType("text/html")
                .body(containsString("id=\"ask-caseId-wrong\""));
        Api.as(CARER).get("/release-area").then().statusCode(200).body(not(containsString("Not answered")));
    }

    @Test
    void namesOfSitesAndLandsAreTexts() {
        noFartherThan(2000);
        site(HostileEvidence.TEXT, ReleaseWorld.LATITUDE + 0.004);
        Api.as(COORDINATOR)
                .body(HostileEvidence.json(Map.of(
                        "kind",
                        "property",
                        "name",
                        HostileEvidence.TEXT,
                        "source",
                        HostileEvidence.TEXT,
                        "from",
                        "2020-01-01",
                        "geometry",
                        Map.of(
                                "type",
                                "Polygon",
                                "coordinates",
                                List.of(List.of(
                                        List.of(150.04, -30.499),
                                        List.of(150.041, -30.499),
                                        List.of(150.041, -30.498),
                                        List.of(150.04, -30.499)))))))
                .post("/api/land-areas")
                .then()
                .statusCode(201);
        String html = page(CLINIC, release.newCase().getString("id"));
        assertThat(html)
                .contains("Property: &quot;&gt;&lt;img", "\">&quot;&gt;&lt;img")
                .doesNotContain("<script>", "<img");
    }

    @Test
    void aCaseOfOthersIsNotThereByNumberEither() {
        String shelter = Api.make(ADMIN, "/api/organisations", """
                        {"kind":"shelter","name":"Shelter %s","xRay":false,"surgery":false}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        String incident = World.call(ReleaseWorld.TURTLE, 150.071, "").getString("incidentId");
        Json theirs = Api.make(COORDINATOR, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                 "holder":{"organisationId":"%s"}}
                """.formatted(incident, ReleaseWorld.TURTLE, shelter));
        for (String role : List.of(CARER, CLINIC)) {
            Api.as(role)
                    .get("/release-area?withinMetres=500&caseId=" + theirs.getString("number"))
                    .then()
                    .statusCode(400)
                    .body(not(containsString(theirs.getString("id"))));
            Api.as(role)
                    .get("/release-area?withinMetres=500&caseId=" + theirs.getString("id"))
                    .then()
                    .statusCode(404);
        }
        page(COORDINATOR, theirs.getString("number") + "&withinMetres=500");
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

    @Test
    void whatIsOpenIsSaidAndEnteredThere() {
        noFartherThan(3000);
        site("Near the pond", ReleaseWorld.LATITUDE + 0.01);
        String id = release.newCase().getString("id");
        String before = page(COORDINATOR, id);
        assertThat(before).contains("No vet has signed that it is fit.", "What stands against it");
        Map<String, String> asked = Map.of("jurisdiction", release.jurisdiction, "withinMetres", "");

        Map<String, String> check = new HashMap<>(asked);
        check.putAll(Map.of("vetName", "Dr Vet", "movement", "fit", "senses", "notFit"));
        String path = "/release-area/" + id;
        send(CLINIC, path + "/fitness-checks", check)
                .statusCode(400)
                .body(containsString("id=\"fitness-vetRegistration-wrong\""))
                .body(containsString("value=\"Dr Vet\""));
        Map<String, String> wrong = new HashMap<>(check);
        wrong.putAll(Map.of("coat", "shiny", "housedWithPets", "maybe", "vetName", "x".repeat(201), "at", "yesterday"));
        String refused = send(CLINIC, path + "/fitness-checks", wrong)
                .statusCode(400)
                .extract()
                .asString();
        for (String field : List.of("vetName", "vetRegistration", "coat", "housedWithPets", "at")) {
            assertThat(refused).contains("id=\"fitness-" + field + "-wrong\"", "<a href=\"#fitness-" + field + "\">");
        }
        check.put("vetRegistration", "V 1");
        send(CLINIC, path + "/fitness-checks", check)
                .statusCode(303)
                .header("Location", containsString("/release-area?caseId=" + id + "&jurisdiction="));
        assertThat(Api.get(CLINIC, "/api/cases/" + id + "/fitness-checks")
                        .getString("find { it.vetName == 'Dr Vet' }.vetRegistration"))
                .isEqualTo("V 1");
        assertThat(page(CARER, id)).contains("Movement: as it should be; Senses: not as it should be");
        send(CARER, path + "/fitness-checks", check).statusCode(403);

        Map<String, String> answer = new HashMap<>(asked);
        answer.putAll(Map.of("of", "landowner", "given", "true", "reference", "letter 7"));
        send(COORDINATOR, path + "/approvals", answer).statusCode(303);
        assertThat(page(OFFICER, id)).contains("Owner of the land: said yes on", "(letter 7)");
        assertThat(page(CARER, id)).contains("Owner of the land: said yes on").doesNotContain("letter 7");

        Map<String, String> assessed = new HashMap<>(asked);
        assessed.put("siteId", "found");
        send(CARER, path + "/assessments", assessed).statusCode(303);
        String coordinator = page(COORDINATOR, id);
        assertThat(coordinator).contains("href=\"/releases/new?assessmentId=");
        assertThat(page(CARER, id)).contains("assessed ").doesNotContain("/releases/new");

        Map<String, String> unsuitable = new HashMap<>(asked);
        unsuitable.putAll(Map.of("ground", "no such ground", "words", "a building site"));
        send(CARER, path + "/found-place-unsuitable", unsuitable)
                .statusCode(400)
                .body(containsString("id=\"unsuitable-ground-wrong\""))
                .body(containsString("a building site"));

        Map<String, String> decision = new HashMap<>(asked);
        decision.putAll(
                Map.of("grounds", "injury", "words", "a lost leg", "vetName", "Dr Vet", "vetRegistration", "V 1"));
        String to = send(CLINIC, path + "/non-release-decisions", decision)
                .statusCode(303)
                .extract()
                .header("Location");
        assertThat(to).contains("/non-release-decisions/");
        assertThat(page(COORDINATOR, id)).contains("A vet decided that it does not go back: a lost leg");
        assertThat(page(COORDINATOR, id)).doesNotContainPattern("(?i)lawful|legal|\\bsafe");
    }

    @Test
    void itSpeaksGermanToo() {
        noFartherThan(3000);
        site("Near the pond", ReleaseWorld.LATITUDE + 0.01);
        String html = Api.as(CARER)
                .header("Accept-Language", "de")
                .get("/release-area?caseId=" + release.newCase().getString("id") + "&jurisdiction="
                        + release.jurisdiction)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(html)
                .contains("Was noch offen ist", "Was dagegen steht", "<main id=\"main\" tabindex=\"-1\" lang=\"de\">");
    }

    @Test
    void whoMayAskIsLedThereAndNobodyElse() {
        for (String role : List.of(COORDINATOR, CLINIC, CARER, OFFICER)) {
            Api.as(role).get("/").then().body(containsString("href=\"/release-area\""));
            Api.as(role).get("/release-area").then().statusCode(200);
        }
        for (String role : List.of(RESCUER, DISPATCHER, ROADS_AUTHORITY, RECIPIENT, ADMIN)) {
            Api.as(role).get("/").then().body(not(containsString("href=\"/release-area\"")));
            Api.as(role).get("/release-area").then().statusCode(403);
        }
    }
}
