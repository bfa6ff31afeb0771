package org.culvert.platform.sight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two organisations do not see each other's animals; one that is offered an animal sees it. */
@QuarkusTest
class OwnAnimalsResourceTest {
    private static final String TURTLE = "Chelodina longicollis";

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private static String shelter() {
        return Api.make(ADMIN, "/api/organisations", """
                        {"kind":"shelter","name":"Shelter %s","xRay":false,"surgery":false}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
    }

    private static Json caseHeldBy(String organisation) {
        String incident = World.call(TURTLE, 150.071, "").getString("incidentId");
        return Api.make(COORDINATOR, "/api/cases", """
                {"incidentId":"%s","animal":{"scientificName":"%s"},"foundAt":"2026-01-10T02:00:00Z",
                 "holder":{"organisationId":"%s"}}
                """.formatted(incident, TURTLE, organisation));
    }

    @Test
    void whatAnotherOrganisationHoldsIsNotThere() {
        Json theirs = caseHeldBy(shelter());
        String path = "/api/cases/" + theirs.getString("id");
        for (String role : List.of(RESCUER, CARER, CLINIC)) {
            Api.as(role).get(path).then().statusCode(404);
            Api.as(role)
                    .get("/api/incidents/" + theirs.getString("incidentId"))
                    .then()
                    .statusCode(404);
            assertThat(allCases(role)).doesNotContain(theirs.getString("id"));
        }
        Api.as(CARER).get(path + "/placements").then().statusCode(404);
        Api.as(CLINIC).get(path + "/visits").then().statusCode(404);
        Api.post(RESCUER, path + "/whereabouts", "{\"words\":\"in the shed\"}").statusCode(404);
        Api.post(CARER, "/api/assessments", """
                {"caseId":"%s","position":{"jurisdiction":"XZ","decimalLatitude":-30.5,"decimalLongitude":150.03,
                 "coordinateUncertaintyInMeters":10}}
                """.formatted(theirs.getString("id")))
                .statusCode(404);
        Api.post(CLINIC, "/api/clutches", """
                {"motherCaseId":"%s","holder":{"memberId":"%s"},
                 "eggs":{"recovered":1,"setToIncubate":1,"broken":0,"discarded":0}}
                """.formatted(theirs.getString("id"), world.incubatorKeeper))
                .statusCode(404);
        assertThat(Api.get(COORDINATOR, path).getString("id")).isEqualTo(theirs.getString("id"));
    }

    @Test
    void whoIsAskedToTakeAnAnimalSeesItAndAccepts() {
        Json theirs = caseHeldBy(shelter());
        String path = "/api/cases/" + theirs.getString("id");
        Api.as(CLINIC).get(path).then().statusCode(404);
        String handOver = Api.make(
                        COORDINATOR,
                        path + "/hand-overs",
                        "{\"taker\":{\"organisationId\":\"%s\"}}".formatted(world.clinic))
                .getString("id");
        Json offered = Api.get(CLINIC, path);
        assertThat(offered.getString("animal.scientificName")).isEqualTo(TURTLE);
        assertThat(offered.getString("foundPlace.roadName")).isEqualTo("Mill Road");
        Api.as(RESCUER).get(path).then().statusCode(404);
        Api.post(CLINIC, "/api/hand-overs/" + handOver + "/acceptance", "{}").statusCode(200);
        assertThat(Api.get(CLINIC, path).getString("state")).isEqualTo("inCare");
    }

    @Test
    void whoRefusesAnAnimalSeesItNoMore() {
        Json theirs = caseHeldBy(shelter());
        String handOver = Api.make(
                        COORDINATOR,
                        "/api/cases/" + theirs.getString("id") + "/hand-overs",
                        "{\"taker\":{\"organisationId\":\"%s\"}}".formatted(world.clinic))
                .getString("id");
        Api.post(CLINIC, "/api/hand-overs/" + handOver + "/refusal", "{\"reason\":\"full\"}")
                .statusCode(200);
        Api.as(CLINIC).get("/api/cases/" + theirs.getString("id")).then().statusCode(404);
    }

    @Test
    void aListOfOwnCasesGoesOnFromPageToPage() {
        List<String> made = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            made.add(0, caseHeldBy(world.clinic).getString("id"));
            caseHeldBy(shelter());
        }
        List<String> read = new ArrayList<>();
        Json page = Api.get(CLINIC, "/api/cases?limit=2");
        while (read.size() < 5) {
            assertThat(page.getList("items")).hasSizeBetween(1, 2);
            read.addAll(page.getList("items.id", String.class));
            if (read.size() < 5) {
                page = Api.get(CLINIC, "/api/cases?limit=2&cursor=" + page.getString("next"));
            }
        }
        assertThat(read.subList(0, 5)).isEqualTo(made);
    }

    /** Every case that a role is shown, page after page. */
    private static List<String> allCases(String role) {
        List<String> all = new ArrayList<>();
        String next = "";
        while (next != null) {
            Json page = Api.get(role, "/api/cases?limit=1000" + next);
            all.addAll(page.getList("items.id", String.class));
            next = page.getString("next") == null ? null : "&cursor=" + page.getString("next");
        }
        return all;
    }
}
