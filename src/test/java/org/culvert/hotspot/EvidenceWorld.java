package org.culvert.hotspot;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import java.util.Locale;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.platform.Patience;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.jspecify.annotations.Nullable;

/**
 * Roads and collisions with one planted stretch, all in one year, for tests of hotspot runs.
 *
 * <p>Six roads from west to east ("Row Road 0" to "5") and six from south to north ("Column Road 0" to "5"), 0.02 degrees
 * apart, chainage from 0, and a service road some 40 m south of Row Road 0 that meets none. Rows 0 to 2 and all columns belong to Upper Shire, rows 3 to 5 to Lower Shire. Row Road 4 has
 * eight wallabies within some 150 m in June, and everything else is strewn about.
 */
final class EvidenceWorld {
    static final double SOUTH = -31.5;
    static final double WEST = 150.5;
    static final double STEP = 0.02;
    static final double PLANTED_LONGITUDE = WEST + 0.05;
    static final int PLANTED = 8;
    static final int SCATTERED_WALLABIES = 24;
    static final int SCATTERED_TURTLES = 90;

    private static final String NETWORK = "evidence roads";
    private static int year;

    private EvidenceWorld() {}

    /** Makes the roads the current ones; if another test has made others so since, strews everything anew a year earlier. */
    static synchronized void make() {
        if (year != 0
                && Api.get(ADMIN, "/api/road-networks").getString("[0].name").equals(NETWORK)) {
            return;
        }
        World.shared();
        year = year == 0 ? 2019 : year - 2;
        importRoads();
        strew();
    }

    static int year() {
        return year;
    }

    /** The day of one of the planted wallabies: apart, since those of one night are no collisions one by one. */
    static String plantedDay(int i) {
        return text("%d-06-%02d", year, 2 + 3 * i);
    }

    private static void importRoads() {
        importRoads(NETWORK, 0, "");
    }

    /**
     * The same roads once more, as a survey of another year has them.
     *
     * @param name of the network
     * @param north how far they lie further north, in degrees
     * @param more features that are there besides, each after a comma
     */
    static void importRoads(String name, double north, String more) {
        var features = new StringBuilder();
        features.append(text(
                "{\"type\":\"Feature\",\"properties\":{\"name\":\"Service Road\",\"class\":\"service\",\"aadt\":50,"
                        + "\"owner\":\"Upper Shire\",\"start\":0},\"geometry\":{\"type\":\"LineString\",\"coordinates\":"
                        + "[[%.5f,%.5f],[%.5f,%.5f]]}}",
                WEST + 0.003, SOUTH + north - 0.0004, WEST + 0.012, SOUTH + north - 0.0004));
        for (int line = 0; line < 6; line++) {
            features.append(',').append(road("Row Road", line, true, north));
            features.append(',').append(road("Column Road", line, false, north));
        }
        Api.as(ADMIN)
                .contentType("application/geo+json")
                .queryParam("name", name)
                .queryParam("roadName", "name")
                .queryParam("roadClass", "class")
                .queryParam("aadt", "aadt")
                .queryParam("owner", "owner")
                .queryParam("startMeasure", "start")
                .body("{\"type\":\"FeatureCollection\",\"features\":[" + features + more + "]}")
                .post("/api/road-networks")
                .then()
                .statusCode(201);
    }

    private static String road(String name, int line, boolean row, double north) {
        var coordinates = new StringBuilder();
        for (int i = 0; i < 6; i++) {
            double latitude = SOUTH + north + STEP * (row ? line : i);
            double longitude = WEST + STEP * (row ? i : line);
            coordinates.append(i == 0 ? "" : ",").append(text("[%.5f,%.5f]", longitude, latitude));
        }
        return text(
                "{\"type\":\"Feature\",\"properties\":{\"name\":\"%s %d\",\"class\":\"%s\",\"aadt\":%d,\"owner\":\"%s\","
                        + "\"start\":0},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[%s]}}",
                name,
                line,
                row ? "primary" : "secondary",
                row ? 4000 : 500,
                row && line >= 3 ? "Lower Shire" : "Upper Shire",
                coordinates);
    }

    private static void strew() {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(2019L);
        for (int i = 0; i < PLANTED; i++) {
            call("Wallabia bicolor", row(4), PLANTED_LONGITUDE + 0.0002 * i, plantedDay(i));
        }
        for (int i = 0; i < SCATTERED_WALLABIES; i++) {
            strewn("Wallabia bicolor", random);
        }
        for (int i = 0; i < SCATTERED_TURTLES; i++) {
            strewn("Chelodina longicollis", random);
        }
        // What must not count: another cause, no place, far from any road, a time that may or may not be in the period
        Api.make(DISPATCHER, "/api/calls", text("""
                {"receivedAt":"%d-05-01T01:00:00Z","happenedAt":"%d-05-01T00:00:00Z","cause":"orphaned"}
                """, year, year));
        Api.make(DISPATCHER, "/api/calls", text("""
                {"receivedAt":"%d-05-01T01:00:00Z","happenedAt":"%d-05-01T00:00:00Z","cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"Wallabia bicolor"}]}
                """, year, year));
        call("Wallabia bicolor", SOUTH - 0.3, WEST, year + "-05-02");
        Api.make(DISPATCHER, "/api/calls", text("""
                {"receivedAt":"%d-01-02T01:00:00Z","happenedNotBefore":"%d-12-30T00:00:00Z",
                 "cause":"collisionWithVehicle","animals":[{"scientificName":"Wallabia bicolor"}],
                 "place":{"decimalDegrees":{"latitude":"%.5f","longitude":"%.5f"}}}
                """, year, year - 1, row(1), WEST + 0.005));
        // So near a crossing that either road may be the one: the roads meet there, so it counts
        call("Wallabia bicolor", row(1) + 0.00015, WEST + 3 * STEP + 0.0001, year + "-08-03");
        // Between a highway and the service road beside it, which do not meet
        call("Wallabia bicolor", SOUTH - 0.0002, WEST + 0.007, year + "-08-04");
        // The same wallaby by a second driver, joined by hand
        String one =
                call("Wallabia bicolor", row(2), WEST + 0.013, year + "-07-01").getString("incidentId");
        String two =
                call("Wallabia bicolor", row(2), WEST + 0.0131, year + "-07-01").getString("incidentId");
        Api.post(DISPATCHER, "/api/incidents/" + one + "/joins", "{\"incidentId\":\"" + two + "\",\"reason\":\"same\"}")
                .statusCode(200);
    }

    private static double row(int row) {
        return SOUTH + STEP * row;
    }

    private static void strewn(String name, UniformRandomProvider random) {
        // Never so near a crossing that two roads would be equally likely
        double along = STEP * (random.nextInt(5) + 0.05 + 0.9 * random.nextDouble());
        int line = random.nextInt(6);
        // Nor on the road with the planted stretch
        boolean row = line != 4 && random.nextBoolean();
        String day = text("%d-%02d-%02d", year, 1 + random.nextInt(12), 2 + random.nextInt(26));
        if (row && line == 0 && along < 0.013) {
            along += 0.02;
        }
        call(name, row ? row(line) : SOUTH + along, row ? WEST + along : WEST + STEP * line, day);
    }

    static Json call(String name, double latitude, double longitude, String day) {
        return Api.make(DISPATCHER, "/api/calls", text("""
                {"receivedAt":"%sT03:00:00Z","happenedAt":"%sT02:00:00Z","cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"%s","individualCount":2,"vitality":"dead"}],
                 "place":{"decimalDegrees":{"latitude":"%.5f","longitude":"%.5f"}}}
                """, day, day, name, latitude, longitude));
    }

    /** Asks for a run of that year with some more settings, and waits until it has come to its end. */
    static String run(String more) {
        String id = start(more);
        Patience.until("hotspot run " + id, () -> {
            String state = Api.get(ROADS_AUTHORITY, "/api/hotspot-runs/" + id).getString("state");
            return state.equals("done") || state.equals("failed");
        });
        return id;
    }

    static String start(String more) {
        return Api.post(ROADS_AUTHORITY, "/api/hotspot-runs", entry(more))
                .statusCode(202)
                .extract()
                .path("id");
    }

    static String entry(@Nullable String more) {
        return text(
                "{\"periodFrom\":\"%d-01-01\",\"periodTo\":\"%d-12-31\",\"reachMetres\":300%s}",
                year, year, more == null ? "" : more);
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
