package org.culvert.web.animal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.CARER;
import static org.culvert.platform.Role.CLINIC;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;
import static org.culvert.web.animal.SentForms.page;

import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

/** What waits for a clinic, and what it says of itself. */
@QuarkusTest
class ClinicPageResourceTest {
    /** The part of the page under a heading. */
    private static String part(String page, String id) {
        String rest = page.substring(page.indexOf("id=\"" + id + "\""));
        return rest.substring(0, rest.indexOf("</section>"));
    }

    private static Answer keep(String path, Map<String, String> fields) {
        String secret = Api.as(COORDINATOR).get("/clinic").cookie("culvert-form");
        Map<String, String> whole =
                new HashMap<>(Map.of("key", UUID.randomUUID().toString()));
        whole.putAll(fields);
        return Api.as(COORDINATOR)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParams(whole)
                .post(path)
                .then();
    }

    @Test
    void anAnimalGoesFromOfferedToHereToTreatedToSentOn() {
        World world = World.shared();
        String incident = World.call("Chelodina longicollis", 150.0585, "").getString("incidentId");
        String id = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis"},
                         "foundAt":"2026-01-04T02:00:00Z","holder":{"memberId":"%s"}}
                        """.formatted(incident, world.rescuer))
                .getString("id");
        String path = "/cases/" + id;
        assertThat(page(CLINIC, "/clinic")).doesNotContain(path);
        new SentForms(RESCUER)
                .send(path + "/hand-overs", "taker.organisationId", world.clinic)
                .statusCode(303);
        assertThat(part(page(CLINIC, "/clinic"), "coming")).contains(path + "?form=acceptance#custody");
        SentForms clinic = new SentForms(CLINIC);
        String offered = Api.get(CLINIC, "/api" + path).getString("pendingHandOver.id");
        clinic.send(path + "/hand-overs/" + offered + "/acceptance").statusCode(303);
        assertThat(part(page(CLINIC, "/clinic"), "not-seen")).contains(path + "?form=visit#form-visit");
        clinic.send(path + "/visits", "diagnosis", "alert").statusCode(303);
        String treated = page(CLINIC, "/clinic");
        assertThat(part(treated, "in-care")).contains(path, "No weight kept", "No reading of a film kept");
        assertThat(part(treated, "not-seen")).doesNotContain(path);
        clinic.send(path + "/placements", "carerMemberId", world.carer).statusCode(303);
        String visit = Api.get(CLINIC, "/api" + path + "/visits").getString("[0].id");
        assertThat(part(page(CLINIC, "/clinic"), "to-send-on"))
                .contains(path + "?form=discharge#form-discharge-" + visit);
        assertThat(page(COORDINATOR, "/clinic?clinic=" + world.clinic)).contains(path);
        clinic.send(
                        path + "/visits/" + visit + "/discharge",
                        "vetName",
                        "Dr Vet",
                        "vetRegistration",
                        "V-1",
                        "plan",
                        "dry",
                        "reviewOn",
                        Api.get(CLINIC, "/api" + path + "/visits")
                                .getString("[0].arrivedAt")
                                .substring(0, 10))
                .statusCode(303);
        assertThat(part(page(CLINIC, "/clinic"), "again")).contains(path + "?form=visit#form-visit");
    }

    @Test
    void aBodyWaitsUntilSomebodySaysWhatBecameOfIt() {
        World world = World.shared();
        String incident = World.call("Chelodina longicollis", 150.0586, "").getString("incidentId");
        String id = Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Chelodina longicollis"},
                         "foundAt":"2026-01-04T02:00:00Z","holder":{"organisationId":"%s"}}
                        """.formatted(incident, world.clinic))
                .getString("id");
        SentForms clinic = new SentForms(CLINIC);
        clinic.send("/cases/" + id + "/fate", "fate", "died").statusCode(303);
        assertThat(part(page(CLINIC, "/clinic"), "bodies")).contains("/cases/" + id + "?form=disposal#form-disposal");
        clinic.send("/cases/" + id + "/body/disposal", "disposal", "clinicWaste")
                .statusCode(303);
        assertThat(page(CLINIC, "/clinic")).doesNotContain("/cases/" + id);
    }

    @Test
    void whatAClinicSaysOfItselfIsChangedByThoseWhoMay() {
        World.shared();
        String clinic = Api.make(ADMIN, "/api/organisations", """
                        {"kind":"clinic","name":"Clinic %s","xRay":false,"surgery":true}
                        """.formatted(UUID.randomUUID()))
                .getString("id");
        String path = "/clinic?clinic=" + clinic;
        assertThat(page(COORDINATOR, path))
                .contains("Nothing is entered: nobody knows when it is open", "no X-ray entered");
        Map<String, String> form = new HashMap<>(Map.of(
                "clinicId", clinic,
                "phone", "the practice's",
                "whenClosed", "ring the desk",
                "treats", "turtles",
                "opening", "Monday 8:00-18:30\nTuesday noon"));
        assertThat(keep("/clinic/profile", form).statusCode(400).extract().asString())
                .contains("This cannot be read: Tuesday noon", "Monday 8:00-18:30");
        form.put("opening", "Monday 8:00-18:30\nDienstag 09:00 - 12:00\nSunday 00:00-00:00");
        keep("/clinic/profile", form).statusCode(303);
        assertThat(page(COORDINATOR, path))
                .contains("ring the desk", "Monday 08:00–18:30", "Tuesday 09:00–12:00", "Sunday all day");
        form.put("phone", "another one");
        assertThat(keep("/clinic/profile", form).statusCode(400).extract().asString())
                .as("a change of what stands has its reason")
                .contains("another one", "Not kept.");
        form.put("reason", "moved");
        keep("/clinic/profile", form).statusCode(303);
        assertThat(page(COORDINATOR, path)).contains("another one");
        assertThat(page(CLINIC, "/clinic")).contains("id=\"coming\"").doesNotContain("/clinic/profile");
        assertThat(page(CLINIC, path)).as("a clinic sees itself alone").doesNotContain("another one");
        assertThat(page(ADMIN, path)).contains("another one").doesNotContain("id=\"coming\"");
        Api.as(CARER).get("/clinic").then().statusCode(403);
    }
}
