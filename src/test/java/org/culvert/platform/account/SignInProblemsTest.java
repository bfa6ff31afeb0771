package org.culvert.platform.account;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import org.culvert.platform.Role;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.junit.jupiter.api.Test;

/** Challenges as RFC 7617, section 2, wants them; Bearer as RFC 6750, section 2.1; problems as RFC 9457. */
@QuarkusTest
class SignInProblemsTest {
    private static final String CHALLENGE = "Basic realm=\"Culvert\", charset=\"UTF-8\"";

    @Test
    void whoHasNotSignedInIsAskedTo() {
        Request.given()
                .contentType(Request.JSON)
                .body("{}")
                .put("/api/region")
                .then()
                .statusCode(401)
                .header("WWW-Authenticate", equalTo(CHALLENGE))
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/not-signed-in"))
                .body("status", equalTo(401));
    }

    @Test
    void aTokenComesAsBearerOrAsThePasswordOfBasic() {
        String token = Api.token(Role.CARER);
        Request.given()
                .header("Authorization", "Bearer " + token)
                .get("/api/cases")
                .then()
                .statusCode(200);
        Request.given().basic("test-carer", token).get("/api/cases").then().statusCode(200);
    }

    @Test
    void whatDoesNotFitIsRefusedWithoutSayingWhy() {
        String[][] wrong = {
            {"test-carer", "not the token"},
            {"test-carer", Api.PASSWORD},
            {"test-rescuer", Api.token(Role.CARER)},
            {"nobody-of-this-name", Api.token(Role.CARER)},
            {"test-carer", ""}
        };
        for (String[] each : wrong) {
            Request.given()
                    .basic(each[0], each[1])
                    .get("/api/region")
                    .then()
                    .statusCode(401)
                    .header("WWW-Authenticate", equalTo(CHALLENGE))
                    .contentType("application/problem+json")
                    .body("detail", containsString("No account has this name and token."));
        }
        for (String header : new String[] {"Bearer x", "Basic not-base64!", "Basic bm9jb2xvbg==", "Negotiate abc"}) {
            Request.given()
                    .header("Authorization", header)
                    .get("/api/region")
                    .then()
                    .statusCode(401);
        }
    }

    /** A challenge to Basic would have the browser ask for a password in a window of its own; Fetch Metadata, W3C. */
    @Test
    void aScriptInABrowserIsNotChallengedToBasic() {
        for (String[] header : new String[][] {
            {"Sec-Fetch-Mode", "cors"}, {"X-Requested-With", "XMLHttpRequest"}, {"Cookie", "culvert=one-that-has-ended"}
        }) {
            Request.given()
                    .header(header[0], header[1])
                    .get("/api/cases")
                    .then()
                    .statusCode(401)
                    .header("WWW-Authenticate", equalTo("Bearer realm=\"Culvert\""))
                    .body("type", equalTo("/problems/not-signed-in"));
            Request.given()
                    .header(header[0], header[1])
                    .header("Authorization", "Bearer x")
                    .get("/api/cases")
                    .then()
                    .statusCode(401)
                    .header("WWW-Authenticate", equalTo("Bearer realm=\"Culvert\""));
        }
    }

    @Test
    void aPersonWhoAsksForAPageIsLedToTheForm() {
        Request.given()
                .withoutRedirects()
                .accept("text/html")
                .get("/hotspots?cursor=x")
                .then()
                .statusCode(303)
                .header("Location", containsString("/sign-in?next=%2Fhotspots%3Fcursor%3Dx"))
                .header("WWW-Authenticate", nullValue());
    }

    @Test
    void figuresOfTheServerAreForAdministrators() {
        Request.given().get("/q/metrics").then().statusCode(401);
        Api.as(Role.COORDINATOR).get("/q/metrics").then().statusCode(403);
        Api.as(Role.ADMIN).accept("text/plain").get("/q/metrics").then().statusCode(200);
    }
}
