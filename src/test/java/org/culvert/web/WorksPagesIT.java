package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import org.culvert.hotspot.works.WorksWorlds;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Asking about a stretch and about works as people go about it, in Chromium, on a telephone, a tablet and a desk. */
@QuarkusTest
class WorksPagesIT {
    @TempDir
    Path folder;

    @Test
    void aStretchIsAskedAboutAndWorksAreJudged() {
        WorksWorlds.make();
        String fence = WorksWorlds.fence();
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            browser.open("/stretch");
            browser.fill("#username", "test-coordinator");
            browser.fill("#password", Api.PASSWORD);
            browser.press("main button");
            assertThat(browser.path()).isEqualTo("/stretch");
            browser.assertUsable("stretch-empty");
            browser.fill("#road", "Works Road");
            browser.fill("#fromChainageMetres", "2000");
            browser.fill("#toChainageMetres", "4000");
            browser.fill("#yearFrom", "2016");
            browser.fill("#yearTo", "2018");
            browser.press("form[action='/stretch'] button");
            assertThat(browser.text(".note")).contains("collisions were reported on Works Road");
            assertThat(browser.list(".bar-of-month")).hasSize(3);
            browser.assertUsable("stretch");
            browser.assertNothingRan();
            browser.open("/stretch?road=Nowhere&fromChainageMetres=1&toChainageMetres=2");
            assertThat(browser.text("[role=alert]")).contains("Nowhere");
            browser.assertUsable("stretch-wrong");
            browser.open("/burden?taxonGroup=turtles&yearFrom=2016&yearTo=2018");
            assertThat(browser.list(".intervals .estimate")).isNotEmpty();
            browser.assertUsable("burden");
            browser.open("/works");
            browser.assertUsable("works");
            browser.open("/works/" + fence + "?taxonGroup=turtles&yearsBefore=3&yearsAfter=3");
            assertThat(browser.words()).contains("inside", "ends", "beyond", "combined", "fewer than the");
            browser.assertUsable("works-effect");
            browser.assertNothingRan();
        }
    }
}
