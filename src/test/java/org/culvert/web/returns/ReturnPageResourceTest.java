package org.culvert.web.returns;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.OFFICER;

import io.quarkus.test.junit.QuarkusTest;
import java.util.UUID;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.Test;

/** Annual returns on pages. */
@QuarkusTest
class ReturnPageResourceTest {
    private static String page(String role, String path) {
        return Api.as(role)
                .get(path)
                .then()
                .statusCode(200)
                .contentType("text/html")
                .extract()
                .asString();
    }

    private static Answer send(String role, String path, String... told) {
        String secret = Api.as(role).get("/account").cookie("culvert-form");
        Request request = Api.as(role)
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

    /** Columns and words as a form must have them; the authority of no place uses them. */
    private static String form(String title) {
        return Api.make(COORDINATOR, "/api/return-forms", """
                        {"jurisdiction":"XR-T","title":"%s","startMonth":7,"startDay":1,"dueMonth":8,"dueDay":31,
                         "columns":[{"shows":"scientificName","heading":"Species"},{"shows":"kind","heading":"As"},
                          {"shows":"opening","heading":"Held"},{"shows":"cameIn","heading":"In"},
                          {"shows":"wentOut","heading":"Out"},{"shows":"closing","heading":"Left"}],
                         "vocabulary":[{"end":"released","word":"let go"},{"end":"died","word":"died"},
                          {"end":"euthanased","word":"put down"},{"end":"deadWhenFound","word":"dead"},
                          {"end":"diedOnTheWay","word":"dead"},{"end":"deadOnReachingClinic","word":"dead"},
                          {"end":"leftWell","word":"left"},{"end":"escaped","word":"escaped"},
                          {"end":"unknown","word":"unknown"},{"end":"hatched","word":"hatched"},
                          {"end":"failed","word":"failed"}],
                         "countsEggs":true,"countsHatchlings":true,"countsBodies":true,"countsMembers":true,
                         "source":"made for a test","readOn":"2020-01-01","reviewBy":"2090-01-01","validFrom":"2015-07-01"}
                        """.formatted(title)).getString("id");
    }

    @Test
    void aReturnIsDraftedSignedAndKeptToTheOctet() {
        World world = World.shared();
        String title = "Return " + UUID.randomUUID();
        String form = form(title);
        assertThat(page(OFFICER, "/returns")).contains(title, "<select id=\"holder\"");
        String organisation =
                Api.get(COORDINATOR, "/api/members/" + world.rescuer).getString("organisationId");
        String period = form + ":2018-07-01";
        String holder = "organisation:" + organisation;
        String draft = page(COORDINATOR, "/returns/draft?period=" + period + "&holder=" + holder);
        assertThat(draft).contains(title, "Sign the return");
        assertThat(page(OFFICER, "/returns/draft?period=" + period + "&holder=" + holder))
                .doesNotContain("Sign the return");
        String refused = send(
                        COORDINATOR,
                        "/returns/signing",
                        "period",
                        period,
                        "holder",
                        holder,
                        "name",
                        "Dr A. <i>Signer</i>",
                        "capacity",
                        "",
                        "signedOn",
                        "2019-08-01")
                .statusCode(400)
                .extract()
                .asString();
        assertThat(refused).contains("Nothing was signed.", "value=\"Dr A. &lt;i&gt;Signer&lt;/i&gt;\"");
        String to = send(
                        COORDINATOR,
                        "/returns/signing",
                        "period",
                        period,
                        "holder",
                        holder,
                        "name",
                        "Dr A. Signer",
                        "capacity",
                        "chair",
                        "signedOn",
                        "2026-01-05")
                .statusCode(303)
                .extract()
                .header("Location");
        String id = to.substring(to.lastIndexOf('/') + 1);
        assertThat(Api.get(OFFICER, "/api/annual-returns/" + id).getString("signedBy"))
                .isEqualTo("Dr A. Signer");
        assertThat(page(OFFICER, "/returns/" + id))
                .contains(
                        "Dr A. Signer",
                        Api.get(OFFICER, "/api/annual-returns/" + id).getString("tableSha256"),
                        "/api/annual-returns/" + id + "/document",
                        "Changed since: 0");
        // Nothing has changed, so there is nothing to sign
        send(
                        COORDINATOR,
                        "/returns/" + id + "/supplements",
                        "reason",
                        "late",
                        "name",
                        "Dr A. Signer",
                        "capacity",
                        "chair",
                        "signedOn",
                        "2026-01-06")
                .statusCode(409);
        send(OFFICER, "/returns/signing", "period", period, "holder", holder).statusCode(403);
        Api.as(DISPATCHER).get("/returns").then().statusCode(403);
        Api.as(COORDINATOR)
                .get("/returns/draft?period=x&holder=" + holder)
                .then()
                .statusCode(400);
    }
}
