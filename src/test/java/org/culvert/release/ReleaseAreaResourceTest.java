package org.culvert.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Where an animal may go, as a feature that GIS programs open. */
@QuarkusTest
@OnOldestDatabase
class ReleaseAreaResourceTest {
    private static final String TURTLE = "Chelodina expansa";
    private static int laws;

    private World world;
    private String jurisdiction;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
        Api.post(COORDINATOR, "/api/taxon-groups", """
                        [{"key":"broad-shelled-turtles","name":"broad-shelled turtles","pouch":false,"clutches":true,
                          "introduced":false}]
                        """).statusCode(200);
        Api.post(COORDINATOR, "/api/taxa", """
                        [{"scientificName":"Chelodina expansa","vernacularName":"broad-shelled turtle","taxonRank":"species",
                          "taxonGroup":"broad-shelled-turtles"}]
                        """).statusCode(200);
        jurisdiction = "XR-" + ++laws;
    }

    /** Found on the verge of Mill Road, known to a stated 40 m. */
    private String newCase(String more) {
        String incident =
                Api.make(DISPATCHER, "/api/calls", """
                        {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                         "animals":[{"scientificName":"%s","individualCount":1,"vitality":"alive"}],
                         "place":{"decimalDegrees":{"latitude":"-30.5000001","longitude":"150.0312345"}}}
                        """.formatted(TURTLE)).getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                         "holder":{"memberId":"%s"}%s}
                        """.formatted(incident, TURTLE, world.rescuer, more))
                .getString("id");
    }

    private void rule(String test, String more) {
        Api.make(COORDINATOR, "/api/release-rules", """
                {"jurisdiction":"%s","kind":"statute","scientificName":"%s","test":"%s","words":"as the test says",
                 "source":"made for a test","readOn":"2020-01-01","reviewBy":"2090-01-01","validFrom":"2020-01-01"%s}
                """.formatted(jurisdiction, TURTLE, test, more));
    }

    private String site(String name, double latitude, double longitude) {
        return Api.make(COORDINATOR, "/api/release-sites", """
                        {"name":"%s","jurisdiction":"%s","decimalLatitude":%s,"decimalLongitude":%s,
                         "coordinateUncertaintyInMeters":20,"habitat":"wetland","taxonGroups":["broad-shelled-turtles"]}
                        """.formatted(name, jurisdiction, latitude, longitude))
                .getString("id");
    }

    private Json area(String caseId) {
        return Api.get(CARER, "/api/cases/" + caseId + "/release-area?jurisdiction=" + jurisdiction);
    }

    @Test
    void anAreaIsTheRulesCircleLessRoadsAndLandThatIsOut() {
        rule("greatestDistance", ",\"greatestDistanceMetres\":2000");
        rule("foundPlaceFirst", ",\"allowedGrounds\":[{\"key\":\"hazard\",\"words\":\"it is a hazard\"}]");
        String id = newCase("");
        double uncertainty = Api.get(CARER, "/api/cases/" + id).getDouble("foundPlace.coordinateUncertaintyInMeters");
        Json whole = area(id);
        double radius = 2000 - uncertainty;
        // Mill Road runs through the middle, River Lane crosses it 1.8 km to the east; 10 m to either side
        double away = Geodesy.metresBetween(new Position(-30.5, 150.0312345), new Position(-30.5, World.CROSSING));
        double wanted = Math.PI * radius * radius - 20 * 2 * (radius + Math.sqrt(radius * radius - away * away)) + 400;
        assertThat(whole.getDouble("properties.squareMetres")).isCloseTo(wanted, within(0.001 * wanted));
        assertThat(whole.getString("type")).isEqualTo("Feature");
        assertThat(whole.getString("geometry.type")).isEqualTo("MultiPolygon");
        assertThat(whole.getList("properties.steps.cut")).containsExactly("distance", "roads");
        assertThat(whole.getDouble("properties.nearest.metres")).isBetween(5.0, 12.0);
        assertThat(whole.getString("properties.foundPlaceFirst")).contains("comes first");
        assertThat(whole.getString("properties.words")).contains("not ruled out");
        assertThat(whole.prettify()).doesNotContainPattern("(?i)lawful|legal|\\\\bsafe");
        List<List<List<List<Double>>>> polygons = whole.getList("geometry.coordinates");
        for (List<List<List<Double>>> polygon : polygons) {
            for (List<Double> corner : polygon.get(0)) {
                assertThat(Geodesy.metresBetween(
                                new Position(-30.5000001, 150.0312345), new Position(corner.get(1), corner.get(0))))
                        .isLessThan(radius + 2);
            }
        }

        // A burn over the whole circle: nothing is left, and it says what would open it
        String burn = Api.make(COORDINATOR, "/api/land-areas", """
                        {"kind":"burnt","name":"The burn of %s","source":"looked at from the road","from":"2020-01-01",
                         "geometry":{"type":"Polygon","coordinates":
                           [[[149.9,-30.6],[150.2,-30.6],[150.2,-30.4],[149.9,-30.4],[149.9,-30.6]]]}}
                        """.formatted(jurisdiction))
                .getString("id");
        Json none = area(id);
        assertThat(none.getMap("geometry")).isNull();
        assertThat(none.getDouble("properties.squareMetres")).isZero();
        assertThat(none.getString("properties.emptiedBy.cut")).isEqualTo("burnt");
        assertThat(none.getString("properties.emptiedBy.opens")).contains("looked");
        Api.change(
                        COORDINATOR,
                        "/api/land-areas/" + burn,
                        "/ending",
                        "{\"until\":\"2020-06-01\",\"reason\":\"grown back\"}")
                .statusCode(200);
        assertThat(area(id).getDouble("properties.squareMetres")).isEqualTo(whole.getDouble("properties.squareMetres"));
    }

    @Test
    void knownSitesStandInTheOrderInWhichTheyAreWorthALook() {
        rule("greatestDistance", ",\"greatestDistanceMetres\":3000");
        String beyond = site("Beyond", -30.54, 150.03);
        String near = site("Near", -30.505, 150.0312);
        String id = newCase("");
        World.signFit(id, "2026-01-20T02:00:00Z");
        Json ranked = area(id);
        List<String> sites = ranked.getList("properties.sites.siteId");
        assertThat(sites.indexOf(near)).isLessThan(sites.indexOf(beyond)).isZero();
        assertThat(ranked.getString("properties.sites[0].overall")).isEqualTo("pass");
        assertThat(ranked.getString("properties.sites[0].inArea")).isEqualTo("pass");
        String ofBeyond = "properties.sites.find { it.siteId == '" + beyond + "' }.";
        assertThat(ranked.getString(ofBeyond + "overall")).isEqualTo("fail");
        assertThat(ranked.getString(ofBeyond + "inArea")).isEqualTo("fail");
        Json first = Api.make(CARER, "/api/assessments", """
                {"caseId":"%s","siteId":"%s","light":"day","weather":"hard"}
                """.formatted(id, near));
        assertThat(first.getString("tests.find { it.test == 'fairWeather' }.verdict"))
                .isEqualTo("fail");
        assertThat(first.getString("circumstances.conditions.weather")).isEqualTo("hard");
        assertThat(first.getInt("circumstances.daysInCare")).isGreaterThan(200);
        assertThat(first.getList("circumstances.facts.metres")).contains(300.0);
    }

    @Test
    void whereNothingGivesADistanceOneIsAskedFor() {
        String id = newCase("");
        String path = "/api/cases/" + id + "/release-area?jurisdiction=" + jurisdiction;
        Api.as(CARER)
                .get(path)
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("withinMetres"))
                .body("errors[0].wanted", containsString("metres"));
        assertThat(Api.get(CARER, path + "&withinMetres=500").getList("properties.steps.key"))
                .startsWith("asked");
        Api.as(CARER).get(path + "&withinMetres=0").then().statusCode(400);
        Api.as(CARER).get(path + "&withinMetres=wide").then().statusCode(400);
        Api.as(CARER)
                .get("/api/cases/" + id + "/release-area?jurisdiction=Queensland")
                .then()
                .statusCode(400);
        String unknown = newCase(",\"originUnknown\":true");
        Json nowhere = area(unknown);
        assertThat(nowhere.getMap("geometry")).isNull();
        assertThat(nowhere.getString("properties.words")).contains("Nobody knows where it was found");
    }
}
