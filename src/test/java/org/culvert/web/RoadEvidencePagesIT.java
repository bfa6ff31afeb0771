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
