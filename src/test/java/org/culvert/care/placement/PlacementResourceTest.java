package org.culvert.care.placement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@OnOldestDatabase
class PlacementResourceTest {
    private static final String TURTLE = "Chelodina longicollis";
    private static final String BAT = "Pteropus poliocephalus";

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    private String animal(String species) {
        String incident = World.call(species, 150.03, "").getString("incidentId");
        return Api.make(COORDINATOR, "/api/cases", """
                        {"animal":{"scientificName":"%s"},"incidentId":"%s","foundAt":"2026-11-01T08:00:00Z",
                         "holder":{"organisationId":"%s"}}
                        """.formatted(species, incident, world.clinic))
                .getString("id");
    }

    private String carer(String group, String more) {
        String id = Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"P%s","name":"A Carer","attends":false,"cares":true,
                         "homeLatitude":-30.6,"homeLongitude":150.1}
                        """.formatted(world.network, UUID.randomUUID()))
                .getString("id");
        Api.make(ADMIN, "/api/authorisations", """
                {"memberId":"%s","jurisdiction":"test","authorisationClass":"specialist","number":"N-%s",
                 "taxonGroup":"%s","validFrom":"2020-01-01","validTo":"2090-12-31"%s}
                """.formatted(id, id, group, more));
        return id;
    }

    private static void profile(String carer, String told) {
        Api.make(COORDINATOR, "/api/carer-profiles", "{\"memberId\":\"%s\",%s}".formatted(carer, told));
    }

    private static Answer place(String caseId, String carer, String more) {
        return Api.post(
                COORDINATOR,
                "/api/cases/" + caseId + "/placements",
                "{\"carerMemberId\":\"%s\"%s}".formatted(carer, more));
    }

    private static Json carers(String caseId) {
        return Api.get(COORDINATOR, "/api/cases/" + caseId + "/carers");
    }

    private static String of(String carer) {
        return "find { it.memberId == '" + carer + "' }.";
    }

    @Test
    void aPlaceIsFilledOnce() throws Exception {
        String carer = carer("turtles", "");
        profile(carer, "\"places\":3,\"placesByGroup\":{\"turtles\":2}");
        List<String> cases = IntStream.range(0, 6).mapToObj(i -> animal(TURTLE)).toList();
        var together = Executors.newFixedThreadPool(6);
        try {
            List<Callable<Integer>> work = new ArrayList<>();
            for (String one : cases) {
                work.add(() -> place(one, carer, "").extract().statusCode());
            }
            List<Integer> answers = new ArrayList<>();
            for (var one : together.invokeAll(work)) {
                answers.add(one.get());
            }
            assertThat(answers.stream().filter(status -> status == 201)).hasSize(2);
            assertThat(answers.stream().filter(status -> status == 422)).hasSize(4);
        } finally {
            together.shutdown();
        }
        Json option = carers(animal(TURTLE));
        assertThat(option.getInt(of(carer) + "held")).isEqualTo(2);
        assertThat(option.getString(of(carer) + "answer")).isEqualTo("needsReason");
    }

    /** What custody records and what a placement tests is one reading of the same papers. */
    @Test
    void custodyIsUnderAPaperThatHoldsForTheHolder() {
        String carer = carer("turtles", ",\"premises\":\"Old Mill\"");
        assertThat(authorisationInCustodyOf(carer))
                .as("nobody told where she keeps them")
                .isNull();
        profile(carer, "\"premises\":\"old mill\",\"placesByGroup\":{}");
        assertThat(authorisationInCustodyOf(carer)).isEqualTo("N-" + carer);

        String learner = carer("turtles", ",\"supervised\":true");
        assertThat(authorisationInCustodyOf(learner))
                .as("nobody supervises her")
                .isNull();
        profile(
                learner,
                "\"supervisorId\":\"%s\",\"supervisedFrom\":\"2026-11-10\",\"placesByGroup\":{}"
                        .formatted(carer("turtles", "")));
        assertThat(authorisationInCustodyOf(learner)).isEqualTo("N-" + learner);
    }

    private String authorisationInCustodyOf(String carer) {
        String turtle = animal(TURTLE);
        String offered = Api.make(COORDINATOR, "/api/cases/" + turtle + "/hand-overs", """
                        {"taker":{"memberId":"%s"},"at":"2026-11-12T08:00:00Z"}
                        """.formatted(carer))
                .getString("id");
        return Api.change(COORDINATOR, "/api/hand-overs/" + offered, "/acceptance", "{\"at\":\"2026-11-12T09:00:00Z\"}")
                .statusCode(200)
                .extract()
                .path("custody[1].authorisation");
    }

    @Test
    void aFullHouseNeedsAReasonAndKeepsIt() {
        String carer = carer("turtles", "");
        profile(carer, "\"places\":0,\"placesByGroup\":{}");
        String turtle = animal(TURTLE);
        place(turtle, carer, "").statusCode(422).body("reasons[0]", containsString("0 of 0 places are taken"));
        place(turtle, carer, ",\"despite\":\"she has room for one more tonight\"")
                .statusCode(201)
                .body("despite", equalTo("she has room for one more tonight"))
                .body("tests.find { it.test == 'places' }.verdict", equalTo("fail"));
    }

    @Test
    void anAuthorisationForOtherPremisesIsNone() {
        String carer = carer("turtles", ",\"premises\":\"Shelter 4\"");
        String turtle = animal(TURTLE);
        assertThat(carers(turtle).getString(of(carer) + "tests[0].verdict")).isEqualTo("cantTell");
        place(turtle, carer, ",\"despite\":\"we know her\"").statusCode(422);
        profile(carer, "\"premises\":\"Shelter 5\",\"placesByGroup\":{}");
        place(turtle, carer, "").statusCode(422).body("reasons[0]", containsString("not for Shelter 5"));
        String other = carer("turtles", ",\"premises\":\"Shelter 4\"");
        profile(other, "\"premises\":\" shelter 4\",\"placesByGroup\":{}");
        place(turtle, other, "").statusCode(201).body("authorisation", equalTo("N-" + other));
    }

    /** Foster carers work under a supervising shelter: Wildlife Rehabilitator Authorisation Guide, DEECA Victoria 2023. */
    @Test
    void whoWorksUnderSupervisionNeedsASupervisor() {
        String carer = carer("turtles", ",\"supervised\":true");
        String supervisor = carer("turtles", "");
        String turtle = animal(TURTLE);
        place(turtle, carer, "").statusCode(422).body("reasons[0]", containsString("supervision"));
        profile(carer, "\"supervisorId\":\"%s\",\"placesByGroup\":{}".formatted(supervisor));
        place(turtle, carer, "").statusCode(201);
        Api.post(COORDINATOR, "/api/carer-profiles", """
                        {"memberId":"%s","supervisorId":"%s","placesByGroup":{}}
                        """.formatted(supervisor, supervisor))
                .statusCode(400)
                .body("errors[0].field", equalTo("supervisorId"));
    }

    @Test
    void whoeverIsNotShownToBeVaccinatedTakesNoBat() {
        String carer = carer("flying-foxes", "");
        String bat = animal(BAT);
        place(bat, carer, ",\"despite\":\"in a hurry\"")
                .statusCode(422)
                .body("reasons", hasItem(containsString("no record is no vaccination")));
        Api.make(ADMIN, "/api/vaccinations", """
                {"memberId":"%s","against":"lyssavirus","givenOn":"2020-01-01","currentUntil":"2090-01-01","basis":"booster"}
                """.formatted(carer));
        place(bat, carer, "").statusCode(201);
    }

    @Test
    void whoIsAwayTakesNothingInUntilTheyAreBack() {
        String carer = carer("turtles", "");
        String turtle = animal(TURTLE);
        String path = "/api/members/" + carer + "/absences";
        Api.post(COORDINATOR, path, "{\"from\":\"2026-11-10\",\"until\":\"2026-11-01\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("until"));
        String absence = Api.make(COORDINATOR, path, "{\"from\":\"2026-11-10\",\"until\":\"2026-11-20\"}")
                .getString("id");
        // The region's days are Sydney's: 21 November has begun there at 13:00 on the 20th
        String lastDay = ",\"at\":\"2026-11-20T12:59:00Z\"";
        place(turtle, carer, lastDay).statusCode(422).body("reasons[0]", containsString("Away until 2026-11-20"));
        Api.change(COORDINATOR, "/api/absences/" + absence, "/withdrawal", "{\"reason\":\"she came back\"}")
                .statusCode(200);
        place(turtle, carer, lastDay).statusCode(201);
    }

    @Test
    void whatIsKeptApartIsNotPlacedTogether() {
        String carer = carer("turtles", "");
        Api.make(ADMIN, "/api/authorisations", """
                {"memberId":"%s","jurisdiction":"test","authorisationClass":"specialist","number":"K-1",
                 "taxonGroup":"koalas","validFrom":"2020-01-01","validTo":"2090-12-31"}
                """.formatted(carer));
        String rule = Api.make(COORDINATOR, "/api/keeping-rules", """
                        {"keep":"apart","taxonGroup":"koalas","otherGroup":"turtles","strength":"policy",
                         "words":"Keep them apart.","source":"invented for this test","readOn":"2026-11-01"}
                        """).getString("id");
        place(animal(TURTLE), carer, "").statusCode(201);
        String koala = animal("Phascolarctos cinereus");
        place(koala, carer, "").statusCode(422).body("reasons[0]", containsString("Keep them apart."));
        Api.change(COORDINATOR, "/api/keeping-rules/" + rule, "/withdrawal", "{\"reason\":\"invented\"}")
                .statusCode(200);
        place(koala, carer, "").statusCode(201);
    }

    @Test
    void companyAndTheShorterWayComeFirst() {
        String near = carer("macropods", "");
        String withOne = carer("macropods", "");
        place(animal("Wallabia bicolor"), withOne, "").statusCode(201);
        String wallaby = animal("Wallabia bicolor");
        Json before = carers(wallaby);
        assertThat(before.getDouble(of(near) + "kilometresAway")).isBetween(17.0, 19.0);
        String rule = Api.make(COORDINATOR, "/api/keeping-rules", """
                        {"keep":"inCompany","taxonGroup":"macropods","strength":"advice",
                         "words":"Young of this kind do badly alone.","source":"common practice, no source",
                         "readOn":"2026-11-01"}
                        """).getString("id");
        Json after = carers(wallaby);
        List<String> order = after.getList("memberId");
        assertThat(order.indexOf(withOne)).isLessThan(order.indexOf(near));
        assertThat(after.getInt(of(withOne) + "companions")).isEqualTo(1);
        Api.change(COORDINATOR, "/api/keeping-rules/" + rule, "/withdrawal", "{\"reason\":\"end of the test\"}")
                .statusCode(200);
    }

    @Test
    void theWorkOfTheLastWeeksCounts() {
        String carer = carer("turtles", "");
        String turtle = animal(TURTLE);
        String handOver = place(turtle, carer, ",\"at\":\"2026-11-05T00:00:00Z\"")
                .statusCode(201)
                .extract()
                .path("handOverId");
        Api.post(COORDINATOR, "/api/hand-overs/" + handOver + "/acceptance", "{\"at\":\"2026-11-05T00:00:00Z\"}")
                .statusCode(200);
        Json options = Api.get(COORDINATOR, "/api/cases/" + animal(TURTLE) + "/carers?at=2026-11-15T00:00:00Z");
        assertThat(options.getDouble(of(carer) + "animalDaysLately")).isEqualTo(10.0);
    }

    /** The figures are the Australian Immunisation Handbook's, shipped as data with that source. */
    @Test
    void howLongAVaccinationCountsIsWorkedOutFromWhatWasDone() {
        String carer = carer("flying-foxes", "");
        String path = "/api/members/" + carer + "/vaccinations";
        vaccinate(carer, "\"event\":\"course\",\"givenOn\":\"2024-03-10\"");
        vaccinate(carer, "\"event\":\"booster\",\"givenOn\":\"2025-03-10\"");
        vaccinate(carer, "\"event\":\"antibodyTest\",\"antibodyIuPerMl\":0.4,\"givenOn\":\"2026-11-10\"");
        assertThat(Api.get(ADMIN, path).getList("currentUntil")).containsExactly("2025-03-10", "2028-03-10", null);
        String bat = animal(BAT);
        assertThat(verdict(bat, carer, "2026-11-09T01:00:00Z")).isEqualTo("pass");
        assertThat(verdict(bat, carer, "2026-11-10T01:00:00Z")).isEqualTo("fail");
        vaccinate(carer, "\"event\":\"booster\",\"givenOn\":\"2026-11-12\"");
        assertThat(verdict(bat, carer, "2026-11-12T01:00:00Z")).isEqualTo("pass");
        Api.post(ADMIN, "/api/vaccinations", """
                        {"memberId":"%s","against":"tetanus","givenOn":"2020-01-01","basis":"told","event":"booster"}
                        """.formatted(carer))
                .statusCode(400)
                .body("errors[0].field", equalTo("currentUntil"));
    }

    private static void vaccinate(String member, String told) {
        Api.make(
                ADMIN,
                "/api/vaccinations",
                "{\"memberId\":\"%s\",\"against\":\"lyssavirus\",\"basis\":\"told\",%s}".formatted(member, told));
    }

    private static String verdict(String caseId, String carer, String at) {
        return Api.get(COORDINATOR, "/api/cases/" + caseId + "/carers?at=" + at)
                .getString(of(carer) + "tests.find { it.test == 'vaccination' }.verdict");
    }

    private String visit(String caseId) {
        return Api.make(
                        CLINIC,
                        "/api/visits",
                        "{\"caseId\":\"%s\",\"clinicId\":\"%s\"}".formatted(caseId, world.clinic))
                .getString("id");
    }

    @Test
    void theVisitThatAPlacementFollowsIsOneOfItsAnimal() {
        String carer = carer("turtles", "");
        String turtle = animal(TURTLE);
        String own = visit(turtle);
        String another = visit(animal(TURTLE));
        place(turtle, carer, ",\"visitId\":\"" + another + "\"")
                .statusCode(400)
                .body("errors[0].field", equalTo("visitId"));
        String placement = place(turtle, carer, ",\"visitId\":\"" + own + "\"")
                .statusCode(201)
                .body("visitId", equalTo(own))
                .extract()
                .path("id");
        String correction = "{\"visitId\":\"%s\",\"reason\":\"another one\"}";
        Api.correct(COORDINATOR, "/api/placements/" + placement, correction.formatted(another))
                .statusCode(400)
                .body("errors[0].field", equalTo("visitId"));
        Api.correct(COORDINATOR, "/api/placements/" + placement, correction.formatted(own))
                .statusCode(200);
    }
}
