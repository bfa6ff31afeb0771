package org.culvert.web.records;

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
import org.openqa.selenium.Keys;
import org.openqa.selenium.support.ui.Select;

/** Old records in Chromium, from the file to the register, and the same without scripts. */
@QuarkusTest
class RecordPagesIT {
    @TempDir
    Path folder;

    private Path file(int year) throws IOException {
        String rows = String.join(
                "\r\n",
                "Date,Road,km,Species,Condition",
                year + "-03-04,Mill Road,3.4,swamp wallaby,dead",
                year + "-03-11,Mill Road,3.9,swamp walaby,alive",
                year + "-02-31,Mill Road,4.2,swamp wallaby,flat",
                year + "-04-01,Mill Road,4.4,cat,dead",
                year + "-04-08,Mill Road,4.6,the grey one <img src=x onerror=alert(1)>,dead",
                year + "-04-15,Mill Road,4.8,swamp wallaby,dead");
        return Files.writeString(folder.resolve("council-" + year + ".csv"), rows);
    }

    private static void signIn(Browser browser) {
        browser.open("/records");
        browser.fill("#username", "test-coordinator");
        browser.fill("#password", Api.PASSWORD);
        browser.find("main button").click();
        browser.await("the page is there", () -> browser.address().equals("/records"));
    }

    @Test
    void aFileIsBroughtDecidedTriedAndTaken() throws IOException {
        World.shared();
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            signIn(browser);
            browser.assertUsable("records-list");
            browser.find("#file").sendKeys(file(1941).toString());
            browser.press("button.main");
            assertThat(browser.path()).matches("/records/[0-9a-f-]{36}");
            browser.assertUsable("records-file");
            browser.assertNothingRan();

            // Something is open: it stands beside its question
            browser.press("button[value=try]");
            assertThat(browser.text("#wrong-question-cause")).contains("It is open");
            browser.assertUsable("records-file-open");
            new Select(browser.find("#answer-cause")).selectByValue("collisionWithVehicle");
            browser.find("#name").sendKeys("of the council");
            browser.script("document.querySelector('button[value=try]').focus(); window.leaving = true; return true;");
            browser.focused().sendKeys(Keys.ENTER);
            browser.await("the trial is there", () -> browser.path().startsWith("/records/trials/"));
            browser.await("the trial is done", () -> !browser.list(".verdicts").isEmpty());
            assertThat(browser.text(".counts")).contains("right", "in doubt", "apart", "refused");
            browser.assertUsable("records-trial");
            browser.assertNothingRan();
            browser.script("document.querySelector('.counts li:last-child a').click(); return true;");
            browser.await("the refused rows are there", () -> browser.path().contains("verdict=refused"));
            assertThat(browser.list(".wait")).isNotEmpty();
            assertThat(browser.list(".wait.right")).isEmpty();
            browser.assertUsable("records-trial-refused");

            String trial = browser.path().replaceFirst("\\?.*", "");
            browser.open(trial);
            browser.find("#reason").sendKeys("kept by the council, asked for by letter");
            browser.press(".taking button.main");
            browser.await(
                    "it is taken",
                    () -> browser.list(".next-step").stream()
                            .anyMatch(one -> one.getText().contains("Rows taken in")));
            browser.assertUsable("records-taken");
            browser.assertNothingRan();
            browser.open("/records");
            assertThat(browser.text("table")).contains("taken in, rows: ");
            browser.assertUsable("records-list-taken");
        }
    }

    @Test
    void theSameWithoutScripts() throws IOException {
        World.shared();
        try (Browser browser = Browser.startWithoutScripts(folder.resolve("plain"))) {
            signIn(browser);
            browser.find("#file").sendKeys(file(1942).toString());
            browser.find("button.main").click();
            browser.await(
                    "the file is there", () -> !browser.list("#answer-cause").isEmpty());
            new Select(browser.find("#answer-cause")).selectByValue("collisionWithVehicle");
            browser.find("button[value=try]").click();
            browser.await("the trial is there", () -> browser.address().startsWith("/records/trials/"));
            browser.await("the trial is done", () -> {
                if (!browser.list("#progress a").isEmpty()) {
                    browser.find("#progress a").click();
                }
                return !browser.list(".verdicts").isEmpty();
            });
            assertThat(browser.text(".next-step")).contains("Nothing of it is entered.");
        }
    }
}
