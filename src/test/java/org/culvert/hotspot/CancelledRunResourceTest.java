package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import org.culvert.platform.Patience;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

/** The stream of events is read as the HTML Living Standard has it, section 9.2, Server-sent events. */
@QuarkusTest
class CancelledRunResourceTest {
    private static String ask(int simulations) {
        return Api.post(COORDINATOR, "/api/hotspot-runs", """
                        {"periodFrom":"%1$d-01-01","periodTo":"%1$d-12-31","simulations":%2$d,"reachMetres":300,
                         "chance":"per-kilometre"}
                        """.formatted(EvidenceWorld.year(), simulations))
                .statusCode(202)
                .extract()
                .path("id");
    }

    private static String state(String run) {
        return Api.get(COORDINATOR, "/api/hotspot-runs/" + run).getString("state");
    }

    @Test
    void aRunThatIsCalledOffStopsAndHasNoResult() {
        EvidenceWorld.make();
        String run = ask(99_999);
        Patience.until("it is being computed", () -> state(run).equals("computing"));

        Api.post(COORDINATOR, "/api/hotspot-runs/" + run + "/cancellation", "{\"reason\":\"the wrong year\"}")
                .statusCode(201)
                .body("state", equalTo("cancelled"))
                .body("cancelledBecause", equalTo("the wrong year"))
                .body("result", nullValue());
        Api.post(COORDINATOR, "/api/hotspot-runs/" + run + "/cancellation", "{\"reason\":\"again\"}")
                .statusCode(409)
                .body("detail", containsString("it is cancelled"));

        // The queue has one thread: that another is done means that this one was stopped
        String next = ask(19);
        Patience.until("the next is done", () -> state(next).equals("done"));
        assertThat(state(run)).isEqualTo("cancelled");
        Api.as(COORDINATOR).get("/api/hotspot-runs/" + run + "/result").then().statusCode(409);
        Api.post(COORDINATOR, "/api/hotspot-runs/" + next + "/cancellation", "{\"reason\":\"too late\"}")
                .statusCode(409)
                .body("detail", containsString("it is done"));
    }

    @Test
    void whoeverMayNotSeeRunsCallsNoneOff() {
        EvidenceWorld.make();
        String run = ask(19);
        Api.post(RESCUER, "/api/hotspot-runs/" + run + "/cancellation", "{\"reason\":\"mine\"}")
                .statusCode(403);
        Api.post(COORDINATOR, "/api/hotspot-runs/" + run + "/cancellation", "{}")
                .statusCode(400)
                .body("errors[0].field", equalTo("reason"));
    }

    @Test
    void howFarARunHasComeIsToldUntilItIsDone() {
        World.shared();
        String run = ask(199);
        String events = Api.as(COORDINATOR)
                .accept("text/event-stream")
                .get("/api/hotspot-runs/" + run + "/progress")
                .then()
                .statusCode(200)
                .contentType(containsString("text/event-stream"))
                .extract()
                .asString();
        String[] told = events.strip().split("\n\n");
        assertThat(told).isNotEmpty();
        for (String event : told) {
            assertThat(event.lines()).contains("event:progress");
        }
        assertThat(told[told.length - 1]).contains("\"state\":\"done\"").contains("\"simulationsDone\":199");
        for (int i = 0; i < told.length - 1; i++) {
            assertThat(told[i]).doesNotContain("\"state\":\"done\"");
        }
        assertThat(state(run)).isEqualTo("done");
    }

    @Test
    void nobodyFollowsARunThatIsNotThere() {
        Api.as(COORDINATOR)
                .get("/api/hotspot-runs/00000000-0000-7000-8000-00000000dead/progress")
                .then()
                .statusCode(404)
                .body("type", notNullValue());
    }
}
