package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.sf.geographiclib.Geodesic;
import org.culvert.geo.Bounds;
import org.culvert.geo.MercatorTile;
import org.culvert.geo.Position;
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

    /** Whole layers as files have the counts, the types and the extent of the pages, whichever form. */
    @Test
    void everyFormOfALayerIsTheSameToGdal() throws Exception {
        World.shared();
        String extent = null;
        for (String form : List.of("gpkg", "geojson", "csv")) {
            Path file = folder.resolve("road-links." + form);
            Files.write(
                    file,
                    Layers.by(CARER)
                            .get(Layers.root() + "/collections/road-links/layer." + form)
                            .asByteArray());
            List<String> command = new ArrayList<>(List.of("ogrinfo", "-ro", "-so", "-al"));
            if (form.equals("csv")) {
                command.addAll(List.of("-oo", "GEOM_POSSIBLE_NAMES=WKT", "-oo", "AUTODETECT_TYPE=YES"));
            }
            command.add(file.toString());
            String said = said(command.toArray(String[]::new));
            assertThat(count(said)).as(form).isEqualTo(Layers.linksOfTheNetwork());
            assertThat(said).contains("roadName: String", "lengthMetres: Real");
            if (!form.equals("csv")) {
                assertThat(said).contains("Geometry: Line String", "WGS 84", "speedLimitKmh: Integer");
            }
            Matcher box = Pattern.compile("Extent: (.*)").matcher(said);
            assertThat(box.find()).as(said).isTrue();
            assertThat(extent == null || extent.equals(box.group(1)))
                    .as("the extent by " + form)
                    .isTrue();
            extent = box.group(1);
        }
    }

    /** GDAL's reader of vector tiles finds in one that holds all roads as many lines as there are links, in their place. */
    @Test
    void aVectorTileIsReadWithItsRoadsInTheirPlace() throws Exception {
        World.shared();
        int zoom = 12;
        double[] place = new MercatorTile(0, 0, 0).place(-30.5, 150.05);
        int x = (int) (place[0] / MercatorTile.EXTENT * (1 << zoom));
        int y = (int) (place[1] / MercatorTile.EXTENT * (1 << zoom));
        Path file = folder.resolve("roads.mvt");
        Files.write(
                file,
                Api.as(CARER)
                        .get("/tiles/roads/" + zoom + "/" + x + "/" + y + ".mvt")
                        .asByteArray());
        Path lines = folder.resolve("roads.geojson");
        said(
                "ogr2ogr",
                "-f",
                "GeoJSON",
                "-t_srs",
                "EPSG:4326",
                "-oo",
                "X=" + x,
                "-oo",
                "Y=" + y,
                "-oo",
                "Z=" + zoom,
                "-oo",
                "CLIP=NO",
                lines.toString(),
                file.toString());
        Bounds tile = new MercatorTile(zoom, x, y).bounds(0);
        String box = tile.west() + "," + tile.south() + "," + tile.east() + "," + tile.north();
        Set<String> inTheBox = new HashSet<>();
        Layers.all(CARER, "road-links", "limit=1000&bbox=" + box)
                .forEach(feature -> inTheBox.add((String) feature.get("id")));
        var read = new ObjectMapper().readTree(lines.toFile()).get("features");
        Set<String> inTheTile = new HashSet<>();
        for (var feature : read) {
            inTheTile.add(feature.get("properties").get("id").asText());
        }
        assertThat(inTheTile).containsAll(inTheBox).hasSizeGreaterThan(3);
        double metres = 0;
        double given = 0;
        for (var feature : read) {
            String id = feature.get("properties").get("id").asText();
            var link = new ObjectMapper()
                    .readTree(Layers.by(CARER)
                            .get(Layers.root() + "/collections/road-links/items/" + id)
                            .asString());
            var from = link.get("geometry").get("coordinates").get(0);
            var nearest = feature.get("geometry").findValues("coordinates").get(0);
            metres = Math.max(
                    metres,
                    nearestMetres(nearest, from.get(1).asDouble(), from.get(0).asDouble(), tile));
            given++;
        }
        assertThat(given).isPositive();
        assertThat(metres).as("a unit of the tile is 2.4 m at the equator").isLessThan(5);
    }

    /** From a position to the nearest of a line's, or 0 where the position is not in the tile, so that the line is cut. */
    private static double nearestMetres(JsonNode line, double latitude, double longitude, Bounds tile) {
        if (!tile.contains(new Position(latitude, longitude))) {
            return 0;
        }
        double nearest = Double.POSITIVE_INFINITY;
        List<JsonNode> points = new ArrayList<>();
        collect(line, points);
        for (JsonNode point : points) {
            nearest = Math.min(
                    nearest,
                    Geodesic.WGS84.Inverse(
                                    latitude,
                                    longitude,
                                    point.get(1).asDouble(),
                                    point.get(0).asDouble())
                            .s12);
        }
        return nearest;
    }

    private static void collect(JsonNode coordinates, List<JsonNode> points) {
        if (coordinates.get(0).isNumber()) {
            points.add(coordinates);
        } else {
            coordinates.forEach(part -> collect(part, points));
        }
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
