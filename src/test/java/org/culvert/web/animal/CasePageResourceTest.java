package org.culvert.web.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;
import static org.culvert.web.animal.SentForms.page;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.UUID;
import org.culvert.care.CareWorld;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The page of a case: what each role sees of it, and its forms, each taken once or refused beside its field. */
@QuarkusTest
class CasePageResourceTest {
    private World world;

    @BeforeEach
    void layTheWorld() {
        world = World.shared();
    }

    /** A turtle that the rescuer has; the clinic has nothing to do with it. */
    private String withTheRescuer() {
        String incident = World.call("Chelodina longicollis", 150.0581, "").getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis","sex":"female"},
                         "foundAt":"2026-01-04T02:00:00Z","holder":{"memberId":"%s"}}
                        """.formatted(incident, world.rescuer))
                .getString("id");
    }

    private String atTheClinic() {
        String id = withTheRescuer();
        new SentForms(RESCUER)
                .send("/cases/" + id + "/whereabouts", "organisationId", world.clinic, "at", "2026-01-04T15:00")
                .statusCode(303);
        return id;
    }

    private static String visitOf(String id) {
        return Api.get(CLINIC, "/api/cases/" + id + "/visits").getString("[0].id");
    }

    @Test
    void eachRoleSeesItsPartsAndFormsAndNoOthers() {
        CareWorld care = new CareWorld();
        CareWorld.Patient turtle = care.patient(3);
        turtle.plan(care.today.minusDays(3), CareWorld.step("swim", 3, 9, "daily", "minutes", ""));
        String path = "/cases/" + turtle.caseId();
        String coordinator = page(COORDINATOR, path);
        assertThat(coordinator)
                .contains("id=\"clinic\"", "id=\"plan\"", "id=\"weight\"", "id=\"release\"", "id=\"custody\"")
                .contains("No water until the third day.", "swim, as the vet says", "/audit-file", "/desk/incidents/")
                .contains("id=\"form-visit\"", "id=\"form-fate\"", path + "/carers")
                .doesNotContain("id=\"form-plan\"", "id=\"form-discharge");
        assertThat(page(CLINIC, path))
                .contains("id=\"form-visit\"", "id=\"form-plan\"", "id=\"form-measurement\"")
                .doesNotContain("/audit-file", "/desk/incidents/", "id=\"visit-clinicId\"");
        assertThat(page(CARER, path))
                .contains("id=\"plan\"", "id=\"form-measurement\"", "<strong>you</strong>")
                .doesNotContain("id=\"form-visit\"", "id=\"form-plan\"", "id=\"form-fitness\"", path + "/carers");
        assertThat(page(DISPATCHER, path))
                .contains("id=\"custody\"", "id=\"holds\"", "id=\"form-handOver\"")
                .doesNotContain("id=\"clinic\"", "id=\"plan\"", "id=\"weight\"", "id=\"release\"", "form-fate")
                .doesNotContain("No water until the third day.");
        assertThat(page(OFFICER, path))
                .contains("id=\"clinic\"", "id=\"plan\"", "/audit-file")
                .doesNotContain("action=\"/cases/");
        Api.as(ROADS_AUTHORITY).get(path).then().statusCode(403);
        // With the rescuer alone: to the clinic it is not there, in no form either
        String others = "/cases/" + withTheRescuer();
        Api.as(CLINIC).get(others).then().statusCode(404);
        new SentForms(CLINIC).send(others + "/visits").statusCode(404);
        // The record that a form names is of the case that it names
        String visit = turtle.visitId();
        new SentForms(CLINIC)
                .send("/cases/" + atTheClinic() + "/visits/" + visit + "/readings", "what", "eggs")
                .statusCode(404);
    }

    @Test
    void aClinicKeepsAVisitAndSendsItOn() {
        String id = atTheClinic();
        String path = "/cases/" + id;
        SentForms clinic = new SentForms(CLINIC);
        String refused = clinic.refused(
                400,
                path + "/visits",
                "weightGrams",
                "-5",
                "diagnosis",
                "shell cracked, alert",
                "findings[0].side",
                "left",
                "arrivedAt",
                "2026-01-04T15:10");
        assertThat(refused)
                .contains("id=\"visit-weightGrams-wrong\"", "id=\"visit-findings-0--finding-wrong\"")
                .contains("shell cracked, alert", "href=\"#form-visit\"", "value=\"2026-01-04T15:10\"")
                .containsPattern("id=\"form-visit\" open")
                .as("what was typed among the rare fields is seen")
                .contains("<details class=\"rare\" open>");
        assertThat(Api.get(CLINIC, "/api" + path + "/visits").getList("id")).isEmpty();
        assertThat(clinic.refused(400, path + "/visits", "arrivedAt", "yesterday"))
                .contains("id=\"visit-arrivedAt-wrong\"", "2026-11-25T18:30");
        String key = "visit-" + UUID.randomUUID();
        for (int times = 0; times < 2; times++) {
            clinic.sendOnce(
                            path + "/visits",
                            key,
                            "weightGrams",
                            "412,5",
                            "bodyCondition",
                            "3",
                            "arrivedAt",
                            "2026-01-04T15:10",
                            "findings[0].bodyPart",
                            "carapace",
                            "findings[0].kind",
                            "fracture",
                            "findings[0].finding",
                            "cracked at the edge")
                    .statusCode(303);
        }
        Json visits = Api.get(CLINIC, "/api" + path + "/visits");
        assertThat(visits.getList("id")).hasSize(1);
        assertThat(visits.getDouble("[0].weightGrams")).isEqualTo(412.5);
        assertThat(visits.getString("[0].arrivedAt"))
                .as("by the region's clocks")
                .isEqualTo("2026-01-04T04:10:00Z");
        String visit = path + "/visits/" + visitOf(id);
        assertThat(page(CLINIC, path)).contains("412.5 g", "cracked at the edge", "not sent on yet");
        clinic.send(visit + "/readings", "what", "eggs", "counted", "4", "reader", "Dr Vet", "confidence", "high")
                .statusCode(303);
        clinic.send(visit + "/findings", "bodyPart", "left hind leg", "finding", "grazed")
                .statusCode(303);
        clinic.send(visit + "/procedures", "procedure", "glued", "vetName", "Dr Vet", "vetRegistration", "V-1")
                .statusCode(303);
        assertThat(clinic.refused(400, visit + "/drug-orders", "drug", "as on the label"))
                .contains("no drug and no dose is proposed or checked here", "-dose-wrong\"");
        assertThat(clinic.refused(400, visit + "/discharge", "vetName", "Dr Vet", "plan", "dry for two days"))
                .contains("-vetRegistration-wrong\"", "dry for two days");
        clinic.send(
                        visit + "/discharge",
                        "vetName",
                        "Dr Vet",
                        "vetRegistration",
                        "V-1",
                        "plan",
                        "dry for two days",
                        "limits",
                        "no water",
                        "reviewOn",
                        "2089-01-04")
                .statusCode(303);
        assertThat(page(CLINIC, path)).contains("dry for two days", "no water", "4 Jan 2089", "no plan is in force");
        assertThat(clinic.refused(409, visit + "/discharge", "vetName", "D", "vetRegistration", "V", "plan", "x"))
                .contains("That visit has ended already.");
        clinic.send(path + "/body-measurements", "measure", "weight", "value", "398", "at", "2026-01-06T10:00")
                .statusCode(303);
        assertThat(page(CLINIC, path)).contains("Weighed 2 times: 412.5 g", "<polyline points=");
        assertThat(clinic.refused(400, path + "/aftercare-plans", "vetName", "Dr Vet", "vetRegistration", "V-1"))
                .contains("Not kept.");
    }

    @Test
    void aHoldStandsFirstAndAnAuthorityClearsIt() {
        String path = "/cases/" + withTheRescuer();
        SentForms rescuer = new SentForms(RESCUER);
        assertThat(rescuer.refused(400, path + "/holds", "kind", "asked")).contains("id=\"hold-askedBy-wrong\"");
        rescuer.send(path + "/holds", "kind", "exposure").statusCode(303);
        String page = page(COORDINATOR, path);
        assertThat(page.indexOf("Held: a bite, scratch or lick"))
                .isPositive()
                .isLessThan(page.indexOf("id=\"custody\""));
        String hold = Api.get(COORDINATOR, "/api" + path + "/holds").getString("[0].id");
        String clearing = path + "/holds/" + hold + "/clearing";
        assertThat(page(RESCUER, path)).doesNotContain(clearing);
        SentForms coordinator = new SentForms(COORDINATOR);
        assertThat(coordinator.refused(400, clearing, "by", "licensedVet", "name", "Dr Vet", "reference", "V-1"))
                .contains("id=\"clearing-" + hold + "-by-wrong\"", "a vet does not clear that");
        coordinator
                .send(clearing, "by", "authority", "name", "health unit", "reference", "L-7")
                .statusCode(303);
        assertThat(page(COORDINATOR, path))
                .contains("Cleared by health unit")
                .doesNotContain("<span class=\"sign\" aria-hidden=\"true\">✗</span> Held");

        String disease = Api.make(COORDINATOR, "/api/notifiable-conditions", """
                        {"jurisdiction":"XS","name":"Condition %s","taxonGroups":["turtles"],"signs":"made for a test",
                         "source":"made for a test","readOn":"2026-01-01","reviewBy":"2090-01-01"}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        assertThat(rescuer.refused(400, path + "/disease-suspicions", "conditionId", disease, "signs", "swollen eyes"))
                .contains("id=\"suspicion-suspectedBy-wrong\"", "swollen eyes");
        rescuer.send(path + "/disease-suspicions", "conditionId", disease, "signs", "swollen eyes", "suspectedBy", "R")
                .statusCode(303);
        assertThat(page(DISPATCHER, path)).contains("no authority was told yet: ring now", "swollen eyes");
        String suspicion =
                Api.get(COORDINATOR, "/api" + path + "/disease-suspicions").getString("[0].id");
        new SentForms(DISPATCHER)
                .send(path + "/disease-suspicions/" + suspicion + "/telling", "to", "the hotline", "by", "D")
                .statusCode(303);
        assertThat(page(DISPATCHER, path)).contains("the hotline was told").doesNotContain("no authority was told yet");
        // What the database itself refuses stands on the page too: a body that is held is not disposed of
        rescuer.send(path + "/fate", "fate", "died").statusCode(303);
        assertThat(rescuer.refused(409, path + "/body/disposal", "disposal", "incinerated"))
                .contains("Not kept.", "href=\"#form-disposal\"");
    }

    @Test
    void itIsOfferedTakenAndPlacedWithReasons() {
        String id = atTheClinic();
        String path = "/cases/" + id;
        SentForms rescuer = new SentForms(RESCUER);
        assertThat(rescuer.refused(400, path + "/hand-overs", "callSign", "nobody at all"))
                .contains("id=\"handOver-callSign-wrong\"", "value=\"nobody at all\"");
        rescuer.send(path + "/hand-overs", "taker.organisationId", world.clinic).statusCode(303);
        String offered = Api.get(CLINIC, "/api" + path).getString("pendingHandOver.id");
        SentForms clinic = new SentForms(CLINIC);
        assertThat(clinic.refused(400, path + "/hand-overs/" + offered + "/refusal"))
                .contains("id=\"refusal-" + offered + "-reason-wrong\"");
        clinic.send(path + "/hand-overs/" + offered + "/acceptance").statusCode(303);
        assertThat(Api.get(CLINIC, "/api" + path).getString("custody[1].holder.organisationId"))
                .isEqualTo(world.clinic);
        assertThat(page(CLINIC, path)).contains("<svg viewBox=\"0 0 640 56\"", "holders: 2");

        assertThat(page(CLINIC, path + "/carers")).as("it was at no clinic").doesNotContain("name=\"visitId\"");
        clinic.send(path + "/visits", "arrivedAt", "2026-01-04T15:10").statusCode(303);
        String visit = Api.get(CLINIC, "/api" + path + "/visits").getString("[0].id");
        String carers = page(CLINIC, path + "/carers");
        assertThat(carers).contains("After which visit").containsPattern("<option value=\"" + visit + "\">[^<]*4 Jan");
        assertThat(carers).contains("can take it", "may not hold it, as far as is entered", world.carer);
        assertThat(carers.indexOf("can take it")).isLessThan(carers.indexOf("may not hold it"));
        assertThat(carers).as("who may not hold it has no form").doesNotContain("value=\"" + world.unlicensedCarer);
        assertThat(clinic.refused(422, path + "/placements", "carerMemberId", world.unlicensedCarer))
                .contains("Not kept.", "what the rule asks for")
                .doesNotContain("href=\"#form-placement");
        assertThat(Api.get(CLINIC, "/api" + path + "/placements").getList("id")).isEmpty();
        String key = "place-" + UUID.randomUUID();
        for (int times = 0; times < 2; times++) {
            clinic.sendOnce(
                            path + "/placements",
                            key,
                            "carerMemberId",
                            world.carer,
                            "conditions",
                            "dry for two days",
                            "visitId",
                            visit)
                    .statusCode(303);
        }
        assertThat(page(CLINIC, path)).contains("dry for two days", "a hand-over waits");
        assertThat(Api.get(CLINIC, "/api" + path + "/placements").<String>getList("visitId"))
                .containsExactly(visit);
        assertCallSignsAreThoseOfTheApi(path);
    }

    /** The rescuer gave it, and a carer is to take it: a clinic hears of carers alone, for among them it looks for one. */
    private void assertCallSignsAreThoseOfTheApi(String path) {
        String rescuer = Api.get(COORDINATOR, "/api/members/" + world.rescuer).getString("callSign");
        String carer = Api.get(COORDINATOR, "/api/members/" + world.carer).getString("callSign");
        Api.as(CLINIC).get("/api/members/" + world.rescuer).then().statusCode(403);
        assertThat(Api.get(CLINIC, "/api" + path + "/carers").<String>getList("callSign"))
                .contains(carer)
                .doesNotContain(rescuer);
        assertThat(page(COORDINATOR, path)).contains("member " + rescuer, "member " + carer);
        assertThat(page(CLINIC, path))
                .contains("member " + carer, "a member of the network")
                .doesNotContain(rescuer);
        Api.as(CARER).get("/api/members/" + world.rescuer).then().statusCode(403);
        assertThat(page(CARER, path)).contains("you").doesNotContain(rescuer, carer);
    }

    @Test
    void howItEndedIsToldWithWhatTheLawAsksAndItsBodyIsNotLeftOut() {
        String path = "/cases/" + withTheRescuer();
        SentForms coordinator = new SentForms(COORDINATOR);
        assertThat(page(COORDINATOR, path)).contains("how is not said here");
        assertThat(coordinator.refused(400, path + "/fate", "fate", "euthanased", "approvedBy", "the vet"))
                .contains("id=\"fate-method-wrong\"", "value=\"the vet\"");
        assertThat(page(COORDINATOR, path))
                .as("a release is recorded at its site")
                .doesNotContain("<option value=\"released\"");
        coordinator
                .send(
                        path + "/fate",
                        "fate",
                        "euthanased",
                        "method",
                        "as the vet says",
                        "authority",
                        "V-1",
                        "approvedBy",
                        "Dr Vet",
                        "deathConfirmedBy",
                        "Dr Vet",
                        "barbiturate",
                        "true")
                .statusCode(303);
        assertThat(page(COORDINATOR, path)).contains("euthanased", "never left where scavengers can reach it");
        assertThat(coordinator.refused(422, path + "/body/disposal", "disposal", "leftInPlace"))
                .contains("kills the animals that scavenge it");
        coordinator.send(path + "/body/disposal", "disposal", "incinerated").statusCode(303);
        assertThat(page(COORDINATOR, path))
                .contains("Its body: incinerated.")
                .doesNotContain("action=\"" + path + "/fate");
    }

    @Test
    void aVetSignsAndEveryAspectThatWasNotLookedAtStaysUnknown() {
        String path = "/cases/" + withTheRescuer();
        SentForms coordinator = new SentForms(COORDINATOR);
        assertThat(coordinator.refused(400, path + "/fitness-checks", "vetName", "Dr Vet", "aspect.movement", "well"))
                .contains("id=\"fitness-aspect-movement-wrong\"", "value=\"Dr Vet\"");
        coordinator
                .send(
                        path + "/fitness-checks",
                        "vetName",
                        "Dr Vet",
                        "vetRegistration",
                        "V-1",
                        "aspect.movement",
                        "notFit",
                        "aspect.senses",
                        "fit",
                        "at",
                        "2026-01-05T10:00")
                .statusCode(303);
        assertThat(Api.get(COORDINATOR, "/api" + path + "/fitness-checks").getList("[0].items.aspect"))
                .isEqualTo(List.of("movement", "senses"));
        assertThat(page(COORDINATOR, path)).contains("Movement: not as it should be", "Nothing here says that it may.");
    }

    @Test
    void aCaseIsOpenedForAnAnimalOfAnIncident() {
        String incident = World.call("Chelodina longicollis", 150.0583, "").getString("incidentId");
        assertThat(page(DISPATCHER, "/cases/new?incident=" + incident))
                .contains("Callers said:", "eastern long-necked turtle")
                .doesNotContain("there are already");
        SentForms dispatcher = new SentForms(DISPATCHER);
        assertThat(dispatcher.refused(
                        400, "/cases", "incidentId", incident, "animal.scientificName", "a sort of beast"))
                .contains("id=\"new-animal-scientificName-wrong\"", "value=\"a sort of beast\"");
        String key = "new-" + UUID.randomUUID();
        String next = "";
        for (int times = 0; times < 2; times++) {
            next = dispatcher
                    .sendOnce(
                            "/cases",
                            key,
                            "incidentId",
                            incident,
                            "animal.scientificName",
                            "Eastern long-necked turtle",
                            "holder",
                            world.clinic,
                            "foundAt",
                            "2026-01-04T13:00")
                    .statusCode(303)
                    .extract()
                    .header("Location");
        }
        String path = next.replaceFirst("^https?://[^/]+", "");
        Json told = Api.get(COORDINATOR, "/api" + path);
        assertThat(told.getString("animal.scientificName")).isEqualTo("Chelodina longicollis");
        assertThat(told.getString("custody[0].holder.organisationId")).isEqualTo(world.clinic);
        assertThat(page(DISPATCHER, "/cases/new?incident=" + incident)).contains("there are already", path);
        // An incident of others is not there for them
        Api.as(CARER).get("/cases/new?incident=" + incident).then().statusCode(404);
        Api.as(DISPATCHER).get("/cases/new").then().statusCode(400);
    }

    @Test
    void openCasesStandByWhatIsMostPressingAndAreFoundByNumberAndKind() {
        String id = withTheRescuer();
        new SentForms(RESCUER)
                .send("/cases/" + id + "/holds", "kind", "exposure")
                .statusCode(303);
        long number = Api.get(COORDINATOR, "/api/cases/" + id).getLong("number");
        String list = page(RESCUER, "/cases");
        assertThat(list).contains("Case " + number + ":", "class=\"need-held\"");
        assertThat(Api.as(COORDINATOR)
                        .withoutRedirects()
                        .get("/cases?q=" + number)
                        .then()
                        .statusCode(303)
                        .extract()
                        .header("Location"))
                .contains("/cases/" + id);
        assertThat(page(COORDINATOR, "/cases?q=long-necked")).contains("Case " + number + ":");
        assertThat(page(COORDINATOR, "/cases?q=no+such+beast")).contains("No case that you may see fits that.");
        assertThat(page(CLINIC, "/cases?q=long-necked"))
                .as("others' are not there")
                .doesNotContain("Case " + number + ":");
        new SentForms(RESCUER).send("/cases/" + id + "/fate", "fate", "escaped").statusCode(303);
        assertThat(page(COORDINATOR, "/cases?q=long-necked")).doesNotContain("Case " + number + ":");
        assertThat(page(COORDINATOR, "/cases?state=ended&q=long-necked")).contains("Case " + number + ":", "escaped");
    }
}
