package org.culvert.clinic;

import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

@QuarkusTest
class VisitResourceTest {
    private static String caseWithTheRescuer(World world) {
        String incident = World.call("Chelodina longicollis", 150.03, "").getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis"},"holder":{"memberId":"%s"}}
                        """.formatted(incident, world.rescuer))
                .getString("id");
    }

    private static String visit(String caseId, World world) {
        return "{\"caseId\":\"%s\",\"clinicId\":\"%s\",\"diagnosis\":\"a fracture\"}".formatted(caseId, world.clinic);
    }

    @Test
    void aClinicDoesNotLetItselfIntoACaseOfOthers() {
        World world = World.shared();
        String others = caseWithTheRescuer(world);
        Api.post(CLINIC, "/api/visits", visit(others, world))
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"))
                .body("detail", containsString("hands it"));
        Api.as(CLINIC).get("/api/cases/" + others).then().statusCode(404);
        Api.post(COORDINATOR, "/api/visits", visit(others, world)).statusCode(201);
        Api.as(CLINIC).get("/api/cases/" + others).then().statusCode(200);
    }

    @Test
    void aClinicRecordsVisitsOfWhatIsHandedToItOrIsThereForADay() {
        World world = World.shared();
        String onItsWay = caseWithTheRescuer(world);
        Api.make(
                RESCUER,
                "/api/cases/" + onItsWay + "/hand-overs",
                "{\"taker\":{\"organisationId\":\"%s\"}}".formatted(world.clinic));
        Api.post(CLINIC, "/api/visits", visit(onItsWay, world)).statusCode(201);
        String forADay = caseWithTheRescuer(world);
        Api.post(
                        RESCUER,
                        "/api/cases/" + forADay + "/whereabouts",
                        "{\"organisationId\":\"%s\"}".formatted(world.clinic))
                .statusCode(200);
        Api.post(CLINIC, "/api/visits", visit(forADay, world)).statusCode(201);
    }
}
