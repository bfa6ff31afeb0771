package org.culvert.release.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.support.Api;
import org.culvert.support.Gdal;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Land and release sites in GeoPackages as GDAL writes them (Debian's {@code ogr2ogr}), read back against the coordinates that
 * it was given. Between WGS 84 and GDA2020 GDAL and the register behind this server agree that there is no shift.
 */
@QuarkusTest
class LandFilesIT {
    private static final double CENTIMETRE = 0.01;
    private static final int AREAS = 25;

    @TempDir
    Path folder;

    private static String collection(List<String> features) {
        return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}";
    }

    private static String feature(String name, String type, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":{\"NAME\":\"" + name + "\",\"HABITAT\":\"wetland\",\"HA\":12.5},"
                + "\"geometry\":{\"type\":\"" + type + "\",\"coordinates\":" + coordinates + "}}";
    }

    /** A ring of eight corners around a place, and a hole in it. */
    private static List<List<Position>> rings(int number) {
        List<List<Position>> rings = new ArrayList<>();
        for (double radius : new double[] {0.01, 0.003}) {
            List<Position> ring = new ArrayList<>();
            for (int corner = 0; corner < 8; corner++) {
                double angle = Math.PI * corner / 4;
                ring.add(new Position(
                        -31.1 + 0.001234567 * number + radius * Math.sin(angle),
                        150.6 + 0.03 * number + radius * Math.cos(angle)));
            }
            ring.add(ring.get(0));
            rings.add(ring);
        }
        return rings;
    }

    private static String written(List<List<Position>> rings) {
        List<String> all = new ArrayList<>();
        for (List<Position> ring : rings) {
            List<String> positions = ring.stream()
                    .map(at -> String.format(Locale.ROOT, "[%.9f,%.9f]", at.longitude(), at.latitude()))
                    .toList();
            all.add("[" + String.join(",", positions) + "]");
        }
        return "[" + String.join(",", all) + "]";
    }

    private static Json send(String path, byte[] file, int entered) {
        return Api.as(COORDINATOR)
                .contentType("application/geopackage+sqlite3")
                .body(file)
                .post(path)
                .then()
                .statusCode(201)
                .body("entered", equalTo(entered))
                .extract()
                .jsonPath();
    }

    @ParameterizedTest
    @ValueSource(strings = {"EPSG:4326", "EPSG:7856", "EPSG:32756", "EPSG:3857", "EPSG:7844"})
    void landIsWhereItWas(String system) throws Exception {
        World.shared();
        String name = "L-" + UUID.randomUUID() + "-";
        List<String> features = new ArrayList<>();
        for (int i = 0; i < AREAS; i++) {
            String polygon = written(rings(i));
            features.add(
                    i % 2 == 0
                            ? feature(name + i, "Polygon", polygon)
                            : feature(name + i, "MultiPolygon", "[" + polygon + "]"));
        }
        byte[] file = Gdal.geoPackage(folder, collection(features), "-t_srs", system, "-nlt", "MULTIPOLYGON");
        Json made = send(
                "/api/land-areas/files?kind=councilArea&nameAttribute=NAME&source=a-test&from=2024-01-01", file, AREAS);
        for (int i = 0; i < AREAS; i += 6) {
            Json area = Api.get(COORDINATOR, "/api/land-areas/" + made.getString("ids[" + i + "]"));
            assertThat(area.getString("name")).isEqualTo(name + i);
            String polygon = area.getString("geometry.type").equals("Polygon")
                    ? "geometry.coordinates"
                    : "geometry.coordinates[0]";
            assertThat(area.getList(polygon)).hasSize(2);
            for (int ring = 0; ring < 2; ring++) {
                List<List<Number>> read = area.getList(polygon + "[" + ring + "]");
                assertThat(read).hasSize(9);
                for (Position corner : rings(i).get(ring)) {
                    double nearest = read.stream()
                            .mapToDouble(at -> Geodesy.metresBetween(
                                    corner,
                                    new Position(
                                            at.get(1).doubleValue(), at.get(0).doubleValue())))
                            .min()
                            .orElseThrow();
                    assertThat(nearest).isLessThan(CENTIMETRE);
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"EPSG:4326", "EPSG:7856", "EPSG:3857"})
    void releaseSitesAreWhereTheyWere(String system) throws Exception {
        World.shared();
        List<String> features = new ArrayList<>();
        List<Position> places = new ArrayList<>();
        for (int i = 0; i < AREAS; i++) {
            places.add(new Position(-30.7 + 0.001234567 * i, 150.5 + 0.0123456789 * i));
            features.add(feature(
                    "Pond " + i,
                    "Point",
                    String.format(
                            Locale.ROOT,
                            "[%.9f,%.9f]",
                            places.get(i).longitude(),
                            places.get(i).latitude())));
        }
        byte[] file = Gdal.geoPackage(folder, collection(features), "-t_srs", system);
        Json made = send(
                "/api/release-sites/files?nameAttribute=NAME&habitatAttribute=HABITAT&jurisdiction=XF"
                        + "&taxonGroups=turtles&uncertaintyMetres=20",
                file,
                AREAS);
        for (int i = 0; i < AREAS; i += 6) {
            Json site = Api.get(COORDINATOR, "/api/release-sites/" + made.getString("ids[" + i + "]"));
            assertThat(site.getString("name")).isEqualTo("Pond " + i);
            assertThat(Geodesy.metresBetween(
                            places.get(i),
                            new Position(site.getDouble("decimalLatitude"), site.getDouble("decimalLongitude"))))
                    .isCloseTo(0, within(CENTIMETRE));
        }
    }
}
