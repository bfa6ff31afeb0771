package org.culvert.care.placement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.OFFICER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class SurgeResourceTest {
    private static final String FROG = "Litoria surgensis";

    private World world;
    private String group;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
        group = "surge-frogs";
        Api.post(ADMIN, "/api/taxon-groups", """
                        [{"key":"surge-frogs","name":"frogs of a test","pouch":false,"clutches":false,"introduced":false}]
                        """).statusCode(200);
        Api.post(ADMIN, "/api/taxa", """
                        [{"scientificName":"%s","vernacularName":"frog of a test","taxonRank":"species",
                          "taxonGroup":"surge-frogs"}]
                        """.formatted(FROG)).statusCode(200);
    }

    private String carer(double longitude, int places, String validTo) {
        String id = Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"S%s","name":"A Carer","attends":false,"cares":true,
                         "homeLatitude":-30.5,"homeLongitude":%s}
                        """.formatted(world.network, UUID.randomUUID(), longitude))
                .getString("id");
        if (validTo != null) {
            Api.make(ADMIN, "/api/authorisations", """
                    {"memberId":"%s","jurisdiction":"test","authorisationClass":"specialist","number":"S-%s",
                     "taxonGroup":"%s","validFrom":"2020-01-01","validTo":"%s"}
                    """.formatted(id, id, group, validTo));
        }
        Api.make(COORDINATOR, "/api/carer-profiles", """
                {"memberId":"%s","places":%d,"placesByGroup":{}}
                """.formatted(id, places));
        return id;
    }

    private String heldBy(String carer) {
        String incident = World.call(FROG, 150.03, "").getString("incidentId");
        return Api.make(COORDINATOR, "/api/cases", """
                        {"animal":{"scientificName":"%s"},"incidentId":"%s","foundAt":"2026-11-01T08:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(FROG, incident, carer))
                .getString("id");
    }

    private static LocalDate inDays(int days) {
        return LocalDate.now(ZoneId.of("Australia/Sydney")).plusDays(days);
    }

    @Test
    void sixtyAnimalsLeaveACarerAtOnce() {
        String leaving = carer(150.0, 100, "2090-12-31");
        List<String> cases = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            cases.add(heldBy(leaving));
        }
        Map<String, Integer> places = new HashMap<>();
        for (int i = 0; i < 12; i++) {
            places.put(carer(150.1 + 0.05 * i, 5, "2090-12-31"), 5);
        }
        String entry = "{\"fromMemberId\":\"%s\",\"words\":\"the fire comes near\"}".formatted(leaving);
        Json proposal = Api.make(COORDINATOR, "/api/placement-proposals", entry);
        assertThat(proposal.getInt("placed")).isEqualTo(60);
        assertThat(proposal.getBoolean("isBest")).isTrue();
        List<String> to = proposal.getList("moves.carerMemberId");
        assertThat(to).doesNotContain(leaving);
        places.forEach((carer, most) ->
                assertThat(to.stream().filter(carer::equals).count()).isLessThanOrEqualTo(most));
        String path = "/api/placement-proposals/" + proposal.getString("id");
        Api.change(COORDINATOR, path, "/approval", "{\"leaveOut\":[\"%s\"]}".formatted(cases.get(0)))
                .statusCode(200)
                .body("moves.findAll { it.placementId != null }.size()", equalTo(59))
                .body("approvedBy", org.hamcrest.Matchers.notNullValue());
        Api.change(COORDINATOR, path, "/approval", "{\"leaveOut\":[]}").statusCode(409);
        assertThat(Api.get(COORDINATOR, "/api/cases/" + cases.get(1)).getString("state"))
                .isEqualTo("handOverPending");
        assertThat(Api.get(COORDINATOR, "/api/cases/" + cases.get(0)).getString("state"))
                .isEqualTo("inCare");
    }

    @Test
    void nothingIsPlacedWhenOneOfThemCanNotGoAnyMore() {
        String leaving = carer(151.4, 100, "2090-12-31");
        String one = heldBy(leaving);
        String other = heldBy(leaving);
        String only = carer(151.41, 2, "2090-12-31");
        Json proposal = Api.make(COORDINATOR, "/api/placement-proposals", """
                {"caseIds":["%s","%s"],"words":"she must leave"}
                """.formatted(one, other));
        String first = proposal.getString("moves[0].carerMemberId");
        Api.make(COORDINATOR, "/api/members/" + first + "/absences", """
                {"from":"%s","until":"%s"}
                """.formatted(inDays(-1), inDays(1)));
        Api.change(
                        COORDINATOR,
                        "/api/placement-proposals/" + proposal.getString("id"),
                        "/approval",
                        "{\"leaveOut\":[]}")
                .statusCode(409)
                .body("detail", containsString("Nothing was placed"));
        assertThat(Api.get(COORDINATOR, "/api/cases/" + one).getString("state")).isEqualTo("inCare");
        assertThat(Api.get(COORDINATOR, "/api/cases/" + other).getString("state"))
                .isEqualTo("inCare");
        assertThat(only).isNotNull();
    }

    @Test
    void anAuthorisationThatLapsesIsSeenWeeksBeforeAndEachAnimalHasAWayOut() {
        String holder = carer(150.5, 100, inDays(20).toString());
        List<String> cases = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            cases.add(heldBy(holder));
        }
        for (int i = 0; i < 4; i++) {
            carer(150.6, 3, "2090-12-31");
        }
        String of = "find { it.memberId == '" + holder + "' }";
        assertThat((Object) Api.get(OFFICER, "/api/lapsing-authorisations?withinDays=20")
                        .get(of))
                .isNull();
        Json lapses = Api.get(COORDINATOR, "/api/lapsing-authorisations?withinDays=21");
        assertThat(lapses.getString(of + ".lastDay")).isEqualTo(inDays(20).toString());
        assertThat(lapses.getLong(of + ".daysLeft")).isEqualTo(21);
        assertThat(lapses.getList(of + ".animals.carerMemberId")).hasSize(12).doesNotContainNull();
        // A renewal that follows without a break moves the day on
        Api.make(ADMIN, "/api/authorisations", """
                {"memberId":"%s","jurisdiction":"test","authorisationClass":"specialist","number":"renewed",
                 "taxonGroup":"%s","validFrom":"%s","validTo":"2090-12-31"}
                """.formatted(holder, group, inDays(21)));
        assertThat((Object) Api.get(COORDINATOR, "/api/lapsing-authorisations?withinDays=56")
                        .get(of))
                .isNull();
    }

    @Test
    void whoIsNotListedTodayComesFirst() {
        String holder = carer(150.5, 100, "2026-01-31");
        heldBy(holder);
        Json lapses = Api.get(COORDINATOR, "/api/lapsing-authorisations");
        String of = "find { it.memberId == '" + holder + "' }";
        assertThat(lapses.getLong(of + ".daysLeft")).isZero();
        assertThat(lapses.getString(of + ".lastDay")).isNull();
    }

    @Test
    void anOrderAuthorisesManyAtOnceOrNobody() {
        String one = carer(150.5, 3, null);
        String other = carer(150.5, 3, null);
        String order = """
                {"jurisdiction":"test","authorisationClass":"by order","number":"F-7","order":"the authority, on a day",
                 "memberIds":["%s","%s"],"taxonGroups":["surge-frogs"],"validFrom":"%s","validTo":"%s"}
                """;
        Api.post(
                        COORDINATOR,
                        "/api/ordered-authorisations",
                        order.formatted(one, UUID.randomUUID(), inDays(-1), inDays(9)))
                .statusCode(404);
        assertThat(Api.get(COORDINATOR, "/api/authorisations?memberId=" + one).getList("id"))
                .isEmpty();
        Api.post(COORDINATOR, "/api/ordered-authorisations", order.formatted(one, other, inDays(-1), inDays(9)))
                .statusCode(201)
                .body("byOrder[1]", equalTo("the authority, on a day"));
        String frog = heldBy(carer(150.0, 9, "2090-12-31"));
        Api.post(COORDINATOR, "/api/cases/" + frog + "/placements", "{\"carerMemberId\":\"%s\"}".formatted(other))
                .statusCode(201)
                .body("authorisation", equalTo("F-7"));
    }
}
