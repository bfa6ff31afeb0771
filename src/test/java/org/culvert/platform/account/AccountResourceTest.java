package org.culvert.platform.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import java.net.URI;
import java.util.UUID;
import org.culvert.platform.FormSignIn;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.Request;
import org.junit.jupiter.api.Test;

/** A bcrypt hash takes no more than 72 bytes of a password (from memory). */
@QuarkusTest
@OnOldestDatabase
class AccountResourceTest {
    private static final String GOOD = "nine turtles on one bend";

    private static URI server() {
        return URI.create(Request.server() + "/");
    }

    private static String fresh() {
        return "desk-" + UUID.randomUUID();
    }

    private static Json account(String username, String role) {
        return Api.make(ADMIN, "/api/accounts", """
                {"username":"%s","password":"%s","roles":["%s"]}
                """.formatted(username, GOOD, role));
    }

    private static int statusOf(String token, String path) {
        return Request.given()
                .header("Authorization", "Bearer " + token)
                .get(path)
                .statusCode();
    }

    @Test
    void anAdministratorMakesAnAccountThatCanSignIn() {
        String username = fresh();
        String entry = "{\"username\":\"%s\",\"password\":\"a long enough one\",\"roles\":[\"%s\"]}";
        Api.post(COORDINATOR, "/api/accounts", entry.formatted(username, "dispatcher"))
                .statusCode(403);
        Api.post(ADMIN, "/api/accounts", entry.formatted(username, "emperor"))
                .statusCode(400)
                .body("errors[0].field", equalTo("roles"))
                .body("errors[0].wanted", containsString("dispatcher"));
        Api.post(ADMIN, "/api/accounts", entry.formatted(username, "dispatcher"))
                .statusCode(201)
                .body("invitation", nullValue());
        Api.post(ADMIN, "/api/accounts", entry.formatted(username, "dispatcher"))
                .statusCode(409)
                .body("detail", containsString("has this name already"));
        String token = FormSignIn.makeToken(server(), username, "a long enough one", "incidents:read");
        assertThat(statusOf(token, "/api/incidents")).isEqualTo(200);
    }

    @Test
    void aPasswordThatWouldBeGuessedOrCutIsRefused() {
        String[] wrong = {"short", "é".repeat(37), "password1234", "x-the-name-x", "1234567890123"};
        for (String password : wrong) {
            Api.post(ADMIN, "/api/accounts", """
                            {"username":"the-name","password":"%s","roles":["carer"]}
                            """.formatted(password))
                    .statusCode(400)
                    .body("errors[0].field", equalTo("password"))
                    .body("errors[0].wanted", containsString("12"));
        }
    }

    @Test
    void aLinkSetsAPasswordOnceAndAlone() {
        String username = fresh();
        Json made = Api.make(ADMIN, "/api/accounts", """
                {"username":"%s","roles":["dispatcher"]}""".formatted(username));
        String link = made.getString("invitation");
        var person = new FormSignIn(server());
        assertThat(person.signIn(username, GOOD).statusCode()).isEqualTo(401);
        assertThat(person.get(link).body()).contains(username);
        assertThat(person.submit(link, link, "password", GOOD, "again", "another one at all")
                        .statusCode())
                .isEqualTo(400);
        assertThat(person.submit(link, link, "password", "short", "again", "short")
                        .statusCode())
                .isEqualTo(400);
        assertThat(person.submit(link, link, "password", GOOD, "again", GOOD).statusCode())
                .isEqualTo(303);
        assertThat(person.get(link).statusCode()).isEqualTo(404);
        assertThat(person.submit("/sign-in", link, "password", GOOD, "again", GOOD)
                        .statusCode())
                .isEqualTo(409);
        assertThat(person.signIn(username, GOOD).statusCode()).isEqualTo(303);
    }

    @Test
    void aNewerLinkEndsTheOlderAndAResetEndsEverySession() {
        String username = fresh();
        String id = account(username, "dispatcher").getString("id");
        var person = new FormSignIn(server());
        person.signIn(username, GOOD);
        assertThat(person.get("/account").statusCode()).isEqualTo(200);
        String older =
                Api.make(ADMIN, "/api/accounts/" + id + "/reset-links", "{}").getString("link");
        String newer =
                Api.make(ADMIN, "/api/accounts/" + id + "/reset-links", "{}").getString("link");
        var other = new FormSignIn(server());
        assertThat(other.get(older).statusCode()).isEqualTo(404);
        String onAnotherPage = newer.replace("/reset/", "/invitation/");
        assertThat(other.get(onAnotherPage).statusCode()).isEqualTo(404);
        assertThat(other.submit("/sign-in", onAnotherPage, "password", GOOD + "?", "again", GOOD + "?")
                        .statusCode())
                .isEqualTo(409);
        assertThat(other.submit(newer, newer, "password", GOOD + "!", "again", GOOD + "!")
                        .statusCode())
                .isEqualTo(303);
        assertThat(person.get("/account").statusCode()).isEqualTo(303);
        assertThat(other.signIn(username, GOOD).statusCode()).isEqualTo(401);
        assertThat(other.signIn(username, GOOD + "!").statusCode()).isEqualTo(303);
    }

    @Test
    void aDisabledAccountIsOutAtOnce() {
        String username = fresh();
        String id = account(username, "carer").getString("id");
        var person = new FormSignIn(server());
        person.signIn(username, GOOD);
        String token = FormSignIn.makeToken(server(), username, GOOD, "*:read");
        assertThat(statusOf(token, "/api/cases")).isEqualTo(200);
        Api.post(ADMIN, "/api/accounts/" + id + "/disabling", "{}")
                .statusCode(200)
                .body("disabledAt", notNullValue());
        assertThat(statusOf(token, "/api/cases")).isEqualTo(401);
        assertThat(person.get("/account").statusCode()).isEqualTo(303);
        assertThat(person.signIn(username, GOOD).statusCode()).isEqualTo(401);
        Api.post(ADMIN, "/api/accounts/" + id + "/enabling", "{}")
                .statusCode(200)
                .body("disabledAt", nullValue());
        assertThat(person.signIn(username, GOOD).statusCode()).isEqualTo(303);
        assertThat(statusOf(token, "/api/cases")).isEqualTo(401);
    }

    @Test
    void otherRolesHoldFromTheNextRequestOn() {
        String username = fresh();
        String id = account(username, "carer").getString("id");
        String token = FormSignIn.makeToken(server(), username, GOOD, "*:read");
        assertThat(statusOf(token, "/api/accounts")).isEqualTo(403);
        Api.as(ADMIN)
                .body("{\"roles\":[\"admin\"]}")
                .put("/api/accounts/" + id + "/roles")
                .then()
                .statusCode(200);
        assertThat(statusOf(token, "/api/accounts")).isEqualTo(200);
    }

    @Test
    void aTokenReachesItsScopesUntilItIsTakenBack() {
        String username = fresh();
        account(username, "coordinator");
        String token = FormSignIn.makeToken(server(), username, GOOD, "incidents:read tokens:read tokens:write");
        assertThat(statusOf(token, "/api/incidents")).isEqualTo(200);
        Request.given()
                .header("Authorization", "Bearer " + token)
                .get("/api/cases")
                .then()
                .statusCode(403)
                .body("detail", containsString("cases:read"));
        Request.given()
                .header("Authorization", "Bearer " + token)
                .contentType("application/json")
                .body("{}")
                .post("/api/incidents/" + UUID.randomUUID() + "/joins")
                .then()
                .statusCode(403)
                .body("detail", containsString("incidents:write"));
        assertThat(statusOf(token, "/hotspots")).isEqualTo(403);
        String id = Request.given()
                .header("Authorization", "Bearer " + token)
                .get("/api/tokens")
                .then()
                .statusCode(200)
                .body("username", hasItem(username))
                .body("token", hasItem(nullValue()))
                .extract()
                .path("[0].id");
        Api.post("carer", "/api/tokens/" + id + "/revocation", "{}").statusCode(404);
        assertThat(statusOf(token, "/api/incidents")).isEqualTo(200);
        Request.given()
                .header("Authorization", "Bearer " + token)
                .contentType("application/json")
                .body("{}")
                .post("/api/tokens/" + id + "/revocation")
                .then()
                .statusCode(200)
                .body("revokedAt", notNullValue());
        assertThat(statusOf(token, "/api/incidents")).isEqualTo(401);
    }

    @Test
    void aTokenIsShownOnceEvenToARepeatedKey() {
        String key = UUID.randomUUID().toString();
        String body = "{\"name\":\"once\",\"scopes\":[\"incidents:read\"],\"expiresAt\":\"2090-01-01T00:00:00Z\"}";
        Api.as(COORDINATOR)
                .header("Idempotency-Key", key)
                .body(body)
                .post("/api/tokens")
                .then()
                .statusCode(201)
                .body("token", containsString("cvt_"));
        String again = Api.as(COORDINATOR)
                .header("Idempotency-Key", key)
                .body(body)
                .post("/api/tokens")
                .then()
                .statusCode(201)
                .header("Idempotency-Replayed", equalTo("true"))
                .extract()
                .asString();
        assertThat(again).isEmpty();
        Api.post(COORDINATOR, "/api/tokens", body.replace("incidents:read", "everything"))
                .statusCode(400)
                .body("errors[0].field", equalTo("scopes"));
        Api.post(COORDINATOR, "/api/tokens", body.replace("2090", "2020"))
                .statusCode(400)
                .body("errors[0].field", equalTo("expiresAt"));
    }

    @Test
    void aTokenMakesNoneThatReachesFurtherOrLastsLonger() {
        String username = fresh();
        account(username, "admin");
        String narrow =
                FormSignIn.makeToken(server(), username, GOOD, "tokens:write incidents:read pages:read pages:write");
        Request.given()
                .header("Authorization", "Bearer " + narrow)
                .contentType("application/json")
                .body("{\"name\":\"wider\",\"scopes\":[\"*:read\"]}")
                .post("/api/tokens")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("scopes"));
        // Nor by a form, with a secret that it gave itself.
        Request.given()
                .header("Authorization", "Bearer " + narrow)
                .cookie("culvert-form", "mine")
                .formParam("csrf", "mine")
                .formParam("name", "wider")
                .formParam("scopes", "*:read *:write")
                .post("/account/tokens")
                .then()
                .statusCode(403);
        Request.given()
                .header("Authorization", "Bearer " + narrow)
                .contentType("application/json")
                .body("{\"name\":\"as narrow\",\"scopes\":[\"incidents:read\"]}")
                .post("/api/tokens")
                .then()
                .statusCode(201);
    }
}
