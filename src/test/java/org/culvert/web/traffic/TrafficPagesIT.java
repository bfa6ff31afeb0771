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

/** A file of counts in Chromium: sent once, tried, and entered. */
@QuarkusTest
class TrafficPagesIT {
    @TempDir
    Path folder;

    @Test
    void aFileIsSentOnceTriedAndEntered() throws IOException {
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

            browser.press("a[href='/settings/files/traffic-counts']");
            browser.assertUsable("traffic-files");
            browser.find("#file").sendKeys(file.toString());
            browser.find("main form button").click();
            browser.await(
                    "it was tried",
                    () -> !browser.list("#f-stationAttribute option").isEmpty());
            assertThat(browser.find("#f-vehiclesPerDayAttribute").getAttribute("value"))
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
                        "document.getElementById('f-' + arguments[0]).value = arguments[1]; return true;",
                        chosen.getKey(),
                        chosen.getValue());
            }
            browser.fill("#f-source", "made for a test");
            browser.find("button[value=trial]").click();
            browser.await("every row is told", () -> !browser.list("#rows").isEmpty());
            assertThat(browser.text("main")).contains("Rows: 2. Understood: 1. Refused: 1.", "Mill Road, km ");
            browser.assertUsable("traffic-tried");
            browser.find("button[value=entry]").click();
            browser.await("it was entered", () -> browser.text("main").contains("1 counts entered, of 2 features."));
            browser.assertUsable("traffic-entered");
            browser.open("/traffic?road=mill+road&year=1934");
            assertThat(browser.text("main")).contains(station);
            browser.assertNothingRan();
        }
    }
}
