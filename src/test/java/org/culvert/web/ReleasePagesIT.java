package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import org.culvert.release.ReleaseWorld;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where an animal may go back, releases and clutches, as people go about them, in Chromium. */
@QuarkusTest
class ReleasePagesIT {
    @TempDir
    Path folder;

    private static void signIn(Browser browser, String path) {
        browser.open(path);
        browser.fill("#username", "test-coordinator");
        browser.fill("#password", Api.PASSWORD);
        browser.press("main button");
    }

    @Test
    void anAnimalGoesBackFromTheMapToTheRelease() {
        ReleaseWorld turtles = new ReleaseWorld();
        Api.make(COORDINATOR, "/api/release-rules", """
                {"jurisdiction":"%s","kind":"statute","scientificName":"%s","test":"greatestDistance",
                 "greatestDistanceMetres":3000,"words":"no farther","source":"made for a test","readOn":"2020-01-01",
                 "reviewBy":"2090-01-01","validFrom":"2020-01-01"}
                """.formatted(turtles.jurisdiction, ReleaseWorld.TURTLE));
        ReleaseWorld.site(
                "Near the pond",
                turtles.jurisdiction,
                ReleaseWorld.LATITUDE + 0.01,
                ReleaseWorld.LONGITUDE,
                "snapping-turtles");
        Api.make(COORDINATOR, "/api/land-areas", """
                {"kind":"burnt","name":"Burn of %s","source":"the fire service","from":"2020-01-01",
                 "geometry":{"type":"Polygon","coordinates":[[[150.04,-30.52],[150.05,-30.52],[150.05,-30.51],
                 [150.04,-30.51],[150.04,-30.52]]]}}
                """.formatted(turtles.jurisdiction));
        String id = turtles.newCase().getString("id");
        World.signFit(id, "2021-11-21T02:00:00Z");
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            signIn(browser, "/release-area?caseId=" + id + "&jurisdiction=" + turtles.jurisdiction);
            browser.await(
                    "the map", () -> !browser.list("#map .site-sign.known").isEmpty());
            browser.assertUsable("release-plan");
            int rank = Api.get(COORDINATOR, "/api/cases/" + id + "/release-area?jurisdiction=" + turtles.jurisdiction)
                    .getInt("properties.sites.find { it.name == 'Near the pond' }.rank");
            assertThat(browser.text(".map-key")).contains("burnt");
            browser.find("button.find[data-rank='" + rank + "']").click();
            assertThat(browser.find("#site-" + rank).getDomAttribute("aria-current"))
                    .isEqualTo("true");
            assertThat(browser.text("#told")).contains("Near the pond");
            browser.find("#act-assess summary").click();
            browser.run("document.querySelector('#assess-siteId').value = 'found'");
            browser.press("#act-assess button.main");
            browser.run("document.querySelector(\"a[href^='/releases/new']\").closest('details').open = true");
            browser.press("a[href^='/releases/new']");
            browser.assertUsable("release-new");
            browser.fill("#release-approvedBy", "Dr Vet");
            browser.press("main form button.main");
            assertThat(browser.path()).contains("/releases/");
            browser.assertUsable("release");
            browser.open("/releases");
            browser.assertUsable("releases");
            browser.open("/release-rules?jurisdiction=" + turtles.jurisdiction + "&whole=yes");
            browser.assertUsable("release-rules");
            browser.press(".rule .acts a");
            assertThat(browser.path()).contains("/release-rules/");
            browser.assertUsable("release-rule");
            browser.open("/clutches");
            browser.assertUsable("clutches");
            browser.assertNothingRan();
        }
    }
}
