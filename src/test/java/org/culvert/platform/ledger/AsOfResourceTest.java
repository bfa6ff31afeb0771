package org.culvert.platform.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.DISPATCHER;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Instant;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Any record and any list, as they were on a date. */
@QuarkusTest
@OnOldestDatabase
class AsOfResourceTest {
    private static final String TURTLE = "Chelodina longicollis";

    @BeforeEach
    void world() {
        World.shared();
    }

    @Test
    void aRecordThatWasNotThereYetIsNotThere() {
        Instant before = Clocks.now();
        Json call = World.call(TURTLE, 150.021, "");
        Instant after = Clocks.now();
        String incident = "/api/incidents/" + call.getString("incidentId");
        asOf(incident, before).statusCode(404);
        asOf(incident, after).statusCode(200).body("calls.size()", equalTo(1));
        asOf("/api/incidents", before).body("items.id", not(hasItem(call.getString("incidentId"))));
        asOf("/api/incidents", after).body("items.id", hasItem(call.getString("incidentId")));
    }

    @Test
    void anIncidentIsReadBeforeJoinedAndUndone() {
        String kept = World.call(TURTLE, 150.022, "").getString("incidentId");
        String other = World.call(TURTLE, 150.0221, "").getString("incidentId");
        Instant apart = Clocks.now();
        Json joined = Api.as(DISPATCHER)
                .body("{\"incidentId\":\"%s\",\"reason\":\"same turtle\"}".formatted(other))
                .post("/api/incidents/" + kept + "/joins")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        Instant together = Clocks.now();
        Api.as(DISPATCHER)
                .body("{\"reason\":\"another one\"}")
                .post("/api/joins/" + joined.getString("joins[0].id") + "/undoing")
                .then()
                .statusCode(200);
        Instant undone = Clocks.now();
        String path = "/api/incidents/" + kept;
        asOf(path, apart).body("joins.size()", equalTo(0)).body("calls.size()", equalTo(1));
        asOf(path, together).body("joins.size()", equalTo(1)).body("calls.size()", equalTo(2));
        asOf("/api/incidents/" + other, together).body("standsUnder", equalTo(kept));
        asOf(path, undone).body("joins.size()", equalTo(0)).body("calls.size()", equalTo(1));
        asOf("/api/incidents", together).body("items.id", not(hasItem(other)));
        asOf("/api/incidents", undone).body("items.id", hasItem(other));
    }

    /** An erasure has to hold in the past too. */
    @Test
    void personalDataAreAsTheyAreNow() {
        String call = "/api/calls/"
                + World.call(TURTLE, 150.024, ",\"words\":\"my name is An\"").getString("callId");
        Instant before = Clocks.now();
        Api.correct(DISPATCHER, call, "{\"words\":null,\"anyoneHurt\":\"yes\",\"reason\":\"asked to be left out\"}")
                .statusCode(200);
        asOf(call, before).statusCode(200).body("anyoneHurt", equalTo("no")).body("words", nullValue());
    }

    @Test
    void theAnswerSaysOfWhenItIs() {
        Instant now = Clocks.now();
        asOf("/api/incidents", now)
                .header(
                        "Memento-Datetime",
                        matchesPattern("[A-Z][a-z]{2}, \\d\\d [A-Z][a-z]{2} \\d{4} \\d\\d:\\d\\d:\\d\\d GMT"));
        Api.as(DISPATCHER).get("/api/incidents").then().header("Memento-Datetime", nullValue());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "yesterday",
                "2026-11-25",
                "",
                "2999-01-01T00:00:00Z",
                "0001-01-01T00:00:00Z",
                "+1000000000-12-31T23:59:59Z"
            })
    void saysWhatAnInstantIs(String asked) {
        Api.as(DISPATCHER)
                .queryParam("asOf", asked)
                .get("/api/incidents")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("asOf"))
                .body("errors[0].wanted", notNullValue());
    }

    @Test
    void anOffsetIsReadEvenWhereItsPlusBecameASpace() {
        Instant now = Clocks.now();
        String there = now.atOffset(java.time.ZoneOffset.ofHours(10)).toString();
        Api.as(DISPATCHER).get("/api/incidents?asOf=" + there).then().statusCode(200);
    }

    @Test
    void nobodyWritesIntoThePast() {
        Api.as(DISPATCHER)
                .queryParam("asOf", Clocks.now().toString())
                .body("{}")
                .post("/api/calls")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("asOf"));
    }

    @Test
    void oneReaderInThePastLeavesTheOthersInThePresent() {
        Instant before = Clocks.now();
        String incident = World.call(TURTLE, 150.023, "").getString("incidentId");
        for (int i = 0; i < 40; i++) {
            asOf("/api/incidents/" + incident, before).statusCode(404);
            assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getString("id"))
                    .isEqualTo(incident);
        }
    }

    private static Answer asOf(String path, Instant instant) {
        return Api.as(DISPATCHER)
                .queryParam("asOf", instant.toString())
                .get(path)
                .then();
    }
}
