package org.culvert.web.overview;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.RESCUER;

import io.quarkus.test.junit.QuarkusTest;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

/** What waits for a coordinator. */
@QuarkusTest
class OverviewPageResourceTest {
    private static String page(String path) {
        return Api.as(COORDINATOR)
                .get(path)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    private static Answer send(String path, Map<String, String> fields) {
        String secret = Api.as(COORDINATOR).get("/overview").cookie("culvert-form");
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

    private static String newCase(World world) {
        String incident = World.call("Wallabia bicolor", 150.0666, "").getString("incidentId");
        return Api.make(RESCUER, "/api/cases", """
                        {"incidentId":"%s","animal":{"scientificName":"Wallabia bicolor"},"foundAt":"2026-01-01T02:00:00Z",
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, world.rescuer))
                .getString("id");
    }

    @Test
    void anAlertStandsThereUntilSomebodyHasReadIt() {
        World world = World.shared();
        String name = "Overview " + UUID.randomUUID();
        String syndrome =
                Api.make(COORDINATOR, "/api/syndromes", """
                        {"name":"%s","words":"made for a test","source":"made for a test","readOn":"2026-01-01"}
                        """.formatted(name)).getString("id");
        Api.make(COORDINATOR, "/api/alert-thresholds", """
                {"syndromeId":"%s","smallestCount":2,"withinKilometres":5,"withinDays":7,"source":"made for a test",
                 "readOn":"2026-01-01","validFrom":"2020-01-01"}
                """.formatted(syndrome));
        String report = "";
        for (int i = 0; i < 2; i++) {
            report = Api.make(RESCUER, "/api/cases/" + newCase(world) + "/syndrome-reports", """
                            {"syndromeId":"%s","at":"2026-02-01T02:00:00Z","words":"it circles"}
                            """.formatted(syndrome))
                    .getString("id");
        }
        String alert = Api.get(RESCUER, "/api/syndrome-reports/" + report).getString("alertId");
        assertThat(page("/overview")).contains(name + ": 2 animals");
        String path = "/overview/alerts/" + alert + "/reading";
        send(path, Map.of("name", "Dr Vet")).statusCode(400);
        send(path, Map.of("name", "Dr Vet", "words", "rang the health body")).statusCode(303);
        assertThat(page("/overview")).doesNotContain(name);
        assertThat(Api.get(COORDINATOR, "/api/health-alerts/" + alert).getString("acknowledgements[0].name"))
                .isEqualTo("Dr Vet");
    }

    @Test
    void handOversThatWaitNameWhoIsToTakeThemTheOldestFirst() {
        World world = World.shared();
        Api.make(RESCUER, "/api/cases/" + newCase(world) + "/hand-overs", """
                {"taker":{"memberId":"%s"}}
                """.formatted(world.helper));
        String page = page("/overview");
        int at = page.indexOf("id=\"over-h\"");
        for (Map<String, Object> taker : Api.get(COORDINATOR, "/api/hand-overs?pending=true&limit=8")
                .<Map<String, Object>>getList("items.taker")) {
            Object member = taker.get("memberId");
            Object organisation = taker.get("organisationId");
            String name = member != null
                    ? Api.get(COORDINATOR, "/api/members/" + member).getString("callSign")
                    : organisation != null
                            ? Api.get(COORDINATOR, "/api/organisations/" + organisation)
                                    .getString("name")
                            : "<p class=\"wait\">";
            at = page.indexOf(name, at + 1);
            assertThat(at).as(name).isPositive();
        }
    }

    @Test
    void whatIsOpenLeadsToTheDeskAndTheRestIsLookedUp() {
        World.shared();
        String incident = World.call("Phascolarctos cinereus", 150.0677, "").getString("incidentId");
        assertThat(Api.get(COORDINATOR, "/api/open-incidents").getList("incidentId"))
                .contains(incident);
        assertThat(page("/overview")).contains("Open at the desk:", "href=\"/desk/incidents/");
        assertThat(page("/overview/lapsing")).contains("authorisation");
        Api.as(DISPATCHER).get("/overview").then().statusCode(403);
    }
}
