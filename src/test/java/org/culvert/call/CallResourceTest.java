package org.culvert.call;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

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

@QuarkusTest
@OnOldestDatabase
class CallResourceTest {
    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    @Test
    void aCallIsPinnedToARoadAndADistanceAlongIt() {
        Json receipt = World.call("Chelodina longicollis", 150.02, "");
        // Chainage expected by GeographicLib on WGS 84: 2,000 m at the west end and the geodesic from there.
        double along = Geodesy.metresBetween(new Position(-30.5, 150.0), new Position(-30.5, 150.02));
        assertThat(receipt.getString("place.roadName")).isEqualTo("Mill Road");
        assertThat(receipt.getDouble("place.chainageMetres")).isBetween(2000 + along - 0.5, 2000 + along + 0.5);
        assertThat(receipt.getString("place.givenAs")).isEqualTo("decimalDegrees");
    }

    @Test
    void roadAndChainageKeepsThePrecisionItWasGivenTo() {
        Json receipt = Api.make(DISPATCHER, "/api/calls", """
                {"cause":"collisionWithVehicle","place":{"roadAndChainage":{"road":"mill rd","chainageKilometres":"4.4"}}}
                """);
        assertThat(receipt.getDouble("place.chainageMetres")).isEqualTo(4400);
        assertThat(receipt.getDouble("place.chainagePrecisionMetres")).isEqualTo(100);
        Position there =
                new Position(receipt.getDouble("place.decimalLatitude"), receipt.getDouble("place.decimalLongitude"));
        assertThat(Geodesy.metresBetween(new Position(-30.5, 150.0), there)).isBetween(2399.0, 2401.0);
    }

    @Test
    void swappedCoordinatesAreRefusedWithTheOtherReading() {
        Api.post(DISPATCHER, "/api/calls", """
                        {"place":{"decimalDegrees":{"latitude":"150.02","longitude":"-30.5"}}}
                        """)
                .statusCode(400)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/invalid"))
                .body("errors[0].field", containsString("place.decimalDegrees"))
                .body("errors[0].otherReading", notNullValue());
    }

    @Test
    void everythingMayBeMissingAndIsUnknown() {
        Json receipt = Api.make(DISPATCHER, "/api/calls", "{}");
        assertThat(receipt.getList("peopleFirst")).hasSize(2);
        Json incident = Api.get(DISPATCHER, "/api/incidents/" + receipt.getString("incidentId"));
        assertThat(incident.getString("cause")).isEqualTo("unknown");
        assertThat(incident.getString("progress")).isEqualTo("logged");
        assertThat(incident.getString("happenedAt")).isNull();
    }

    @Test
    void unknownFieldsAndWordsAreRefusedByName() {
        Api.post(DISPATCHER, "/api/calls", "{\"wrods\":\"typo\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("wrods"))
                .body("errors[0].wanted", containsString("words"));
        Api.post(DISPATCHER, "/api/calls", "{\"people\":{\"anyoneHurt\":\"perhaps\"}}")
                .statusCode(400)
                .body("errors[0].field", equalTo("people.anyoneHurt"))
                .body("errors[0].wanted", equalTo("yes, no, unknown"));
        Api.post(DISPATCHER, "/api/calls", "{\"cause\":\"meteor\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("cause"))
                .body("errors[0].wanted", containsString("collisionWithVehicle"));
        Api.post(DISPATCHER, "/api/calls", "{\"animals\":[{\"individualCount\":0}]}")
                .statusCode(400)
                .body("errors[0].field", containsString("individualCount"));
        Api.post(DISPATCHER, "/api/calls", "{not json").statusCode(400).body("errors[0].field", equalTo("body"));
    }

    @Test
    void callersAreShownToTheDeskAloneAndRoadsAuthoritiesSeeNoIncident() {
        String incident = World.call(
                        "Wallabia bicolor",
                        150.09,
                        ",\"caller\":{\"name\":\"A Driver\",\"phone\":\"555 0100\"},\"words\":\"It moved\"")
                .getString("incidentId");
        Api.as(DISPATCHER)
                .get("/api/incidents/" + incident)
                .then()
                .statusCode(200)
                .body("calls[0].caller.name", equalTo("A Driver"))
                .body("calls[0].words", equalTo("It moved"));
        World world = World.shared();
        Api.make(
                DISPATCHER,
                "/api/incidents/" + incident + "/attendances",
                "{\"leadMemberId\":\"%s\",\"helperMemberIds\":[\"%s\"],\"policeReference\":\"E-1\"}"
                        .formatted(world.rescuer, world.helper));
        for (String role : List.of(RESCUER, CARER)) {
            Api.as(role)
                    .get("/api/incidents/" + incident)
                    .then()
                    .statusCode(200)
                    .body("calls[0].caller", nullValue())
                    .body("calls[0].words", nullValue());
        }
        for (String path : List.of("/api/incidents", "/api/incidents/" + incident, "/api/cases", "/api/members")) {
            Api.as(ROADS_AUTHORITY).get(path).then().statusCode(403).body("type", equalTo("/problems/not-allowed"));
        }
    }

    @Test
    void aCallNearbyIsOfferedForJoiningAndUndoingGivesBothBack() {
        String first = World.call("Wallabia bicolor", 150.07, "").getString("incidentId");
        Json second = World.call("Wallabia bicolor", 150.0702, "");
        assertThat(second.getList("mayBeTheSame.incidentId", String.class)).contains(first);
        String other = second.getString("incidentId");

        Json joined = Api.as(DISPATCHER)
                .body("{\"incidentId\":\"%s\",\"reason\":\"same wallaby, by both callers\"}".formatted(other))
                .post("/api/incidents/" + first + "/joins")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(joined.getList("calls")).hasSize(2);
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + other).getString("standsUnder"))
                .isEqualTo(first);
        Api.post(
                        DISPATCHER,
                        "/api/incidents/" + other + "/joins",
                        "{\"incidentId\":\"%s\",\"reason\":\"round\"}".formatted(first))
                .statusCode(409);

        String join = joined.getString("joins[0].id");
        Api.post(DISPATCHER, "/api/joins/" + join + "/undoing", "{\"reason\":\"two wallabies after all\"}")
                .statusCode(200)
                .body("standsUnder", nullValue());
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + first).getList("calls"))
                .hasSize(1);
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + other).getList("calls"))
                .hasSize(1);
        Api.post(DISPATCHER, "/api/joins/" + join + "/undoing", "{\"reason\":\"again\"}")
                .statusCode(409);
    }

    @Test
    void anotherKindOrFarAwayIsNotOffered() {
        String first = World.call("Wallabia bicolor", 150.01, "").getString("incidentId");
        assertThat(World.call("Chelodina longicollis", 150.01, "").getList("mayBeTheSame.incidentId", String.class))
                .doesNotContain(first);
        assertThat(World.call("Wallabia bicolor", 150.03, "").getList("mayBeTheSame.incidentId", String.class))
                .doesNotContain(first);
    }

    @Test
    void aSecondCallCanNameTheIncidentAndTellMore() {
        String incident = Api.make(DISPATCHER, "/api/calls", "{\"words\":\"something on the road\"}")
                .getString("incidentId");
        World.call("Wallabia bicolor", 150.06, ",\"incidentId\":\"%s\"".formatted(incident));
        Json told = Api.get(COORDINATOR, "/api/incidents/" + incident);
        assertThat(told.getList("calls")).hasSize(2);
        assertThat(told.getString("place.roadName")).isEqualTo("Mill Road");
        assertThat(told.getString("cause")).isEqualTo("collisionWithVehicle");
    }

    @Test
    void listsComeInPages() {
        for (int i = 0; i < 3; i++) {
            Api.make(DISPATCHER, "/api/calls", "{}");
        }
        Json page = Api.get(DISPATCHER, "/api/incidents?limit=2");
        assertThat(page.getList("items")).hasSize(2);
        Json next = Api.get(DISPATCHER, "/api/incidents?limit=2&cursor=" + page.getString("next"));
        assertThat(next.getList("items.id", String.class))
                .doesNotContainAnyElementsOf(page.getList("items.id", String.class));
        Api.as(DISPATCHER)
                .get("/api/incidents?limit=0")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("limit"));
        Api.as(DISPATCHER)
                .get("/api/incidents?cursor=x")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("cursor"));
    }
}
