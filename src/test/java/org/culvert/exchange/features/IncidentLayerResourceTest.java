package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RECIPIENT;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Incidents as a layer, for those who see incidents: all, or those of their organisation. */
@QuarkusTest
@OnOldestDatabase
class IncidentLayerResourceTest {
    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private static String told(String at, String more) {
        return Api.make(DISPATCHER, "/api/calls", """
                        {"receivedAt":"%sT08:00:00Z","cause":"collisionWithVehicle",
                         "animals":[{"scientificName":"Wallabia bicolor"}],"words":"by the old mill",
                         "caller":{"name":"A Driver","phone":"555 0101"}%s}
                        """.formatted(at, more)).getString("incidentId");
    }

    private static String at(double longitude) {
        return ",\"place\":{\"decimalDegrees\":{\"latitude\":\"-30.50000\",\"longitude\":\"" + longitude + "\"}}";
    }

    @Test
    void incidentsArePagedAndAskedForByTimePlaceAndProperty() {
        String one = told("1984-05-01", at(150.01) + ",\"happenedAt\":\"1984-05-01T07:00:00Z\"");
        String two = told("1984-05-02", at(150.06));
        String unplaced = told("1984-05-03", "");
        String year = "datetime=1984-01-01/1984-12-31";
        List<Map<String, Object>> all = Layers.all(DISPATCHER, "incidents", year + "&limit=1");
        assertThat(all).extracting(each -> each.get("id")).contains(one, two, unplaced);
        assertThat(all).hasSize(3);
        Map<String, Object> first = all.stream()
                .filter(each -> each.get("id").equals(one))
                .findFirst()
                .orElseThrow();
        assertThat(first.get("geometry")).hasToString("{type=Point, coordinates=[150.01, -30.5]}");
        assertThat(Layers.properties(first))
                .containsEntry("reportedAt", "1984-05-01T08:00:00Z")
                .containsEntry("cause", "collisionWithVehicle")
                .containsEntry("collision", true)
                .containsEntry("happenedYear", 1984)
                .containsEntry("happenedDayOfYear", 122)
                .containsEntry("happenedHour", 17)
                .containsEntry("taxonGroups", "macropods")
                .containsEntry("roadName", "Mill Road");
        // What has no place lies in every box
        assertThat(Layers.all(OFFICER, "incidents", year + "&bbox=150.0,-30.51,150.02,-30.49"))
                .extracting(each -> each.get("id"))
                .containsExactlyInAnyOrder(one, unplaced);
        assertThat(all.stream()
                        .filter(each -> each.get("id").equals(unplaced))
                        .findFirst()
                        .orElseThrow())
                .containsEntry("geometry", null);
        assertThat(Layers.all(OFFICER, "incidents", "datetime=1984-05-02T08:00:00Z"))
                .extracting(each -> each.get("id"))
                .containsExactly(two);
        assertThat(Layers.all(OFFICER, "incidents", "datetime=1984-05-02T08:00:01Z/1984-05-03T07:59:59Z"))
                .isEmpty();
        for (String nowhere : List.of("0000-01-01T00:00:00Z", "9999-12-31T00:00:00Z", "9999-12-31", "0000-01-01")) {
            assertThat(Layers.all(OFFICER, "incidents", "datetime=" + nowhere)).isEmpty();
            assertThat(Layers.all(OFFICER, "collisions", "datetime=" + nowhere)).isEmpty();
        }
        Object number = Layers.properties(first).get("number");
        assertThat(Layers.all(OFFICER, "incidents", "number=" + number)).hasSize(1);
        assertThat(Layers.all(OFFICER, "incidents", year + "&roadName=Mill%20Road&collision=true"))
                .hasSize(2);
        assertThat(Layers.all(OFFICER, "incidents", year + "&cause=orphaned")).isEmpty();
        assertThat(all.toString()).doesNotContain("Driver", "555", "old mill");
    }

    @Test
    void whatIsJoinedIsCountedOnce() {
        String one = told("1983-05-01", at(150.01));
        String two = told("1983-05-01", at(150.0101));
        Api.post(DISPATCHER, "/api/incidents/" + one + "/joins", "{\"incidentId\":\"" + two + "\",\"reason\":\"same\"}")
                .statusCode(200);
        assertThat(Layers.all(OFFICER, "incidents", "datetime=1983-01-01/1983-12-31"))
                .extracting(each -> each.get("id"))
                .containsExactly(one);
    }

    @Test
    void whoSeesTheirOrganisationsIncidentsAloneHasNoOthersInTheLayer() {
        Json call = World.call("Wallabia bicolor", 150.0713, "");
        String theirs = call.getString("incidentId");
        String others = told("1982-05-01", at(150.0712));
        Api.make(
                DISPATCHER,
                "/api/incidents/" + theirs + "/attendances",
                "{\"leadMemberId\":\"" + world.rescuer + "\",\"overrideReason\":\"the road is closed\"}");
        String near = "bbox=150.0711,-30.5001,150.0714,-30.4999";
        assertThat(Layers.all(DISPATCHER, "incidents", near))
                .extracting(each -> each.get("id"))
                .contains(theirs, others);
        List<Map<String, Object>> own = Layers.all(RESCUER, "incidents", near + "&limit=2");
        assertThat(own).extracting(each -> each.get("id")).contains(theirs).doesNotContain(others);
        assertThat(own.stream()
                        .filter(each -> each.get("id").equals(theirs))
                        .findFirst()
                        .orElseThrow()
                        .get("geometry"))
                .isNotNull();
        assertThat(Layers.status(RESCUER, "/collections/incidents/items/" + theirs))
                .isEqualTo(200);
        for (String role : List.of(RESCUER, CARER, CLINIC)) {
            assertThat(Layers.status(role, "/collections/incidents/items/" + others))
                    .as(role)
                    .isEqualTo(404);
        }
        for (String role : List.of(ROADS_AUTHORITY, RECIPIENT, ADMIN)) {
            assertThat(Layers.status(role, "/collections/incidents/items"))
                    .as(role)
                    .isEqualTo(403);
        }
        assertThat(Layers.status(COORDINATOR, "/collections/incidents/items?limit=1"))
                .isEqualTo(200);
    }
}
