package org.culvert.platform;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import org.junit.jupiter.api.Test;

/** Challenges as RFC 7617, section 2, wants them; problems as RFC 9457. */
@QuarkusTest
class SignInProblemsTest {
    private static final String CHALLENGE = "basic realm=\"Culvert\"";

    @Test
    void whoHasNotSignedInIsAskedTo() {
        given().contentType(ContentType.JSON)
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
    void aWrongPasswordIsRefusedWithoutSayingWhatWasWrong() {
        for (String name : new String[] {"admin", "nobody-of-this-name"}) {
            given().auth()
                    .preemptive()
                    .basic(name, "not the password")
                    .get("/api/region")
                    .then()
                    .statusCode(401)
                    .header("WWW-Authenticate", equalTo(CHALLENGE))
                    .contentType("application/problem+json")
                    .body("detail", equalTo("No account has this name and password."));
        }
    }
}
