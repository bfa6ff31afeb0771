package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import org.culvert.hotspot.EvidenceRuns;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run with its drawings, and when collisions happen, in Chromium, on a telephone, a tablet and a desk. */
@QuarkusTest
class RoadEvidencePagesIT {
    @TempDir
    Path folder;

    @Test
    void aRunIsReadAndSeasonsAreAskedFor() {
        EvidenceRuns.make();
        String run = EvidenceRuns.wallabies();
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            browser.open("/hotspots/" + run);
            browser.fill("#username", "test-coordinator");
            browser.fill("#password", Api.PASSWORD);
            browser.press("main button");
            assertThat(browser.path()).isEqualTo("/hotspots/" + run);
            assertThat(browser.list(".curve")).hasSize(1);
            assertThat(browser.list(".curve .reported, .curve .chance, .curve .up-to-envelope"))
                    .hasSize(3);
            assertThat(browser.text(".curves figcaption")).contains("Row Road 4", "would just be significant");
            // What is not of one colour is not to be told by colour alone
            assertThat(browser.find(".curve .chance").getCssValue("stroke-dasharray"))
                    .isNotEqualTo("none");
            browser.assertUsable("run");
            browser.assertNothingRan();
            // From the table to the map, from the map to the card, and on to its question and its paper
            browser.find("button.find[data-rank='1']").click();
            browser.await("the told line", () -> !browser.list("#told a").isEmpty());
            browser.press("#told a");
            assertThat(browser.path()).isEqualTo("/hotspots/" + run + "/stretches/1");
            assertThat(browser.list("svg.rose, svg.hours, svg.years, svg.road-map, svg.count-interval, svg.curve"))
                    .hasSize(6);
            assertThat(browser.list("main a[href='/hotspots/" + run + "/paper']"))
                    .isNotEmpty();
            browser.assertUsable("stretch-card");
            browser.press("main a[href='/hotspots/" + run + "/paper']");
            assertThat(browser.path()).isEqualTo("/hotspots/" + run + "/paper");
            browser.await("the report is there", () -> browser.text(".making").contains("The report is ready."));
            browser.assertUsable("paper");
            browser.open("/hotspots/" + run + "/stretches/1");
            browser.press("a[href^='/stretch?road=']");
            assertThat(browser.find("#road").getDomProperty("value")).isEqualTo("Row Road 4");
            browser.open("/hotspots/" + run + "/stretches/1");
            browser.press("a[href='/hotspots/" + run + "#hotspot-1']");
            browser.await(
                    "the row is chosen",
                    () -> !browser.list("#hotspot-1[aria-current='true']").isEmpty());
            browser.press("#hotspot-1 th a");
            assertThat(browser.path()).isEqualTo("/hotspots/" + run + "/stretches/1");
            browser.open("/hotspots");
            browser.assertUsable("hotspots");
            browser.open("/");
            browser.press("a[href='/seasons']");
            browser.assertUsable("seasons-empty");
            browser.script(
                    "document.querySelector('#periodFrom').value = arguments[0];"
                            + "document.querySelector('#periodTo').value = arguments[1]; return true;",
                    EvidenceRuns.year() + "-01-01",
                    EvidenceRuns.year() + "-12-31");
            browser.script("document.querySelector('#taxonGroup').value = 'macropods';"
                    + "document.querySelector('#comparedWith').value = 'turtles'; return true;");
            browser.press("form[action='/seasons'] button");
            assertThat(browser.list(".rose")).hasSize(6);
            assertThat(browser.words()).contains("Do the two have the same season?", "How light it was");
            browser.assertUsable("seasons");
            browser.assertNothingRan();
            browser.open("/seasons?periodFrom=2019-01-01&periodTo=2019-06-30");
            assertThat(browser.text("[role=alert]")).contains("whole years");
            browser.assertUsable("seasons-wrong");
        }
    }
}
