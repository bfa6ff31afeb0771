package org.culvert.web.traffic;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import org.culvert.support.Api;
import org.culvert.support.Browser;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file of counts in Chromium: chosen once, tried, and entered. */
@QuarkusTest
class TrafficPagesIT {
    @TempDir
    Path folder;

    @Test
    void aFileIsChosenOnceTriedAndEntered() throws IOException {
        World.shared();
        String station = "B-" + UUID.randomUUID();
        Path file = Files.writeString(folder.resolve("counts.geojson"), """
                {"type":"FeatureCollection","features":[
                 {"type":"Feature","geometry":{"type":"Point","coordinates":[150.02,-30.5001]},
                  "properties":{"SITE_ID":"%1$s","YEAR":1934,"AADT":4210}},
                 {"type":"Feature","geometry":{"type":"Point","coordinates":[150.02,-31.9]},
                  "properties":{"SITE_ID":"%1$s","YEAR":1934,"AADT":10}}]}
                """.formatted(station));
        try (Browser browser = Browser.start(folder.resolve("profile"))) {
            browser.open("/traffic");
            browser.fill("#username", "test-coordinator");
            browser.fill("#password", Api.PASSWORD);
            browser.press("main button");
            browser.assertUsable("traffic");

            browser.find("#file").sendKeys(file.toString());
            browser.find("form.counts-file button").click();
            browser.await(
                    "it was tried", () -> !browser.list("#stationAttribute").isEmpty());
            assertThat(browser.find("#vehiclesPerDayAttribute").getAttribute("value"))
                    .isEqualTo("AADT");
            for (Map.Entry<String, String> chosen : Map.of(
                            "measure",
                            "annualAverage",
                            "kind",
                            "shortTerm",
                            "directions",
                            "both",
                            "refusedRows",
                            "leaveOut")
                    .entrySet()) {
                browser.script(
                        "document.getElementById(arguments[0]).value = arguments[1]; return true;",
                        chosen.getKey(),
                        chosen.getValue());
            }
            browser.fill("#source", "made for a test");
            browser.find("button[value=try]").click();
            browser.await("every row is told", () -> !browser.list("#rows").isEmpty());
            assertThat(browser.text("main")).contains("Rows: 2. Understood: 1. Refused: 1.", "Mill Road, km ");
            browser.assertUsable("traffic-trial");
            browser.find("button[value=enter]").click();
            browser.await("it was entered", () -> browser.path().startsWith("/traffic?entered=1"));
            assertThat(browser.text("main")).contains("Entered: 1. Rows left out: 1.", station);
            browser.assertNothingRan();
        }
    }
}
