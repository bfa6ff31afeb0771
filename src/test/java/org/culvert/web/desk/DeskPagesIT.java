package org.culvert.web.desk;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** A call as it is typed, in Chromium, by keyboard alone; and the same without scripts. */
@QuarkusTest
class DeskPagesIT {
    /**
     * A condition, a place and a number to ring back, with the keys that lead from field to field: what is said is typed, and
     * besides that no more than these. Fewer would be better; more would be a loss.
     */
    private static final int KEYS_BESIDE_WHAT_IS_SAID = 10;

    @TempDir
    Path folder;

    private static void signIn(Browser browser) {
        browser.open("/desk");
        browser.fill("#username", "test-dispatcher");
        browser.fill("#password", Api.PASSWORD);
        browser.press("main button");
        assertThat(browser.path()).isEqualTo("/desk");
    }

    /** Types as fingers do, and counts. */
    private static final class Keyboard {
        private final Browser browser;
        private int keys;

        Keyboard(Browser browser) {
            this.browser = browser;
        }

        void say(String text) {
            browser.focused().sendKeys(text);
        }

        void press(Keys... pressed) {
            for (Keys key : pressed) {
                browser.focused().sendKeys(key);
                keys++;
            }
        }

        String at() {
            return String.valueOf(
                    browser.script("return document.activeElement.name || document.activeElement.textContent.trim();"));
        }
    }

    @Test
    void aCallIsTypedThroughByKeyboard() {
        World.shared();
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            signIn(browser);
            assertThat(browser.weight()).as("octets of the desk").isLessThan(200_000);
            browser.assertUsable("desk-empty");
            browser.open("/desk");
            var keyboard = new Keyboard(browser);
            assertThat(keyboard.at()).isEqualTo("anyoneHurt");
            // "no" is the first answer, "yes" the first of the next
            keyboard.press(Keys.SPACE, Keys.TAB, Keys.SPACE, Keys.TAB);
            assertThat(keyboard.at()).isEqualTo("place");
            keyboard.say("Mill Road 5.2");
            browser.await(
                    "the place is drawn",
                    () -> !browser.list("#where .its-road").isEmpty());
            assertThat(browser.text("#where figcaption")).contains("Mill Road, km 5.20");
            browser.assertUsable("desk-place");
            browser.script("document.querySelector('#place').focus(); return true;");
            keyboard.press(Keys.TAB);
            assertThat(keyboard.at()).isEqualTo("phone");
            keyboard.say("0400 000 000");
            keyboard.press(Keys.TAB);
            keyboard.say("swamp wallaby");
            keyboard.press(Keys.TAB, Keys.SPACE, Keys.TAB);
            assertThat(keyboard.at()).isEqualTo("condition");
            keyboard.say("sits, shakes");
            browser.script("window.leaving = true; return true;");
            keyboard.press(Keys.ENTER);
            browser.await("the incident is there", () -> browser.path().startsWith("/desk/incidents/"));
            assertThat(keyboard.keys).isLessThanOrEqualTo(KEYS_BESIDE_WHAT_IS_SAID);
            assertThat(browser.text("h1")).contains("swamp wallaby");
            assertThat(browser.text(".next-step")).contains("Nobody is on the way.");
            assertThat(browser.text("#say")).contains("Your number is");
            browser.assertUsable("desk-incident");

            // The number to ring back, what was seen, and that nobody is hurt
            assertThat(browser.find("#phone").getAttribute("value")).isEqualTo("0400 000 000");
            assertThat(browser.find("#condition").getAttribute("value")).isEqualTo("sits, shakes");

            browser.find(".who input[name=lead]").sendKeys(Keys.SPACE);
            browser.press("button[value=ask]");
            assertThat(browser.text(".gate")).contains("The gate stops them", "Speed of the road");
            browser.assertUsable("desk-gate");
            browser.assertNothingRan();
        }
    }

    @Test
    void theSameWithoutScripts() {
        World.shared();
        try (Browser browser = Browser.startWithoutScripts(folder.resolve("plain"))) {
            browser.open("/desk");
            browser.fill("#username", "test-dispatcher");
            browser.fill("#password", Api.PASSWORD);
            browser.find("main button").click();
            browser.await("the desk is there", () -> browser.address().equals("/desk"));
            browser.fill("#place", "Mill Road 5.3");
            browser.fill("#condition", "told in a hurry");
            browser.find("button.main").click();
            browser.await("the incident is there", () -> browser.address().startsWith("/desk/incidents/"));
            assertThat(browser.text("#where figcaption")).contains("Mill Road, km 5.30");
        }
    }

    /**
     * First contentful paint (W3C Paint Timing) of five loads: the middle one. A machine that is busy with something else gets
     * further tries: what is asked is whether the page can, not whether the machine is free.
     */
    @Test
    void theDeskIsPaintedWithinASecond() {
        World.shared();
        try (Browser browser = Browser.start(folder.resolve("paint"))) {
            signIn(browser);
            List<List<Double>> tries = new ArrayList<>();
            boolean quick = false;
            while (!quick && tries.size() < 6) {
                List<Double> paints = new ArrayList<>();
                for (int i = 0; i < 5; i++) {
                    browser.open("/desk");
                    browser.await("the desk is painted", () -> (Boolean) browser.script(
                            "return performance.getEntriesByName('first-contentful-paint').length > 0;"));
                    paints.add(((Number) browser.script(
                                    "return performance.getEntriesByName('first-contentful-paint')[0].startTime;"))
                            .doubleValue());
                }
                paints.sort(null);
                tries.add(paints);
                quick = paints.get(2) < 1000;
            }
            assertThat(quick).as("milliseconds %s", tries).isTrue();
        }
    }

    @Test
    void aTapOnTheMapIsThePlace() {
        World.shared();
        World.call("Phascolarctos cinereus", 150.0512, "");
        try (Browser browser = Browser.start(folder.resolve("map"))) {
            signIn(browser);
            browser.fill("#place", "Mill Road 5.2");
            browser.await(
                    "the place is on the map",
                    () -> !browser.list("#map .place-cross").isEmpty()
                            && !browser.list("#map .post-label").isEmpty());
            assertThat(browser.find("#where svg").isDisplayed()).isFalse();
            assertThat(browser.list("#map .mark")).isNotEmpty();
            browser.assertUsable("desk-map");

            browser.find("#map").click();
            String tapped = String.valueOf(browser.script("return document.querySelector('#place').value;"));
            assertThat(tapped).matches("-30\\.\\d{3,5}, 150\\.\\d{3,5}");
            browser.await(
                    "the tap is understood",
                    () -> browser.text("#where figcaption").contains("Mill Road"));
            browser.find("#take-back").click();
            assertThat(browser.script("return document.querySelector('#place').value;"))
                    .isEqualTo("Mill Road 5.2");

            // The same by keyboard: the map is moved, and its middle taken
            browser.find("#map").sendKeys(Keys.ARROW_UP);
            browser.find("#take-middle").sendKeys(Keys.ENTER);
            assertThat(String.valueOf(browser.script("return document.querySelector('#place').value;")))
                    .matches("-30\\.\\d{3,5}, 150\\.\\d{3,5}");

            // A mark leads to its row
            browser.script("document.querySelector('#map .mark').click(); return true;");
            assertThat(browser.focused().getAttribute("href")).contains("/desk/incidents/");
            assertThat((List<?>) browser.script("return performance.getEntriesByType('resource').map(one => one.name)"
                            + ".filter(name => !name.startsWith(location.origin));"))
                    .isEmpty();
            browser.assertNothingRan();
        }
    }
}
