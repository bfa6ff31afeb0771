package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;
import static org.culvert.platform.Role.ROADS_AUTHORITY;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.junit.jupiter.api.Test;

/** What a page says of something wrong is what the API says of it. */
@QuarkusTest
class ProblemAnswerResourceTest {
    @Test
    void whatIsWrongWithAnAddressIsSaidAlike() {
        String unknown = UUID.randomUUID().toString();
        same(
                as(ROADS_AUTHORITY).get("/hotspots/eleven"),
                Api.as(ROADS_AUTHORITY).get("/api/hotspot-runs/eleven"),
                400,
                "invalid");
        same(
                as(ROADS_AUTHORITY).get("/hotspots/" + unknown),
                Api.as(ROADS_AUTHORITY).get("/api/hotspot-runs/" + unknown),
                404,
                "not-found");
        same(
                as(ROADS_AUTHORITY).get("/hotspots?cursor=eleven"),
                Api.as(ROADS_AUTHORITY).get("/api/hotspot-runs?cursor=eleven"),
                400,
                "invalid");
        same(as(ADMIN).get("/accounts?cursor=x"), Api.as(ADMIN).get("/api/accounts?cursor=x"), 400, "invalid");
    }

    @Test
    void whoMayNotIsToldAlike() {
        same(as(DISPATCHER).get("/accounts"), Api.as(DISPATCHER).get("/api/accounts"), 403, "not-allowed");
        same(wrongToken("text/html").get("/"), wrongToken("*/*").get("/api/region"), 401, "not-signed-in");
    }

    @Test
    void onePageSaysAsAPageWhatItSaysAsADocument() {
        alike(() -> Request.given(), "GET", "/problems/none-such", 404, "not-found");
        alike(() -> Api.as(COORDINATOR), "DELETE", "/hotspots", 405, "no-such-operation");
        alike(
                () -> Request.given().contentType("application/x-www-form-urlencoded"),
                "POST",
                "/sign-in",
                403,
                "forged");
        alike(() -> Request.given(), "GET", "/no/such/place", 404, "not-found");
        alike(() -> Request.given(), "GET", "/hotspots/a/b/c", 404, "not-found");
    }

    /** By hand, since clients send what they announce. */
    @Test
    void aBodyThatIsTooLargeIsRefusedWithAPageToo() throws IOException {
        String head = "POST /hotspots HTTP/1.1\r\nHost: localhost\r\nAccept: %s\r\n"
                + "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 900000000\r\n\r\n";
        String page = raw(head.formatted("text/html"));
        assertThat(page)
                .startsWith("HTTP/1.1 413")
                .containsIgnoringCase("content-type: text/html")
                .containsIgnoringCase("content-security-policy: default-src 'self'")
                .containsIgnoringCase("cache-control: no-store");
        String document = raw(head.formatted("*/*"));
        Json problem = Json.from(document.substring(document.indexOf("\r\n\r\n") + 4));
        assertThat(problem.getString("type")).isEqualTo("/problems/too-large");
        assertThat(problem.getString("requestId")).isNotEmpty();
        assertThat(page)
                .contains(
                        "<h1>" + escaped(problem.getString("title")) + "</h1>",
                        escaped(problem.getString("detail")),
                        "href=\"/problems/too-large\"");
    }

    private static String raw(String request) throws IOException {
        try (Socket socket = new Socket("localhost", Request.port())) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void thePageKeepsItsFrameAndQuotesNothingAsMarkup() {
        Answer page = as(ROADS_AUTHORITY).get("/hotspots/%3Cimg%20src=x%20onerror=alert(1)%3E");
        assertThat(page.statusCode()).isEqualTo(400);
        assertThat(page.asString())
                .contains("<a href=\"/account\">test-roads-authority</a>")
                .doesNotContain("<img");
        assertThat(page.header("X-Request-Id")).isNotEmpty();
        assertThat(page.asString()).contains(page.header("X-Request-Id"));
    }

    private static Request as(String role) {
        return Api.as(role).accept("text/html,application/xhtml+xml,*/*;q=0.8");
    }

    private static Request wrongToken(String accept) {
        return Request.given().accept(accept).basic("nobody", "cvt_nothing");
    }

    private static void alike(Supplier<Request> request, String verb, String path, int status, String type) {
        same(
                request.get().accept("text/html").request(verb, path),
                request.get().accept("*/*").request(verb, path),
                status,
                type);
    }

    private static void same(Answer page, Answer document, int status, String type) {
        assertThat(document.contentType()).as(document.asString()).startsWith("application/problem+json");
        Json problem = document.jsonPath();
        assertThat(problem.getString("type")).isEqualTo("/problems/" + type);
        assertThat(problem.getInt("status")).isEqualTo(status);
        assertThat(document.statusCode()).isEqualTo(status);
        assertThat(page.statusCode()).isEqualTo(status);
        assertThat(page.contentType()).as(page.asString()).startsWith("text/html");
        assertThat(page.asString())
                .contains("<h1>" + escaped(problem.getString("title")) + "</h1>", "href=\"/problems/" + type + "\"");
        if (problem.getString("detail") != null) {
            assertThat(page.asString()).contains(escaped(problem.getString("detail")));
        }
        List<Map<String, String>> errors = problem.getList("errors");
        for (Map<String, String> error : errors == null ? List.<Map<String, String>>of() : errors) {
            assertThat(page.asString())
                    .contains(
                            "<code>" + escaped(error.get("field")) + "</code>",
                            escaped(error.get("detail")),
                            escaped(error.get("wanted")));
        }
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
