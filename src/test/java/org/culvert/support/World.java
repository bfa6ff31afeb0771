package org.culvert.support;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A small world for tests: two roads, two kinds of animal, a clinic, members with and without papers.
 *
 * <pre>
 *            River Lane (no limit known)
 *                 |
 *   Mill Road ----+---------------  100 km/h, chainage from west to east, 2,000 m at its west end
 *                 |
 * </pre>
 */
public final class World {
    public static final double LATITUDE = -30.5;
    public static final double WEST = 150.0;
    public static final double EAST = 150.1;
    public static final double CROSSING = 150.05;
    public static final double MILL_ROAD_STARTS_AT_METRES = 2000;

    private static final String ROADS = "test roads";
    private static @Nullable World shared;

    public final String clinic;
    public final String network;
    public final String rescuer;
    public final String helper;
    public final String vaccinated;
    public final String carer;
    public final String unlicensedCarer;
    public final String incubatorKeeper;

    private World() {
        tellRegion();
        tellAnimals();
        importRoads();
        network = organisation("network", -30.4, 150.02);
        clinic = organisation("clinic", -30.45, 150.03);
        rescuer = member(true, false, -30.49, 150.01);
        helper = member(true, false, -30.6, 150.2);
        vaccinated = member(true, false, -30.7, 150.3);
        carer = member(false, true, -30.48, 150.06);
        unlicensedCarer = member(false, true, -30.48, 150.07);
        incubatorKeeper = member(false, true, -30.44, 150.08);
        TestAccounts.belong(RESCUER, rescuer, null);
        TestAccounts.belong(CARER, carer, null);
        TestAccounts.belong(CLINIC, null, clinic);
        authorise(carer, "turtles");
        authorise(incubatorKeeper, "turtles");
        Api.make(ADMIN, "/api/vaccinations", """
                {"memberId":"%s","against":"lyssavirus","givenOn":"2010-01-01","currentUntil":"2090-01-01","basis":"booster"}
                """.formatted(vaccinated));
    }

    /** The one world of a test run; its roads are made the current network again, whatever was imported since. */
    public static World shared() {
        World world = shared;
        if (world == null) {
            world = new World();
            shared = world;
        } else if (!Api.get(ADMIN, "/api/road-networks").getString("[0].name").equals(ROADS)) {
            importRoads();
        }
        return world;
    }

    /** A vet signs that all of an animal is as it should be; without that it is not let go. */
    public static void signFit(String caseId, String at) {
        String items = java.util.Arrays.stream(org.culvert.release.rules.FitnessCheck.Aspect.values())
                .map(aspect -> "{\"aspect\":\"" + aspect + "\",\"answer\":\"fit\"}")
                .collect(java.util.stream.Collectors.joining(","));
        Api.make(COORDINATOR, "/api/cases/" + caseId + "/fitness-checks", """
                {"at":"%s","vetName":"Dr Vet","vetRegistration":"V-1","housedWithPets":"no","items":[%s]}
                """.formatted(at, items));
    }

    private static void tellRegion() {
        Api.as(ADMIN).body("""
                        {"name":"Test region","timeZone":"Australia/Sydney","countryCode":"AU",
                         "south":-32,"west":149,"north":-29,"east":152,"demo":false}
                        """).put("/api/region").then().statusCode(200);
    }

    private static void tellAnimals() {
        Api.post(ADMIN, "/api/taxon-groups", """
                        [{"key":"turtles","name":"freshwater turtles","pouch":false,"clutches":true,"introduced":false},
                         {"key":"macropods","name":"kangaroos and wallabies","pouch":true,"clutches":false,"introduced":false},
                         {"key":"koalas","name":"koalas","pouch":true,"clutches":false,"introduced":false},
                         {"key":"flying-foxes","name":"flying-foxes","vaccinationNeeded":"lyssavirus","pouch":false,
                          "clutches":false,"introduced":false}]
                        """).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                        [{"scientificName":"Chelodina longicollis","vernacularName":"eastern long-necked turtle",
                          "taxonRank":"species","taxonGroup":"turtles"},
                         {"scientificName":"Wallabia bicolor","vernacularName":"swamp wallaby","taxonRank":"species",
                          "taxonGroup":"macropods"},
                         {"scientificName":"Phascolarctos cinereus","vernacularName":"koala","taxonRank":"species",
                          "taxonGroup":"koalas"},
                         {"scientificName":"Pteropus poliocephalus","vernacularName":"grey-headed flying-fox",
                          "taxonRank":"species","taxonGroup":"flying-foxes"}]
                        """).statusCode(200);
    }

    private static void importRoads() {
        Api.as(ADMIN)
                .contentType("application/geo+json")
                .queryParam("name", ROADS)
                .queryParam("roadName", "name")
                .queryParam("roadClass", "class")
                .queryParam("speedLimit", "limit")
                .queryParam("aadt", "aadt")
                .queryParam("owner", "owner")
                .queryParam("startMeasure", "start")
                .body("""
                        {"type":"FeatureCollection","features":[
                          {"type":"Feature","properties":{"name":"Mill Road","class":"primary","limit":100,"aadt":4000,
                            "owner":"Upper Shire","start":2000},
                           "geometry":{"type":"LineString","coordinates":[[150.0,-30.5],[150.05,-30.5],[150.1,-30.5]]}},
                          {"type":"Feature","properties":{"name":"River Lane","class":"residential","limit":null,
                            "aadt":null,"owner":"Lower Shire","start":0},
                           "geometry":{"type":"LineString","coordinates":[[150.05,-30.45],[150.05,-30.5],[150.05,-30.55]]}},
                          {"type":"Feature","properties":{"name":"School Street","class":"residential","limit":50,
                            "aadt":300,"owner":"Lower Shire","start":0},
                           "geometry":{"type":"LineString","coordinates":[[150.02,-30.45],[150.05,-30.45]]}}]}
                        """)
                .post("/api/road-networks")
                .then()
                .statusCode(201);
    }

    private static String organisation(String kind, double latitude, double longitude) {
        return Api.make(ADMIN, "/api/organisations", """
                        {"kind":"%s","name":"%s %s","latitude":%s,"longitude":%s,"xRay":true,"surgery":true}
                        """.formatted(kind, kind, UUID.randomUUID(), latitude, longitude))
                .getString("id");
    }

    private String member(boolean attends, boolean cares, double latitude, double longitude) {
        return Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"%s","name":"Somebody","homeLatitude":%s,"homeLongitude":%s,
                         "attends":%s,"cares":%s}
                        """.formatted(
                                network, UUID.randomUUID(), latitude, longitude, attends, cares))
                .getString("id");
    }

    public void authorise(String memberId, String taxonGroup) {
        Api.make(ADMIN, "/api/authorisations", """
                {"memberId":"%s","jurisdiction":"test","authorisationClass":"specialist","number":"T-%s",
                 "taxonGroup":"%s","validFrom":"2010-01-01","validTo":"2090-12-31"}
                """.formatted(
                        memberId, memberId.substring(memberId.length() - 6), taxonGroup));
    }

    /** A call about one animal on Mill Road, at a longitude; returns the receipt. */
    public static Json call(String scientificName, double longitude, String more) {
        return Api.make(org.culvert.platform.Role.DISPATCHER, "/api/calls", """
                {"people":{"anyoneHurt":"no","offTheRoad":"yes"},
                 "cause":"collisionWithVehicle",
                 "animals":[{"scientificName":"%s","individualCount":1,"vitality":"alive"}],
                 "place":{"decimalDegrees":{"latitude":"%.5f","longitude":"%.5f"}}%s}
                """.formatted(
                        scientificName, LATITUDE, longitude, more));
    }
}
