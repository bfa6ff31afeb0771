package org.culvert.platform;

import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.util.UUID;
import org.culvert.support.Api;
import org.junit.jupiter.api.Test;

/** A bcrypt hash takes no more than 72 bytes of a password (from memory). */
@QuarkusTest
class AccountResourceTest {
    @Test
    void anAdministratorMakesAnAccountThatCanSignIn() {
        String username = "desk-" + UUID.randomUUID();
        String entry = "{\"username\":\"%s\",\"password\":\"a long enough one\",\"roles\":[\"%s\"]}";
        Api.post(COORDINATOR, "/api/accounts", entry.formatted(username, "dispatcher"))
                .statusCode(403);
        Api.post(ADMIN, "/api/accounts", entry.formatted(username, "emperor"))
                .statusCode(400)
                .body("errors[0].field", equalTo("roles"))
                .body("errors[0].wanted", containsString("dispatcher"));
        Api.post(ADMIN, "/api/accounts", entry.formatted(username, "dispatcher"))
                .statusCode(201);
        Api.post(ADMIN, "/api/accounts", entry.formatted(username, "dispatcher"))
                .statusCode(409)
                .body("detail", containsString("username is taken"));
        RestAssured.given()
                .auth()
                .preemptive()
                .basic(username, "a long enough one")
                .get("/api/incidents")
                .then()
                .statusCode(200);
    }

    @Test
    void aShortPasswordIsRefused() {
        Api.post(ADMIN, "/api/accounts", "{\"username\":\"x\",\"password\":\"short\",\"roles\":[\"carer\"]}")
                .statusCode(400)
                .body("errors[0].field", equalTo("password"))
                .body("errors[0].wanted", containsString("12"));
    }
}
