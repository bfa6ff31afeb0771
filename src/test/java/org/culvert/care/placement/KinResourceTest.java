package org.culvert.care.placement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A kind of its own, so that no other test's carers can take it. */
@QuarkusTest
@OnOldestDatabase
class KinResourceTest {
    private static final String POSSUM = "Trichosurus cognatus";

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
        Api.post(ADMIN, "/api/taxon-groups", """
                [{"key":"kin-possums","name":"possums of a test","pouch":true,"clutches":false,"introduced":false}]
                """).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                [{"scientificName":"%s","vernacularName":"possum of a test","taxonRank":"species",
                  "taxonGroup":"kin-possums"}]
                """.formatted(POSSUM)).statusCode(200);
    }

    private String carer(int places, String more) {
        String id = Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"K%s","name":"A Carer","attends":false,"cares":true,
                         "homeLatitude":-30.5,"homeLongitude":150.1}
                        """.formatted(world.network, UUID.randomUUID()))
                .getString("id");
        Api.make(ADMIN, "/api/authorisations", """
                {"memberId":"%s","jurisdiction":"test","authorisationClass":"specialist","number":"K-%s",
                 "taxonGroup":"kin-possums","validFrom":"2020-01-01","validTo":"2090-12-31"%s}
                """.formatted(id, id, more));
        Api.make(
                COORDINATOR,
                "/api/carer-profiles",
                "{\"memberId\":\"%s\",\"places\":%d,\"placesByGroup\":{}}".formatted(id, places));
        return id;
    }

    private static String held(String holder, String mother) {
        String incident = World.call(POSSUM, 150.03, "").getString("incidentId");
        return Api.make(COORDINATOR, "/api/cases", """
                        {"animal":{"scientificName":"%s"%s},"incidentId":"%s","foundAt":"2026-11-01T08:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(
                        POSSUM, mother == null ? "" : ",\"motherAnimalId\":\"" + mother + "\"", incident, holder))
                .getString("id");
    }

    private static String animalOf(String caseId) {
        return Api.get(COORDINATOR, "/api/cases/" + caseId).getString("animal.id");
    }

    private static String tie(String caseId, String keep, String other) {
        return "/api/keeping-ties/"
                + Api.make(COORDINATOR, "/api/cases/" + caseId + "/keeping-ties", """
                                {"keep":"%s","otherCaseId":%s,"words":"as the carer says"}
                                """.formatted(
                                        keep, other == null ? "null" : "\"" + other + "\""))
                        .getString("id");
    }

    private static String kept(String caseId, String carer, String field) {
        return Api.get(COORDINATOR, "/api/cases/" + caseId + "/carers")
                .getString("find { it.memberId == '%s' }.tests.find { it.test == 'keptTogether' }?.%s"
                        .formatted(carer, field));
    }

    @Test
    void aPlacementSaysWithWhomTheMotherIs() {
        String hers = carer(9, "");
        String other = carer(9, "");
        String mother = held(hers, null);
        String young = held(world.rescuer, animalOf(mother));
        assertThat(kept(young, hers, "verdict")).isEqualTo("pass");
        assertThat(kept(young, other, "verdict")).isEqualTo("fail");
        assertThat(kept(young, other, "words")).startsWith("Its mother is with K");
        assertThat(kept(mother, other, "words")).startsWith("Its young is with ");
        // It warns, and refuses nothing
        Api.post(COORDINATOR, "/api/cases/" + young + "/placements", "{\"carerMemberId\":\"%s\"}".formatted(other))
                .statusCode(201)
                .body("tests.find { it.test == 'keptTogether' }.verdict", equalTo("fail"));
        // Offered is as good as there
        assertThat(kept(mother, other, "verdict")).isEqualTo("pass");
        Json kin = Api.get(COORDINATOR, "/api/cases/" + young + "/kin");
        assertThat(kin.getString("relatives[0].relation")).isEqualTo("mother");
        assertThat(kin.getString("relatives[0].holderMemberId")).isEqualTo(hers);
        tie(young, "alone", null);
        assertThat(kept(young, other, "verdict")).isNull();
        assertThat(kept(mother, hers, "verdict")).isNull();
    }

    @Test
    void whoIsDeadOrGoneTiesNobodyButSiblingsStay() {
        String mother = held(world.rescuer, null);
        String one = held(world.rescuer, animalOf(mother));
        String other = held(world.helper, animalOf(mother));
        Api.change(COORDINATOR, "/api/cases/" + mother, "/fate", "{\"fate\":\"died\"}")
                .statusCode(200);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + one + "/kin").<String>getList("relatives.relation"))
                .containsExactly("sibling");
        Api.change(COORDINATOR, "/api/cases/" + other, "/fate", "{\"fate\":\"escaped\"}")
                .statusCode(200);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + one + "/kin").getList("relatives"))
                .isEmpty();
    }

    @Test
    void familiesGoToOneCarerOrToNobody() {
        String leaving = carer(100, "");
        for (int i = 0; i < 3; i++) {
            carer(3, "");
        }
        String mother = held(leaving, null);
        String young = held(leaving, animalOf(mother));
        String told = held(leaving, null);
        String tie = tie(told, "together", young);
        String alone = held(leaving, null);
        String entry = "{\"fromMemberId\":\"%s\",\"words\":\"she must leave\"}".formatted(leaving);
        Json proposal = Api.make(COORDINATOR, "/api/placement-proposals", entry);
        assertThat(proposal.getInt("placed")).isEqualTo(4);
        assertThat(proposal.getBoolean("isBest")).isTrue();
        assertThat(new HashSet<>(List.of(carerOf(proposal, mother), carerOf(proposal, young), carerOf(proposal, told))))
                .hasSize(1);
        assertThat(proposal.getString("moves.find { it.caseId == '" + young + "' }.words"))
                .contains("Together with case ");
        String path = "/api/placement-proposals/" + proposal.getString("id");
        Api.change(COORDINATOR, path, "/approval", "{\"leaveOut\":[\"%s\"]}".formatted(young))
                .statusCode(400)
                .body("errors.field", hasItem("leaveOut"))
                .body("errors[0].detail", containsString("are kept together"));
        Api.change(COORDINATOR, tie, "/withdrawal", "{\"reason\":\"they fight\"}")
                .statusCode(200);
        Api.change(COORDINATOR, path, "/approval", "{\"leaveOut\":[\"%s\",\"%s\"]}".formatted(young, mother))
                .statusCode(200)
                .body("moves.findAll { it.placementId != null }.size()", equalTo(2));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + alone).getString("state"))
                .isEqualTo("handOverPending");
    }

    private static String carerOf(Json proposal, String caseId) {
        return proposal.getString("moves.find { it.caseId == '" + caseId + "' }.carerMemberId");
    }

    @Test
    void aTieIsToldOnceAndOfTwo() {
        String one = held(world.rescuer, null);
        String other = held(world.rescuer, null);
        tie(one, "together", other);
        String path = "/api/cases/" + other + "/keeping-ties";
        Api.post(COORDINATOR, path, "{\"keep\":\"together\",\"otherCaseId\":\"%s\",\"words\":\"again\"}".formatted(one))
                .statusCode(409);
        for (String wrong : List.of(
                "{\"keep\":\"together\",\"words\":\"with nobody\"}",
                "{\"keep\":\"alone\",\"otherCaseId\":\"%s\",\"words\":\"alone with\"}".formatted(one),
                "{\"keep\":\"together\",\"otherCaseId\":\"%s\",\"words\":\"itself\"}".formatted(other))) {
            Api.post(COORDINATOR, path, wrong).statusCode(400).body("errors.field", hasItem("otherCaseId"));
        }
    }

    private static LocalDate inDays(int days) {
        return LocalDate.now(ZoneId.of("Australia/Sydney")).plusDays(days);
    }

    @Test
    void supervisionHoldsFromItsFirstDayToItsLast() {
        String supervisor = carer(9, "");
        String carer = carer(9, ",\"supervised\":true");
        String profile = "/api/carer-profiles/"
                + Api.get(COORDINATOR, "/api/carer-profiles?memberId=" + carer).getString("[0].id");
        String animal = held(world.rescuer, null);
        for (int[] days : new int[][] {{-9, -1, 0}, {1, 9, 0}, {-9, 0, 1}, {0, 9, 1}}) {
            Api.correct(COORDINATOR, profile, """
                            {"supervisorId":"%s","supervisedFrom":"%s","supervisedUntil":"%s","reason":"for a test"}
                            """.formatted(supervisor, inDays(days[0]), inDays(days[1])))
                    .statusCode(200);
            assertThat(Api.get(COORDINATOR, "/api/cases/" + animal + "/carers")
                            .getString("find { it.memberId == '" + carer + "' }.tests[0].verdict"))
                    .as("%d to %d", days[0], days[1])
                    .isEqualTo(days[2] == 1 ? "pass" : "fail");
        }
        // On another day than today
        assertThat(Api.get(
                                COORDINATOR,
                                "/api/cases/" + animal + "/carers?at="
                                        + inDays(10)
                                                .atTime(12, 0)
                                                .atZone(ZoneId.of("UTC"))
                                                .toInstant())
                        .getString("find { it.memberId == '" + carer + "' }.tests[0].words"))
                .contains("no supervisor with an authorisation of their own is entered for " + inDays(10));
        Api.correct(COORDINATOR, profile, "{\"supervisedUntil\":\"%s\",\"reason\":\"x\"}".formatted(inDays(-1)))
                .statusCode(400)
                .body("errors.field", hasItem("supervisedUntil"));
        Api.correct(COORDINATOR, profile, "{\"supervisorId\":null,\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors.field", hasItem("supervisorId"));
        // What is held under it lapses with it
        held(carer, null);
        Api.correct(COORDINATOR, profile, "{\"supervisedUntil\":\"%s\",\"reason\":\"x\"}".formatted(inDays(5)))
                .statusCode(200);
        assertThat(Api.get(COORDINATOR, "/api/lapsing-authorisations?withinDays=30")
                        .getString("find { it.memberId == '" + carer + "' }.lastDay"))
                .isEqualTo(inDays(5).toString());
    }
}
