package org.culvert.exchange.occurrence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.OFFICER;

import io.quarkus.test.junit.QuarkusTest;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipFile;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The table of an archive, read back by GDAL's {@code ogrinfo}. */
@QuarkusTest
class ArchiveClientsIT {
    @TempDir
    Path folder;

    @BeforeEach
    void makeWorld() {
        World.shared();
        for (int i = 0; i < 5; i++) {
            World.call("Chelodina longicollis", 150.04 + i * 0.001, "");
        }
    }

    @Test
    void gdalCountsAsManyPointsAsTheListHasPlaces() throws Exception {
        Path zip = folder.resolve("occurrences.zip");
        Files.write(
                zip,
                Api.as(OFFICER)
                        .get("/api/occurrences/archive.zip?taxonGroup=turtles")
                        .asByteArray());
        Path table = folder.resolve("occurrence.csv");
        try (var archive = new ZipFile(zip.toFile());
                InputStream csv = archive.getInputStream(archive.getEntry("occurrence.csv"))) {
            Files.copy(csv, table);
        }
        Process ogrinfo = new ProcessBuilder(
                        "ogrinfo",
                        "-ro",
                        "-so",
                        "-al",
                        "-oo",
                        "X_POSSIBLE_NAMES=decimalLongitude",
                        "-oo",
                        "Y_POSSIBLE_NAMES=decimalLatitude",
                        "-oo",
                        "AUTODETECT_TYPE=YES",
                        table.toString())
                .redirectErrorStream(true)
                .start();
        String told = new String(ogrinfo.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(ogrinfo.waitFor(60, TimeUnit.SECONDS)).isTrue();
        Matcher count = Pattern.compile("Feature Count: (\\d+)").matcher(told);
        assertThat(count.find()).as(told).isTrue();
        assertThat(Integer.parseInt(count.group(1)))
                .isEqualTo(Api.get(OFFICER, "/api/occurrences?limit=1000&taxonGroup=turtles")
                        .getList("items")
                        .size())
                .isGreaterThanOrEqualTo(5);
        assertThat(told)
                .contains("Geometry: Point")
                .contains("occurrenceID: String", "individualCount: Integer", "coordinateUncertaintyInMeters: Real");
    }
}
