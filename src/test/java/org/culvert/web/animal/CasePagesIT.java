package org.culvert.web.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.RESCUER;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import java.util.UUID;
import org.culvert.care.CareWorld;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** What a clinic does on the pages of cases, in Chromium. */
@QuarkusTest
class CasePagesIT {
    /** A page without its pictures. */
    private static final int MOST_BYTES = 200_000;

    @TempDir
    Path folder;

    private static String atTheClinic(World world) {
        String incident = World.call("Chelodina longicollis", 150.0588, "").getString("incidentId");
        String id = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis"},
                         "foundAt":"2026-01-04T02:00:00Z","holder":{"memberId":"%s"}}
                        """.formatted(incident, world.rescuer))
                .getString("id");
        Api.post(RESCUER, "/api/cases/" + id + "/whereabouts", "{\"organisationId\":\"%s\"}".formatted(world.clinic))
                .statusCode(200);
        return id;
    }

    @Test
    void aClinicKeepsAVisitByKeysAlone() {
        CareWorld care = new CareWorld();
        CareWorld.Patient turtle = care.patient(3);
        turtle.plan(care.today.minusDays(3), CareWorld.step("swim", 3, 9, "daily", "minutes", ""));
        String id = atTheClinic(care.world);
        String words = "alert, shell whole " + UUID.randomUUID();
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            browser.open("/sign-in?next=%2Fclinic");
            browser.fill("#username", "test-clinic");
            browser.fill("#password", Api.PASSWORD);
            browser.press("main button");
            browser.assertUsable("clinic");
            tabTo(browser, "a.go[href='/cases/" + id + "?form=visit#form-visit']");
            browser.focused().sendKeys(Keys.ENTER);
            browser.await("the case", () -> browser.address().startsWith("/cases/" + id));
            tabTo(browser, "#visit-weightGrams");
            browser.focused().sendKeys("-1");
            tabTo(browser, "#visit-diagnosis");
            browser.focused().sendKeys(words);
            tabTo(browser, "#form-visit button.main");
            browser.focused().sendKeys(Keys.ENTER);
            browser.await(
                    "what is wrong",
                    () -> !browser.list("#visit-weightGrams-wrong").isEmpty());
            browser.assertUsable("case-refused");
            tabTo(browser, "#visit-weightGrams");
            browser.focused().sendKeys(Keys.HOME, Keys.chord(Keys.SHIFT, Keys.END), "431");
            tabTo(browser, "#form-visit button.main");
            browser.focused().sendKeys(Keys.ENTER);
            browser.await("it is kept", () -> !browser.list("p[role=status]").isEmpty());
            assertThat(browser.text("[aria-labelledby=clinic]")).contains("431 g", words);
            assertThat(Api.get(CLINIC, "/api/cases/" + id + "/visits").getList("id"))
                    .hasSize(1);
            browser.assertUsable("case-at-clinic");
            browser.open("/cases/" + turtle.caseId());
            browser.assertUsable("case");
            assertThat(browser.weight()).isLessThan(MOST_BYTES);
            browser.press("a[href='/kept/cases/" + turtle.caseId() + "']");
            browser.assertUsable("kept");
            browser.press(".acts a[href*='/correction?of=']");
            browser.assertUsable("kept-correction");
            browser.open("/cases/" + id + "/carers");
            browser.assertUsable("case-carers");
            browser.open("/cases");
            browser.assertUsable("cases");
            browser.assertNothingRan();
        }
    }

    @Test
    void withoutScriptsAnAnimalIsSentOn() {
        World world = World.shared();
        String id = atTheClinic(world);
        String visit = Api.make(
                        CLINIC, "/api/visits", "{\"caseId\":\"%s\",\"clinicId\":\"%s\"}".formatted(id, world.clinic))
                .getString("id");
        try (Browser browser = Browser.startWithoutScripts(folder.resolve("profile"))) {
            browser.open("/sign-in?next=%2Fcases%2F" + id + "%3Fform%3Ddischarge");
            browser.find("#username").sendKeys("test-clinic");
            browser.find("#password").sendKeys(Api.PASSWORD);
            browser.find("main button").click();
            browser.await("the case", () -> browser.address().startsWith("/cases/" + id));
            String form = "#form-discharge-" + visit;
            browser.find("#discharge-" + visit + "-vetName").sendKeys("Dr Vet");
            browser.find("#discharge-" + visit + "-vetRegistration").sendKeys("V-1");
            browser.find("#discharge-" + visit + "-plan").sendKeys("dry for two days");
            browser.find(form + " button.main").click();
            browser.await("it is kept", () -> browser.address().endsWith("kept=discharge"));
            assertThat(browser.text(".sent-on")).contains("dry for two days", "Dr Vet");
        }
    }

    private static void tabTo(Browser browser, String css) {
        WebElement wanted = browser.find(css);
        for (int presses = 0; presses < 300; presses++) {
            if (browser.focused().equals(wanted)) {
                return;
            }
            browser.focused().sendKeys(Keys.TAB);
        }
        throw new AssertionError("keys do not lead to " + css);
    }
}
