package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.culvert.hotspot.EvidenceRuns;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Road evidence through real clients: Debian's Chromium, and GDAL's {@code ogrinfo}, which QGIS reads files with. */
@QuarkusTest
class RoadEvidenceClientsIT {
    private static final int[] WIDTHS = {320, 768, 1440};

    @TempDir
    Path folder;

    @BeforeEach
    void makeWorld() {
        EvidenceRuns.make();
    }

    @Test
    void gdalReadsTheHotspotsAsLinesWithTheirFigures() throws Exception {
        String id = EvidenceRuns.wallabies();
        Path file = folder.resolve("hotspots.geojson");
        Files.writeString(
                file,
                Api.as(ROADS_AUTHORITY)
                        .get("/api/hotspot-runs/" + id + "/hotspots.geojson")
                        .asString());
        Process ogrinfo = new ProcessBuilder("ogrinfo", "-ro", "-so", "-al", file.toString())
                .redirectErrorStream(true)
                .start();
        String told = new String(ogrinfo.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(ogrinfo.waitFor(60, TimeUnit.SECONDS)).isTrue();
        Matcher count = Pattern.compile("Feature Count: (\\d+)").matcher(told);
        assertThat(count.find()).as(told).isTrue();
        assertThat(Integer.parseInt(count.group(1)))
                .isEqualTo(Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id + "/result")
                        .getList("hotspots")
                        .size())
                .isPositive();
        assertThat(told)
                .contains("Line String", "WGS 84")
                .contains("incidents: Integer", "adjustedP: Real", "road: String", "fromChainageMetres: Real");
    }

    /** Read back by GDAL, the GeoPackage says what the GeoJSON says, to the last figure. */
    @Test
    void gdalReadsTheSameFromTheGeoPackageAsFromGeoJson() throws Exception {
        String files = "/api/hotspot-runs/" + EvidenceRuns.wallabies() + "/hotspots.";
        Path geoPackage = folder.resolve("hotspots.gpkg");
        byte[] octets = Api.as(ROADS_AUTHORITY).get(files + "gpkg").asByteArray();
        Files.write(geoPackage, octets);
        Path back = folder.resolve("back.geojson");
        Process ogr2ogr = new ProcessBuilder(
                        "ogr2ogr",
                        "-f",
                        "GeoJSON",
                        "-lco",
                        "COORDINATE_PRECISION=7",
                        back.toString(),
                        geoPackage.toString())
                .redirectErrorStream(true)
                .start();
        String told = new String(ogr2ogr.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(ogr2ogr.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(ogr2ogr.exitValue()).as(told).isZero();
        var read = new ObjectMapper().readTree(back.toFile()).get("features");
        var sent = new ObjectMapper()
                .readTree(Api.as(ROADS_AUTHORITY).get(files + "geojson").asString())
                .get("features");
        assertThat(read).hasSameSizeAs(sent);
        assertThat(sent.size()).isPositive();
        for (int i = 0; i < sent.size(); i++) {
            var given = sent.get(i).get("properties");
            var got = read.get(i).get("properties");
            assertThat(got.fieldNames()).toIterable().containsExactlyElementsOf(given::fieldNames);
            given.fieldNames().forEachRemaining(name -> {
                if (given.get(name).isNumber()) {
                    assertThat(got.get(name).asDouble())
                            .as(name)
                            .isEqualTo(given.get(name).asDouble());
                } else {
                    assertThat(got.get(name)).as(name).isEqualTo(given.get(name));
                }
            });
            var line = sent.get(i).get("geometry").get("coordinates");
            var lines = read.get(i).get("geometry").get("coordinates");
            assertThat(sent.get(i).get("geometry").get("type").asText().equals("LineString") ? lines.get(0) : lines)
                    .isEqualTo(line);
        }
        assertThat(Api.as(ROADS_AUTHORITY).get(files + "gpkg").asByteArray()).isEqualTo(octets);
    }

    /** GDAL opens the paper as it opens maps; each hotspot is in its words with the figures of the result. */
    @Test
    void thePaperSaysWhatTheResultSays() throws Exception {
        String id = EvidenceRuns.wallabies();
        byte[] octets =
                Api.as(ROADS_AUTHORITY).get("/hotspots/" + id + "/report.pdf").asByteArray();
        Path file = folder.resolve("report.pdf");
        Files.write(file, octets);
        Process gdalinfo = new ProcessBuilder("gdalinfo", file.toString())
                .redirectErrorStream(true)
                .start();
        String told = new String(gdalinfo.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(gdalinfo.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(gdalinfo.exitValue()).as(told).isZero();
        assertThat(told).contains("Driver: PDF/Geospatial PDF");
        var result = new ObjectMapper()
                .readTree(Api.as(ROADS_AUTHORITY)
                        .get("/api/hotspot-runs/" + id + "/result")
                        .asString());
        try (PDDocument document = Loader.loadPDF(octets)) {
            String words = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            assertThat(words)
                    .contains(result.get("errorRate").get("sentence").asText())
                    .contains(result.get("inputs").get("sha256").asText());
            assertThat(result.get("hotspots").size()).isPositive();
            for (var hotspot : result.get("hotspots")) {
                assertThat(words)
                        .contains(String.format(
                                Locale.ROOT,
                                "%d %s %.2f %.2f %d ",
                                hotspot.get("rank").asInt(),
                                hotspot.get("road").asText(),
                                hotspot.get("fromChainageMetres").asDouble() / 1000,
                                hotspot.get("toChainageMetres").asDouble() / 1000,
                                hotspot.get("incidents").asInt()));
            }
        }
        assertThat(Api.as(ROADS_AUTHORITY)
                        .get("/hotspots/" + id + "/report.pdf")
                        .asByteArray())
                .isEqualTo(octets);
    }

    @Test
    void thePageFitsATelephoneATabletAndADesk() throws Exception {
        String id = EvidenceRuns.wallabies();
        ChromeDriver browser = new ChromeDriver(
                new ChromeDriverService.Builder().usingAnyFreePort().build(),
                new ChromeOptions()
                        .setBinary("/usr/bin/chromium")
                        .addArguments(
                                "--headless",
                                "--no-sandbox",
                                "--disable-gpu",
                                "--disable-quic",
                                "--no-first-run",
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--disable-sync",
                                "--user-data-dir=" + folder.resolve("profile")));
        try {
            String host = "localhost:" + Request.port();
            browser.get("http://" + host + "/hotspots/" + id);
            browser.findElement(By.id("username")).sendKeys("test-roads-authority");
            browser.findElement(By.id("password")).sendKeys(Api.PASSWORD);
            browser.findElement(By.cssSelector("main button")).click();
            var patience = new WebDriverWait(browser, Duration.ofSeconds(60));
            patience.until(page -> page.findElements(By.className("rank-label")).size()
                    == page.findElements(By.cssSelector("table.ranked tbody tr"))
                            .size());
            for (int width : WIDTHS) {
                browser.manage().window().setSize(new Dimension(width, 900));
                Object overflow = browser.executeScript(
                        "return document.documentElement.scrollWidth - document.documentElement.clientWidth;");
                assertThat(((Number) java.util.Objects.requireNonNull(overflow)).intValue())
                        .as("the page scrolls sideways at " + width + " px")
                        .isZero();
                Path picture = Path.of("target", "pictures", "hotspots-" + width + ".png");
                Files.createDirectories(picture.getParent());
                Files.write(picture, browser.getScreenshotAs(OutputType.BYTES));
            }
            WebElement button = browser.findElement(By.cssSelector("button.find"));
            button.click();
            assertThat(browser.findElement(By.id("hotspot-1")).getDomAttribute("aria-current"))
                    .isEqualTo("true");
            assertThat(browser.findElement(By.id("told")).getText()).contains("Hotspot 1", "Row Road");
        } finally {
            browser.quit();
        }
    }
}
