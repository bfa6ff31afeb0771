package org.culvert.dispatch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class DispatchResourceTest {
    private static final String NOON = "2026-01-10T02:00:00Z";
    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    @Test
    void nobodyIsSentAloneToAFastRoadUnlessSomebodyAnswersForIt() {
        String incident = World.call("Wallabia bicolor", 150.08, "").getString("incidentId");
        String alone = "{\"leadMemberId\":\"%s\",\"at\":\"%s\"}".formatted(world.rescuer, NOON);
        Api.post(DISPATCHER, "/api/incidents/" + incident + "/attendances", alone)
                .statusCode(422)
                .body("type", equalTo("/problems/refused"))
                .body("reasons", hasItem(containsString("limit 100 km/h against 80 km/h")));
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getString("progress"))
                .isEqualTo("logged");

        Json sent = Api.make(
                DISPATCHER,
                "/api/incidents/" + incident + "/attendances",
                "{\"leadMemberId\":\"%s\",\"helperMemberIds\":[\"%s\"],\"at\":\"%s\",\"policeReference\":\"E-77\"}"
                        .formatted(world.rescuer, world.helper, NOON));
        assertThat(sent.getBoolean("gate.mayGo")).isTrue();
        assertThat(sent.getString("gate.overrideReason")).isNull();

        Json overridden = Api.make(
                DISPATCHER,
                "/api/incidents/" + incident + "/attendances",
                "{\"leadMemberId\":\"%s\",\"at\":\"%s\",\"overrideReason\":\"road closed by the works crew\"}"
                        .formatted(world.rescuer, NOON));
        assertThat(overridden.getString("gate.overrideReason")).contains("works crew");
    }

    @Test
    void anUnknownLimitStopsLikeAFastRoad() {
        String incident = Api.make(DISPATCHER, "/api/calls", """
                        {"people":{"anyoneHurt":"no"},"animals":[{"taxonGroup":"macropods"}],
                         "place":{"decimalDegrees":{"latitude":"-30.47","longitude":"150.05"}}}
                        """).getString("incidentId");
        Api.post(
                        DISPATCHER,
                        "/api/incidents/" + incident + "/attendances",
                        "{\"leadMemberId\":\"%s\",\"at\":\"%s\"}".formatted(world.rescuer, NOON))
                .statusCode(422)
                .body("reasons", hasItem(containsString("speed limit not known, counts as high")));
    }

    @Test
    void onlyVaccinatedPeopleGoToABatAndNobodyOverridesThat() {
        String incident = Api.make(DISPATCHER, "/api/calls", """
                        {"people":{"anyoneHurt":"no"},"cause":"entanglement",
                         "animals":[{"scientificName":"Pteropus poliocephalus","vitality":"alive"}],
                         "place":{"decimalDegrees":{"latitude":"-30.45","longitude":"150.03"}}}
                        """).getString("incidentId");
        Api.post(
                        DISPATCHER,
                        "/api/incidents/" + incident + "/attendances",
                        "{\"leadMemberId\":\"%s\",\"at\":\"%s\",\"overrideReason\":\"I insist\"}"
                                .formatted(world.rescuer, NOON))
                .statusCode(422)
                .body("reasons", hasItem(containsString("nobody overrides")));
        Api.make(
                DISPATCHER,
                "/api/incidents/" + incident + "/attendances",
                "{\"leadMemberId\":\"%s\",\"at\":\"%s\"}".formatted(world.vaccinated, NOON));
        Json who = Api.get(DISPATCHER, "/api/incidents/" + incident + "/who-can-go");
        assertThat(who.getString("find { it.memberId == '%s' }.notBecause[0]".formatted(world.rescuer)))
                .contains("lyssavirus");
        assertThat(who.getList("find { it.memberId == '%s' }.notBecause".formatted(world.vaccinated)))
                .isEmpty();
    }

    @Test
    void anAttendanceGoesThroughItsStepsAndTheIncidentFollows() {
        String incident = World.call("Wallabia bicolor", 150.085, "").getString("incidentId");
        String id = Api.make(
                        DISPATCHER,
                        "/api/incidents/" + incident + "/attendances",
                        "{\"leadMemberId\":\"%s\",\"helperMemberIds\":[\"%s\"],\"policeReference\":\"E-78\"}"
                                .formatted(world.rescuer, world.helper))
                .getString("id");
        assertThat(progress(incident)).isEqualTo("offered");
        Api.post(RESCUER, "/api/attendances/" + id + "/acceptance", "{}").statusCode(200);
        assertThat(progress(incident)).isEqualTo("underway");
        Api.post(RESCUER, "/api/attendances/" + id + "/departure", "{}").statusCode(200);
        Api.post(RESCUER, "/api/attendances/" + id + "/arrival", "{}").statusCode(200);
        Api.post(RESCUER, "/api/attendances/" + id + "/outcome", "{\"outcome\":\"passedOn\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("passedOnTo"));
        Api.post(
                        RESCUER,
                        "/api/attendances/" + id + "/outcome",
                        "{\"outcome\":\"deadChecked\",\"pouchChecked\":\"yes\",\"youngFound\":0,\"carcassSigned\":true,\"carcassMoved\":true}")
                .statusCode(200)
                .body("carcassSigned", equalTo(true));
        assertThat(progress(incident)).isEqualTo("closed");
        Api.post(RESCUER, "/api/attendances/" + id + "/outcome", "{\"outcome\":\"notFound\"}")
                .statusCode(409);
        // The third caller of the next day sees a small one: the incident reopens.
        World.call("Wallabia bicolor", 150.085, ",\"incidentId\":\"%s\"".formatted(incident));
        assertThat(progress(incident)).isEqualTo("logged");
    }

    @Test
    void anIncidentThatNobodyGoesToIsClosedWithItsReason() {
        String incident = World.call("Wallabia bicolor", 150.095, "").getString("incidentId");
        Api.make(
                DISPATCHER,
                "/api/incidents/" + incident + "/closings",
                "{\"outcome\":\"notAttendedUnsafe\",\"reason\":\"fast road, caller drove on\",\"theirReference\":\"P-9\"}");
        assertThat(progress(incident)).isEqualTo("closed");
    }

    /** What is joined is open with its family, and closed with it; whoever calls about any of it later opens all of it. */
    @Test
    void aFamilyOfIncidentsIsOpenTogether() {
        String root = World.call("Wallabia bicolor", 150.0955, "").getString("incidentId");
        String joined = World.call("Wallabia bicolor", 150.0956, "").getString("incidentId");
        Api.post(
                        DISPATCHER,
                        "/api/incidents/" + root + "/joins",
                        "{\"incidentId\":\"%s\",\"reason\":\"the same\"}".formatted(joined))
                .statusCode(200);
        assertThat(open()).contains(root).doesNotContain(joined);
        Api.make(
                DISPATCHER,
                "/api/incidents/" + root + "/closings",
                "{\"outcome\":\"notAttendedNobody\",\"reason\":\"nobody was free\"}");
        assertThat(open()).doesNotContain(root, joined);
        World.call("Wallabia bicolor", 150.0955, ",\"incidentId\":\"%s\"".formatted(joined));
        assertThat(open()).contains(root).doesNotContain(joined);
        assertThat(Api.get(DISPATCHER, "/api/open-incidents")
                        .getInt("find { it.incidentId == '" + root + "' }.callCount"))
                .isEqualTo(3);
    }

    private static List<String> open() {
        return Api.get(DISPATCHER, "/api/open-incidents").getList("incidentId");
    }

    private static String progress(String incident) {
        return Api.get(DISPATCHER, "/api/incidents/" + incident).getString("progress");
    }
}
