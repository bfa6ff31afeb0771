package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.UUID;
import org.culvert.hotspot.EvidenceRuns;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class HotspotPageResourceTest {
    @BeforeEach
    void makeWorld() {
        EvidenceRuns.make();
    }

    @Test
    void aRunIsATableBesideAMapWithItsClaimInWords() {
        String id = EvidenceRuns.wallabies();
        String html = Api.as(ROADS_AUTHORITY)
                .get("/hotspots/" + id)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        assertThat(html)
                .contains("Row Road 4", "Lower Shire", "a random pick from the reports of collisions with all animals")
                .contains("Left out, and why", "no place was given")
                .contains("id=\"map\"", "/webjars/leaflet/1.9.4/dist/leaflet.js", "Exploratory, one of")
                .contains("By month");
        assertThat(html).as("no inline scripts or styles").doesNotContain("<script>", "style=\"", "onclick");
        assertThat(html).as("nothing of another host").doesNotContain("http://", "https://");
    }

    /** What stays in another language says so. */
    @Test
    void aRunSpeaksTheLanguageOfItsPage() {
        String html = Api.as(ROADS_AUTHORITY)
                .header("Accept-Language", "de")
                .get("/hotspots/" + EvidenceRuns.wallabies())
                .asString();
        assertThat(html)
                .contains("Ist etwas neu?", "Worauf es beruht", "Am meisten wurde bei km", "ganzes Netz")
                .contains("eine zufällige Auswahl aus den Meldungen aller Tiere")
                .doesNotContain("Is anything new?", "Found besides", "whole network", "Most was reported");
    }

    @Test
    void theListHasEveryRunAndAFormThatStartsOne() {
        String id = EvidenceRuns.wallabies();
        Api.as(ROADS_AUTHORITY).get("/hotspots").then().statusCode(200).body(containsString("/hotspots/" + id));
        String location = fromTheForm()
                .formParam("periodFrom", EvidenceRuns.year() + "-01-01")
                .formParam("periodTo", EvidenceRuns.year() + "-12-31")
                .formParam("months", List.of("6", "7"))
                .formParam("taxonGroup", "macropods")
                .formParam("reachMetres", "300")
                .formParam("simulations", "199")
                .formParam("seed", "1")
                .withoutRedirects()
                .post("/hotspots")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        Api.as(ROADS_AUTHORITY).get(location).then().statusCode(200).body(containsString("June, July"));
    }

    @Test
    void aFormWithMistakesComesBackWithThemNamed() {
        fromTheForm()
                .formParam("periodFrom", "soon")
                .formParam("reachMetres", "far")
                .post("/hotspots")
                .then()
                .statusCode(400)
                .contentType("text/html")
                .body(containsString("This cannot be read: soon."))
                .body(containsString("value=\"far\""))
                .body(containsString("periodTo"));
    }

    /** Each address fills the form in; what was asked already is led to. */
    @Test
    void aRunLeadsToOtherAnimalsAndSeasonsOfTheSameDays() {
        String july = EvidenceRuns.wallabies(",\"months\":[7]");
        String html = Api.as(ROADS_AUTHORITY)
                .get("/hotspots/" + EvidenceRuns.wallabies())
                .asString();
        assertThat(html).contains("<a href=\"/hotspots/" + july + "\">Macropods, July</a>", "this run");
        String days =
                "/hotspots?periodFrom=" + EvidenceRuns.year() + "-01-01&periodTo=" + EvidenceRuns.year() + "-12-31";
        assertThat(html.replace("&amp;", "&")).contains(days + "&taxonGroup=");
        assertThat(Api.as(ROADS_AUTHORITY)
                        .get(days + "&taxonGroup=macropods&seasonWindow=")
                        .asString())
                .contains(
                        "name=\"periodFrom\" required value=\"" + EvidenceRuns.year() + "-01-01\"",
                        "<option value=\"macropods\" selected>");
    }

    @Test
    void aFormThatIsSentTwiceStartsOneRun() {
        Request form = fromTheForm()
                .formParam("periodFrom", EvidenceRuns.year() + "-01-01")
                .formParam("periodTo", EvidenceRuns.year() + "-12-31")
                .formParam("taxonGroup", "macropods")
                .formParam("simulations", "19")
                .withoutRedirects();
        String first = form.post("/hotspots").then().statusCode(303).extract().header("Location");
        assertThat(form.post("/hotspots").then().statusCode(303).extract().header("Location"))
                .isEqualTo(first);
    }

    @Test
    void aYearThatNobodyMeansIsSaidAndStartsNothing() {
        fromTheForm()
                .formParam("periodFrom", "2019-01-01")
                .formParam("periodTo", "+999999999-12-31")
                .post("/hotspots")
                .then()
                .statusCode(400)
                .body(containsString("No such year is meant."));
    }

    @Test
    void aFormThatWasNotOnThePageStartsNothing() {
        for (String secret : List.of("", "made up")) {
            Api.as(ROADS_AUTHORITY)
                    .contentType(Request.FORM)
                    .cookie("culvert-form", "of this browser")
                    .formParam("csrf", secret)
                    .formParam("periodFrom", "2019-01-01")
                    .formParam("periodTo", "2019-12-31")
                    .post("/hotspots")
                    .then()
                    .statusCode(403)
                    .body(containsString("/problems/forged"));
        }
    }

    /** A form as the page sends it: with the secret that the page was given. */
    private static Request fromTheForm() {
        String secret = Api.as(ROADS_AUTHORITY).get("/hotspots").cookie("culvert-form");
        return Api.as(ROADS_AUTHORITY)
                .contentType(Request.FORM)
                .cookie("culvert-form", secret)
                .formParam("csrf", secret)
                .formParam("key", UUID.randomUUID().toString());
    }

    @Test
    void mapScriptAndStyleAreServedFromHere() {
        for (String path : new String[] {
            "/hotspot-map.js",
            "/hotspot-progress.js",
            "/hotspots.css",
            "/webjars/leaflet/1.9.4/dist/leaflet.js",
            "/webjars/leaflet/1.9.4/dist/leaflet.css"
        }) {
            Api.as(ROADS_AUTHORITY).get(path).then().statusCode(200);
        }
    }
}
