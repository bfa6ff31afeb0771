package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.culvert.hotspot.EvidenceRuns;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A hotspot's card and its paper, by right: to whom small counts and sensitive places are not told, the card tells none. */
@QuarkusTest
class StretchCardPageResourceTest {
    @BeforeEach
    void makeWorld() {
        EvidenceRuns.make();
    }

    @AfterEach
    void settleAgain() {
        disclose(false, 5);
        sensitive("");
    }

    private static void disclose(boolean toEverybody, int smallest) {
        Api.as(ADMIN)
                .header("If-Match", Api.tag(ADMIN, "/api/disclosure-settings"))
                .body("{\"smallestCount\":%d,\"publicDelayDays\":30,\"publicHotspots\":%s,\"source\":\"for a test\"}"
                        .formatted(smallest, toEverybody))
                .put("/api/disclosure-settings")
                .then()
                .statusCode(200);
    }

    /** @param grid of wallabies' places, with its comma, or nothing */
    private static void sensitive(String grid) {
        String taxon = Api.get(COORDINATOR, "/api/taxa?q=Wallabia").getString("[0].id");
        Api.as(COORDINATOR)
                .header("If-Match", Api.tag(COORDINATOR, "/api/taxa/" + taxon))
                .body("{" + grid + "\"reason\":\"for this test\"}")
                .put("/api/taxa/" + taxon + "/sensitivity")
                .then()
                .statusCode(200);
    }

    private static Request by(@Nullable String role) {
        return (role == null ? Request.given() : Api.as(role))
                .accept("text/html, application/pdf")
                .withoutRedirects();
    }

    private static String card(@Nullable String role, String run) {
        return by(role).get("/hotspots/" + run + "/stretches/1")
                .then()
                .statusCode(200)
                .extract()
                .asString();
    }

    @Test
    void aCardTellsWhereHowManyWhenAndWhatItDoesNotShow() {
        String html = card(COORDINATOR, EvidenceRuns.wallabies());
        // The world plants eight wallabies between two of its columns, all in June, at noon in the region or near it
        assertThat(html)
                .contains("Hotspot 1: Row Road 4", "8 collisions were reported", "Lower Shire")
                .contains("Column Road 2", "Column Road 3")
                .contains("a random pick from the reports of collisions with all animals")
                .containsPattern("about 1 in \\d")
                .contains("June: 8", EvidenceRuns.year() + " 8")
                .contains("civil twilight", "What works did here", "What it does not show");
        assertThat(html.replace("&amp;", "&"))
                .contains(
                        "/stretch?road=Row+Road+4&fromChainageMetres=", "&chosenBeforeLooking=no&taxonGroup=macropods");
        assertThat(html).doesNotContain("style=\"", "http://", "https://");
        by(COORDINATOR)
                .get("/hotspots/" + EvidenceRuns.wallabies() + "/stretches/99")
                .then()
                .statusCode(404);
        by(COORDINATOR)
                .get("/hotspots/" + EvidenceRuns.wallabies() + "/stretches/first")
                .then()
                .statusCode(400);
    }

    @Test
    void worksOnTheStretchAreMarkedAndJudgedOrItIsSaidWhyNot() {
        Api.make(COORDINATOR, "/api/works", """
                {"kind":"fence","words":"a fence for this card","road":"Row Road 4","fromChainageMetres":4000,
                 "toChainageMetres":6000,"endsMetres":100,"builtFrom":"%d-04-01","builtUntil":"%d-05-01"}
                """.formatted(EvidenceRuns.year(), EvidenceRuns.year()));
        String html = card(COORDINATOR, EvidenceRuns.wallabies());
        assertThat(html)
                .contains("a fence for this card", "class=\"works-begun\"")
                .doesNotContain("No works are on record here");
    }

    @Test
    void toARoadsAuthoritySmallCountsAreNotTold() {
        String run = EvidenceRuns.wallabies();
        assertThat(card(ROADS_AUTHORITY, run)).contains("June: 8");
        // Eight collisions, where counts from nine are told
        disclose(false, 9);
        assertThat(card(ROADS_AUTHORITY, run))
                .contains("So few collisions that their number is not told to you")
                .doesNotContain("June: 8", EvidenceRuns.year() + " 8", "by empirical Bayes");
        assertThat(card(COORDINATOR, run)).contains("June: 8");
    }

    @Test
    void ofASensitiveGroupARoadsAuthorityIsToldCellsAlone() {
        String run = EvidenceRuns.wallabies();
        sensitive("\"gridDegrees\":0.01,\"reviewBy\":\"2090-01-01\",");
        assertThat(card(ROADS_AUTHORITY, run))
                .contains("A species of this group is sensitive")
                .doesNotContain("Column Road", "June", "/stretch?road");
        assertThat(card(COORDINATOR, run)).contains("Column Road 2", "June: 8");
        sensitive("\"gridDegrees\":0,\"reviewBy\":\"2090-01-01\",");
        by(ROADS_AUTHORITY).get("/hotspots/" + run + "/stretches/1").then().statusCode(404);
    }

    @Test
    void everybodyReadsTheDeclaredRunsExactlyWhereTheNetworkOpensThem() {
        String declared =
                EvidenceRuns.annual("[{\"taxonGroup\":\"macropods\"}]").get(0);
        String exploratory = EvidenceRuns.wallabies();
        List<String> addresses = List.of(
                "/hotspots",
                "/hotspots/" + declared,
                "/hotspots/" + declared + "/stretches/1",
                "/hotspots/" + declared + "/paper",
                "/hotspots/" + declared + "/report.pdf");
        for (String address : addresses) {
            assertThat(by(null).get(address).statusCode()).as(address).isIn(302, 303, 401);
            assertThat(by(CARER).get(address).statusCode()).as(address).isEqualTo(403);
        }
        disclose(true, 5);
        for (String address : addresses) {
            assertThat(by(null).get(address).statusCode()).as(address).isEqualTo(200);
            assertThat(by(CARER).get(address).statusCode()).as(address).isEqualTo(200);
        }
        assertThat(by(null).get("/hotspots").asString())
                .contains("/hotspots/" + declared)
                .doesNotContain("/hotspots/" + exploratory, "<form method=\"post\" action=\"/hotspots\"");
        by(null).get("/hotspots/" + exploratory).then().statusCode(404);
        assertThat(by(null).get("/hotspots/" + declared).asString())
                .contains("Row Road 4", "What the word hotspot claims here")
                .doesNotContain("/api/", "Left out", "By month", "no place was given", "class=\"curve\"", "SHA-256");
        assertThat(card(null, declared))
                .contains("Row Road 4", "Column Road 2", "is told to roads authorities")
                .doesNotContain("June", "class=\"curve\"", "/stretch?road", "a fence for this card");
        // Eight collisions, where counts from nine are told
        disclose(true, 9);
        assertThat(by(null).get("/hotspots/" + declared).asString()).doesNotContain("Row Road 4");
        by(null).get("/hotspots/" + declared + "/stretches/1").then().statusCode(404);
        disclose(true, 5);
        sensitive("\"gridDegrees\":0.01,\"reviewBy\":\"2090-01-01\",");
        by(null).get("/hotspots/" + declared).then().statusCode(404);
        assertThat(by(null).get("/hotspots").asString()).doesNotContain("/hotspots/" + declared);
    }

    @Test
    void thePaperHasAPageForAMeetingOneOfMethodAndOneAHotspot() throws IOException {
        byte[] octets = Api.as(COORDINATOR)
                .get("/hotspots/" + EvidenceRuns.wallabies() + "/report.pdf")
                .asByteArray();
        try (PDDocument document = Loader.loadPDF(octets)) {
            assertThat(page(document, 1)).contains("Row Road 4", "What is counted is what was reported");
            assertThat(page(document, 1)).doesNotContain("Assumed:");
            assertThat(page(document, 2)).contains("Method", "Assumed:", "Left out, and why");
            assertThat(page(document, 3))
                    .contains("Hotspot 1: Row Road 4", "Column Road 2", "By hour of the day", "Year by year");
        }
        byte[] german = Api.as(COORDINATOR)
                .header("Accept-Language", "de")
                .get("/hotspots/" + EvidenceRuns.wallabies() + "/report.pdf")
                .asByteArray();
        try (PDDocument document = Loader.loadPDF(german)) {
            assertThat(page(document, 2)).contains("Verfahren");
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("de");
        }
    }

    private static String page(PDDocument document, int number) throws IOException {
        var stripper = new PDFTextStripper();
        stripper.setStartPage(number);
        stripper.setEndPage(number);
        return stripper.getText(document).replaceAll("\\s+", " ");
    }
}
