package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import java.util.List;
import org.culvert.care.CareWorld;
import org.culvert.care.CareWorld.Patient;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A member's day as a coordinator goes about it who is rung up, in Chromium, on a telephone, a tablet and a desk. */
@QuarkusTest
class CareDayPagesIT {
    /** Both sides of what can be tapped; 44 CSS pixels: WCAG 2.2, success criterion 2.5.5, Target Size (Enhanced). */
    private static final String SMALL = """
            return Array.from(document.querySelectorAll('main button, main input:not([type=hidden]), main select, main summary'))
                .filter(one => one.checkVisibility())
                .filter(one => one.getBoundingClientRect().height < 44 || one.getBoundingClientRect().width < 44)
                .map(one => one.outerHTML);
            """;

    @TempDir
    Path folder;

    @Test
    void whatACarerRingsInAboutIsEntered() {
        CareWorld care = new CareWorld();
        Patient turtle = care.patient(4);
        turtle.plan(
                care.today.minusDays(4),
                String.join(
                        ",",
                        CareWorld.step("swim", 2, 15, "daily", "minutes", ",\"low\":15,\"high\":20"),
                        CareWorld.step("wound", 0, 15, "daily", "yesNo", ",\"flagAnswer\":false"),
                        CareWorld.step("dry", 4, 15, "daily", "none", "")));
        String animal = "#animal-" + turtle.caseId();
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            browser.open("/care-day?member=" + care.world.carer);
            browser.fill("#username", "test-coordinator");
            browser.fill("#password", Api.PASSWORD);
            browser.press("main button");
            assertThat(browser.path()).startsWith("/care-day");
            browser.assertUsable("care-day");
            assertThat(browser.script(SMALL)).as("too small to tap").isEqualTo(List.of());
            assertThat(browser.text(".note")).contains("If it is worse than yesterday, ring the clinic.");

            // The last look and the last swim, both of yesterday
            assertThat(browser.list(animal + " .overdue")).hasSize(2);
            browser.press("form:has([id='t-" + turtle.caseId() + "-swim-3']) button.tick");
            assertThat(browser.text("[role=alert]")).contains("Not entered.");
            browser.assertUsable("care-day-wrong");

            String swim = "[id='t-" + turtle.caseId() + "-swim-4-value']";
            browser.fill(swim, "18");
            browser.press("form:has(" + swim + ") button.tick");
            assertThat(browser.text(animal + " .done")).contains("swim, as the vet says – done; 18 min");
            browser.press("form:has([id='t-" + turtle.caseId() + "-wound-4']) button[value=no]");
            assertThat(browser.text(animal + " .done")).contains("ring the clinic");
            browser.press("form:has([id='t-" + turtle.caseId() + "-dry-4']) button.tick");
            // What was done since of the same step is overdue no longer
            assertThat(browser.list(animal + " .overdue")).isEmpty();
            browser.assertNothingRan();
        }
    }
}
