package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.hotspot.EvidenceRuns;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The layers through GDAL's own reader of OGC API - Features: Debian's {@code ogrinfo} and {@code ogr2ogr}, with counts. */
@QuarkusTest
class GisClientsIT {
    @TempDir
    Path folder;

    private static String said(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(said).isZero();
        assertThat(said).doesNotContain("ERROR");
        return said;
    }

    /** What {@code ogrinfo} tells of a layer to whoever has a role, by a token as the password of Basic. */
    private static String layer(@Nullable String role, String layer, String... more)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("ogrinfo", "-ro", "-so"));
        if (role != null) {
            command.addAll(List.of("-oo", "USERPWD=test-" + role + ":" + Api.token(role)));
        }
        command.addAll(Arrays.asList(more));
        command.add("OAPIF:" + Layers.root());
        command.add(layer);
        return said(command.toArray(String[]::new));
    }

    private static int count(String said) {
        Matcher count = Pattern.compile("Feature Count: (\\d+)").matcher(said);
        assertThat(count.find()).as(said).isTrue();
        return Integer.parseInt(count.group(1));
    }

    /** Features that were read one by one, not the number that the server tells. */
    private static int read(@Nullable String role, String layer, String... more)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("ogrinfo", "-ro", "-geom=NO"));
        if (role != null) {
            command.addAll(List.of("-oo", "USERPWD=test-" + role + ":" + Api.token(role)));
        }
        command.addAll(Arrays.asList(more));
        command.add("OAPIF:" + Layers.root());
        command.add(layer);
        Matcher feature =
                Pattern.compile("^OGRFeature\\(", Pattern.MULTILINE).matcher(said(command.toArray(String[]::new)));
        int read = 0;
        while (feature.find()) {
            read++;
        }
        return read;
    }

    @Test
    void everyPageOfRoadLinksIsRead() throws Exception {
        World.shared();
        int links = Layers.linksOfTheNetwork();
        assertThat(links).isGreaterThan(4);
        for (String size : List.of("2", "1000")) {
            String said = layer(CARER, "road-links", "-oo", "PAGE_SIZE=" + size);
            assertThat(count(said)).isEqualTo(links);
            assertThat(said)
                    .contains(
                            "Line String",
                            "WGS 84",
                            "roadName: String",
                            "speedLimitKmh: Integer",
                            "lengthMetres: Real");
            assertThat(read(CARER, "road-links", "-oo", "PAGE_SIZE=" + size)).isEqualTo(links);
        }
        assertThat(count(layer(CARER, "road-links", "-where", "roadName='River Lane'", "-oo", "PAGE_SIZE=1")))
                .isEqualTo(
                        Layers.all(CARER, "road-links", "roadName=River%20Lane").size())
                .isBetween(2, links - 1);
        String[] near = {"-spat", "150.0499", "-30.5001", "150.0501", "-30.4999", "-oo", "PAGE_SIZE=1"};
        assertThat(count(layer(CARER, "road-links", near))).isEqualTo(4);
        assertThat(read(CARER, "road-links", near)).isEqualTo(4);
    }

    @Test
    void aGeoPackageIsMadeOfALayer() throws Exception {
        World.shared();
        String file = folder.resolve("roads.gpkg").toString();
        said(
                "ogr2ogr",
                "-f",
                "GPKG",
                "-oo",
                "USERPWD=test-carer:" + Api.token(CARER),
                "-oo",
                "PAGE_SIZE=2",
                file,
                "OAPIF:" + Layers.root(),
                "road-links");
        String said = said("ogrinfo", "-ro", "-so", "-al", file);
        assertThat(count(said)).isEqualTo(Layers.linksOfTheNetwork());
        assertThat(said).contains("Line String", "roadName: String");
    }

    @Test
    void hotspotsAreReadByARoadsAuthorityAndByNobodyElseUnlessTheyAreOpened() throws Exception {
        EvidenceRuns.make();
        EvidenceRuns.annual("[{\"taxonGroup\":\"macropods\"},{\"taxonGroup\":\"macropods\",\"months\":[5,6,7]}]");
        int hotspots = Layers.all(ROADS_AUTHORITY, "hotspots", "").size();
        String said = layer(ROADS_AUTHORITY, "hotspots", "-oo", "PAGE_SIZE=1");
        assertThat(count(said)).isEqualTo(hotspots).isGreaterThan(1);
        assertThat(read(ROADS_AUTHORITY, "hotspots", "-oo", "PAGE_SIZE=1")).isEqualTo(hotspots);
        assertThat(said).contains("Multi Line String", "incidents: Integer", "adjustedP: Real", "season: String");
        assertThat(count(layer(ROADS_AUTHORITY, "hotspots", "-where", "season='all months'")))
                .isEqualTo(1);
        assertThat(said("ogrinfo", "-ro", "OAPIF:" + Layers.root()))
                .contains("collisions")
                .doesNotContain("hotspots", "road-links");
    }

    @Test
    void openCollisionsNeedNoName() throws Exception {
        World.shared();
        Api.make(COORDINATOR, "/api/calls", """
                {"receivedAt":"1981-03-05T08:00:00Z","happenedAt":"1981-03-05T08:00:00Z","cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"Wallabia bicolor"}],
                 "place":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.0476540"}}}
                """);
        int open = Layers.all(null, "collisions", "taxonGroup=macropods&limit=1000")
                .size();
        String said = layer(null, "collisions", "-where", "taxonGroup='macropods'", "-oo", "PAGE_SIZE=7");
        assertThat(count(said)).isEqualTo(open).isPositive();
        assertThat(said).contains("Point", "eventYear: Integer");
    }
}
