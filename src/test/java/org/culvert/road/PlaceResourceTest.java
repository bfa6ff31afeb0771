package org.culvert.road;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.DISPATCHER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.culvert.geo.EastingNorthing;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.geo.Projections;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Places as people say them, on these roads near 30.5 south:
 *
 * <pre>
 *   150.00        150.01        150.02       150.03
 *     |             |             |            |
 *     Mill Road ----+-------------+----------->   starts at km 10.000
 *                   |             |
 *               Ford Lane     Ford Lane (a second time)
 *
 *   Pacific Highway N  ---->      30.52 south, 20 m apart, start at km 0
 *   Pacific Highway S  ---->
 *                       |
 *                    Bridge Street passes over both
 * </pre>
 */
@QuarkusTest
class PlaceResourceTest {
    private static final String NAME = "roads for places";
    private static final Position MILL_WEST = new Position(-30.5, 150.0);

    @BeforeEach
    void layRoads() {
        if (Api.get(ADMIN, "/api/road-networks").getList("name").stream()
                .findFirst()
                .equals(Optional.of(NAME))) {
            return;
        }
        World.shared();
        String features = RoadNetworkResourceTest.collection(
                RoadNetworkResourceTest.feature(
                        Map.of("name", "Mill Road", "start", 10000, "limit", 80),
                        "[150.0,-30.5],[150.01,-30.5],[150.02,-30.5],[150.03,-30.5]"),
                RoadNetworkResourceTest.line("Ford Lane", "[150.01,-30.5],[150.01,-30.505]"),
                RoadNetworkResourceTest.line("Ford Lane", "[150.02,-30.5],[150.02,-30.505]"),
                RoadNetworkResourceTest.feature(
                        Map.of("name", "Pacific Highway", "way", "northbound", "start", 0),
                        "[150.0,-30.52],[150.05,-30.52]"),
                RoadNetworkResourceTest.feature(
                        Map.of("name", "Pacific Highway", "way", "southbound", "start", 0),
                        "[150.0,-30.5202],[150.05,-30.5202]"),
                RoadNetworkResourceTest.feature(
                        Map.of("name", "Bridge Street", "bridge", "yes"), "[150.04,-30.51],[150.04,-30.53]"));
        Api.as(ADMIN)
                .contentType("application/geo+json")
                .queryParam("name", NAME)
                .queryParam("roadName", "name")
                .queryParam("startMeasure", "start")
                .queryParam("speedLimit", "limit")
                .queryParam("carriageway", "way")
                .queryParam("bridge", "bridge")
                .body(features)
                .post("/api/road-networks")
                .then()
                .statusCode(201);
    }

    @Test
    void decimalDegreesArePutOnTheRoad() {
        Json place = read("""
                {"decimalDegrees":{"latitude":"-30.50010","longitude":"150.00500"},"uncertaintyMetres":10}
                """);
        assertThat(place.getString("givenAs")).isEqualTo("decimalDegrees");
        assertThat(place.getString("verbatim")).isEqualTo("-30.50010, 150.00500");
        assertThat(place.getDouble("coordinateUncertaintyInMeters")).isEqualTo(10);
        assertThat(place.getString("onRoad.roadName")).isEqualTo("Mill Road");
        double along = Geodesy.metresBetween(MILL_WEST, new Position(-30.5, 150.005));
        assertThat(place.getDouble("onRoad.chainageMetres")).isCloseTo(10_000 + along, within(0.1));
        assertThat(place.getDouble("onRoad.offsetMetres")).isCloseTo(11.09, within(0.02));
        assertThat(place.getString("onRoad.side")).isEqualTo("right");
        assertThat(place.getDouble("onRoad.speedLimitKmh")).isEqualTo(80);
        assertThat(place.getBoolean("roadInDoubt")).isFalse();
    }

    @Test
    void everyWayOfSayingAPlaceLeadsToTheSamePlace() {
        Position expected = new Position(-30.5, 150.005);
        EastingNorthing utm = Projections.grid(32756).forward(expected);
        String grid = "{\"grid\":{\"epsg\":32756,\"easting\":\"%.0f\",\"northing\":\"%.0f\"}}"
                .formatted(utm.easting(), utm.northing());
        for (String way : List.of(
                "{\"degreesMinutesSeconds\":\"30\u00b030'00.0\\\"S 150\u00b000'18.0\\\"E\"}",
                "{\"degreesMinutesSeconds\":\"S 30 30.000 E 150 00.300\"}",
                "{\"plusCode\":\"4RXGG224+22\"}",
                "{\"plusCode\":\"g224+22\"}",
                grid,
                "{\"roadAndChainage\":{\"road\":\"mill rd\",\"chainageKilometres\":\"10.480\"}}")) {
            Json place = read(way);
            Position position = new Position(place.getDouble("decimalLatitude"), place.getDouble("decimalLongitude"));
            double doubt = place.getDouble("coordinateUncertaintyInMeters");
            assertThat(Geodesy.metresBetween(position, expected)).as(way).isLessThan(doubt);
            assertThat(place.getString("onRoad.roadName")).as(way).isEqualTo("Mill Road");
        }
    }

    @Test
    void aJunctionIsAmbiguousUntilARoadIsNamed() {
        String at = "\"decimalDegrees\":{\"latitude\":\"-30.50005\",\"longitude\":\"150.01003\"}";
        Json unsaid = read("{" + at + "}");
        assertThat(unsaid.getBoolean("roadInDoubt")).isTrue();
        assertThat(unsaid.getList("otherRoads.roadName")).isNotEmpty();
        Json named = read("{" + at + ",\"roadName\":\"Ford Ln\"}");
        assertThat(named.getBoolean("roadInDoubt")).isFalse();
        assertThat(named.getString("onRoad.roadName")).isEqualTo("Ford Lane");
        Json directed = read("{" + at + ",\"direction\":\"eastbound\"}");
        assertThat(directed.getBoolean("roadInDoubt")).isFalse();
        assertThat(directed.getString("onRoad.roadName")).isEqualTo("Mill Road");
        Json elsewhere = read("{" + at + ",\"roadName\":\"Pacific Highway\"}");
        assertThat(elsewhere.getBoolean("roadInDoubt")).isTrue();
    }

    @Test
    void chainageIsReadToItsPrecisionOnTheCarriagewayThatIsMeant() {
        String road = "{\"roadAndChainage\":{\"road\":\"Pacific Hwy\",\"chainageKilometres\":\"2.4\"%s}%s}";
        Json unsaid = read(road.formatted("", ""));
        assertThat(unsaid.getBoolean("roadInDoubt")).isTrue();
        assertThat(unsaid.getList("otherRoads.carriageway")).containsExactly("southbound");
        assertThat(unsaid.getDouble("coordinateUncertaintyInMeters")).isCloseTo(50 + 22.2, within(0.1));
        Json said = read(road.formatted(",\"carriageway\":\"SB\"", ""));
        assertThat(said.getString("onRoad.carriageway")).isEqualTo("southbound");
        assertThat(said.getBoolean("roadInDoubt")).isFalse();
        assertThat(said.getDouble("onRoad.chainageMetres")).isCloseTo(2400, within(1e-6));
        assertThat(said.getDouble("onRoad.chainagePrecisionMetres")).isEqualTo(100);
        assertThat(said.getDouble("coordinateUncertaintyInMeters")).isEqualTo(50);
        assertThat(said.getString("verbatim")).isEqualTo("Pacific Hwy km 2.4 SB");
        Json directed = read(road.formatted("", ",\"direction\":\"northbound\""));
        assertThat(directed.getString("onRoad.carriageway")).isEqualTo("northbound");
    }

    @Test
    void crossingRoadsGiveEveryJunctionAndACircleAroundThemAll() {
        Json twice = read("{\"crossingRoads\":{\"road\":\"Mill Road\",\"crossingRoad\":\"Ford Lane\"}}");
        double apart = Geodesy.metresBetween(new Position(-30.5, 150.01), new Position(-30.5, 150.02));
        assertThat(twice.getBoolean("roadInDoubt")).isTrue();
        assertThat(twice.getList("otherRoads")).hasSize(3);
        assertThat(twice.getDouble("coordinateUncertaintyInMeters")).isCloseTo(100 + apart, within(1.0));
        Json over = read("""
                {"crossingRoads":{"road":"Bridge Street","crossingRoad":"Pacific Highway"},"roadName":"Pacific Highway"}
                """);
        assertThat(over.getString("onRoad.roadName")).isEqualTo("Pacific Highway");
        assertThat(over.getDouble("decimalLongitude")).isCloseTo(150.04, within(1e-6));
    }

    @Test
    void farFromAnyRoadShowsTheNearestAndPinsNothing() {
        Json place = read("{\"decimalDegrees\":{\"latitude\":\"-30.49000\",\"longitude\":\"150.00500\"}}");
        assertThat(place.getString("onRoad")).isNull();
        assertThat(place.getString("otherRoads[0].roadName")).isEqualTo("Mill Road");
        assertThat(place.getDouble("otherRoads[0].offsetMetres")).isCloseTo(1108.6, within(1.0));
    }

    @Test
    void whatCannotBeIsRefusedWithTheFieldAndTheOtherReading() {
        refused(
                        "{\"decimalDegrees\":{\"latitude\":\"150.0\",\"longitude\":\"-30.5\"}}",
                        "place.decimalDegrees.latitude")
                .body("errors[0].otherReading.decimalLatitude", equalTo(-30.5))
                .body("errors[0].otherReading.decimalLongitude", equalTo(150.0));
        refused("{\"decimalDegrees\":{\"latitude\":\"30.5\",\"longitude\":\"150.0\"}}", "place.decimalDegrees")
                .body("errors[0].detail", containsString("sign"))
                .body("errors[0].otherReading.decimalLatitude", equalTo(-30.5));
        refused("{\"degreesMinutesSeconds\":\"30 75 S 150 00 E\"}", "place.degreesMinutesSeconds");
        refused("{\"grid\":{\"epsg\":28356,\"easting\":\"6622221\",\"northing\":\"212472\"}}", "place.grid.easting")
                .body("errors[0].detail", containsString("the other way round"));
        refused("{\"grid\":{\"epsg\":1,\"easting\":\"1\",\"northing\":\"1\"}}", "place.grid.epsg");
        refused("{\"plusCode\":\"here\"}", "place.plusCode");
        refused(
                        "{\"roadAndChainage\":{\"road\":\"Mil Street\",\"chainageKilometres\":\"1\"}}",
                        "place.roadAndChainage.road")
                .body("errors[0].wanted", containsString("Mill Road"));
        refused(
                        "{\"roadAndChainage\":{\"road\":\"Mill Road\",\"chainageKilometres\":\"3.2\"}}",
                        "place.roadAndChainage.chainageKilometres")
                .body("errors[0].wanted", containsString("km 10.000 to 12.8"));
        refused(
                "{\"roadAndChainage\":{\"road\":\"Mill Road\",\"chainageKilometres\":\"soon\"}}",
                "place.roadAndChainage.chainageKilometres");
        refused("{\"roadAndChainage\":{\"road\":\"M1\",\"chainageKilometres\":\"1\"}}", "place.roadAndChainage.road")
                .body("errors[0].otherReading", nullValue());
        refused(
                "{\"crossingRoads\":{\"road\":\"Mill Road\",\"crossingRoad\":\"Bridge Street\"}}",
                "place.crossingRoads");
        refused(
                "{\"decimalDegrees\":{\"latitude\":\"-30.5\",\"longitude\":\"150.0\"},\"uncertaintyMetres\":-1}",
                "place.uncertaintyMetres");
        refused("{}", "place");
        refused("{\"plusCode\":\"4RXGG224+22\",\"degreesMinutesSeconds\":\"30 S 150 E\"}", "place");
    }

    @Test
    void nobodyReadsPlacesUnnamed() {
        Request.given()
                .contentType("application/json")
                .body("{}")
                .post("/api/places/readings")
                .then()
                .statusCode(401);
    }

    private static Json read(String json) {
        return Api.post(DISPATCHER, "/api/places/readings", json)
                .statusCode(200)
                .extract()
                .jsonPath();
    }

    private static Answer refused(String json, String field) {
        return Api.post(DISPATCHER, "/api/places/readings", json)
                .statusCode(400)
                .contentType("application/problem+json")
                .body("errors[0].field", equalTo(field));
    }
}
