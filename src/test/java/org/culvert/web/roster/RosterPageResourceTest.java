package org.culvert.web.roster;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.RESCUER;

import io.quarkus.test.junit.QuarkusTest;
import java.util.UUID;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

/** The roster, and what is kept of people. */
@QuarkusTest
class RosterPageResourceTest {
    private static String page(String path) {
        return Api.as(COORDINATOR)
                .get(path)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    private static Answer send(String path, String... told) {
        String secret = Api.as(COORDINATOR).get("/roster/people").cookie("culvert-form");
        Request request = Api.as(COORDINATOR)
                .contentType(Request.FORM + "; charset=UTF-8")
                .cookie("culvert-form", secret)
                .withoutRedirects()
                .formParam("csrf", secret)
                .formParam("key", UUID.randomUUID().toString());
        for (int i = 0; i < told.length; i += 2) {
            request = request.formParam(told[i], told[i + 1]);
        }
        return request.post(path).then();
    }

    private static String member(String name, String phone) {
        String organisation = Api.make(COORDINATOR, "/api/organisations", """
                {"kind":"network","name":"%s"}
                """.formatted(name + " house"))
                .getString("id");
        return Api.make(COORDINATOR, "/api/members", """
                        {"organisationId":"%s","callSign":"%s","name":"%s","phone":"%s","attends":true,"cares":true}
                        """.formatted(organisation, name, name + " Surname", phone))
                .getString("id");
    }

    @Test
    void whatLapsesStandsFirstAndWhoIsNotVaccinatedIsTold() {
        World.shared();
        String name = "Lapse " + UUID.randomUUID();
        String id = member(name, "0400 000 111");
        assertThat(row(page("/roster"), id)).contains("none on record: counts as not vaccinated", "none");
        Api.make(COORDINATOR, "/api/vaccinations", """
                {"memberId":"%s","against":"lyssavirus","givenOn":"2019-01-01","currentUntil":"2020-01-01",
                 "basis":"made for a test"}
                """.formatted(id));
        String html = page("/roster");
        int lapses = html.indexOf("id=\"lapse-h\"");
        int members = html.indexOf("id=\"members-h\"");
        assertThat(html.substring(lapses, members)).contains(name).contains("over since");
        assertThat(row(html, id)).contains("lyssavirus");
        assertThat(page("/roster/members/" + id))
                .contains(name, "2020-01-01", "/settings/vaccinations/correction?of=")
                // Name and number go in and are not shown again
                .doesNotContain("Surname", "0400 000 111");
        Api.as(RESCUER).get("/roster").then().statusCode(403);
        Api.as(RESCUER).get("/roster/members/" + id).then().statusCode(403);
    }

    private static String row(String html, String id) {
        int start = html.indexOf("<tr id=\"i-" + id + "\"");
        assertThat(start).isPositive();
        return html.substring(start, html.indexOf("</tr>", start));
    }

    @Test
    void placesThatAreFreeAreCountedAndNoneOfWhoIsAway() {
        World.shared();
        String name = "Places " + UUID.randomUUID();
        String id = member(name, "0400 000 222");
        Api.make(COORDINATOR, "/api/carer-profiles", """
                {"memberId":"%s","places":3,"placesByGroup":{}}
                """.formatted(id));
        assertThat(row(page("/roster"), id)).contains("3 of 3 free");
        send("/settings/members/absences", "act.of", id, "from", "2020-01-01", "until", "2090-01-01")
                .statusCode(303);
        assertThat(row(page("/roster"), id)).contains("away until").doesNotContain("3 of 3 free");
    }

    @Test
    void whatIsKeptOfSomebodyIsFoundAndHidden() {
        World.shared();
        String name = "Dossier " + UUID.randomUUID();
        member(name, "0400 000 333");
        assertThat(send("/roster/people").statusCode(400).extract().asString()).contains("Nobody was looked for.");
        String found = send("/roster/people", "name", name + " Surname")
                .statusCode(200)
                .extract()
                .asString();
        assertThat(found).contains("Found: 1", name + " Surname");
        int at = found.indexOf("href=\"/roster/people/") + "href=\"/roster/people/".length();
        String person = found.substring(at, found.indexOf('"', at));
        String kept = page("/roster/people/" + person);
        assertThat(kept).contains("0400 000 333", "/settings/people/hiding?of=" + person);
        Api.as(RESCUER).get("/roster/people/" + person).then().statusCode(403);
        Api.as(RESCUER).get("/roster/people").then().statusCode(403);
    }
}
