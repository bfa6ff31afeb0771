package org.culvert.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.emptyString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.geo.CheckFiles;
import org.culvert.geo.EastingNorthing;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Grid;
import org.culvert.geo.Position;
import org.culvert.geo.Projections;
import org.culvert.road.network.Road;
import org.culvert.road.network.RoadNetwork;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class RoadNetworkResourceTest {
    private final NetworkStore store;
    private final RoadService roads;

    RoadNetworkResourceTest(NetworkStore store, RoadService roads) {
        this.store = store;
        this.roads = roads;
    }

    /** Real input: see src/test/resources/roads/ATTRIBUTION.md. */
    @Test
    void aVillageIsImportedAsItIsAndComesBackAsItWas() {
        Json made = importRoads(ADMIN, Map.of("name", "Roxel", "roadName", "name", "roadClass", "type"), roxel())
                .statusCode(201)
                .body("lines", equalTo(851))
                .body("sourceCrs", equalTo("OGC:CRS84"))
                .body("attributeNames.roadName", equalTo("name"))
                .extract()
                .jsonPath();
        assertThat(made.getInt("linesUsed")).isGreaterThan(840);
        assertThat(made.getInt("links")).isGreaterThan(made.getInt("linesUsed"));
        assertThat(made.getInt("joinedNodes")).isGreaterThan(400);
        CurrentRoads built = roads.current();
        assertThat(built.networkId()).isEqualTo(UUID.fromString(made.getString("id")));
        CurrentRoads readBack = store.load(built.networkId());
        assertSame(readBack, built);
        assertThat(readBack.network().graph().totalLength() / 1000)
                .isCloseTo(made.getDouble("kilometres"), within(0.001));
    }

    private static void assertSame(CurrentRoads one, CurrentRoads other) {
        RoadNetwork here = one.network();
        RoadNetwork there = other.network();
        assertThat(here.linkCount()).isEqualTo(there.linkCount());
        assertThat(here.graph().nodeCount()).isEqualTo(there.graph().nodeCount());
        for (int link = 0; link < here.linkCount(); link++) {
            assertThat(one.linkId(link)).isEqualTo(other.linkId(link));
            assertThat(here.link(link).vertices()).isEqualTo(there.link(link).vertices());
            assertThat(here.attributes(link)).isEqualTo(there.attributes(link));
            assertThat(here.fromChainage(link)).isEqualTo(there.fromChainage(link));
            assertThat(here.graph().from(link)).isEqualTo(there.graph().from(link));
            assertThat(here.roadOf(link).label()).isEqualTo(there.roadOf(link).label());
            double half = here.graph().length(link) / 2;
            assertThat(here.positionAt(link, half)).isEqualTo(there.positionAt(link, half));
        }
    }

    @Test
    void anImportIsANewVersionAndTheOldOneIsKept() {
        int before = importRoads(
                        COORDINATOR, Map.of("roadName", "name"), collection(line("Mill Road", "[0,0],[0.01,0]")))
                .statusCode(201)
                .extract()
                .path("number");
        UUID oldLink = roads.current().linkId(0);
        int after = importRoads(
                        COORDINATOR, Map.of("roadName", "name"), collection(line("Ford Lane", "[0,0],[0.01,0]")))
                .statusCode(201)
                .extract()
                .path("number");
        assertThat(after).isEqualTo(before + 1);
        assertThat(Api.get(RESCUER, "/api/road-networks").getList("number", Integer.class))
                .startsWith(after, before);
        assertThat(roads.findLink(oldLink).orElseThrow().roadName()).isEqualTo("Mill Road");
        assertThat(roads.current().findLink(oldLink)).isEmpty();
        assertThat(roads.findLink(UUID.randomUUID())).isEmpty();
    }

    @Test
    void anotherServerOnTheSameDatabaseFollows() {
        RoadService another = new RoadService(store);
        importRoads(ADMIN, Map.of("roadName", "name"), collection(line("Mill Road", "[0,0],[0.01,0]")))
                .statusCode(201);
        CurrentRoads first = another.current();
        assertThat(first.network().roads()).extracting(Road::label).containsExactly("Mill Road");
        assertThat(another.current()).as("loaded once").isSameAs(first);
        importRoads(ADMIN, Map.of("roadName", "name"), collection(line("Ford Lane", "[0,0],[0.01,0]")))
                .statusCode(201);
        assertThat(another.current().network().roads()).extracting(Road::label).containsExactly("Ford Lane");
        assertSame(another.current(), roads.current());
    }

    /*
     *  Mill Road crosses above Ford Lane on a bridge with a vertex over Ford Lane's; Hill Street ends on Ford Lane.
     */
    @Test
    void linesMeetWhereTheyShareAVertexAtOneLevel() {
        String file = collection(
                line("Mill Road", "[0,0],[0.001,0]"),
                feature(Map.of("name", "Mill Road", "bridge", "yes"), "[0.001,0],[0.002,0],[0.003,0]"),
                line("Mill Road", "[0.003,0],[0.004,0]"),
                line("Ford Lane", "[0.002,-0.001],[0.002,0],[0.002,0.001]"),
                line("Hill Street", "[0.003,-0.001],[0.002,-0.001]"));
        importRoads(ADMIN, Map.of("roadName", "name", "bridge", "bridge"), file)
                .statusCode(201)
                .body("links", equalTo(5))
                .body("joinedNodes", equalTo(3))
                .body("unnamedLines", equalTo(0));
        Json links = Api.get(ROADS_AUTHORITY, "/api/road-networks/current/links");
        assertThat(links.getList("features.properties.structure"))
                .containsExactly("none", "bridge", "none", "none", "none");
        assertThat(links.getDouble("features[2].properties.fromChainageMetres"))
                .isCloseTo(Geodesy.metresBetween(new Position(0, 0), new Position(0, 0.003)), within(0.001));
    }

    @Test
    void attributesAreReadAsTheyAreMeantAndTheRestIsUnknownAndCounted() {
        String file = collection(
                feature(
                        Map.of(
                                "n",
                                "Mill Road",
                                "no",
                                "B1",
                                "cl",
                                "primary",
                                "max",
                                "60 mph",
                                "dtv",
                                12000,
                                "by",
                                "Upper Shire",
                                "side",
                                "N",
                                "km",
                                12.5),
                        "[0,0],[0.01,0]"),
                feature(Map.of("n", "Mill Road", "max", "as signed", "dtv", 0), "[0.01,0],[0.02,0]"),
                feature(Map.of("n", "  ", "max", "0"), "[0,1],[0.01,1]"),
                "{\"type\":\"Feature\",\"properties\":{},\"geometry\":null}",
                "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"Point\",\"coordinates\":[1,1]}}",
                "{\"type\":\"Feature\",\"properties\":{\"n\":\"Two Part Road\"},\"geometry\":{\"type\":\"MultiLineString\","
                        + "\"coordinates\":[[[0,2],[0.01,2]],[[0.01,2],[0.02,2]]]}}");
        Json made = importRoads(
                        ADMIN,
                        Map.of(
                                "roadName",
                                "n",
                                "ref",
                                "no",
                                "roadClass",
                                "cl",
                                "speedLimit",
                                "max",
                                "aadt",
                                "dtv",
                                "owner",
                                "by",
                                "carriageway",
                                "side",
                                "startMeasure",
                                "km",
                                "startMeasureUnit",
                                "km"),
                        file)
                .statusCode(201)
                .extract()
                .jsonPath();
        assertThat(made.getMap("leftOut"))
                .containsOnly(Map.entry("no course", 1), Map.entry("not a line but a Point", 1));
        assertThat(made.getMap("notUnderstood")).containsOnly(Map.entry("speedLimit", 2), Map.entry("aadt", 1));
        Json links = Api.get(RESCUER, "/api/road-networks/current/links");
        Map<String, Object> first = links.getMap("features[0].properties");
        assertThat(first)
                .containsEntry("roadName", "Mill Road")
                .containsEntry("ref", "B1")
                .containsEntry("roadClass", "primary")
                .containsEntry("speedLimitKmh", 97)
                .containsEntry("aadt", 12000)
                .containsEntry("owner", "Upper Shire")
                .containsEntry("carriageway", "N")
                .containsEntry("fromChainageMetres", 12500.0);
        assertThat(links.getMap("features[1].properties"))
                .containsEntry("speedLimitKmh", null)
                .containsEntry("aadt", null);
        assertThat(links.getString("features[2].properties.roadName")).isEqualTo("unnamed road (line 3)");
        assertThat(links.getDouble("features[4].properties.fromChainageMetres")).isGreaterThan(1000);
    }

    /** The same road in Map Grid of Australia zone 56 and in degrees; the grid's values are our own projection of it. */
    @Test
    void aFileInAGridIsLaidOnTheEarth() {
        Grid mga = Projections.grid(28356);
        EastingNorthing west = mga.forward(new Position(-30.5, 150.6));
        EastingNorthing east = mga.forward(new Position(-30.5, 150.61));
        String line = "[%s,%s],[%s,%s]".formatted(west.easting(), west.northing(), east.easting(), east.northing());
        String inFile = "{\"type\":\"FeatureCollection\",\"crs\":{\"type\":\"name\",\"properties\":{\"name\":"
                + "\"urn:ogc:def:crs:EPSG::28356\"}},\"features\":[" + line("Mill Road", line) + "]}";
        importRoads(ADMIN, Map.of("roadName", "name"), inFile).statusCode(201).body("sourceCrs", equalTo("EPSG:28356"));
        assertStartsAt(-30.5, 150.6);
        importRoads(ADMIN, Map.of("roadName", "name", "crs", "EPSG:28356"), collection(line("Mill Road", line)))
                .statusCode(201);
        assertStartsAt(-30.5, 150.6);
    }

    private static void assertStartsAt(double latitude, double longitude) {
        Json links = Api.get(RESCUER, "/api/road-networks/current/links");
        assertThat(links.getDouble("features[0].geometry.coordinates[0][0]")).isCloseTo(longitude, within(1e-6));
        assertThat(links.getDouble("features[0].geometry.coordinates[0][1]")).isCloseTo(latitude, within(1e-6));
    }

    @Test
    void whatIsWrongIsRefusedAndSaysWhere() {
        String good = collection(line("Mill Road", "[0,0],[0.01,0]"));
        importRoads(ADMIN, Map.of("roadName", "nom", "aadt", "dtv"), good)
                .statusCode(400)
                .contentType("application/problem+json")
                .body("errors.field", equalTo(List.of("roadName", "aadt")))
                .body("errors[0].wanted", containsString("name"));
        importRoads(ADMIN, Map.of("roadName", "name"), good.replace("\"name\"", "\"\""))
                .statusCode(400)
                .body("errors[0].wanted", not(emptyString()));
        importRoads(ADMIN, Map.of("crs", "EPSG:99999"), good).statusCode(400).body("errors[0].field", equalTo("crs"));
        importRoads(ADMIN, Map.of("speedUnit", "knots"), good)
                .statusCode(400)
                .body("errors[0].field", equalTo("speedUnit"));
        String badPosition = collection(line("A", "[0,0],[0.01,0]"), line("B", "[0,0],[\"x\",0]"));
        importRoads(ADMIN, Map.of(), badPosition)
                .statusCode(400)
                .body("errors[0].field", equalTo("features.1.geometry"))
                .body("errors[0].detail", containsString("feature 2"));
        String swapped = collection(line("A", "[-33.8,151.2],[-33.9,151.3]"));
        importRoads(ADMIN, Map.of(), swapped)
                .statusCode(400)
                .body("errors[0].field", equalTo("features.0.geometry"))
                .body("errors[0].detail", containsString("swapped"));
        importRoads(ADMIN, Map.of(), collection(line("A", "[1,1],[1,1]")))
                .statusCode(400)
                .body("errors[0].field", equalTo("features"));
        importRoads(ADMIN, Map.of(), "{\"type\":\"FeatureCollection\",\"features\":[{\"type\"")
                .statusCode(400)
                .body("errors[0].field", equalTo("body"));
        importRoads(ADMIN, Map.of(), "{\"type\":\"FeatureCollection\"}")
                .statusCode(400)
                .body("errors[0].detail", containsString("feature collection"));
        importRoads(ADMIN, Map.of(), collection(line("A", "[1,1],".repeat(260_000) + "[2,2]")))
                .statusCode(400)
                .body("errors[0].detail", equalTo("Feature 1 is longer than any road."));
        importRoads(ADMIN, Map.of(), "[1]").statusCode(400).body("errors[0].field", equalTo("body"));
    }

    @Test
    void aFileWithLatitudeFirstIsASlipWhenTheRegionIsElsewhere() {
        World.shared();
        // The region is around 30.5 south, 150 east: with signs lost and swapped nothing fits, with the sign lost it
        // does.
        importRoads(ADMIN, Map.of(), collection(line("A", "[150.0,30.5],[150.1,30.5]")))
                .statusCode(400)
                .body("errors[0].field", equalTo("features"))
                .body("errors[0].otherReading.latitude", equalTo(-30.5));
    }

    @Test
    void linksComeByBoxAndPageByPage() {
        importRoads(
                        ADMIN,
                        Map.of("roadName", "name"),
                        collection(
                                line("A", "[0,0],[0.01,0]"),
                                line("B", "[1,0],[1.01,0]"),
                                line("C", "[0.005,0.001],[0.006,0.001]")))
                .statusCode(201);
        Request asked = Api.as(ROADS_AUTHORITY).queryParam("bbox", "-0.1,-0.1,0.1,0.1");
        asked.get("/api/road-networks/current/links")
                .then()
                .statusCode(200)
                .contentType("application/geo+json")
                .body("type", equalTo("FeatureCollection"))
                .body("features.properties.roadName", equalTo(List.of("A", "C")));
        Json first = Api.get(RESCUER, "/api/road-networks/current/links?limit=2");
        assertThat(first.getInt("numberReturned")).isEqualTo(2);
        Json second = Api.get(RESCUER, "/api/road-networks/current/links?limit=2&cursor=" + first.getString("next"));
        assertThat(second.getList("features.properties.roadName")).containsExactly("C");
        assertThat(second.getString("next")).isNull();
        for (String wrong : List.of("bbox=1,2,3", "bbox=a,b,c,d", "cursor=0-5", "cursor=x", "limit=0")) {
            Api.as(RESCUER)
                    .get("/api/road-networks/current/links?" + wrong)
                    .then()
                    .statusCode(400)
                    .body("errors", hasSize(1));
        }
    }

    @Test
    void onlyThoseWhoLookAfterTheNetworkImport() {
        String good = collection(line("Mill Road", "[0,0],[0.01,0]"));
        importRoads(RESCUER, Map.of(), good).statusCode(403);
        importRoads(ROADS_AUTHORITY, Map.of(), good).statusCode(403);
        Request.given().get("/api/road-networks").then().statusCode(401);
        Request.given().get("/api/road-networks/current/links").then().statusCode(401);
    }

    @Test
    void roadsAreSuggestedWhileTyping() {
        importRoads(
                        ADMIN,
                        Map.of("roadName", "name"),
                        collection(line("Mill Road", "[0,0],[0.01,0]"), line("Old Mill Lane", "[0,1],[0.01,1]")))
                .statusCode(201);
        Api.as(RESCUER)
                .get("/api/roads?q=mil")
                .then()
                .statusCode(200)
                .body("roadName", equalTo(List.of("Mill Road", "Old Mill Lane")));
        Api.as(RESCUER)
                .queryParam("q", "MILL RD")
                .get("/api/roads")
                .then()
                .statusCode(200)
                .body("roadName", hasItem("Mill Road"));
        Api.as(RESCUER).get("/api/roads").then().statusCode(200).body("", hasSize(0));
    }

    private static Answer importRoads(String role, Map<String, String> parameters, String body) {
        return Api.as(role)
                .contentType("application/geo+json")
                .queryParams(parameters)
                .body(body)
                .post("/api/road-networks")
                .then();
    }

    private static String roxel() {
        return CheckFiles.text("/roads/roxel.geojson");
    }

    static String collection(String... features) {
        return "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}";
    }

    static String line(String name, String positions) {
        return feature(Map.of("name", name), positions);
    }

    static String feature(Map<String, Object> properties, String positions) {
        StringBuilder text = new StringBuilder();
        properties.forEach((name, value) -> text.append(text.length() == 0 ? "" : ",")
                .append('"')
                .append(name)
                .append("\":")
                .append(value instanceof String ? "\"" + value + "\"" : value));
        return "{\"type\":\"Feature\",\"properties\":{" + text
                + "},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[" + positions + "]}}";
    }
}
