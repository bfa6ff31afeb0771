package org.culvert.hotspot;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.platform.Patience;
import org.culvert.platform.Role;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;

/**
 * Evidence in which every text that a page of road evidence can show is markup, script and template at once: names and
 * owners of roads, a season window, a group of animals, works. Three roads side by side, of which one has a hotspot.
 */
public final class HostileEvidence {
    /** Breaks out of an attribute and of a text, runs as an element, a script and a handler, and counts in a template. */
    public static final String TEXT =
            "\"><img src=x onerror=window.pwned=1><script>window.pwned=2</script>' onfocus='pwned=3' {1+1} ${7*7}";

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final double SOUTH = -31.9;
    private static final double WEST = 149.5;
    private static final int YEAR = 2011;

    private HostileEvidence() {}

    /** Lays it all and computes a run; returns its identifier. */
    public static String make() {
        World.shared();
        Api.as(ADMIN)
                .body(json(List.of(Map.of(
                        "key", "hostile", "name", TEXT, "pouch", false, "clutches", false, "introduced", false))))
                .post("/api/taxon-groups")
                .then()
                .statusCode(200);
        Api.as(ADMIN)
                .body(json(List.of(Map.of(
                        "scientificName", "Testudo hostilis",
                        "vernacularName", TEXT,
                        "taxonRank", "species",
                        "taxonGroup", "hostile"))))
                .post("/api/taxa")
                .then()
                .statusCode(200);
        Api.as(COORDINATOR)
                .body(json(Map.of(
                        "taxonGroup", "hostile",
                        "name", TEXT,
                        "hemisphere", "southern",
                        "from", "--01-01",
                        "to", "--12-31",
                        "source", TEXT,
                        "readOn", "2020-01-01",
                        "validFrom", "2010-01-01")))
                .post("/api/season-windows")
                .then()
                .statusCode(201);
        importRoads();
        for (int i = 0; i < 10; i++) {
            EvidenceWorld.call("Testudo hostilis", SOUTH, WEST + 0.05 + 0.0002 * i, YEAR + "-06-1" + i);
        }
        for (int i = 0; i < 45; i++) {
            EvidenceWorld.call(
                    "Wallabia bicolor", SOUTH + 0.02 * (i % 3), WEST + 0.004 + 0.002 * i, YEAR + "-03-1" + i % 10);
        }
        return run();
    }

    /** Works on the road with the hotspot, with a text wherever people may write one; returns their identifier. */
    public static String makeWorks() {
        return Api.make(
                        COORDINATOR,
                        "/api/works",
                        json(Map.of(
                                "kind",
                                "fence",
                                "words",
                                TEXT,
                                "road",
                                "0" + TEXT,
                                "fromChainageMetres",
                                4000,
                                "toChainageMetres",
                                6000,
                                "endsMetres",
                                300,
                                "builtFrom",
                                YEAR + "-08-01",
                                "builtUntil",
                                YEAR + "-08-31",
                                "effortChange",
                                "effort" + TEXT,
                                "publicityChange",
                                "publicity" + TEXT)))
                .getString("id");
    }

    /** The year in which everything happened, as it stands in the address of a page that asks about it. */
    public static int year() {
        return YEAR;
    }

    private static void importRoads() {
        List<Object> features = new ArrayList<>();
        for (int road = 0; road < 3; road++) {
            double latitude = SOUTH + 0.02 * road;
            features.add(Map.of(
                    "type", "Feature",
                    "properties",
                            Map.of("name", road + TEXT, "class", "primary", "aadt", 900, "owner", TEXT, "start", 0),
                    "geometry",
                            Map.of(
                                    "type",
                                    "LineString",
                                    "coordinates",
                                    List.of(
                                            List.of(WEST, latitude),
                                            List.of(WEST + 0.05, latitude),
                                            List.of(WEST + 0.1, latitude)))));
        }
        Api.as(ADMIN)
                .contentType("application/geo+json")
                .queryParam("name", TEXT)
                .queryParam("roadName", "name")
                .queryParam("roadClass", "class")
                .queryParam("aadt", "aadt")
                .queryParam("owner", "owner")
                .queryParam("startMeasure", "start")
                .body(json(Map.of("type", "FeatureCollection", "features", features)))
                .post("/api/road-networks")
                .then()
                .statusCode(201);
    }

    private static String run() {
        Json run = Api.as(Role.ROADS_AUTHORITY)
                .body(json(Map.of(
                        "periodFrom",
                        YEAR + "-01-01",
                        "periodTo",
                        YEAR + "-12-31",
                        "seasonWindow",
                        TEXT,
                        "taxonGroup",
                        "hostile",
                        "owner",
                        TEXT,
                        "reachMetres",
                        300,
                        "simulations",
                        99)))
                .post("/api/hotspot-runs")
                .then()
                .statusCode(202)
                .extract()
                .jsonPath();
        String id = run.getString("id");
        Patience.until(
                "hotspot run " + id,
                () -> !List.of("waiting", "computing")
                        .contains(Api.get(Role.ROADS_AUTHORITY, "/api/hotspot-runs/" + id)
                                .getString("state")));
        return id;
    }

    public static String json(Object value) {
        try {
            return JSON.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
