package org.culvert.platform.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.DISPATCHER;

import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Json;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * The headers that the OWASP Secure Headers project names (from memory), the directives as Content Security Policy Level 3
 * has them, Strict-Transport-Security over secret connections alone as RFC 6797, section 7.2, wants it.
 */
@QuarkusTest
class HeadersResourceTest {
    private static final Map<String, String> EVERYWHERE = Map.of(
            "X-Content-Type-Options", "nosniff",
            "Referrer-Policy", "same-origin",
            "Permissions-Policy", "geolocation=(self), camera=(), microphone=(), payment=(), usb=()",
            "Cross-Origin-Opener-Policy", "same-origin",
            "Cross-Origin-Resource-Policy", "same-origin");

    private static final Set<String> POLICY = Set.of(
            "default-src 'self'",
            "img-src 'self' data:",
            "object-src 'none'",
            "base-uri 'none'",
            "form-action 'self'",
            "frame-ancestors 'none'");

    private static final Pattern INLINE =
            Pattern.compile("(?i)<style|\\sstyle=|\\son[a-z]+\\s*=|javascript:|<script(?![^>]*\\ssrc=\"/)[^>]*>");
    private static final Pattern ELSEWHERE = Pattern.compile("(?i)(?:src|href|action)=\"(?:https?:)?//[^\"]*\"");

    @BeforeEach
    void makeWorld() {
        World.shared();
    }

    /** Of a page that holds a secret beside what somebody sent, length would tell of both: BREACH (Gluck, Harris, Prado 2013). */
    @Test
    void stylesAndScriptsAreCompressedAndPagesAreNot() {
        for (String path : List.of("/culvert.css", "/desk.js", "/webjars/htmx.org/2.0.4/dist/htmx.min.js")) {
            Answer answer = Request.given().header("Accept-Encoding", "gzip").get(path);
            assertThat(answer.statusCode()).as(path).isEqualTo(200);
            assertThat(answer.header("Content-Encoding")).as(path).isEqualTo("gzip");
        }
        for (String path : List.of("/desk", "/sign-in", "/api/members")) {
            Answer answer = Api.as(DISPATCHER)
                    .accept(path.startsWith("/api") ? "*/*" : "text/html")
                    .header("Accept-Encoding", "gzip")
                    .get(path);
            assertThat(answer.statusCode()).as(path).isEqualTo(200);
            assertThat(answer.header("Content-Encoding")).as(path).isNull();
        }
    }

    @Test
    void everyReadOfTheContractHasThemToWhomeverItAnswers() {
        List<String> wrong = new ArrayList<>();
        Set<Integer> statuses = new LinkedHashSet<>();
        Set<String> paths = paths();
        for (String path : paths) {
            for (boolean signedIn : new boolean[] {true, false}) {
                Request request = signedIn ? Api.as(ADMIN) : Request.given();
                Answer response = request.accept(path.startsWith("/api") ? "*/*" : "text/html")
                        .withoutRedirects()
                        .get(path);
                statuses.add(response.statusCode());
                wrong.addAll(judge("GET " + path + (signedIn ? " as admin" : " as nobody"), response, false));
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(paths).as("addresses that were asked").hasSizeGreaterThan(60);
        assertThat(statuses).as("kinds of answer that were met").contains(200, 303, 401, 403);
    }

    @Test
    void refusalsAndWhatTheFrameworkAnswersHaveThemToo() {
        List<String> wrong = new ArrayList<>();
        wrong.addAll(judge("nothing there", Request.given().get("/nothing/is/here"), false));
        wrong.addAll(judge("no such operation", Api.as(DISPATCHER).delete("/api/calls"), false));
        wrong.addAll(judge("no key", Api.as(DISPATCHER).withoutKey().body("{}").post("/api/calls"), false));
        wrong.addAll(judge("not JSON", Api.as(DISPATCHER).body("[").post("/api/calls"), false));
        wrong.addAll(judge(
                "not spoken",
                Api.as(DISPATCHER).contentType("text/csv").body("a,b").post("/api/calls"),
                false));
        wrong.addAll(judge(
                "a token that fits nobody", Request.given().basic("a", "b").get("/"), false));
        wrong.addAll(judge("health", Request.given().get("/q/health"), false));
        wrong.addAll(judge("figures", Api.as(ADMIN).get("/q/metrics"), false));
        wrong.addAll(judge("contract", Request.given().get("/q/openapi"), false));
        wrong.addAll(judge("a file", Request.given().get("/culvert.css"), true));
        wrong.addAll(judge("a library", Request.given().get("/webjars/leaflet/1.9.4/dist/leaflet.js"), true));
        assertThat(wrong).isEmpty();
    }

    @Test
    void whoAskedOverAnOpenConnectionIsNotBoundToSecretOnes() {
        assertThat(Request.given().get("/").header("Strict-Transport-Security")).isNull();
    }

    @Test
    void everyAnswerIsNamedAsItsSenderNamedTheRequest() {
        String id = "desk-7/" + UUID.randomUUID();
        assertThat(Api.as(DISPATCHER)
                        .header("X-Request-Id", id)
                        .get("/api/region")
                        .header("X-Request-Id"))
                .isEqualTo(id);
        Answer problem = Api.as(DISPATCHER)
                .header("X-Request-Id", id)
                .body("{\"colour\":1}")
                .post("/api/calls");
        assertThat(problem.header("X-Request-Id")).isEqualTo(id);
        assertThat(problem.jsonPath().getString("requestId")).isEqualTo(id);
        Answer unnamed = Api.as(DISPATCHER).get("/api/calls/" + UUID.randomUUID());
        assertThat(unnamed.statusCode()).isEqualTo(404);
        assertThat(unnamed.jsonPath().getString("requestId"))
                .isEqualTo(unnamed.header("X-Request-Id"))
                .isNotEmpty();
    }

    private static List<String> judge(String what, Answer response, boolean file) {
        List<String> wrong = new ArrayList<>();
        EVERYWHERE.forEach((name, value) -> {
            if (!response.headers(name).equals(List.of(value))) {
                wrong.add(what + ": " + name + " is " + response.headers(name));
            }
        });
        List<String> policies = response.headers("Content-Security-Policy");
        if (policies.size() != 1 || !Set.of(policies.get(0).split(";\\s*")).equals(POLICY)) {
            wrong.add(what + ": Content-Security-Policy is " + policies);
        }
        if (response.headers("X-Request-Id").size() != 1) {
            wrong.add(what + " has not one name");
        }
        List<String> caching = response.headers("Cache-Control");
        boolean kept = !caching.equals(List.of("no-store"));
        if (kept != file && !caching.equals(List.of("private, max-age=31536000, immutable"))) {
            wrong.add(what + ": Cache-Control is " + caching);
        }
        String type = response.contentType();
        if (type != null && type.startsWith("text/html")) {
            for (Pattern pattern : List.of(INLINE, ELSEWHERE)) {
                // Links of layers are whole addresses, of this server
                Matcher found = pattern.matcher(response.asString().replace("=\"" + Request.server(), "=\""));
                if (found.find()) {
                    wrong.add(what + " holds " + found.group());
                }
            }
        }
        return wrong;
    }

    /** Everything that can be read, with identifiers of nothing. */
    private static Set<String> paths() {
        Json contract = Request.given().get("/q/openapi?format=json").jsonPath();
        Map<String, Map<String, Object>> operations = contract.getMap("paths");
        Set<String> paths = new LinkedHashSet<>();
        operations.forEach((path, verbs) -> {
            if (verbs.containsKey("get")) {
                paths.add(path.replace("{purpose}", "invitation")
                        .replace("{type}", "invalid")
                        .replaceAll("\\{\\w+}", UUID.randomUUID().toString()));
            }
        });
        return paths;
    }
}
