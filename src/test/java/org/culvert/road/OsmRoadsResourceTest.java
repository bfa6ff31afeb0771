package org.culvert.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.culvert.road.osm.OsmFile;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

/** Roads of an extract of OpenStreetMap. Tags mean what wiki.openstreetmap.org says of them (Key:highway, Key:oneway, Key:maxspeed). */
@QuarkusTest
class OsmRoadsResourceTest {
    private static Answer send(OsmFile file, String query) {
        return Api.as(COORDINATOR)
                .contentType("application/x-osm-pbf")
                .body(file.octets())
                .post("/api/road-networks?name=extract" + query)
                .then();
    }

    private static Map<String, Map<String, Object>> linksByName() {
        Json links = Api.get(RESCUER, "/api/road-networks/current/links?limit=1000");
        Map<String, Map<String, Object>> byName = new HashMap<>();
        for (Map<String, Object> properties : links.<Map<String, Object>>getList("features.properties")) {
            byName.put(properties.get("roadName") + " " + properties.get("carriageway"), properties);
        }
        return byName;
    }

    private static Map<String, String> tags(String... keysAndValues) {
        Map<String, String> tags = new HashMap<>();
        for (int i = 0; i < keysAndValues.length; i += 2) {
            tags.put(keysAndValues[i], keysAndValues[i + 1]);
        }
        return tags;
    }

    /*
     *  Creek Road crosses above the A7 on a bridge with a node over each of its carriageways, and meets none of them; Mill
     *  Lane meets Creek Road at a node that both have.
     */
    @Test
    void tagsBecomeWhatIsKnownOfARoad() {
        World.shared();
        OsmFile file = new OsmFile()
                .way(
                        1,
                        tags(
                                "highway",
                                "trunk",
                                "name",
                                "Great Road",
                                "ref",
                                "A7",
                                "maxspeed",
                                "60 mph",
                                "oneway",
                                "yes",
                                "lanes",
                                "2"),
                        150.00,
                        -30.60,
                        150.05,
                        -30.60,
                        150.10,
                        -30.60)
                .way(
                        2,
                        tags(
                                "highway",
                                "trunk",
                                "name",
                                "Great Road",
                                "ref",
                                "A7",
                                "maxspeed",
                                "100",
                                "oneway",
                                "-1",
                                "lanes",
                                "3"),
                        150.00,
                        -30.6003,
                        150.05,
                        -30.6003,
                        150.10,
                        -30.6003)
                .way(
                        3,
                        tags(
                                "highway",
                                "unclassified",
                                "name",
                                "Creek Road",
                                "bridge",
                                "yes",
                                "layer",
                                "1",
                                "maxspeed",
                                "RU:urban"),
                        150.05,
                        -30.599,
                        150.05,
                        -30.60,
                        150.05,
                        -30.6003,
                        150.05,
                        -30.602)
                .way(
                        4,
                        tags("highway", "residential", "name", "Mill Lane", "oneway", "no"),
                        150.05,
                        -30.599,
                        150.06,
                        -30.599)
                .way(5, tags("highway", "residential", "name", "Mill Lane"), 150.06, -30.599, 150.07, -30.599)
                .way(6, tags("highway", "footway", "name", "Bank Path"), 150.00, -30.61, 150.01, -30.61)
                .way(7, tags("highway", "service", "access", "no"), 150.00, -30.62, 150.01, -30.62)
                .way(
                        8,
                        tags("highway", "track", "access", "no", "motor_vehicle", "permit"),
                        150.0,
                        -30.63,
                        150.01,
                        -30.63)
                .way(9, tags("waterway", "stream", "name", "Mill Creek"), 150.00, -30.64, 150.01, -30.64)
                .way(
                        10,
                        tags("highway", "tertiary", "name", "Round", "junction", "roundabout"),
                        150.02,
                        -30.65,
                        150.0201,
                        -30.65,
                        150.0201,
                        -30.6501,
                        150.02,
                        -30.65);
        Json made = send(file, "")
                .statusCode(201)
                .body("lines", equalTo(9))
                .body("linesUsed", equalTo(7))
                .body("sourceCrs", equalTo("OGC:CRS84"))
                .body("attributeNames.speedLimit", equalTo("maxspeed"))
                .extract()
                .jsonPath();
        assertThat(made.<Integer>getMap("leftOut"))
                .containsOnly(
                        Map.entry("not for motor traffic: highway=footway", 1),
                        Map.entry("closed to motor traffic", 1));
        assertThat(made.<Integer>getMap("notUnderstood")).containsOnly(Map.entry("speedLimit", 1));
        Map<String, Map<String, Object>> links = linksByName();
        assertThat(links.get("Great Road eastbound"))
                .containsEntry("ref", "A7")
                .containsEntry("roadClass", "trunk")
                .containsEntry("speedLimitKmh", 97)
                .containsEntry("oneWay", true)
                .containsEntry("lanes", 2);
        assertThat(links.get("Great Road westbound"))
                .containsEntry("speedLimitKmh", 100)
                .containsEntry("oneWay", true)
                .containsEntry("lanes", 3);
        assertThat(links.get("Creek Road null"))
                .containsEntry("structure", "bridge")
                .containsEntry("level", 1)
                .containsEntry("speedLimitKmh", null)
                .containsEntry("oneWay", null);
        assertThat(links.get("Mill Lane null")).containsKey("oneWay");
        assertThat(links.get("Round null")).containsEntry("oneWay", true).containsEntry("carriageway", null);
        // The great road is in one piece each way: what crosses above it does not cut it
        assertThat(Api.get(RESCUER, "/api/road-networks/current/links?limit=1000")
                        .<String>getList("features.properties.roadName"))
                .filteredOn("Great Road"::equals)
                .hasSize(2);
        assertThat(made.getInt("joinedNodes"))
                .as("Mill Lane with Creek Road, and with itself, and the roundabout with itself")
                .isEqualTo(3);
    }

    @Test
    void otherTagsAreReadWhereTheyAreNamed() {
        World.shared();
        OsmFile file = new OsmFile()
                .way(
                        1,
                        tags(
                                "highway",
                                "primary",
                                "name",
                                "Mill Road",
                                "traffic:aadt",
                                "4100",
                                "operator",
                                "Upper Shire"),
                        150.00,
                        -30.60,
                        150.05,
                        -30.60);
        send(file, "&aadt=traffic:aadt&owner=operator").statusCode(201);
        assertThat(linksByName().get("Mill Road null"))
                .containsEntry("aadt", 4100)
                .containsEntry("owner", "Upper Shire");
        send(file, "&aadt=dtv").statusCode(400).body("errors.field", equalTo(List.of("aadt")));
        send(file, "&crs=EPSG:28356").statusCode(400).body("errors.field", equalTo(List.of("crs")));
    }

    @Test
    void whatIsNoExtractIsRefused() {
        send(new OsmFile().way(1, tags("highway", "footway"), 150, -30, 150.1, -30), "")
                .statusCode(400)
                .body("errors[0].field", equalTo("features"));
        Api.as(COORDINATOR)
                .contentType("application/x-osm-pbf")
                .body(new byte[3000])
                .post("/api/road-networks")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("body"));
    }
}
