package org.culvert.platform.ledger;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import java.util.UUID;
import org.culvert.support.Api;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Who changed what when, and why. */
@QuarkusTest
@OnOldestDatabase
class RevisionResourceTest {
    @BeforeEach
    void world() {
        World.shared();
    }

    @Test
    void everyRevisionSaysWhoMadeItAndWhy() {
        String id = World.call("Chelodina longicollis", 150.062, "").getString("incidentId");
        Api.correct(COORDINATOR, "/api/incidents/" + id, "{\"cause\":\"disease\",\"reason\":\"first\"}");
        Api.correct(DISPATCHER, "/api/incidents/" + id, "{\"cause\":\"orphaned\",\"reason\":\"second\"}");
        Api.as(DISPATCHER)
                .get("/api/records/" + id + "/revisions")
                .then()
                .statusCode(200)
                .body("revision", contains(1, 2, 3))
                .body("madeBy", contains("test-dispatcher", "test-coordinator", "test-dispatcher"))
                .body("[0].reason", nullValue())
                .body("[1].reason", equalTo("first"))
                .body("[2].reason", equalTo("second"));
    }

    @Test
    void partsHaveRevisionsOfTheirOwn() {
        String call = World.call("Chelodina longicollis", 150.063, "").getString("callId");
        String animal = Api.get(DISPATCHER, "/api/calls/" + call).getString("animals[0].id");
        Api.correct(
                        DISPATCHER,
                        "/api/calls/" + call,
                        "/animals/" + animal,
                        "{\"individualCount\":3,\"reason\":\"counted\"}")
                .statusCode(200);
        Api.as(DISPATCHER)
                .get("/api/records/" + animal + "/revisions")
                .then()
                .statusCode(200)
                .body("reason", contains(null, "counted"));
    }

    @Test
    void whoDoesNotSeeTheRecordDoesNotSeeItsRevisions() {
        String id = World.call("Chelodina longicollis", 150.064, "").getString("incidentId");
        Api.as(ADMIN).get("/api/records/" + id + "/revisions").then().statusCode(404);
        Api.as(DISPATCHER)
                .get("/api/records/" + UUID.randomUUID() + "/revisions")
                .then()
                .statusCode(404);
    }
}
