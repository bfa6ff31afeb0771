package org.culvert.clinic;

import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import org.culvert.support.Api;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
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

    private static String visitAtTheClinic(World world) {
        return Api.make(COORDINATOR, "/api/visits", visit(caseWithTheRescuer(world), world))
                .getString("id");
    }

    private static String order(String more) {
        return """
                {"drug":"as the vet named it","dose":"as the vet wrote it","route":"by mouth","times":"each morning",
                 "vetName":"Dr Vet","vetRegistration":"V-1","at":"2026-11-01T02:00:00Z"%s}
                """.formatted(more);
    }

    /** Accounting for controlled drugs: common practice, no source. */
    @Test
    void eachUseOfAControlledDrugIsAccountedFor() {
        String path = "/api/visits/" + visitAtTheClinic(World.shared());
        String order = Api.post(CLINIC, path + "/drug-orders", order(",\"controlled\":true"))
                .statusCode(201)
                .body("drugOrders[0].from", equalTo("2026-11-01"))
                .body("drugOrders[0].dose", equalTo("as the vet wrote it"))
                .extract()
                .path("drugOrders[0].id");
        String uses = path + "/drug-orders/" + order + "/uses";
        Api.post(CLINIC, uses, "{\"amount\":\"as ordered\",\"givenBy\":\"Nurse\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("batch"));
        String given =
                "{\"amount\":\"as ordered\",\"givenBy\":\"Nurse\",\"batch\":\"B-7\",\"expiresOn\":\"%s\",\"at\":\"%s\"}";
        Api.post(CLINIC, uses, given.formatted("2027-01-01", "2026-10-31T02:00:00Z"))
                .statusCode(400)
                .body("errors[0].detail", containsString("before it was ordered"));
        Api.post(CLINIC, uses, given.formatted("2026-11-01", "2026-11-02T02:00:00Z"))
                .statusCode(201)
                .body("drugOrders[0].uses[0].expired", equalTo(true));
        String second = Api.post(CLINIC, uses, given.formatted("2026-11-03", "2026-11-03T02:00:00Z"))
                .statusCode(201)
                .body("drugOrders[0].uses[1].expired", equalTo(false))
                .extract()
                .path("drugOrders[0].uses[1].id");
        String drug = "/drug-orders/" + order;
        Api.change(CLINIC, path, drug + "/uses/" + second + "/withdrawal", "{\"reason\":\"it was not given\"}")
                .statusCode(200)
                .body("drugOrders[0].uses[1].withdrawnBecause", equalTo("it was not given"));
        Api.change(CLINIC, path, drug + "/withdrawal", "{\"reason\":\"for another one\"}")
                .statusCode(200)
                .body("drugOrders[0].uses.size()", equalTo(2));
        Api.post(CLINIC, uses, given.formatted("2027-01-01", "2026-11-04T02:00:00Z"))
                .statusCode(409);
    }

    @Test
    void anOrderIsAVetsAndEndsAfterItBegan() {
        String path = "/api/visits/" + visitAtTheClinic(World.shared()) + "/drug-orders";
        Api.post(COORDINATOR, path, order("")).statusCode(403);
        Api.post(CLINIC, path, order("").replace("V-1", " ")).statusCode(400);
        Api.post(CLINIC, path, order(",\"until\":\"2026-10-31\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("until"));
        Api.post(CLINIC, path, order(",\"until\":\"2026-11-01\"")).statusCode(201);
    }

    @Test
    void aVisitHasItsConditionAndWhoMayHoldTheAnimalNext() {
        World world = World.shared();
        String body = visit(caseWithTheRescuer(world), world);
        Api.post(COORDINATOR, "/api/visits", body.replace("}", ",\"bodyCondition\":6}"))
                .statusCode(400)
                .body("errors[0].field", equalTo("bodyCondition"));
        String id = Api.make(COORDINATOR, "/api/visits", body.replace("}", ",\"bodyCondition\":2}"))
                .getString("id");
        Api.correct(CLINIC, "/api/visits/" + id, "", "{\"bodyCondition\":0,\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("bodyCondition"));
        Api.post(
                        CLINIC,
                        "/api/visits/" + id + "/findings",
                        "{\"bodyPart\":\"pelvis\",\"side\":\"left\",\"finding\":\"fracture\"}")
                .statusCode(201)
                .body("findings[0].bodyPart", equalTo("pelvis"));
        Api.change(
                        CLINIC,
                        "/api/visits/" + id,
                        "/discharge",
                        "{\"vetName\":\"Dr Vet\",\"vetRegistration\":\"V-1\",\"plan\":\"dry\",\"mayHold\":\"a carer for turtles\"}")
                .statusCode(201)
                .body("bodyCondition", equalTo(2))
                .body("discharge.mayHold", equalTo("a carer for turtles"));
    }
}
