package org.culvert.platform.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import java.time.Instant;
import java.util.UUID;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Clocks;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Corrections are revisions with a reason. Tags and conditions are held against RFC 9110, sections 8.8.3 and 13.1, and RFC
 * 6585, section 3; what a patch says against RFC 7396.
 */
@QuarkusTest
@OnOldestDatabase
class CorrectionResourceTest {
    private static final String TURTLE = "Chelodina longicollis";
    private World world;

    @BeforeEach
    void world() {
        world = World.shared();
    }

    @Test
    void aCorrectionIsARevisionThatSaysWhoWhenAndWhy() {
        String path = "/api/incidents/" + World.call(TURTLE, 150.031, "").getString("incidentId");
        Instant before = Clocks.now();
        Api.correct(COORDINATOR, path, "{\"cause\":\"attackByDog\",\"reason\":\"the caller saw the dog\"}")
                .statusCode(200)
                .body("cause", equalTo("attackByDog"))
                .body("record.revision", equalTo(2))
                .body("record.recordedBy", equalTo("test-dispatcher"))
                .body("record.revisedBy", equalTo("test-coordinator"))
                .body("record.revisedAt", notNullValue())
                .body("record.revisionReason", equalTo("the caller saw the dog"));
        Api.as(DISPATCHER)
                .queryParam("asOf", before.toString())
                .get(path)
                .then()
                .body("cause", equalTo("collisionWithVehicle"))
                .body("record.revision", equalTo(1))
                .body("record.revisedBy", nullValue());
    }

    /** RFC 7396, section 1: null removes, what is absent stays. */
    @Test
    void nullClearsAndWhatIsLeftOutStays() {
        String path = "/api/incidents/"
                + World.call(
                                TURTLE,
                                150.032,
                                ",\"happenedAt\":\"2021-03-01T08:00:00Z\",\"receivedAt\":\"2021-03-01T09:00:00Z\"")
                        .getString("incidentId");
        Api.correct(DISPATCHER, path, "{\"cause\":\"unknown\",\"reason\":\"nobody saw it\"}")
                .statusCode(200)
                .body("happenedAt", equalTo("2021-03-01T08:00:00Z"));
        Api.correct(DISPATCHER, path, "{\"happenedAt\":null,\"reason\":\"a guess\"}")
                .statusCode(200)
                .body("happenedAt", nullValue())
                .body("cause", equalTo("unknown"));
        Api.correct(DISPATCHER, path, "{\"cause\":null,\"reason\":\"a guess\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("cause"));
    }

    @Test
    void aCorrectionNeedsAReasonAndKnownFields() {
        String path = "/api/incidents/" + World.call(TURTLE, 150.033, "").getString("incidentId");
        Api.correct(DISPATCHER, path, "{\"cause\":\"unknown\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("reason"));
        Api.correct(DISPATCHER, path, "{\"colour\":\"red\",\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("colour"));
        Api.correct(DISPATCHER, path, "{\"happenedAt\":\"2999-01-01T00:00:00Z\",\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("happenedAt"));
        Api.correct(DISPATCHER, path, "{\"happenedAt\":\"in spring\",\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].wanted", containsString("a time such as"));
    }

    @Test
    void nobodyChangesWhatTheyHaveNotRead() {
        String path = "/api/incidents/" + World.call(TURTLE, 150.034, "").getString("incidentId");
        String patch = "{\"cause\":\"unknown\",\"reason\":\"x\"}";
        Api.as(DISPATCHER)
                .body(patch)
                .patch(path)
                .then()
                .statusCode(428)
                .body("type", equalTo("/problems/if-match-missing"));
        String tag = Api.tag(DISPATCHER, path);
        changed(path, tag, patch).statusCode(200);
        changed(path, tag, "{\"cause\":\"disease\",\"reason\":\"x\"}")
                .statusCode(412)
                .body("type", equalTo("/problems/stale"));
        Api.as(DISPATCHER).get(path).then().body("cause", equalTo("unknown"));
    }

    /** RFC 9110, section 13.1.1: weak tags never match here, an asterisk matches what is there, one of a list is enough. */
    @Test
    void conditionsAreReadAsTheStandardSays() {
        String path = "/api/incidents/" + World.call(TURTLE, 150.035, "").getString("incidentId");
        String patch = "{\"cause\":\"unknown\",\"reason\":\"x\"}";
        changed(path, "W/" + Api.tag(DISPATCHER, path), patch).statusCode(412);
        changed(path, "\"other\", " + Api.tag(DISPATCHER, path), patch).statusCode(200);
        changed(path, "*", "{\"cause\":\"disease\",\"reason\":\"x\"}").statusCode(200);
        changed(path, "no-quotes", patch).statusCode(400).body("errors[0].field", equalTo("If-Match"));
        changed("/api/incidents/" + UUID.randomUUID(), "*", patch).statusCode(404);
    }

    @Test
    void theAnswerToAChangeCarriesTheTagOfTheNextRead() {
        String path = "/api/incidents/" + World.call(TURTLE, 150.036, "").getString("incidentId");
        String told = Api.correct(DISPATCHER, path, "{\"cause\":\"unknown\",\"reason\":\"x\"}")
                .statusCode(200)
                .extract()
                .header("ETag");
        assertThat(told).matches("\"[0-9a-f]{32}\"").isEqualTo(Api.tag(DISPATCHER, path));
    }

    /** RFC 9110, sections 13.1.2 and 15.4.5. */
    @Test
    void whoHasItAlreadyIsToldSo() {
        String path = "/api/incidents/" + World.call(TURTLE, 150.037, "").getString("incidentId");
        String tag = Api.tag(DISPATCHER, path);
        for (String known : new String[] {tag, "W/" + tag, "\"other\", " + tag, "*"}) {
            Api.as(DISPATCHER)
                    .header("If-None-Match", known)
                    .get(path)
                    .then()
                    .statusCode(304)
                    .header("ETag", equalTo(tag))
                    .header("Vary", equalTo("Authorization, Cookie, Accept"));
        }
        Api.correct(DISPATCHER, path, "{\"cause\":\"unknown\",\"reason\":\"x\"}")
                .statusCode(200);
        Api.as(DISPATCHER).header("If-None-Match", tag).get(path).then().statusCode(200);
    }

    @Test
    void aPartThatChangesChangesTheTagOfTheWhole() {
        String incident = World.call(TURTLE, 150.038, "").getString("incidentId");
        String tag = Api.tag(DISPATCHER, "/api/incidents/" + incident);
        World.call(TURTLE, 150.038, ",\"incidentId\":\"%s\"".formatted(incident));
        assertThat(Api.tag(DISPATCHER, "/api/incidents/" + incident)).isNotEqualTo(tag);
    }

    @Test
    void askersWithOtherRightsHaveOtherTags() {
        String path = "/api/incidents/" + World.call(TURTLE, 150.039, "").getString("incidentId");
        assertThat(Api.tag(COORDINATOR, path)).isNotEqualTo(Api.tag(DISPATCHER, path));
    }

    @Test
    void aLateEntryShowsAsLateAndIsListedAsSuch() {
        String late = World.call(TURTLE, 150.04, ",\"receivedAt\":\"2021-03-01T09:00:00Z\"")
                .getString("incidentId");
        String prompt = World.call(TURTLE, 150.041, "").getString("incidentId");
        Api.as(DISPATCHER).get("/api/incidents/" + late).then().body("record.lateByHours", notNullValue());
        Api.as(DISPATCHER).get("/api/incidents/" + prompt).then().body("record.lateByHours", nullValue());
        assertThat(Api.get(DISPATCHER, "/api/incidents?late=true&limit=1000").getList("items.id"))
                .contains(late)
                .doesNotContain(prompt);
        assertThat(Api.get(DISPATCHER, "/api/incidents?limit=1000").getList("items.id"))
                .contains(late, prompt);
    }

    @Test
    void callersAndWordsAreCorrectedWhereTheyAreKept() {
        String call = "/api/calls/"
                + World.call(TURTLE, 150.042, ",\"words\":\"a tortle\",\"caller\":{\"name\":\"An\"}")
                        .getString("callId");
        Api.correct(
                        DISPATCHER,
                        call,
                        "{\"words\":\"a turtle\",\"caller\":{\"name\":\"Ann\",\"phone\":\"555\"},\"reason\":\"misheard\"}")
                .statusCode(200)
                .body("words", equalTo("a turtle"))
                .body("caller.name", equalTo("Ann"))
                .body("record.revision", equalTo(2));
        Api.correct(DISPATCHER, call, "{\"caller\":null,\"anyoneHurt\":\"unknown\",\"reason\":\"misheard\"}")
                .statusCode(200)
                .body("caller.name", nullValue())
                .body("anyoneHurt", equalTo("unknown"))
                .body("record.revision", equalTo(3));
        String animal = Api.get(DISPATCHER, call).getString("animals[0].id");
        Api.as(DISPATCHER)
                .header("If-Match", Api.tag(DISPATCHER, call))
                .body("{\"scientificName\":\"Wallabia bicolor\",\"individualCount\":2,\"reason\":\"seen again\"}")
                .patch(call + "/animals/" + animal)
                .then()
                .statusCode(200)
                .body("animals[0].scientificName", equalTo("Wallabia bicolor"))
                .body("animals[0].taxonGroup", equalTo("macropods"))
                .body("animals[0].individualCount", equalTo(2))
                .body("animals[0].record.revisionReason", equalTo("seen again"));
    }

    @Test
    void aCaseThatWasWronglyEndedGoesOn() {
        String id = aCase();
        String path = "/api/cases/" + id;
        Api.change(COORDINATOR, path, "/fate", "{\"fate\":\"died\",\"at\":\"2021-11-22T00:00:00Z\"}")
                .statusCode(200)
                .body("state", equalTo("ended"))
                .body("custody[0].to", equalTo("2021-11-22T00:00:00Z"))
                .body("body.barbiturate", equalTo("no"));
        Instant ended = Clocks.now();
        Api.correct(
                        COORDINATOR,
                        path,
                        "/fate",
                        "{\"fate\":\"euthanased\",\"at\":\"2021-11-21T00:00:00Z\",\"method\":\"injection\","
                                + "\"authority\":\"registration V-1\",\"approvedBy\":\"Dr Vet\",\"deathConfirmedBy\":\"Dr Vet\","
                                + "\"barbiturate\":true,\"reason\":\"wrong box ticked\"}")
                .statusCode(200)
                .body("fate.fate", equalTo("euthanased"))
                .body("fate.record.revisionReason", equalTo("wrong box ticked"))
                .body("custody[0].record.revisionReason", equalTo("wrong box ticked"))
                .body("body.record.revisionReason", equalTo("wrong box ticked"))
                .body("custody[0].to", equalTo("2021-11-21T00:00:00Z"))
                .body("body.barbiturate", equalTo("yes"));
        Api.correct(COORDINATOR, path, "/fate", "{\"fate\":\"escaped\",\"reason\":\"x\"}")
                .statusCode(400);
        Api.change(COORDINATOR, path, "/fate/withdrawal", "{\"reason\":\"it was another animal\"}")
                .statusCode(200)
                .body("state", equalTo("inCare"))
                .body("fate", nullValue())
                .body("body", nullValue())
                .body("custody[0].to", nullValue());
        Api.as(COORDINATOR)
                .queryParam("asOf", ended.toString())
                .get(path)
                .then()
                .body("fate.fate", equalTo("died"))
                .body("body", notNullValue());
        Api.change(COORDINATOR, path, "/fate", "{\"fate\":\"escaped\",\"at\":\"2021-11-23T00:00:00Z\"}")
                .statusCode(200)
                .body("fate.fate", equalTo("escaped"));
    }

    @Test
    void aForgottenLinkOfCustodyFitsIntoAGapAndShowsAsLate() {
        String id = aCase();
        String path = "/api/cases/" + id;
        String first = Api.get(COORDINATOR, path).getString("custody[0].id");
        String entry =
                "{\"holder\":{\"memberId\":\"%s\"},\"from\":\"%s\",\"to\":%s,\"reason\":\"forgotten at the time\"}";
        insert(path, entry.formatted(world.helper, "2021-11-20T10:00:00Z", "\"2021-11-20T12:00:00Z\""))
                .statusCode(409)
                .body("detail", containsString("from 2021-11-20T08:00:00Z on"))
                .body("detail", containsString("from 2021-11-20T10:00:00Z to 2021-11-20T12:00:00Z"));
        Api.correct(
                        COORDINATOR,
                        path,
                        "/custody-links/" + first,
                        "{\"to\":\"2021-11-20T09:30:00Z\",\"reason\":\"handed on\"}")
                .statusCode(200)
                .body("custody[0].record.revisionReason", equalTo("handed on"));
        insert(path, entry.formatted(world.helper, "2021-11-20T10:00:00Z", "\"2021-11-20T12:00:00Z\""))
                .statusCode(201)
                .body("custody.size()", equalTo(2))
                .body("custody[1].record.lateByHours", notNullValue())
                .body("custodyGaps.size()", equalTo(2))
                .body("custodyGaps[1].from", equalTo("2021-11-20T12:00:00Z"))
                .body("custodyGaps[1].to", nullValue());
        insert(path, entry.formatted(world.vaccinated, "2021-11-20T09:30:00Z", "\"2021-11-20T10:00:00Z\""))
                .statusCode(201)
                .body("custodyGaps.size()", equalTo(1))
                .body("custody[1].holder.memberId", equalTo(world.vaccinated));
        insert(path, entry.formatted(world.helper, "2021-11-20T07:00:00Z", "\"2021-11-20T08:00:00Z\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("from"));
        insert(path, entry.formatted(world.helper, "2021-11-20T12:00:00Z", "null"))
                .statusCode(201)
                .body("custodyGaps.size()", equalTo(0))
                .body("custody.size()", equalTo(4));
        insert(path, entry.formatted(world.helper, "2021-11-20T13:00:00Z", "\"2021-11-20T12:00:00Z\""))
                .statusCode(400)
                .body("errors[0].field", equalTo("to"));
    }

    @Test
    void animalsCasesWhereaboutsAndVisitsAreCorrected() {
        String path = "/api/cases/" + aCase();
        String animal = "/api/animals/" + Api.get(COORDINATOR, path).getString("animal.id");
        Api.correct(
                        COORDINATOR,
                        animal,
                        "{\"sex\":\"male\",\"naturalMarks\":\"notch\",\"reason\":\"seen at the clinic\"}")
                .statusCode(200)
                .body("sex", equalTo("male"))
                .body("record.revision", equalTo(2));
        Api.correct(COORDINATOR, path, "{\"foundPlace\":null,\"dependentYoung\":true,\"reason\":\"found elsewhere\"}")
                .statusCode(200)
                .body("origin", equalTo("unknown"))
                .body("foundPlace", nullValue())
                .body("dependentYoung", equalTo(true));
        Api.correct(COORDINATOR, path, "{\"foundAt\":\"2021-11-21T00:00:00Z\",\"reason\":\"x\"}")
                .statusCode(409)
                .body("detail", containsString("before it was found"));
        Api.post(COORDINATOR, path + "/whereabouts", "{\"words\":\"in a shed\",\"at\":\"2021-11-20T09:00:00Z\"}")
                .statusCode(200);
        String where = Api.get(COORDINATOR, path + "/whereabouts").getString("[0].id");
        Api.correct(COORDINATOR, "/api/whereabouts/" + where, "{\"words\":\"in a barn\",\"reason\":\"it is a barn\"}")
                .statusCode(200)
                .body("words", equalTo("in a barn"));
        Api.correct(COORDINATOR, "/api/whereabouts/" + where, "{\"words\":null,\"reason\":\"x\"}")
                .statusCode(400);
        Api.post(
                        COORDINATOR,
                        path + "/whereabouts",
                        "{\"organisationId\":\"%s\",\"at\":\"2021-11-20T09:50:00Z\"}".formatted(world.clinic))
                .statusCode(200);
        String visit = "/api/visits/"
                + Api.make(CLINIC, "/api/visits", """
                        {"caseId":"%s","clinicId":"%s","arrivedAt":"2021-11-20T10:00:00Z","weightGrams":800,
                         "readings":[{"what":"eggs","counted":9,"reader":"Dr Vet","confidence":"low"}]}
                        """.formatted(path.substring(11), world.clinic))
                        .getString("id");
        Api.correct(CLINIC, visit, "{\"weightGrams\":820,\"reason\":\"misread\"}")
                .statusCode(200)
                .body("weightGrams", equalTo(820.0));
        Api.correct(CLINIC, visit, "{\"weightGrams\":-1,\"reason\":\"misread\"}")
                .statusCode(400);
        String reading = Api.get(CLINIC, visit).getString("readings[0].id");
        Api.correct(CLINIC, visit, "/readings/" + reading, "{\"counted\":10,\"reason\":\"read again\"}")
                .statusCode(200)
                .body("readings[0].counted", equalTo(10));
        Api.correct(CLINIC, visit, "/readings/" + UUID.randomUUID(), "{\"counted\":10,\"reason\":\"x\"}")
                .statusCode(404);
    }

    @Test
    void theRosterIsCorrected() {
        String member = "/api/members/" + world.helper;
        Api.correct(ADMIN, member, "{\"phone\":\"555 1\",\"reason\":\"new telephone\"}")
                .statusCode(200);
        int revision = Api.get(ADMIN, member).getInt("record.revision");
        Api.correct(ADMIN, member, "{\"phone\":\"555 2\",\"reason\":\"new telephone\"}")
                .statusCode(200)
                .body("record.revision", equalTo(revision + 1));
        Api.correct(ADMIN, "/api/organisations/" + world.network, "{\"latitude\":91,\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("latitude"));
        String authorisation = "/api/authorisations/"
                + Api.get(ADMIN, "/api/authorisations?memberId=" + world.carer).getString("[0].id");
        Api.correct(ADMIN, authorisation, "{\"validTo\":\"2001-01-01\",\"reason\":\"x\"}")
                .statusCode(400);
        Api.correct(ADMIN, authorisation, "{\"authorisationClass\":\"expert\",\"reason\":\"read again\"}")
                .statusCode(200)
                .body("authorisationClass", equalTo("expert"));
        Api.correct(RESCUER, member, "{\"phone\":\"555 1\",\"reason\":\"x\"}").statusCode(403);
    }

    @Test
    void aVaccinationIsCorrectedAndWhoGoesChangesWithIt() {
        String member = Api.make(ADMIN, "/api/members", """
                        {"organisationId":"%s","callSign":"%s","name":"Somebody","homeLatitude":-30.49,
                         "homeLongitude":150.02,"attends":true,"cares":false}
                        """.formatted(world.network, UUID.randomUUID()))
                .getString("id");
        Api.make(ADMIN, "/api/vaccinations", """
                {"memberId":"%s","against":"lyssavirus","givenOn":"2010-01-01","currentUntil":"2090-01-01","basis":"booster"}
                """.formatted(member));
        String id =
                Api.get(COORDINATOR, "/api/members/" + member + "/vaccinations").getString("[0].id");
        String path = "/api/vaccinations/" + id;
        Api.correct(COORDINATOR, path, "{\"currentUntil\":\"2009-01-01\",\"reason\":\"misread\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("currentUntil"));
        Api.correct(COORDINATOR, path, "{\"currentUntil\":\"2012-01-01\",\"reason\":\"misread\"}")
                .statusCode(200)
                .body("currentUntil", equalTo("2012-01-01"))
                .body("record.revision", equalTo(2))
                .body("record.revisionReason", equalTo("misread"));
        String incident = World.call("Pteropus poliocephalus", 150.03, "").getString("incidentId");
        assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident + "/who-can-go")
                        .<String>getList("find { it.memberId == '" + member + "' }.notBecause"))
                .as("no longer shown to be vaccinated")
                .isNotEmpty();
        Api.as(RESCUER).get(path).then().statusCode(403);
    }

    @Test
    void aClosingIsCorrected() {
        String incident = World.call(TURTLE, 150.03, "").getString("incidentId");
        Api.make(
                DISPATCHER,
                "/api/incidents/" + incident + "/closings",
                "{\"outcome\":\"adviceOnly\",\"reason\":\"flew off\"}");
        String id =
                Api.get(DISPATCHER, "/api/incidents/" + incident + "/closings").getString("[0].id");
        Api.correct(DISPATCHER, "/api/closings/" + id, "{\"outcome\":\"passedOn\",\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("passedOnTo"));
        Api.correct(
                        DISPATCHER,
                        "/api/closings/" + id,
                        "{\"outcome\":\"passedOn\",\"passedOnTo\":\"the council\",\"reason\":\"it was theirs\"}")
                .statusCode(200)
                .body("outcome", equalTo("passedOn"))
                .body("reason", equalTo("flew off"))
                .body("record.revisionReason", equalTo("it was theirs"));
        assertThat(Api.get(COORDINATOR, "/api/records/" + id + "/revisions").getList("reason"))
                .containsExactly(null, "it was theirs");
    }

    @Test
    void whoAnsweredForAClutchIsCorrected() {
        String mother = aCase();
        String clutch = Api.make(COORDINATOR, "/api/clutches", """
                        {"motherCaseId":"%s","holder":{"memberId":"%s"},
                         "eggs":{"recovered":5,"setToIncubate":4,"broken":1,"discarded":0,"at":"2021-11-21T00:00:00Z"}}
                        """.formatted(mother, world.incubatorKeeper))
                .getString("id");
        String path = "/api/clutches/" + clutch;
        String link = "/custody-links/" + Api.get(COORDINATOR, path).getString("custody[0].id");
        Api.correct(
                        COORDINATOR,
                        path,
                        link,
                        "{\"holder\":{\"memberId\":\"" + world.unlicensedCarer + "\"},\"reason\":\"x\"}")
                .statusCode(422);
        Api.correct(
                        COORDINATOR,
                        path,
                        link,
                        "{\"from\":\"2021-11-22T00:00:00Z\",\"to\":\"2021-11-21T12:00:00Z\",\"reason\":\"x\"}")
                .statusCode(400)
                .body("errors[0].field", equalTo("to"));
        Api.correct(
                        COORDINATOR,
                        path,
                        link,
                        "{\"holder\":{\"memberId\":\"" + world.carer + "\"},"
                                + "\"from\":\"2021-11-22T00:00:00Z\",\"reason\":\"wrong incubator\"}")
                .statusCode(200)
                .body("custody[0].holder.memberId", equalTo(world.carer))
                .body("custody[0].from", equalTo("2021-11-22T00:00:00Z"))
                .body("custody[0].record.revisionReason", equalTo("wrong incubator"));
    }

    @Test
    void rulesAndTaxaTellTheirHistoryToo() {
        String rule = Api.get(COORDINATOR, "/api/release-rules").getString("[0].id");
        String taxon = Api.get(COORDINATOR, "/api/taxa?q=Chelodina").getString("[0].id");
        for (String id : java.util.List.of(rule, taxon)) {
            assertThat(Api.get(COORDINATOR, "/api/records/" + id + "/revisions").getList("madeBy"))
                    .isNotEmpty();
        }
    }

    private Answer insert(String path, String entry) {
        return Api.post(COORDINATOR, path + "/custody-links", entry);
    }

    private static Answer changed(String path, String tag, String patch) {
        return Api.as(DISPATCHER)
                .withoutTag()
                .header("If-Match", tag)
                .body(patch)
                .patch(path)
                .then();
    }

    private String aCase() {
        String incident = World.call(TURTLE, 150.03, "").getString("incidentId");
        return Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","foundAt":"2021-11-20T08:00:00Z","animal":{"scientificName":"%s"},
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, TURTLE, world.rescuer))
                .getString("id");
    }
}
