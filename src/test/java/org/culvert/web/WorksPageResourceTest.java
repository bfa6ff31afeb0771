package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.UUID;
import org.culvert.hotspot.works.WorksWorlds;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class WorksPageResourceTest {
    @BeforeEach
    void makeWorld() {
        WorksWorlds.make();
    }

    private static Request stretch() {
        return Api.as(COORDINATOR)
                .queryParam("road", "Works Road")
                .queryParam("fromChainageMetres", "2000")
                .queryParam("toChainageMetres", "4000")
                .queryParam("yearFrom", "2016")
                .queryParam("yearTo", "2018")
                .queryParam("taxonGroup", "turtles");
    }

    @Test
    void aStretchIsAnsweredInWordsAndWithAChart() {
        String html = stretch()
                .queryParam("chosenBeforeLooking", "yes")
                .queryParam("worksKind", "fence")
                .queryParam("currency", "AUD")
                .queryParam("priceYear", "2025")
                .queryParam("costPerCollision", "5000")
                .queryParam("costSource", "the insurer")
                .queryParam("building", "100000")
                .queryParam("upkeepPerYear", "1000")
                .queryParam("discountPercent", "4")
                .queryParam("lifeYears", "25")
                .queryParam("avoidedLowPercent", "0")
                .queryParam("avoidedPercent", "53")
                .queryParam("avoidedHighPercent", "94")
                .get("/stretch")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(html)
                .contains("12 collisions were reported on Works Road", "chosen before anyone looked")
                .contains("2016 8, 2017 0, 2018 4", "class=\"bar-of-month\"")
                .contains("Burden, not risk", "Huijser", "Santos", "Would an effect be seen?")
                .contains(
                        "Benefits over costs",
                        "value=\"the insurer\"",
                        "5000.0 AUD, says the insurer",
                        "<option value=\"fence\" selected>");
        assertThat(html).as("no inline scripts or styles").doesNotContain("<script>", "style=\"", "onclick");
        assertThat(html).as("nothing of another host").doesNotContain("http://", "https://");
    }

    @Test
    void aQuestionWithMistakesComesBackWithThemNamed() {
        stretch()
                .queryParam("building", "much")
                .queryParam("reductionPercent", "200")
                .get("/stretch")
                .then()
                .statusCode(400)
                .contentType("text/html")
                .body(containsString("This cannot be read: much."))
                .body(containsString("value=\"Works Road\""))
                .body(containsString("<code>reductionPercent</code>"))
                .body(containsString("<code>lifeYears</code>"));
        Api.as(COORDINATOR)
                .queryParam("road", "Nowhere")
                .queryParam("fromChainageMetres", "1")
                .queryParam("toChainageMetres", "2")
                .get("/stretch")
                .then()
                .statusCode(400)
                .body(containsString("is called Nowhere"));
        Api.as(COORDINATOR).get("/stretch").then().statusCode(200).body(containsString("Ask about a stretch"));
    }

    @Test
    void windowsAreRankedAndDrawnBesideRoadsLikeThem() {
        String html = Api.as(COORDINATOR)
                .queryParam("taxonGroup", "turtles")
                .queryParam("yearFrom", "2016")
                .queryParam("yearTo", "2018")
                .get("/burden")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(html)
                .contains(
                        "Burden, not risk",
                        "It ranks; it names no hotspot",
                        "in the order of length",
                        "of 1000 m along")
                .contains(
                        "class=\"estimate\"",
                        "class=\"interval\"",
                        "class=\"sums\"",
                        "<option value=\"turtles\" selected>");
        String drawn = html.substring(html.indexOf("compared-words"), html.indexOf("</svg>"));
        String table = html.substring(html.indexOf("<tbody>"), html.indexOf("</tbody>"));
        String first = Api.get(COORDINATOR, "/api/burden?taxonGroup=turtles&yearFrom=2016&yearTo=2018")
                .getString("windows[0].road");
        assertThat(drawn).contains("First is " + first, "7 counted");
        assertThat(table.substring(0, table.indexOf("</tr>"))).contains(first, "data-head=\"Counted\">7</td>");
        assertThat(html).as("no inline scripts or styles").doesNotContain("<script>", "style=\"", "onclick");
    }

    @Test
    void whatIsWrongWithTheWindowsIsSaidAndWhatWasTypedStands() {
        Api.as(COORDINATOR)
                .queryParam("windowMetres", "wide")
                .queryParam("yearFrom", "2016")
                .get("/burden")
                .then()
                .statusCode(400)
                .body(containsString("This cannot be read: wide."))
                .body(containsString("value=\"2016\""));
        Api.as(COORDINATOR)
                .queryParam("windowMetres", "10")
                .get("/burden")
                .then()
                .statusCode(400)
                .body(containsString("<code>windowMetres</code>"));
        Api.as(COORDINATOR).get("/burden").then().statusCode(200).body(containsString("Length of a window"));
        Api.as(CARER).get("/burden").then().statusCode(403);
    }

    @Test
    void worksAreListedEnteredAndTheirEffectShown() {
        String id = WorksWorlds.fence();
        Api.as(ROADS_AUTHORITY).get("/works").then().statusCode(200).body(containsString("/works/" + id));
        String html = Api.as(COORDINATOR)
                .queryParam("taxonGroup", "turtles")
                .queryParam("yearsBefore", "3")
                .queryParam("yearsAfter", "3")
                .get("/works/" + id)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(html)
                .contains("from 2000 to 4000 m", "Counts", "alone prove nothing", "fewer than the")
                .contains("<th scope=\"row\">inside</th>", "<th scope=\"row\">combined</th>");
        assertThat(html).as("no inline scripts or styles").doesNotContain("<script>", "style=\"", "onclick");
        String location = fromTheForm()
                .formParam("kind", "signs")
                .formParam("words", "signs at both ends")
                .formParam("road", "Back Road")
                .formParam("fromChainageMetres", "100")
                .formParam("toChainageMetres", "900")
                .formParam("endsMetres", "200")
                .formParam("builtFrom", "2025-01-01")
                .formParam("builtUntil", "")
                .withoutRedirects()
                .post("/works")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        Api.as(ROADS_AUTHORITY).get(location).then().statusCode(200).body(containsString("still under way"));
    }

    @Test
    void worksWithMistakesComeBackWithThemNamed() {
        fromTheForm()
                .formParam("words", "a fence")
                .formParam("road", "Back Road")
                .formParam("builtFrom", "soon")
                .post("/works")
                .then()
                .statusCode(400)
                .body(containsString("This cannot be read: soon."))
                .body(containsString("<code>endsMetres</code>"))
                .body(containsString("value=\"Back Road\""));
        for (String path : List.of("/works", "/stretch", "/works/" + WorksWorlds.fence())) {
            Api.as(CARER).get(path).then().statusCode(403);
        }
    }

    /** A form as the page sends it: with the secret that the page was given. */
    private static Request fromTheForm() {
        String secret = Api.as(ROADS_AUTHORITY).get("/works").cookie("culvert-form");
        return Api.as(ROADS_AUTHORITY)
                .contentType(Request.FORM)
                .cookie("culvert-form", secret)
                .formParam("csrf", secret)
                .formParam("key", UUID.randomUUID().toString());
    }
}
