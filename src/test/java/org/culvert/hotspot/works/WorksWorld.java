package org.culvert.hotspot.works;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.DISPATCHER;

import java.util.Locale;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.support.Api;
import org.culvert.support.World;

/**
 * Three roads and what was struck on them, for questions about stretches and works.
 *
 * <pre>
 *   Back Road    secondary   5 km   one turtle in 2017
 *   Works Road   primary     6 km   turtles, fewer by far between 2.0 and 4.0 km after 2019
 *   Long Road    primary    20 km   turtles, as many in 2016 to 2018 as in 2020 to 2022
 * </pre>
 *
 * <p>No traffic is known anywhere. Chainage is from 0 at the west end.
 */
final class WorksWorld {
    /** Turtles on each kilometre of Long Road, in the three years before 2019 and again in the three after. */
    static final int[] LONG_ROAD = {0, 0, 1, 0, 4, 0, 0, 2, 0, 0, 7, 0, 0, 1, 0, 3, 0, 0, 0, 2};

    static final int INSIDE_BEFORE = 12;
    static final int INSIDE_AFTER = 1;
    static final int ENDS_BEFORE = 1;
    static final int ENDS_AFTER = 2;
    static final int BEYOND_BEFORE = 1;
    static final int BEYOND_AFTER = 1;
    static final String TURTLE = "Chelodina longicollis";
    static final String RARE = "Testudo occulta";

    private static final double WEST = 150.2;
    private static final double LONG_EAST = 150.4112;
    private static final double WORKS_EAST = 150.2633;
    private static final double BACK_EAST = 150.2527;
    private static final String NETWORK = "works roads";

    private WorksWorld() {}

    /** Makes the roads the current ones; if another test has made others so since, everything happens on them anew. */
    static synchronized void make() {
        if (!Api.get(ADMIN, "/api/road-networks").getList("name").isEmpty()
                && NETWORK.equals(Api.get(ADMIN, "/api/road-networks").getString("[0].name"))) {
            return;
        }
        World.shared();
        Api.post(ADMIN, "/api/taxon-groups", """
                [{"key":"occulta","name":"hidden tortoises","pouch":false,"clutches":true,"introduced":false}]
                """).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"hidden tortoise","taxonRank":"species","taxonGroup":"occulta",
                  "sensitivityGridDegrees":0.1,"sensitivityReason":"collected","sensitivityReviewBy":"2090-01-01"}]
                """.formatted(RARE)).statusCode(200);
        importRoads();
        strike();
    }

    static double longRoadMetres() {
        return metres(-31.8, LONG_EAST);
    }

    static double worksRoadMetres() {
        return metres(-31.7, WORKS_EAST);
    }

    private static double metres(double latitude, double east) {
        return Geodesy.WGS84
                .inverse(new Position(latitude, WEST), new Position(latitude, east))
                .metres();
    }

    private static void importRoads() {
        Api.as(ADMIN)
                .contentType("application/geo+json")
                .queryParam("name", NETWORK)
                .queryParam("roadName", "name")
                .queryParam("roadClass", "class")
                .queryParam("owner", "owner")
                .queryParam("startMeasure", "start")
                .body("{\"type\":\"FeatureCollection\",\"features\":["
                        + road("Long Road", "primary", -31.8, LONG_EAST) + ","
                        + road("Works Road", "primary", -31.7, WORKS_EAST) + ","
                        + road("Back Road", "secondary", -31.6, BACK_EAST) + "]}")
                .post("/api/road-networks")
                .then()
                .statusCode(201);
    }

    private static String road(String name, String roadClass, double latitude, double east) {
        return text(
                "{\"type\":\"Feature\",\"properties\":{\"name\":\"%s\",\"class\":\"%s\",\"owner\":\"Upper Shire\","
                        + "\"start\":0},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[%.4f,%.4f],[%.4f,%.4f]]}}",
                name, roadClass, WEST, latitude, east, latitude);
    }

    private static void strike() {
        for (int kilometre = 0; kilometre < LONG_ROAD.length; kilometre++) {
            for (int i = 0; i < LONG_ROAD[kilometre]; i++) {
                double metres = 1000 * kilometre + 200 + 50 * i;
                struck(TURTLE, "Long Road", metres, (2016 + i % 3) + "-03-05");
                struck(TURTLE, "Long Road", metres, (2020 + i % 3) + "-03-05");
            }
        }
        for (int i = 0; i < INSIDE_BEFORE; i++) {
            struck(
                    TURTLE,
                    "Works Road",
                    2100 + 150 * i,
                    (i < 8 ? 2016 : 2018) + "-" + (i % 2 == 0 ? "03" : "10") + "-10");
        }
        struck(TURTLE, "Works Road", 1800, "2016-03-11");
        struck(TURTLE, "Works Road", 5000, "2018-03-11");
        struck(TURTLE, "Works Road", 3000, "2021-03-11");
        struck(TURTLE, "Works Road", 1900, "2020-03-11");
        struck(TURTLE, "Works Road", 4100, "2022-03-11");
        struck(TURTLE, "Works Road", 1000, "2021-03-12");
        struck(TURTLE, "Back Road", 1000, "2017-03-12");
        struck("Wallabia bicolor", "Works Road", 2500, "2017-05-01");
        struck("Wallabia bicolor", "Works Road", 2600, "2018-05-01");
        for (int i = 0; i < 6; i++) {
            struck(RARE, "Works Road", 3000 + i, "2017-06-0" + (i + 1));
        }
    }

    private static void struck(String name, String road, double metres, String day) {
        Api.make(DISPATCHER, "/api/calls", text("""
                {"receivedAt":"%sT03:00:00Z","happenedAt":"%sT02:00:00Z","cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"%s","individualCount":1,"vitality":"dead"}],
                 "place":{"roadAndChainage":{"road":"%s","chainageKilometres":"%.3f"},"uncertaintyMetres":10}}
                """, day, day, name, road, metres / 1000));
    }

    /** Works on Works Road from 2.0 to 4.0 km through 2019, with 500 m of ends. */
    static String fence(String more) {
        return entry("Works Road", 2000, 4000, "2019-01-01", "\"2019-12-31\"", more);
    }

    static String entry(String road, int from, int to, String builtFrom, String builtUntil, String more) {
        return text(
                "{\"kind\":\"fence\",\"words\":\"a fence of 1.8 m\",\"road\":\"%s\",\"fromChainageMetres\":%d,"
                        + "\"toChainageMetres\":%d,\"endsMetres\":500,\"builtFrom\":\"%s\",\"builtUntil\":%s%s}",
                road, from, to, builtFrom, builtUntil, more);
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
