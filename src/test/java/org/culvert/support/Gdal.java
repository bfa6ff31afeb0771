package org.culvert.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** GDAL's own programs (Debian's gdal-bin), to write files as the programs of others do. */
public final class Gdal {
    private Gdal() {}

    /**
     * A GeoPackage of the features of a collection, as {@code ogr2ogr} writes it.
     *
     * @param more further options, such as {@code -t_srs EPSG:7856}
     */
    public static byte[] geoPackage(Path folder, String geoJson, String... more)
            throws IOException, InterruptedException {
        Path source = Files.writeString(folder.resolve("source.geojson"), geoJson);
        Path file = folder.resolve("written.gpkg");
        Files.deleteIfExists(file);
        List<String> command = new ArrayList<>(List.of("ogr2ogr", "-f", "GPKG"));
        command.addAll(Arrays.asList(more));
        command.addAll(List.of(file.toString(), source.toString()));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(said).isZero();
        return Files.readAllBytes(file);
    }
}
