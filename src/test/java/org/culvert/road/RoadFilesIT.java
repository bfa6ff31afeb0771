package org.culvert.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.culvert.geo.CheckFiles;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.osm.OsmFile;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Files of roads as GDAL writes them (Debian's {@code ogr2ogr}), against the GeoJSON of the same roads: the streets of
 * Roxel (see src/test/resources/roads/ATTRIBUTION.md), moved to the region of the tests.
 */
@QuarkusTest
class RoadFilesIT {
    private static final double MOVED_EAST = 143;
    private static final double MOVED_NORTH = -82.4;
    private static final String GEO_PACKAGE = "application/geopackage+sqlite3";
    private static final Map<String, String> NAMES = Map.of("roadName", "name", "roadClass", "type");

    private final RoadService roads;

    @TempDir
    Path folder;

    RoadFilesIT(RoadService roads) {
        this.roads = roads;
    }

    private Path moved() throws IOException {
        var mapper = new ObjectMapper();
        JsonNode all = mapper.readTree(CheckFiles.text("/roads/roxel.geojson"));
        for (JsonNode feature : all.path("features")) {
            for (JsonNode position : feature.path("geometry").path("coordinates")) {
                double east = position.get(0).asDouble() + MOVED_EAST;
                double north = position.get(1).asDouble() + MOVED_NORTH;
                ((ArrayNode) position).removeAll().add(east).add(north);
            }
        }
        return Files.write(folder.resolve("moved.geojson"), mapper.writeValueAsBytes(all));
    }

    private Path geoPackage(String name, String... more) throws IOException, InterruptedException {
        Path file = folder.resolve(name);
        List<String> command = new ArrayList<>(List.of("ogr2ogr", "-f", "GPKG"));
        command.addAll(Arrays.asList(more));
        command.addAll(List.of(file.toString(), moved().toString()));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(said).isZero();
        return file;
    }

    private static Answer send(String type, Path file, Map<String, String> parameters) throws IOException {
        return Api.as(COORDINATOR)
                .contentType(type)
                .queryParams(parameters)
                .body(Files.readAllBytes(file))
                .post("/api/road-networks")
                .then();
    }

    /** What of an import does not depend on the kind of file. */
    private static List<Object> figures(Json made) {
        return List.of(
                made.getInt("lines"),
                made.getInt("linesUsed"),
                made.getInt("links"),
                made.getInt("nodes"),
                made.getInt("joinedNodes"),
                made.getInt("unnamedLines"),
                made.getMap("leftOut"));
    }

    /** Between WGS 84 and GDA2020 GDAL and the register behind this server agree that there is no shift. */
    @ParameterizedTest
    @CsvSource({
        "EPSG:4326, EPSG:4326",
        "EPSG:32756, EPSG:32756",
        "EPSG:3857, EPSG:3857",
        "EPSG:7856, EPSG:7856",
        "EPSG:7844, EPSG:7844"
    })
    void aGeoPackageSaysTheSameAsTheGeoJsonOfTheSameRoads(String system, String shown) throws Exception {
        World.shared();
        Json expected = send("application/geo+json", moved(), NAMES)
                .statusCode(201)
                .extract()
                .jsonPath();
        RoadNetwork asGeoJson = roads.current().network();
        Json made = send(GEO_PACKAGE, geoPackage("roads.gpkg", "-t_srs", system), NAMES)
                .statusCode(201)
                .body("sourceCrs", equalTo(shown))
                .extract()
                .jsonPath();
        assertThat(figures(made)).isEqualTo(figures(expected));
        assertThat(made.getDouble("kilometres")).isCloseTo(expected.getDouble("kilometres"), within(0.002));
        RoadNetwork network = roads.current().network();
        assertThat(network.linkCount()).isEqualTo(asGeoJson.linkCount()).isGreaterThan(850);
        for (int link = 0; link < network.linkCount(); link++) {
            assertThat(network.link(link).lineKey())
                    .isEqualTo(asGeoJson.link(link).lineKey());
            assertThat(network.attributes(link)).isEqualTo(asGeoJson.attributes(link));
            double[] here = network.link(link).vertices();
            double[] there = asGeoJson.link(link).vertices();
            assertThat(Geodesy.metresBetween(new Position(here[1], here[0]), new Position(there[1], there[0])))
                    .isLessThan(0.01);
        }
    }

    @Test
    void aLayerIsAskedForWhereThereAreSeveralAndLinesComeInPartsToo() throws Exception {
        World.shared();
        Path file = geoPackage("two.gpkg", "-nln", "streets", "-nlt", "MULTILINESTRING");
        Path second = moved();
        Process process = new ProcessBuilder(
                        "ogr2ogr",
                        "-update",
                        "-nln",
                        "points",
                        "-nlt",
                        "POINT",
                        "-where",
                        "name='none'",
                        file.toString(),
                        second.toString())
                .redirectErrorStream(true)
                .start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).isZero();
        send(GEO_PACKAGE, file, NAMES)
                .statusCode(400)
                .body("errors[0].field", equalTo("layer"))
                .body("errors[0].wanted", containsString("points, streets"));
        send(GEO_PACKAGE, file, Map.of("roadName", "name", "layer", "streets"))
                .statusCode(201)
                .body("lines", equalTo(851));
        send(GEO_PACKAGE, file, Map.of("roadName", "nom", "layer", "streets"))
                .statusCode(400)
                .body("errors[0].field", equalTo("roadName"))
                .body("errors[0].wanted", containsString("name, type"));
    }

    /** A system of no number: a transverse Mercator of the file's own, in well-known text. */
    @Test
    void aSystemThatNobodyNumberedIsReadByItsText() throws Exception {
        World.shared();
        Path file = geoPackage(
                "own.gpkg",
                "-t_srs",
                "+proj=tmerc +lat_0=-30 +lon_0=150.5 +k=0.9999 +x_0=300000 +y_0=100000 +ellps=WGS84 +units=m");
        send("application/geo+json", moved(), NAMES).statusCode(201);
        RoadNetwork asGeoJson = roads.current().network();
        send(GEO_PACKAGE, file, NAMES).statusCode(201);
        RoadNetwork network = roads.current().network();
        assertThat(network.linkCount()).isEqualTo(asGeoJson.linkCount());
        for (int link = 0; link < network.linkCount(); link += 50) {
            assertThat(Geodesy.metresBetween(network.positionAt(link, 0), asGeoJson.positionAt(link, 0)))
                    .isLessThan(0.01);
        }
    }

    /** The same streets as an extract of OpenStreetMap, which GDAL's reader of that format finds as many lines in. */
    @Test
    void anExtractSaysTheSameAsTheGeoJsonOfTheSameRoads() throws Exception {
        World.shared();
        JsonNode all = new ObjectMapper().readTree(moved().toFile());
        var extract = new OsmFile();
        int ways = 0;
        for (JsonNode feature : all.path("features")) {
            JsonNode course = feature.path("geometry").path("coordinates");
            double[] positions = new double[2 * course.size()];
            for (int i = 0; i < course.size(); i++) {
                positions[2 * i] = course.get(i).get(0).asDouble();
                positions[2 * i + 1] = course.get(i).get(1).asDouble();
            }
            Map<String, String> tags = new LinkedHashMap<>();
            tags.put("highway", feature.path("properties").path("type").asText());
            if (feature.path("properties").hasNonNull("name")) {
                tags.put("name", feature.path("properties").path("name").asText());
            }
            extract.way(++ways, tags, positions);
        }
        Path file = Files.write(folder.resolve("roxel.osm.pbf"), extract.octets());
        Process process = new ProcessBuilder("ogrinfo", "-ro", "-geom=NO", file.toString(), "lines")
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(said.split("OGRFeature\\(lines\\)", -1)).as(said).hasSize(1 + 851);

        Json made = send("application/x-osm-pbf", file, Map.of())
                .statusCode(201)
                .body("lines", equalTo(851))
                .extract()
                .jsonPath();
        Map<String, Integer> leftOut = made.getMap("leftOut");
        // Counted in the file by hand: 67 footways, 95 paths, 42 cycleways, 1 pedestrian street
        assertThat(leftOut)
                .containsEntry("not for motor traffic: highway=footway", 67)
                .containsEntry("not for motor traffic: highway=path", 95)
                .containsEntry("not for motor traffic: highway=cycleway", 42)
                .containsEntry("not for motor traffic: highway=pedestrian", 1);
        RoadNetwork network = roads.current().network();

        Path streets = folder.resolve("streets.geojson");
        Process filter = new ProcessBuilder(
                        "ogr2ogr",
                        "-f",
                        "GeoJSON",
                        "-lco",
                        "COORDINATE_PRECISION=7",
                        "-where",
                        "type NOT IN ('footway', 'path', 'cycleway', 'pedestrian')",
                        streets.toString(),
                        moved().toString())
                .redirectErrorStream(true)
                .start();
        assertThat(filter.waitFor(60, TimeUnit.SECONDS)).isTrue();
        Json expected = send("application/geo+json", streets, NAMES)
                .statusCode(201)
                .extract()
                .jsonPath();
        for (String figure : List.of("linesUsed", "links", "nodes", "joinedNodes", "unnamedLines")) {
            assertThat(made.getInt(figure)).as(figure).isEqualTo(expected.getInt(figure));
        }
        assertThat(made.getDouble("kilometres")).isCloseTo(expected.getDouble("kilometres"), within(0.002));
        RoadNetwork asGeoJson = roads.current().network();
        for (int link = 0; link < network.linkCount(); link++) {
            assertThat(network.roadOf(link).named())
                    .isEqualTo(asGeoJson.roadOf(link).named());
            assertThat(network.graph().length(link)).isCloseTo(asGeoJson.graph().length(link), within(0.05));
        }
    }
}
