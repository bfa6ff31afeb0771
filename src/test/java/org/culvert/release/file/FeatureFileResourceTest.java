package org.culvert.release.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.geo.EastingNorthing;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Grid;
import org.culvert.geo.Position;
import org.culvert.geo.Projections;
import org.culvert.platform.geopackage.Packages;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

@QuarkusTest
class FeatureFileResourceTest {
    private static final String LAND =
            "/api/land-areas/files?kind=water&nameAttribute=NAME&source=map-of-2024&from=2024-01-01";
    private static final String SITES =
            "/api/release-sites/files?nameAttribute=NAME&habitatAttribute=HABITAT&jurisdiction=XF&taxonGroups=turtles";

    private static Answer send(String path, Object body, String type) {
        var request = Api.as(COORDINATOR).contentType(type);
        return (body instanceof String text ? request.body(text) : request.body((byte[]) body))
                .post(path)
                .then();
    }

    private static Answer sendAll(String path, String... features) {
        return send(
                path,
                "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}",
                "application/geo+json");
    }

    private static String feature(String name, String type, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":{\"NAME\":\"" + name + "\",\"HABITAT\":\"wetland\"},\"geometry\":"
                + "{\"type\":\"" + type + "\",\"coordinates\":" + coordinates + "}}";
    }

    private static String square(double west, double south) {
        return "[[[%1$s,%2$s],[%3$s,%2$s],[%3$s,%4$s],[%1$s,%4$s],[%1$s,%2$s]]]"
                .formatted(west, south, west + 0.01, south + 0.01);
    }

    private static String name() {
        return "W-" + UUID.randomUUID();
    }

    @Test
    void polygonsBecomeLandAndTheRestIsTold() {
        World.shared();
        String one = name();
        String two = name();
        Json made = sendAll(
                        LAND,
                        feature(one, "Polygon", square(151.1, -31.1)),
                        feature("a stream", "LineString", "[[151,-31],[151.1,-31]]"),
                        "{\"type\":\"Feature\",\"properties\":{\"NAME\":\"nothing\"},\"geometry\":null}",
                        feature(two, "MultiPolygon", "[" + square(151.2, -31.1) + "," + square(151.3, -31.1) + "]"))
                .statusCode(201)
                .body("features", equalTo(4))
                .body("entered", equalTo(2))
                .extract()
                .jsonPath();
        assertThat(made.<Integer>getMap("leftOut")).containsOnly(Map.entry("a line", 1), Map.entry("no geometry", 1));
        List<String> ids = made.getList("ids");
        Json first = Api.get(COORDINATOR, "/api/land-areas/" + ids.get(0));
        assertThat(first.getString("name")).isEqualTo(one);
        assertThat(first.getString("kind")).isEqualTo("water");
        assertThat(first.getString("source")).isEqualTo("map-of-2024");
        assertThat(first.getDouble("bbox[0]")).isCloseTo(151.1, within(1e-6));
        Json second = Api.get(COORDINATOR, "/api/land-areas/" + ids.get(1));
        assertThat(second.getDouble("bbox[2]")).isCloseTo(151.31, within(1e-6));
    }

    /** RFC 7946, section 3.1: a geometry without positions may be taken as none; 3.1.6: a ring has four positions or more. */
    @Test
    void whatIsEmptyIsNoSite() {
        World.shared();
        for (String nothing : List.of("Polygon", "MultiPolygon")) {
            Json made = sendAll(SITES, feature(name(), nothing, "[]"), feature(name(), "Polygon", square(151.4, -31.1)))
                    .statusCode(201)
                    .extract()
                    .jsonPath();
            assertThat(made.<Integer>getMap("leftOut")).containsOnly(Map.entry("no geometry", 1));
        }
        sendAll(SITES, feature(name(), "Polygon", "[[]]"))
                .statusCode(400)
                .body("errors[0].field", equalTo("features.0.geometry.coordinates"));
    }

    /** A square kilometre in Map Grid of Australia zone 56 (GDA2020); its corners are our own projection of it. */
    @Test
    void aFileInAGridIsLaidOnTheEarth() {
        World.shared();
        Grid mga = Projections.grid(7856);
        EastingNorthing corner = mga.forward(new Position(-31.2, 151.5));
        String ring = "[[[%1$s,%2$s],[%3$s,%2$s],[%3$s,%4$s],[%1$s,%4$s],[%1$s,%2$s]]]"
                .formatted(corner.easting(), corner.northing(), corner.easting() + 1000, corner.northing() + 1000);
        Json made = sendAll(LAND + "&crs=EPSG:7856", feature(name(), "Polygon", ring))
                .statusCode(201)
                .extract()
                .jsonPath();
        Json area = Api.get(COORDINATOR, "/api/land-areas/" + made.getString("ids[0]"));
        assertThat(area.getDouble("bbox[0]")).isCloseTo(151.5, within(0.0005));
        assertThat(area.getDouble("bbox[1]")).isCloseTo(-31.2, within(0.0005));
        double diagonal = Geodesy.metresBetween(
                new Position(area.getDouble("bbox[1]"), area.getDouble("bbox[0]")),
                new Position(area.getDouble("bbox[3]"), area.getDouble("bbox[2]")));
        assertThat(diagonal).isCloseTo(Math.sqrt(2) * 1000, within(40.0));
    }

    @Test
    void allOrNothing() {
        World.shared();
        String good = name();
        sendAll(
                        LAND,
                        feature(good, "Polygon", square(151.1, -31.1)),
                        feature("crossed", "Polygon", "[[[151,-31],[151.1,-31.1],[151.1,-31],[151,-31.1],[151,-31]]]"))
                .statusCode(400)
                .body("errors[0].field", containsString("features.1.geometry.coordinates"));
        assertThat(Api.get(COORDINATOR, "/api/land-areas?name=" + good).getList("items"))
                .isEmpty();
        sendAll(LAND, feature("", "Polygon", square(151.1, -31.1)))
                .statusCode(400)
                .body("errors[0].field", equalTo("features.0.properties.NAME"));
        sendAll(LAND, feature("swapped", "Polygon", "[[[-31,151],[-31.1,151],[-31.1,151.1],[-31,151]]]"))
                .statusCode(400)
                .body("errors[0].field", equalTo("features.0.geometry"));
        sendAll(
                        "/api/land-areas/files?nameAttribute=NAME&source=s&from=2024-01-01",
                        feature(good, "Polygon", square(151, -31)))
                .statusCode(400)
                .body("errors[0].field", equalTo("kind"));
        sendAll(LAND.replace("2024-01-01", "lately"), feature(good, "Polygon", square(151, -31)))
                .statusCode(400)
                .body("errors[0].field", equalTo("from"));
        Api.as(CARER)
                .contentType("application/geo+json")
                .body("{}")
                .post(LAND)
                .then()
                .statusCode(403);
    }

    @Test
    void pointsAndPolygonsBecomeReleaseSites() {
        World.shared();
        String pond = name();
        String wetland = name();
        Json made = sendAll(
                        SITES + "&uncertaintyMetres=30",
                        feature(pond, "Point", "[150.5,-30.7]"),
                        feature(wetland, "Polygon", square(150.6, -30.7)))
                .statusCode(201)
                .body("entered", equalTo(2))
                .extract()
                .jsonPath();
        Json first = Api.get(COORDINATOR, "/api/release-sites/" + made.getString("ids[0]"));
        assertThat(first.getString("name")).isEqualTo(pond);
        assertThat(first.getString("landownerConsent")).isEqualTo("unknown");
        assertThat(first.getDouble("coordinateUncertaintyInMeters")).isEqualTo(30);
        assertThat(first.getList("taxonGroups")).isEqualTo(List.of("turtles"));
        Json second = Api.get(COORDINATOR, "/api/release-sites/" + made.getString("ids[1]"));
        assertThat(second.getDouble("decimalLongitude")).isCloseTo(150.605, within(1e-6));
        double corner = Geodesy.metresBetween(new Position(-30.695, 150.605), new Position(-30.7, 150.6));
        assertThat(second.getDouble("coordinateUncertaintyInMeters")).isBetween(corner - 1, corner + 3);
        sendAll(SITES, feature(pond, "Point", "[150.5,-30.7]"))
                .statusCode(400)
                .body("errors[0].field", equalTo("uncertaintyMetres"));
        sendAll(SITES.replace("turtles", "unicorns") + "&uncertaintyMetres=30", feature(pond, "Point", "[150.5,-30.7]"))
                .statusCode(400)
                .body("errors[0].field", containsString("features.0."));
    }

    @Test
    void aGeoPackageIsRefusedOrReadAsGeoJsonIs() {
        World.shared();
        String type = "application/geopackage+sqlite3";
        // A point of well-known binary, little endian: its header and 150.5, -30.5
        String point = "x'4750000100000000" + "0101000000" + "0000000000d06240" + "0000000000803ec0" + "'";
        byte[] file = Packages.made(Packages.TABLES + Packages.layer("ponds")
                + "CREATE TABLE ponds (fid INTEGER PRIMARY KEY, geom POINT, NAME TEXT, HABITAT TEXT);\n"
                + "INSERT INTO ponds VALUES (5, " + point + ", 'Pond of a file', 'wetland');\n");
        Json made = send(SITES + "&uncertaintyMetres=10", file, type)
                .statusCode(201)
                .body("entered", equalTo(1))
                .extract()
                .jsonPath();
        Json site = Api.get(COORDINATOR, "/api/release-sites/" + made.getString("ids[0]"));
        assertThat(site.getDouble("decimalLatitude")).isEqualTo(-30.5);
        assertThat(site.getDouble("decimalLongitude")).isEqualTo(150.5);
        send(SITES.replace("=HABITAT", "=BIOME"), file, type)
                .statusCode(400)
                .body("errors[0].wanted", containsString("HABITAT"));
        send(LAND, new byte[] {1, 2, 3}, type).statusCode(400).body("errors[0].field", equalTo("body"));
        Json none = send(LAND, file, type).statusCode(201).extract().jsonPath();
        assertThat(none.<Integer>getMap("leftOut")).containsOnly(Map.entry("a point", 1));
    }
}
