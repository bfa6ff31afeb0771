package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.culvert.hotspot.EvidenceRuns;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class SeasonsPageResourceTest {
    @BeforeEach
    void makeWorld() {
        EvidenceRuns.make();
    }

    private static String question(String more) {
        return "?periodFrom=" + EvidenceRuns.year() + "-01-01&periodTo=" + EvidenceRuns.year() + "-12-31" + more;
    }

    private static String page(String role, String more) {
        return Api.as(role)
                .get("/seasons" + question(more))
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }

    /** What the first group's table of months says of collisions. */
    private static List<String> months(String html) {
        List<String> months = new ArrayList<>();
        Pattern row = Pattern.compile("<tr><th scope=\"row\">([A-Z][a-z]+)</th><td class=\"number\">([^<]*)</td>");
        for (MatchResult found : row.matcher(html).results().limit(12).toList()) {
            months.add(found.group(2));
        }
        return months;
    }

    @Test
    void theAnswerIsThatOfTheApiInWordsFiguresAndDrawings() {
        Json told = Api.get(COORDINATOR, "/api/collision-seasons" + question("&taxonGroup=macropods"));
        String html = page(COORDINATOR, "&taxonGroup=macropods");
        assertThat(months(html))
                .isEqualTo(told.getList("season.months", Integer.class).stream()
                        .map(String::valueOf)
                        .toList());
        assertThat(html)
                .contains(
                        "Collisions: " + told.getInt("season.collisions") + ".",
                        "Rayleigh of the doubled directions",
                        "How light it was",
                        "civil twilight",
                        "Mean hour: ",
                        "another kind of animal")
                .contains(told.<String>getList("restsOn"))
                .contains("class=\"petal\"", "<option value=\"macropods\" selected>");
        for (String words : List.of("season.inWords", "season.year.because", "season.effort.inWords")) {
            assertThat(html).contains(told.getString(words).replace("<", "&lt;").replace(">", "&gt;"));
        }
        assertThat(html).as("no inline scripts or styles").doesNotContain("<script>", "style=\"", "onclick");
        assertThat(html).as("nothing of another host").doesNotContain("http://", "https://");
        assertThat(html).as("nothing that the template could not find").doesNotContain("NOT_FOUND", "null");
    }

    /** Whatever the services say stays English, and is marked so; months and all around it are of the browser's language. */
    @Test
    void itSpeaksTheLanguageThatABrowserAsksFor() {
        String html = Api.as(COORDINATOR)
                .header("Accept-Language", "de")
                .get("/seasons" + question("&taxonGroup=macropods"))
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(html)
                .contains(
                        "<html lang=\"de\">",
                        "Wann es zu Kollisionen kommt",
                        "<th scope=\"row\">Januar</th>",
                        "Januar: ")
                .contains("<ul lang=\"en\"><li>")
                .doesNotContain("Mean hour: ", "By month.");
        for (String path : List.of("/burden", "/works", "/traffic", "/problems")) {
            Api.as(COORDINATOR)
                    .header("Accept-Language", "de")
                    .get(path)
                    .then()
                    .statusCode(200)
                    .body(containsString("<main id=\"main\" tabindex=\"-1\" lang=\"de\">"));
        }
    }

    @Test
    void twoGroupsAreComparedInOneAnswer() {
        Json told =
                Api.get(COORDINATOR, "/api/collision-seasons" + question("&taxonGroup=macropods&comparedWith=turtles"));
        String html = page(COORDINATOR, "&taxonGroup=macropods&comparedWith=turtles");
        assertThat(html)
                .contains("Do the two have the same season?", told.getString("comparison.inWords"))
                .contains(told.getString("comparison.test.test"), "id=\"first\"", "id=\"second\"");
        assertThat(html.split("<svg ", -1)).as("three drawings a group").hasSize(7);
    }

    @Test
    void aRoadsAuthorityIsToldNoSmallNumbers() {
        String html = page(ROADS_AUTHORITY, "&taxonGroup=macropods");
        assertThat(html).contains("Counts below 5, and those that would give them back, are not told to you.");
        assertThat(months(html)).hasSize(12).contains("not told");
        for (String count : months(html)) {
            assertThat(count.equals("not told") || count.equals("0") || Integer.parseInt(count) >= 5)
                    .as("month of " + count)
                    .isTrue();
        }
    }

    @Test
    void nothingTypedAsksForTheLastFiveYears() {
        Api.as(OFFICER)
                .get("/seasons")
                .then()
                .statusCode(200)
                .body(containsString("Ask when collisions happen"))
                .body(not(containsString("What must be known to read this")))
                .body(not(containsString("href=\"/stretch\"")));
        Api.as(OFFICER)
                .get("/seasons?asked=yes&periodFrom=&periodTo=&taxonGroup=&comparedWith=&owner=")
                .then()
                .statusCode(200)
                .body(containsString("All animals"))
                .body(containsString("What must be known to read this"));
    }

    @Test
    void aQuestionWithMistakesComesBackWithThemNamed() {
        Api.as(COORDINATOR)
                .queryParam("owner", "<b>")
                .get("/seasons?periodFrom=soon&periodTo=late")
                .then()
                .statusCode(400)
                .contentType("text/html")
                .body(containsString("<code>periodFrom</code>"))
                .body(containsString("<code>periodTo</code>"))
                .body(containsString("value=\"&lt;b&gt;\""));
        Api.as(COORDINATOR)
                .get("/seasons?periodFrom=2019-01-01&periodTo=2019-06-30&comparedWith=turtles")
                .then()
                .statusCode(400)
                .body(containsString("A season is told from whole years"))
                .body(containsString("A group is compared with another one."));
    }

    @Test
    void whoMayAskIsLedThereAndNobodyElse() {
        for (String role : List.of(ROADS_AUTHORITY, COORDINATOR, OFFICER, ADMIN)) {
            Api.as(role).get("/").then().body(containsString("href=\"/seasons\""));
            Api.as(role).get("/seasons").then().statusCode(200);
        }
        for (String role : List.of(CARER, DISPATCHER, RECIPIENT)) {
            Api.as(role).get("/").then().body(not(containsString("href=\"/seasons\"")));
            Api.as(role).get("/seasons").then().statusCode(403);
        }
        Api.as(COORDINATOR).get("/hotspots").then().body(containsString("href=\"/seasons\""));
    }
}
