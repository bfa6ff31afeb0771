package org.culvert.platform.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URI;
import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.culvert.platform.FormSignIn;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/**
 * Cookie attributes as RFC 6265bis has them, 429 as RFC 6585, section 4; lock-out, one answer for known and unknown names
 * and a new session at each sign-in as the OWASP cheat sheets on authentication and sessions want (from memory).
 */
@QuarkusTest
class SignInResourceTest {
    private static final String GOOD = "nine turtles on one bend";
    private static final Pattern CSRF = Pattern.compile("name=\"csrf\" value=\"([^\"]+)\"");

    @Inject
    DataSource database;

    private static URI server() {
        return URI.create(Request.server() + "/");
    }

    private static String person() {
        String username = "person-" + UUID.randomUUID();
        Api.make(ADMIN, "/api/accounts", """
                {"username":"%s","password":"%s","roles":["roads-authority"]}
                """.formatted(username, GOOD));
        return username;
    }

    /** All tests come from one address, which other tests need too. */
    @AfterEach
    void letTheAddressTryAgain() throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("update personal.sign_in_tries set tried_at = tried_at - interval '1 hour'");
        }
    }

    private Answer openForm() {
        return Request.given().accept("text/html").get("/sign-in");
    }

    private static String secretIn(Answer page) {
        Matcher secret = CSRF.matcher(page.asString());
        assertThat(secret.find()).isTrue();
        return secret.group(1);
    }

    private Answer send(String username, String password, String next) {
        Answer form = openForm();
        return Request.given()
                .withoutRedirects()
                .cookies(form.cookies())
                .formParam("csrf", secretIn(form))
                .formParam("username", username)
                .formParam("password", password)
                .formParam("next", next)
                .post("/sign-in");
    }

    @Test
    void theCookieOfASessionIsKeptFromScriptsAndOtherSites() {
        Answer in = send(person(), GOOD, "/hotspots");
        in.then().statusCode(303);
        assertThat(in.header("Location")).endsWith("/hotspots");
        String cookie = in.headers("Set-Cookie").stream()
                .filter(each -> each.startsWith("culvert="))
                .findFirst()
                .orElseThrow();
        assertThat(cookie).contains("HTTPOnly").contains("SameSite=Lax").contains("Path=/");
        assertThat(cookie).doesNotContain("Domain").doesNotContain("Expires").doesNotContain("Max-Age");
    }

    @Test
    void aSessionIsANewOneAtEachSignInAndEndsAtSigningOut() {
        String username = person();
        String first = send(username, GOOD, "/").cookie("culvert");
        Answer form = Request.given().cookie("culvert", first).get("/sign-in");
        Answer again = Request.given()
                .withoutRedirects()
                .cookie("culvert", first)
                .formParam("csrf", secretIn(form))
                .formParam("username", username)
                .formParam("password", GOOD)
                .post("/sign-in");
        String second = again.cookie("culvert");
        assertThat(second).isNotBlank().isNotEqualTo(first);
        assertThat(pageWith(first)).isEqualTo(303);
        assertThat(pageWith(second)).isEqualTo(200);
        // One that was laid by somebody else is nobody's.
        assertThat(pageWith("laid-by-somebody-else")).isEqualTo(303);
        String csrf = secretIn(Request.given().cookie("culvert", second).get("/account"));
        Request.given()
                .withoutRedirects()
                .cookie("culvert", second)
                .formParam("csrf", csrf)
                .post("/sign-out")
                .then()
                .statusCode(303);
        assertThat(pageWith(second)).isEqualTo(303);
    }

    private static int pageWith(String session) {
        return Request.given()
                .withoutRedirects()
                .accept("text/html")
                .cookie("culvert", session)
                .get("/account")
                .statusCode();
    }

    @Test
    void aFormThatWasNotOnOurPageIsRefused() {
        String username = person();
        String session = send(username, GOOD, "/").cookie("culvert");
        String othersSecret = secretIn(Request.given()
                .cookie("culvert", send(person(), GOOD, "/").cookie("culvert"))
                .get("/account"));
        String own = secretIn(Request.given().cookie("culvert", session).get("/account"));
        for (String csrf : List.of("", "wrong", othersSecret)) {
            Request.given()
                    .cookie("culvert", session)
                    .formParam("csrf", csrf)
                    .formParam("name", "forged")
                    .formParam("scopes", "*:write")
                    .post("/account/tokens")
                    .then()
                    .statusCode(403)
                    .body("type", equalTo("/problems/forged"));
            Request.given()
                    .cookie("culvert", session)
                    .contentType("application/json")
                    .header("X-CSRF-Token", csrf.isEmpty() ? "none" : csrf)
                    .body("{\"name\":\"forged\",\"scopes\":[\"*:write\"]}")
                    .post("/api/tokens")
                    .then()
                    .statusCode(403)
                    .body("type", equalTo("/problems/forged"));
        }
        Request.given().formParam("username", username).post("/sign-in").then().statusCode(403);
        assertThat((List<?>) Request.given()
                        .cookie("culvert", session)
                        .get("/api/tokens")
                        .path(""))
                .isEmpty();
        Request.given()
                .cookie("culvert", session)
                .contentType("application/json")
                .header("X-CSRF-Token", own)
                .body("{\"name\":\"meant\",\"scopes\":[\"hotspot-runs:read\"]}")
                .post("/api/tokens")
                .then()
                .statusCode(201);
    }

    @Test
    void signingInLeadsToThisServerAlone() {
        String username = person();
        for (String next : List.of(
                "https://elsewhere.example/",
                "//elsewhere.example/",
                "/\\elsewhere.example",
                "\\\\elsewhere.example",
                "javascript:alert(1)",
                "/ /elsewhere",
                "account")) {
            Answer in = send(username, GOOD, next);
            in.then().statusCode(303);
            assertThat(in.header("Location")).as(next).isEqualTo(Request.server() + "/first");
        }
        assertThat(send(username, GOOD, "/hotspots?cursor=a%2Fb").header("Location"))
                .endsWith("/hotspots?cursor=a%2Fb");
    }

    @Test
    void whoGuessesWaitsAndANameThatNobodyHasWaitsAlike() {
        String known = person();
        String unknown = "nobody-" + UUID.randomUUID();
        for (String username : List.of(known, unknown)) {
            for (int i = 1; i <= SignInTries.TRIES_OF_A_NAME; i++) {
                Answer wrong = send(username, "a wrong password " + i, "/");
                assertThat(wrong.statusCode()).as(username + " " + i).isEqualTo(401);
                assertThat(wrong.asString()).contains("No account has this name and password.");
            }
            Answer waits = send(username, GOOD, "/");
            assertThat(waits.statusCode()).as(username).isEqualTo(429);
            assertThat(Integer.parseInt(waits.header("Retry-After"))).isBetween(1, 60);
            assertThat(waits.cookie("culvert")).isNull();
            assertThat(waits.asString()).contains("Too many tries");
        }
    }

    @Test
    void manyTriesAtOnceAreCountedToo() throws InterruptedException {
        String username = person();
        int atOnce = 24;
        var statuses = new java.util.concurrent.ConcurrentLinkedQueue<Integer>();
        var ready = new java.util.concurrent.CyclicBarrier(atOnce);
        List<Thread> threads = new java.util.ArrayList<>();
        for (int i = 0; i < atOnce; i++) {
            Thread thread = new Thread(() -> {
                var browser = new FormSignIn(server());
                browser.get("/sign-in");
                try {
                    ready.await();
                } catch (Exception e) {
                    throw new IllegalStateException(e);
                }
                statuses.add(browser.signIn(username, "a wrong password").statusCode());
            });
            thread.start();
            threads.add(thread);
        }
        for (Thread thread : threads) {
            thread.join();
        }
        assertThat(statuses).hasSize(atOnce);
        assertThat(statuses.stream().filter(status -> status == 401).count())
                .as("tries that were let through of %d at once", atOnce)
                .isLessThanOrEqualTo(SignInTries.TRIES_OF_A_NAME);
    }

    @Test
    void anAddressThatGuessesManyNamesWaits() {
        int refused = 0;
        for (int i = 0; i < SignInTries.TRIES_OF_A_SOURCE + 3; i++) {
            if (send("name-" + i + "-" + UUID.randomUUID(), "a wrong password", "/")
                            .statusCode()
                    == 429) {
                refused++;
            }
        }
        assertThat(refused).isGreaterThanOrEqualTo(3);
    }

    @Test
    void oneSuccessForgivesTheFailuresBeforeIt() {
        String username = person();
        for (int round = 0; round < 2; round++) {
            for (int i = 1; i < SignInTries.TRIES_OF_A_NAME; i++) {
                assertThat(send(username, "a wrong password", "/").statusCode()).isEqualTo(401);
            }
            assertThat(send(username, GOOD, "/").statusCode()).isEqualTo(303);
        }
    }

    @Test
    void changingThePasswordWantsTheOldOneAndSignsOutEverywhere() {
        String username = person();
        var here = new FormSignIn(server());
        var elsewhere = new FormSignIn(server());
        here.signIn(username, GOOD);
        elsewhere.signIn(username, GOOD);
        HttpResponse<String> refused = here.submit(
                "/account",
                "/account/password",
                "before",
                "not it at all",
                "password",
                GOOD + "s",
                "again",
                GOOD + "s");
        assertThat(refused.statusCode()).isEqualTo(400);
        assertThat(elsewhere.get("/account").statusCode()).isEqualTo(200);
        assertThat(here.submit(
                                "/account",
                                "/account/password",
                                "before",
                                GOOD,
                                "password",
                                GOOD + "s",
                                "again",
                                GOOD + "s")
                        .statusCode())
                .isEqualTo(303);
        assertThat(elsewhere.get("/account").statusCode()).isEqualTo(303);
        assertThat(here.signIn(username, GOOD + "s").statusCode()).isEqualTo(303);
    }

    /** Who tries tokens waits; tokens that fit, and people at the same address, do not. */
    @Test
    void wrongTokensFromAnAddressAreCounted() throws SQLException {
        letTheAddressTryAgain();
        String username = person();
        for (int i = 0; i < SignInTries.WRONG_TOKENS_OF_A_SOURCE; i++) {
            var asked = Request.given();
            Answer wrong = i % 2 == 0
                    ? asked.header("Authorization", "Bearer cvt_guess-" + i).get("/api/region")
                    : asked.basic("test-carer", "guess-" + i).get("/api/region");
            assertThat(wrong.statusCode()).as("token " + i).isEqualTo(401);
        }
        Answer waits =
                Request.given().header("Authorization", "Bearer cvt_guess").get("/api/region");
        waits.then().statusCode(429).body("type", equalTo("/problems/too-many-tries"));
        assertThat(Integer.parseInt(waits.header("Retry-After"))).isBetween(1, 900);
        Api.as(ADMIN).get("/api/accounts").then().statusCode(200);
        assertThat(send(username, GOOD, "/").statusCode()).isEqualTo(303);
    }

    @Test
    void noSecretStandsInTheDatabase() throws SQLException {
        String username = person();
        String session = send(username, GOOD, "/").cookie("culvert");
        String token = FormSignIn.makeToken(server(), username, GOOD, "*:read");
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            for (String table : List.of(
                    "sessions", "api_tokens", "passwords", "one_time_links", "personal.idempotency_keys", "accounts")) {
                try (var rows = statement.executeQuery("select row_to_json(t)::text from " + table + " t")) {
                    while (rows.next()) {
                        assertThat(rows.getString(1))
                                .as(table)
                                .doesNotContain(session)
                                .doesNotContain(token)
                                .doesNotContain(GOOD);
                    }
                }
            }
        }
    }
}
