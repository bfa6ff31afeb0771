package org.culvert.platform.hostile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.Role;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is refused before a resource sees it: RFC 9110 has the statuses, RFC 9457 the shape. */
@QuarkusTest
class EdgeResourceTest {
    private static final String PROBLEM = "application/problem+json";

    @ParameterizedTest
    @CsvSource({
        "GET,    /nothing/here,      404, not-found",
        "GET,    /api/nothing,       404, not-found",
        "POST,   /api/nothing,       404, not-found",
        "GET,    /q/nothing,         404, not-found",
        "GET,    /webjars/nothing,   404, not-found",
        "DELETE, /api/calls,         405, no-such-operation",
        "GET,    /api/calls,         405, no-such-operation",
        "PUT,    /api/members,       405, no-such-operation",
        "DELETE, /hotspots,          405, no-such-operation",
        "GET,    /api/calls/1-2,     400, invalid",
        "GET,    /api/calls/%00,     400, invalid",
        "GET,    /api/calls/%ff%fe,  400, invalid",
        "GET,    /api/cases?limit=a, 400, invalid",
        "GET,    /api/cases?late=2,  400, invalid",
    })
    void addressesThatAreNone(String verb, String path, int status, String type) throws IOException {
        String answer = raw(verb + " " + path
                + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nAccept: application/json\r\n"
                + "Idempotency-Key: " + UUID.randomUUID() + "\r\nContent-Type: application/json\r\n" + authorisation()
                + "Content-Length: 0\r\n\r\n");
        assertThat(answer).startsWith("HTTP/1.1 " + status);
        assertThat(answer).containsIgnoringCase("content-type: " + PROBLEM);
        assertThat(answer)
                .contains(
                        "\"type\":\"/problems/" + type + "\"",
                        "\"title\":",
                        "\"detail\":",
                        "\"status\":" + status,
                        "\"instance\":\"/");
    }

    @Test
    void aParameterThatCannotBeReadIsNamed() {
        Api.as(Role.COORDINATOR)
                .get("/api/cases?limit=many")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("limit"))
                .body("errors[0].wanted", equalTo("a whole number"));
        Api.as(Role.COORDINATOR)
                .get("/api/cases?late=perhaps")
                .then()
                .statusCode(400)
                .body("errors[0].field", equalTo("late"))
                .body("errors[0].wanted", equalTo("true or false"));
    }

    @Test
    void formatsThatAreNotSpokenHere() {
        Api.as(Role.DISPATCHER)
                .contentType("text/plain")
                .body("a wombat")
                .post("/api/calls")
                .then()
                .statusCode(415)
                .contentType(PROBLEM)
                .body("type", equalTo("/problems/no-such-format"));
        Api.as(Role.DISPATCHER)
                .accept("text/csv")
                .get("/api/incidents")
                .then()
                .statusCode(406)
                .contentType(PROBLEM)
                .body("type", equalTo("/problems/no-such-format"));
    }

    @Test
    void bodiesThatAreTooLargeAreNotRead() throws IOException {
        Api.as(Role.DISPATCHER)
                .body("{\"words\":\"" + "x".repeat(1_000_000) + "\"}")
                .post("/api/calls")
                .then()
                .statusCode(413)
                .contentType(PROBLEM)
                .body("type", equalTo("/problems/too-large"))
                .body("errors", nullValue());
        // One that does not say how long it is
        StringBuilder chunks =
                new StringBuilder(head("/api/calls", "application/json") + "Transfer-Encoding: chunked\r\n\r\n");
        for (int i = 0; i < 110; i++) {
            chunks.append("2710\r\n").append(" ".repeat(10_000)).append("\r\n");
        }
        assertThat(raw(chunks + "0\r\n\r\n")).startsWith("HTTP/1.1 413").contains("/problems/too-large");
        // One that is larger than any import: it is refused before it is sent
        assertThat(raw(head("/api/road-networks", "application/geo+json") + "Content-Length: 900000000\r\n\r\n"))
                .startsWith("HTTP/1.1 413")
                .contains("/problems/too-large", "requestId");
        assertThat(raw(head("/sign-in", "application/x-www-form-urlencoded") + "Content-Length: 900000000\r\n\r\n"))
                .startsWith("HTTP/1.1 413")
                .contains("/problems/too-large");
    }

    @Test
    void aFieldOfAFormThatIsTooLargeIsRefused() throws IOException {
        String form = "csrf=" + "x".repeat(300_000);
        assertThat(raw(head("/sign-in", "application/x-www-form-urlencoded") + "Content-Length: " + form.length()
                        + "\r\n\r\n" + form))
                .startsWith("HTTP/1.1 413")
                .containsIgnoringCase("content-type: " + PROBLEM);
    }

    /** Requests that are none: they are refused or dropped, and the next one is answered as ever. */
    @Test
    void whatIsNoRequestHarmsNobody() throws IOException {
        List<String> requests = List.of(
                "GARBAGE\r\n\r\n",
                "GET / HTTP/9.9\r\nHost: localhost\r\n\r\n",
                "GET /%zz HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n",
                "GET /api/calls/%c0%ae%c0%ae HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n" + authorisation()
                        + "\r\n",
                "GET /../../etc/passwd HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n",
                "GET /" + "x".repeat(9_000) + " HTTP/1.1\r\nHost: localhost\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\nX-Long: " + "x".repeat(20_000) + "\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\nContent-Length: -5\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\n0\r\n\r\n",
                "POST /api/calls HTTP/1.1\r\nHost: localhost\r\nTransfer-Encoding: chunked\r\n" + authorisation()
                        + "\r\nzz\r\n",
                "GET /api/calls/a|b HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n" + authorisation() + "\r\n",
                "GET /api/calls/a\"<b> HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n" + authorisation() + "\r\n",
                "GET /api/calls/{a}^`\\ HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n" + authorisation()
                        + "\r\n",
                "GET /api/cases?limit=%zz&cursor={a}|b HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                        + authorisation() + "\r\n",
                "BREW /api/calls HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n",
                "TRACE / HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: \u0001\r\nConnection: close\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\nAuthorization: Basic \u00ff\r\nConnection: close\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\nCookie: culvert=\u0001;;;=\r\nConnection: close\r\n\r\n",
                "GET / HTTP/1.1\r\nHost: localhost\r\nAccept: junk;;q=x,/\r\nConnection: close\r\n\r\n");
        for (String request : requests) {
            String answer = raw(request);
            if (!answer.isEmpty()) {
                assertThat(answer).as(request).startsWith("HTTP/").doesNotMatch("(?s)HTTP/\\d.\\d 5.*");
                assertThat(answer).as(request).doesNotContain("java.", "Exception");
            }
            assertThat(Request.given().get("/problems").statusCode())
                    .as("after " + request)
                    .isEqualTo(200);
        }
    }

    @Test
    void headersThatMeanNothingBreakNothing() throws IOException {
        List<String> headers = List.of(
                "Accept: junk",
                "Accept: ",
                "Accept: */*;q=x",
                "Accept: text/html;q=9999999999999999999",
                "Accept-Language: ;;,q",
                "Accept-Encoding: junk;q=-1",
                "Accept-Charset: junk",
                "If-None-Match: junk",
                "If-None-Match: W/\"",
                "If-Match: *",
                "If-Match: W/\"x\", \"y",
                "If-Modified-Since: junk",
                "Range: bytes=9-1,junk",
                "Content-Encoding: gzip",
                "Content-Language: \u00ff",
                "Expect: junk",
                "Content-Type: ",
                "Content-Type: application/json;charset=junk",
                "Content-Type: /",
                "Content-Type: a/b;c",
                "Idempotency-Key: ",
                "Idempotency-Key: \"",
                "Idempotency-Key: a,b",
                "Idempotency-Key: " + "x".repeat(5_000),
                "Cookie: culvert=\"",
                "Cookie: culvert=" + "x".repeat(5_000),
                "X-Forwarded-For: junk",
                "Forwarded: for=junk;proto=;",
                "X-Forwarded-Proto: junk",
                "X-CSRF-Token: \u00ff",
                "X-HTTP-Method-Override: DELETE",
                "Upgrade: junk",
                "Connection: upgrade",
                "Host: ",
                "Host: [::",
                "Origin: null",
                "Authorization: ",
                "Authorization: Basic",
                "Authorization: Bearer",
                "Authorization: Bearer \u00ff\u0001",
                "Authorization: Basic " + "x".repeat(5_000),
                "X-Request-Id: \u00ff<script>",
                "Traceparent: 00-junk");
        String body = "{\"words\":\"a wombat\"}";
        for (String header : headers) {
            for (String line : List.of(
                    "GET /api/incidents", "POST /api/calls", "GET /problems", "GET /hotspots", "POST /sign-in")) {
                String own = header.startsWith("Authorization") ? "" : authorisation();
                String request = line + " HTTP/1.1\r\nHost: localhost\r\n" + own + header + "\r\n"
                        + (header.startsWith("Connection") ? "" : "Connection: close\r\n")
                        + (line.startsWith("GET") ? "\r\n" : "Content-Length: " + body.length() + "\r\n\r\n" + body);
                String answer = raw(request);
                assertThat(answer)
                        .as(request)
                        .doesNotMatch("(?s)HTTP/\\d.\\d 5.*")
                        .doesNotContain("java.", "Exception");
            }
        }
    }

    private static String head(String path, String type) {
        return "POST " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: " + type
                + "\r\nIdempotency-Key: " + UUID.randomUUID() + "\r\n" + authorisation();
    }

    private static String authorisation() {
        String both = "test-coordinator:" + Api.token(Role.COORDINATOR);
        return "Authorization: Basic " + Base64.getEncoder().encodeToString(both.getBytes(StandardCharsets.UTF_8))
                + "\r\n";
    }

    /** Sends octets as they are, and reads what comes until the other side ends it or says nothing for a while. */
    private static String raw(String request) throws IOException {
        try (var socket = new Socket("localhost", Request.port())) {
            socket.setSoTimeout(3_000);
            var answer = new StringBuilder();
            try {
                socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
                socket.getOutputStream().flush();
                InputStream in = socket.getInputStream();
                byte[] octets = new byte[8192];
                for (int read = in.read(octets); read >= 0; read = in.read(octets)) {
                    // An answer comes in one piece or in pieces close together
                    socket.setSoTimeout(500);
                    answer.append(new String(octets, 0, read, StandardCharsets.UTF_8));
                }
            } catch (java.net.SocketTimeoutException | java.net.SocketException ended) {
                return answer.toString();
            }
            return answer.toString();
        }
    }
}
