package org.culvert.web.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;

import io.quarkus.test.junit.QuarkusTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.zip.GZIPOutputStream;
import org.culvert.care.CareWorld;
import org.culvert.care.CareWorld.Patient;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.culvert.support.Clocks;
import org.culvert.support.CutLine;
import org.culvert.support.Json;
import org.culvert.support.Pictures;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** What rescuers and carers do on a telephone, in Chromium: with a signal, without one, and without scripts. */
@QuarkusTest
class HandPagesIT {
    /** 44 CSS pixels: WCAG 2.2, success criterion 2.5.5, Target Size (Enhanced). */
    private static final String SMALL = """
            return Array.from(document.querySelectorAll(
                'main button, main input:not([type=hidden]), main select, main textarea, main summary, main a'))
                .filter(one => one.checkVisibility())
                .filter(one => one.getBoundingClientRect().height < 44 || one.getBoundingClientRect().width < 44)
                .map(one => one.outerHTML);
            """;

    /** The worker has taken the page over and keeps it. */
    private static final String KEPT = """
            return navigator.serviceWorker.controller !== null && caches.keys().then(names => Promise.all(
                names.filter(name => name.startsWith('hand-pages-')).map(name => caches.open(name).then(one => one.match('%s')))))
                .then(found => found.some(one => one));
            """;

    private static final int MOST_BYTES = 200_000;

    @TempDir
    Path folder;

    private CareWorld care;
    private Patient turtle;
    private String swim;
    private String dry;

    @BeforeEach
    void makeWorld() {
        care = new CareWorld();
        turtle = care.patient(4);
        turtle.plan(
                care.today.minusDays(4),
                String.join(
                        ",",
                        CareWorld.step("swim", 4, 15, "daily", "minutes", ",\"low\":15,\"high\":20"),
                        CareWorld.step("dry", 4, 15, "daily", "none", "")));
        swim = "form[data-of='t-" + turtle.caseId() + "-swim-4']";
        dry = "form[data-of='t-" + turtle.caseId() + "-dry-4']";
    }

    @Test
    void whatIsEnteredWithoutASignalOutlivesThePageAndIsSentOnce() {
        try (CutLine line = CutLine.open();
                Browser browser = Browser.start(folder.resolve("profile"), line.server())) {
            signIn(browser, "test-carer");
            browser.assertUsable("hand");
            assertThat(browser.script(SMALL)).as("too small to tap").isEqualTo(List.of());
            awaitKept(browser, "/hand");

            line.cut();
            // By keys alone: to the field, a number outside of the vet's limits, and Enter
            tabTo(browser, swim + " input[name=value]");
            browser.focused().sendKeys("25", Keys.ENTER);
            await(browser, swim + " + .in-place", "kept");
            assertThat(browser.text(swim + " + .in-place")).contains("ring the clinic");
            assertThat(browser.text("#kept-line")).isEqualTo("One entry is kept on this telephone and not sent yet.");
            await(browser, "#line", "No signal.");
            browser.assertUsable("hand-kept");
            Instant entered = Clocks.now();

            browser.closePage();
            browser.open("/hand");
            await(browser, "#kept-list li.kept", "swim, as the vet says");
            assertThat(browser.find(swim).isDisplayed()).isFalse();
            await(browser, "#line", "No signal.");
            assertThat(entries()).as("nothing was sent").isEmpty();

            line.mend();
            await(browser, "#kept-list li.sent", "sent");
            assertThat(browser.text("#kept-line")).isEqualTo("Everything was sent.");
            List<Map<String, Object>> there = entries();
            assertThat(there).hasSize(1);
            assertThat(((Number) there.get(0).get("value")).doubleValue()).isEqualTo(25);
            assertThat(there.get(0).get("kind")).isEqualTo("task");
            assertThat(Instant.parse(String.valueOf(there.get(0).get("at"))))
                    .as("when it was done, and not when it was sent")
                    .isBefore(entered);
            browser.press("#line button");
            assertThat(browser.list(swim)).isEmpty();
            assertThat(browser.text(".entered")).contains("25 min");
            browser.assertNothingRan();
        }
    }

    @Test
    void aBrowserThatWasClosedSendsAfterItsPersonHasSignedInAgain() {
        try (CutLine line = CutLine.open()) {
            try (Browser browser = Browser.start(folder.resolve("profile"), line.server())) {
                signIn(browser, "test-carer");
                awaitKept(browser, "/hand");
                line.cut();
                reveal(browser, dry);
                browser.find(dry + " button.act").click();
                await(browser, dry + " + .in-place", "kept");
            }
            // The cookie of the session is gone with the browser
            try (Browser browser = Browser.start(folder.resolve("profile"), line.server())) {
                browser.open("/hand");
                await(browser, "#kept-list li.kept", "dry, as the vet says");
                line.mend();
                await(browser, "#line", "Your session has ended.");
                assertThat(entries()).isEmpty();
                browser.press("#line a");
                typeSignIn(browser, "test-carer");
                assertThat(browser.path()).isEqualTo("/hand");
                await(browser, "#kept-list li.sent", "dry, as the vet says");
                assertThat(entries()).hasSize(1);
            }
        }
    }

    @Test
    void anAnswerThatIsLostDoublesNothing() {
        String words = "two worms " + UUID.randomUUID();
        try (CutLine line = CutLine.open();
                Browser browser = Browser.start(folder.resolve("profile"), line.server())) {
            signIn(browser, "test-carer");
            browser.open("/hand/animals/" + turtle.caseId());
            browser.assertUsable("hand-animal");
            assertThat(browser.script(SMALL)).as("too small to tap").isEqualTo(List.of());
            line.loseAnswersTo("POST /api/cases/");
            browser.find("#kind").sendKeys("Food");
            browser.fill("#words", words);
            browser.find("form[data-send=care] button.act").click();
            browser.await("an answer that is lost", () -> line.lost() > 0);
            await(browser, "#kept-list li.kept", "Write it down");
            assertThat(entries()).as("the server took it").hasSize(1);

            browser.await("a second try", () -> line.lost() > 1);
            line.mend();
            await(browser, "#kept-list li.sent", "sent");
            List<Map<String, Object>> there = entries();
            assertThat(there).as("and took it once").hasSize(1);
            assertThat(there.get(0).get("words")).isEqualTo(words);
        }
    }

    /** The server knows a key for 24 hours; to it a key that it forgot is a new one. */
    @Test
    void whatWasTriedADayAgoIsLookedForBeforeItIsSentAgain() {
        try (CutLine line = CutLine.open();
                Browser browser = Browser.start(folder.resolve("profile"), line.server())) {
            signIn(browser, "test-carer");
            browser.open("/hand/animals/" + turtle.caseId());
            line.loseAnswersTo("POST /api/cases/");
            browser.fill("#words", "drinks");
            browser.find("form[data-send=care] button.act").click();
            browser.await("an answer that is lost", () -> line.lost() > 0);
            await(browser, "#kept-list li.kept", "Write it down");
            line.cut();
            await(browser, "#line", "No signal.");
            assertThat(browser.script("""
                            return handStore.list().then(all => {
                              const aged = all[0];
                              const key = aged.key;
                              aged.key = crypto.randomUUID();
                              aged.triedAt -= 25 * 3600 * 1000;
                              return handStore.replace(key, aged);
                            }).then(() => handStore.list()).then(all => all.map(one => one.state).join());
                            """)).isEqualTo("kept");
            line.mend();
            await(browser, "#kept-list li.sent", "sent");
            assertThat(entries()).hasSize(1);
        }
    }

    @Test
    void whatIsRefusedIsShownWithTheReasonAndMendedOrDropped() {
        try (CutLine line = CutLine.open();
                Browser browser = Browser.start(folder.resolve("profile"), line.server())) {
            signIn(browser, "test-carer");
            awaitKept(browser, "/hand/animals/" + turtle.caseId());
            line.cut();
            reveal(browser, dry);
            browser.find(dry + " button.act").click();
            await(browser, dry + " + .in-place", "kept");
            // Meanwhile on another telephone
            Api.make(CARER, turtle.path() + "/care-entries", "{\"stepKey\":\"dry\",\"day\":4}");
            browser.open("/hand/animals/" + turtle.caseId());
            browser.fill("#words", "it ran before anybody found it");
            browser.script("document.getElementById('at').value = '2020-01-01T10:00'; return true;");
            browser.find("form[data-send=care] button.act").click();
            browser.await(
                    "two are kept", () -> browser.list("#kept-list li.kept").size() == 2);

            line.mend();
            browser.await(
                    "two are refused",
                    () -> browser.list("#kept-list li.refused").size() == 2);
            assertThat(browser.text("#kept-line")).isEqualTo("2 entries were refused. Mend or drop them.");
            assertThat(browser.text("#kept-list li.refused:first-child .why")).contains("has its entry already");
            assertThat(browser.text("#kept-list li.refused:last-child .why")).contains("before the animal was found");
            browser.assertUsable("hand-refused");

            browser.find("#kept-list li:last-child .mend").click();
            assertThat(browser.find("#words").getDomProperty("value")).isEqualTo("it ran before anybody found it");
            assertThat(browser.find("#at").getDomAttribute("aria-describedby")).isEqualTo("at-wrong");
            assertThat(browser.text("#at-wrong")).contains("before the animal was found");
            browser.assertUsable("hand-mend");
            browser.script("document.getElementById('at').value = ''; return true;");
            browser.find("form[data-send=care] button.act").click();
            await(browser, "#kept-list li.sent", "sent");

            browser.find("#kept-list li.refused .drop").click();
            assertThat(browser.text("#kept-list li.refused .sure")).contains("Drop it for good?");
            browser.find("#kept-list li.refused .drop-no").click();
            browser.find("#kept-list li.refused .drop").click();
            browser.find("#kept-list li.refused .drop-yes").click();
            browser.await(
                    "it is dropped", () -> browser.list("#kept-list li.refused").isEmpty());
            assertThat(entries()).hasSize(2);
        }
    }

    @Test
    void theNextPersonOnThatTelephoneSeesAndSendsNothingOfTheFormer() {
        String words = "seen by one alone " + UUID.randomUUID();
        String animal = "/hand/animals/" + turtle.caseId();
        try (CutLine line = CutLine.open();
                Browser browser = Browser.start(folder.resolve("profile"), line.server())) {
            signIn(browser, "test-carer");
            awaitKept(browser, animal);
            line.cut();
            browser.open(animal);
            browser.fill("#words", words);
            browser.find("form[data-send=care] button.act").click();
            await(browser, "#kept-list li.kept", "kept");
            browser.press("form[action='/sign-out'] button");
            assertThat(browser.text("h1")).isEqualTo("Signed out on this telephone");
            browser.assertUsable("hand-signed-out");
            browser.open(animal);
            assertThat(browser.text("h1")).isEqualTo("Signed out on this telephone");

            line.mend();
            signIn(browser, "test-rescuer");
            await(browser, "#kept-others", "One entry of somebody else waits on this telephone.");
            browser.await(
                    "the line was tried", () -> browser.list("#line[hidden]").size() == 1);
            assertThat(browser.words()).doesNotContain(words).doesNotContain("Macquarie turtle");
            assertThat(entries()).as("not sent by somebody else").isEmpty();
            browser.assertUsable("hand-others");
            awaitKept(browser, "/hand");

            line.cut();
            browser.open(animal);
            assertThat(browser.text("h1"))
                    .as("of the former's pages none is left")
                    .isEqualTo("No signal");
            browser.assertUsable("hand-offline");
            browser.open("/hand");
            assertThat(browser.text(".who")).contains("test-rescuer");
            assertThat(browser.words()).doesNotContain(words);

            line.mend();
            browser.press("form[action='/sign-out'] button");
            signIn(browser, "test-carer");
            await(browser, "#kept-list li.sent", "sent");
            assertThat(entries()).hasSize(1);
            assertThat(entries().get(0).get("words")).isEqualTo(words);
        }
    }

    @Test
    void anOutingIsEnteredStepByStepWithoutASignal() {
        String outing = outing();
        String page = "/hand/attendances/" + outing;
        try (CutLine line = CutLine.open();
                Browser browser = Browser.start(folder.resolve("profile"), line.server())) {
            signIn(browser, "test-rescuer");
            assertThat(browser.text("main")).contains("You are asked to go", "swamp wallaby");
            awaitKept(browser, page);
            browser.open(page);
            assertThat(browser.text(".safety")).contains("nobody is hurt", "set aside");
            assertThat(browser.text("[aria-labelledby=where]")).contains("Mill Road, 7.", "km along it");
            assertThat(browser.find("a[href^='geo:']").getDomAttribute("href")).startsWith("geo:-30.5");
            browser.assertUsable("hand-outing");
            assertThat(browser.script(SMALL)).as("too small to tap").isEqualTo(List.of());

            line.cut();
            step(browser, "accept", "I go");
            step(browser, "depart", "I have set out");
            browser.closePage();
            browser.open(page);
            step(browser, "arrive", "I am there");
            browser.await(
                    "what was found can be said", () -> browser.find("#outcome").isDisplayed());
            browser.find("form[data-send=outcome] button.act").click();
            assertThat(browser.text("#outcome-wrong")).isEqualTo("Say which.");
            browser.find("#outcome").sendKeys("collected");
            browser.find("#pouchChecked").sendKeys("Yes");
            browser.fill("#youngFound", "1");
            browser.fill("#words", "one young, warm");
            browser.find("form[data-send=outcome] button.act").click();
            browser.await(
                    "four are kept", () -> browser.list("#kept-list li.kept").size() == 4);
            browser.find("#picture").sendKeys(picture().toString());
            browser.find("form[data-send=photograph] button").click();
            browser.await(
                    "five are kept", () -> browser.list("#kept-list li.kept").size() == 5);
            browser.assertUsable("hand-outing-kept");

            line.mend();
            browser.await(
                    "five are sent", () -> browser.list("#kept-list li.sent").size() == 5);
            Json told = Api.get(COORDINATOR, "/api/attendances/" + outing);
            assertThat(told.getString("outcome")).isEqualTo("collected");
            assertThat(told.getString("pouchChecked")).isEqualTo("yes");
            assertThat(told.getInt("youngFound")).isEqualTo(1);
            assertThat(told.getString("words")).isEqualTo("one young, warm");
            assertThat(List.of(
                            Instant.parse(told.getString("acceptedAt")),
                            Instant.parse(told.getString("departedAt")),
                            Instant.parse(told.getString("arrivedAt")),
                            Instant.parse(told.getString("endedAt"))))
                    .isSorted();
            assertThat(Api.get(COORDINATOR, "/api/incidents/" + told.getString("incidentId") + "/photographs")
                            .getList("items"))
                    .hasSize(1);
            browser.assertNothingRan();
        }
    }

    @Test
    void aStepThatSomebodyElseEnteredIsNotOverwritten() {
        String outing = outing();
        String page = "/hand/attendances/" + outing;
        try (CutLine line = CutLine.open();
                Browser browser = Browser.start(folder.resolve("profile"), line.server())) {
            signIn(browser, "test-rescuer");
            awaitKept(browser, page);
            browser.open(page);
            line.cut();
            step(browser, "accept", "I go");
            Api.change(COORDINATOR, "/api/attendances/" + outing, "/acceptance", "{}")
                    .statusCode(200);
            String before = Api.get(COORDINATOR, "/api/attendances/" + outing).getString("acceptedAt");
            line.mend();
            await(browser, "#kept-list li.refused .why", "Somebody entered that before");
            assertThat(Api.get(COORDINATOR, "/api/attendances/" + outing).getString("acceptedAt"))
                    .isEqualTo(before);
        }
    }

    @Test
    void theFormsWorkWithoutScripts() {
        String outing = outing();
        try (Browser browser = Browser.startWithoutScripts(folder.resolve("profile"))) {
            browser.open("/hand");
            typePlainly(browser, "test-carer");
            open(browser, swim);
            browser.find(swim + " input[name=value]").sendKeys("17,5");
            browser.find(swim + " button.act").click();
            browser.await("it is entered", () -> browser.list(swim).isEmpty());
            assertThat(browser.text(".entered")).contains("17.5 min");
            assertThat(browser.list("#kept-list li")).as("no script ran").isEmpty();

            browser.open("/hand/animals/" + turtle.caseId());
            browser.find("form[data-send=care] button.act").click();
            browser.await(
                    "what is wrong stands beside it",
                    () -> browser.list("#words-wrong").size() == 1);
            browser.find("#words").sendKeys("eats");
            browser.find("form[data-send=care] button.act").click();
            browser.await(
                    "it is entered",
                    () -> browser.list(".entered").size() == 1
                            && browser.text(".entered").contains("eats"));
            browser.find("#picture").sendKeys(picture().toString());
            browser.find("form[data-send=photograph] button").click();
            browser.await(
                    "it is there",
                    () -> browser.text("form[data-send=photograph]").contains("so far: 1"));
            browser.find("#organisationId").sendKeys("clinic");
            browser.find("form[data-send=offer] button").click();
            browser.await(
                    "it is offered",
                    () -> browser.text("[aria-labelledby=give-head]").contains("waits for their yes"));
            assertThat(entries()).hasSize(2);

            browser.find("form[action='/sign-out'] button").click();
            browser.await("signed out", () -> browser.address().equals("/"));
            browser.open("/hand/attendances/" + outing);
            typePlainly(browser, "test-rescuer");
            for (String step : List.of("I go", "I have set out", "I am there")) {
                browser.await(step, () -> browser.text("#steps").contains(step));
                browser.list("#steps button").stream()
                        .filter(WebElement::isDisplayed)
                        .findFirst()
                        .orElseThrow()
                        .click();
            }
            browser.await("there", () -> browser.list("#scene[open]").size() == 1);
            browser.find("#outcome").sendKeys("not found");
            browser.find("form[data-send=outcome] button").click();
            browser.await("it has ended", () -> browser.text("main").contains("It has ended: not found."));
            assertThat(Api.get(COORDINATOR, "/api/attendances/" + outing).getString("outcome"))
                    .isEqualTo("notFound");
        }
    }

    @Test
    void aPageIsLightEnoughForOneBarOfSignal() throws IOException {
        int bytes = zipped(
                Api.as(CARER).get("/hand").then().statusCode(200).extract().asString());
        for (String file : List.of(
                "culvert.css",
                "hand.css",
                "hand-store.js",
                "hand-send.js",
                "hand-entry.js",
                "hand.js",
                "hand-worker.js")) {
            bytes += zipped(Api.as(CARER)
                    .get("/" + file)
                    .then()
                    .statusCode(200)
                    .extract()
                    .asString());
        }
        assertThat(bytes).isLessThan(MOST_BYTES);
    }

    private static int zipped(String text) throws IOException {
        var octets = new ByteArrayOutputStream();
        try (var zip = new GZIPOutputStream(octets)) {
            zip.write(text.getBytes(StandardCharsets.UTF_8));
        }
        return octets.size();
    }

    /** An outing that the test's rescuer is asked to lead; its identifier. */
    private String outing() {
        String incident = World.call("Wallabia bicolor", 150.0567, "").getString("incidentId");
        return Api.make(DISPATCHER, "/api/incidents/" + incident + "/attendances", """
                        {"leadMemberId":"%s","helperMemberIds":["%s"],"overrideReason":"the police stand there"}
                        """.formatted(
                                care.world.rescuer, care.world.helper))
                .getString("id");
    }

    private List<Map<String, Object>> entries() {
        return Api.get(CARER, turtle.path() + "/care-entries").getList("items");
    }

    private Path picture() {
        try {
            return Files.write(folder.resolve("picture.jpeg"), Pictures.file("jpeg", Pictures.bars(64, 48)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void signIn(Browser browser, String username) {
        browser.open("/sign-in?next=%2Fhand");
        typeSignIn(browser, username);
        assertThat(browser.path()).isEqualTo("/hand");
    }

    private static void typeSignIn(Browser browser, String username) {
        browser.fill("#username", username);
        browser.fill("#password", Api.PASSWORD);
        browser.press("main button");
    }

    private static void typePlainly(Browser browser, String username) {
        browser.find("#username").sendKeys(username);
        browser.find("#password").sendKeys(Api.PASSWORD);
        String before = browser.address();
        browser.find("main button").click();
        browser.await("signed in", () -> !browser.address().equals(before));
    }

    /** Without scripts: opens the card that a form is in. */
    private static void open(Browser browser, String form) {
        if (!browser.find(form).isDisplayed()) {
            browser.find("details.card:has(" + form + ") > summary").click();
        }
    }

    private static void reveal(Browser browser, String form) {
        browser.script(
                "const card = document.querySelector(arguments[0]).closest('details.card');"
                        + " if (card) { card.open = true; } return true;",
                form);
    }

    private static void step(Browser browser, String step, String words) {
        String form = "form[data-of$='-" + step + "']";
        browser.await(words, () -> browser.find(form).isDisplayed());
        assertThat(browser.text(form + " button")).isEqualTo(words);
        browser.find(form + " button").click();
        await(browser, form + " + .in-place", "kept");
    }

    private static void tabTo(Browser browser, String css) {
        reveal(browser, css);
        WebElement wanted = browser.find(css);
        browser.script("document.activeElement.blur(); return true;");
        for (int presses = 0; presses < 200; presses++) {
            browser.focused().sendKeys(Keys.TAB);
            if (browser.focused().equals(wanted)) {
                return;
            }
        }
        throw new AssertionError("keys do not lead to " + css);
    }

    private static void await(Browser browser, String css, String words) {
        browser.await(
                css + " says " + words,
                () -> String.valueOf(browser.script(
                                "return Array.from(document.querySelectorAll(arguments[0]), one => one.textContent).join(' ');",
                                css))
                        .contains(words));
    }

    private static void awaitKept(Browser browser, String path) {
        browser.await(path + " is kept", () -> Boolean.TRUE.equals(browser.script(KEPT.formatted(path))));
    }
}
