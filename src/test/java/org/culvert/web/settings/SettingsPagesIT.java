package org.culvert.web.settings;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Start page, settings, roster, people and returns in Chromium, on a telephone, a tablet and a desk. */
@QuarkusTest
class SettingsPagesIT {
    @TempDir
    Path folder;

    private Path lake() throws IOException {
        return Files.writeString(folder.resolve("lake.geojson"), """
                {"type":"FeatureCollection","features":[{"type":"Feature","properties":{"NAME":"a lake of a test"},
                "geometry":{"type":"Polygon","coordinates":[[[151,-31],[151.01,-31],[151.01,-31.01],[151,-31]]]}}]}
                """);
    }

    @Test
    void aCoordinatorKeepsRulesAndPeopleInOrder() throws IOException {
        World world = World.shared();
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            browser.open("/sign-in");
            browser.assertUsable("sign-in");
            browser.fill("#username", "test-coordinator");
            browser.fill("#password", Api.PASSWORD);
            browser.press("main button");
            assertThat(browser.path()).isEqualTo("/overview");
            browser.open("/");
            browser.assertUsable("start");
            browser.open("/settings");
            browser.assertUsable("settings");
            browser.open("/settings/vaccination-rules/entry");
            browser.assertUsable("settings-form");
            browser.fill("#f-against", "lyssavirus, made for a test");
            browser.fill("#f-firstBoosterMonths", "12");
            browser.fill("#f-intervalMonths", "24");
            browser.fill("#f-leastIuPerMl", "0.5");
            browser.fill("#f-words", "made for a test");
            browser.fill("#f-source", "made for a test");
            browser.run("""
                    document.querySelector('#f-readOn').value = '2026-01-02';
                    document.querySelector('#f-reviewBy').value = '2026-01-03';
                    document.querySelector('#f-validFrom').value = '2026-01-01';
                    """);
            browser.press("main form button");
            assertThat(browser.path()).isEqualTo("/settings/vaccination-rules");
            assertThat(browser.text("#s-due ~ .things")).contains("lyssavirus, made for a test");
            browser.assertUsable("settings-kind");
            browser.open("/settings/land-areas/entry");
            browser.run("document.querySelector('main form').noValidate = true;");
            browser.press("main form button");
            assertThat(browser.text("[role=alert]")).contains("Nothing was changed.");
            browser.assertUsable("settings-wrong");
            browser.open("/settings/files/road-networks");
            browser.assertUsable("settings-file");
            browser.open("/settings/files/land-areas");
            browser.find("#file").sendKeys(lake().toString());
            browser.run(
                    "document.querySelector('#f-kind').value = 'water'; document.querySelector('#f-from').value = '2026-01-01';");
            browser.fill("#f-nameAttribute", "NAMES");
            browser.fill("#f-source", "made for a test");
            browser.press("main form button");
            browser.await(
                    "the file was read",
                    () -> !browser.list("#f-nameAttribute-wrong, .wrong").isEmpty());
            assertThat(browser.text("main")).contains("Nothing was taken of this file.", "The file is still here");
            browser.assertUsable("settings-brought-wrong");
            browser.fill("#f-nameAttribute", "NAME");
            browser.press("main form button");
            browser.await("the file was taken", () -> browser.text("main").contains("1 areas entered"));
            browser.assertUsable("settings-brought");
            browser.open("/roster");
            browser.assertUsable("roster");
            browser.open("/roster/members/" + world.carer);
            browser.assertUsable("roster-member");
            browser.open("/roster/people");
            browser.assertUsable("people");
            browser.open("/returns");
            browser.assertUsable("returns");
            browser.open("/account");
            browser.assertUsable("account");
            browser.assertNothingRan();
        }
    }
}
