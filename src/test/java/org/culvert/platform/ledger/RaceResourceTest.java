package org.culvert.platform.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;

import io.quarkus.test.junit.QuarkusTest;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import org.culvert.support.Api;
import org.culvert.support.OnOldestDatabase;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two clients, each with connections of its own, at the same moment; several rounds of each race. */
@QuarkusTest
@OnOldestDatabase
class RaceResourceTest {
    private static final int ROUNDS = 8;
    private static final String TURTLE = "Chelodina longicollis";
    private static final HttpClient ONE =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private static final HttpClient OTHER =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
    private static ExecutorService both;

    private World world;

    @BeforeAll
    static void threads() {
        both = Executors.newFixedThreadPool(2);
    }

    @AfterAll
    static void noThreads() {
        both.shutdownNow();
    }

    @BeforeEach
    void world() {
        world = World.shared();
    }

    /** draft-ietf-httpapi-idempotency-key-header-06, sections 2.6 and 2.7: 409 while the first is at work. */
    @Test
    void oneKeyTwiceAtOnceIsOneCall() throws Exception {
        race("same key", () -> {
            String incident = World.call(TURTLE, 150.05, "").getString("incidentId");
            String key = UUID.randomUUID().toString();
            String body = "{\"incidentId\":\"%s\",\"words\":\"both\"}".formatted(incident);
            List<HttpResponse<String>> answers = together(
                    post("/api/calls", DISPATCHER, key, null, body), post("/api/calls", DISPATCHER, key, null, body));
            assertThat(answers)
                    .extracting(HttpResponse::statusCode)
                    .containsAnyOf(201)
                    .isSubsetOf(201, 409);
            assertThat(answers.stream()
                            .filter(answer -> answer.statusCode() == 201)
                            .map(HttpResponse::body)
                            .distinct())
                    .hasSize(1);
            assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getList("calls"))
                    .hasSize(2);
            return answers;
        });
    }

    @Test
    void oneKeyForTwoRequestsAtOnceIsOneOfThem() throws Exception {
        race("same key, other body", () -> {
            String incident = World.call(TURTLE, 150.05, "").getString("incidentId");
            String key = UUID.randomUUID().toString();
            String body = "{\"incidentId\":\"%s\",\"words\":\"%s\"}";
            List<HttpResponse<String>> answers = together(
                    post("/api/calls", DISPATCHER, key, null, body.formatted(incident, "one")),
                    post("/api/calls", DISPATCHER, key, null, body.formatted(incident, "other")));
            assertThat(count(answers, 201)).isEqualTo(1);
            assertThat(count(answers, 409) + count(answers, 422)).isEqualTo(1);
            assertThat(Api.get(DISPATCHER, "/api/incidents/" + incident).getList("calls"))
                    .hasSize(2);
            return answers;
        });
    }

    @Test
    void oneRevisionIsChangedOnce() throws Exception {
        race("same tag", () -> {
            String path = "/api/incidents/" + World.call(TURTLE, 150.05, "").getString("incidentId");
            String tag = Api.tag(DISPATCHER, path);
            String body = "{\"cause\":\"%s\",\"reason\":\"race\"}";
            List<HttpResponse<String>> answers = together(
                    request("PATCH", path, DISPATCHER, key(), tag, body.formatted("disease")),
                    request("PATCH", path, DISPATCHER, key(), tag, body.formatted("attackByCat")));
            assertThat(count(answers, 200)).isEqualTo(1);
            assertThat(count(answers, 412)).isEqualTo(1);
            assertThat(Api.get(DISPATCHER, path).getInt("record.revision")).isEqualTo(2);
            return answers;
        });
    }

    @Test
    void oneHandOverIsPending() throws Exception {
        race("two hand-overs", () -> {
            String id = aCase();
            String body = "{\"taker\":{\"memberId\":\"%s\"}}";
            String path = "/api/cases/" + id + "/hand-overs";
            List<HttpResponse<String>> answers = together(
                    post(path, COORDINATOR, key(), null, body.formatted(world.helper)),
                    post(path, COORDINATOR, key(), null, body.formatted(world.carer)));
            assertThat(count(answers, 201)).isEqualTo(1);
            assertThat(count(answers, 409)).isEqualTo(1);
            return answers;
        });
    }

    @Test
    void oneHandOverIsSettledOnceAndCustodyNeverOverlaps() throws Exception {
        race("accepted and refused", () -> {
            String id = aCase();
            String handOver = "/api/hand-overs/"
                    + Api.make(COORDINATOR, "/api/cases/" + id + "/hand-overs", """
                            {"taker":{"memberId":"%s"}}
                            """.formatted(world.helper))
                            .getString("id");
            String tag = Api.tag(COORDINATOR, handOver);
            List<HttpResponse<String>> answers = together(
                    post(handOver + "/acceptance", COORDINATOR, key(), tag, "{}"),
                    post(handOver + "/refusal", COORDINATOR, key(), tag, "{\"reason\":\"full\"}"));
            assertThat(count(answers, 200)).isEqualTo(1);
            assertThat(count(answers, 412)).isEqualTo(1);
            boolean accepted = answers.get(0).statusCode() == 200;
            assertThat(Api.get(COORDINATOR, "/api/cases/" + id).getList("custody"))
                    .hasSize(accepted ? 2 : 1);
            return answers;
        });
    }

    @Test
    void aCaseEndsOnce() throws Exception {
        race("two ends", () -> {
            String path = "/api/cases/" + aCase();
            String tag = Api.tag(COORDINATOR, path);
            List<HttpResponse<String>> answers = together(
                    post(path + "/fate", COORDINATOR, key(), tag, "{\"fate\":\"died\"}"),
                    post(path + "/fate", COORDINATOR, key(), tag, "{\"fate\":\"escaped\"}"));
            assertThat(count(answers, 200)).isEqualTo(1);
            assertThat(count(answers, 412)).isEqualTo(1);
            return answers;
        });
    }

    @Test
    void aCaseDoesNotEndWhileItIsHandedOver() throws Exception {
        race("end and hand-over", () -> {
            String path = "/api/cases/" + aCase();
            String tag = Api.tag(COORDINATOR, path);
            List<HttpResponse<String>> answers = together(
                    post(path + "/fate", COORDINATOR, key(), tag, "{\"fate\":\"died\"}"),
                    post(path + "/hand-overs", COORDINATOR, key(), null, """
                            {"taker":{"memberId":"%s"}}
                            """.formatted(world.helper)));
            assertThat(count(answers, 200) + count(answers, 201)).isEqualTo(1);
            assertThat(count(answers, 409) + count(answers, 412)).isEqualTo(1);
            return answers;
        });
    }

    @Test
    void twoLeadsAcceptOneAttendanceOnce() throws Exception {
        race("two acceptances", () -> {
            String incident = World.call(TURTLE, 150.05, "").getString("incidentId");
            String path = "/api/attendances/"
                    + Api.make(DISPATCHER, "/api/incidents/" + incident + "/attendances", """
                            {"leadMemberId":"%s","helperMemberIds":["%s"],"at":"2026-01-10T02:00:00Z",
                             "policeReference":"E-1","overrideReason":"race"}
                            """.formatted(
                                            world.rescuer, world.helper))
                            .getString("id");
            String tag = Api.tag(COORDINATOR, path);
            List<HttpResponse<String>> answers = together(
                    post(path + "/acceptance", COORDINATOR, key(), tag, "{}"),
                    post(path + "/acceptance", COORDINATOR, key(), tag, "{}"));
            assertThat(count(answers, 200)).isEqualTo(1);
            assertThat(count(answers, 412)).isEqualTo(1);
            return answers;
        });
    }

    @Test
    void joinsThatCrossMakeNoCircle() throws Exception {
        race("crossing joins", () -> {
            String one = World.call(TURTLE, 150.05, "").getString("incidentId");
            String other = World.call(TURTLE, 150.05, "").getString("incidentId");
            String body = "{\"incidentId\":\"%s\",\"reason\":\"the same\"}";
            List<HttpResponse<String>> answers = together(
                    post("/api/incidents/" + one + "/joins", DISPATCHER, key(), null, body.formatted(other)),
                    post("/api/incidents/" + other + "/joins", DISPATCHER, key(), null, body.formatted(one)));
            assertThat(count(answers, 200)).isEqualTo(1);
            assertThat(count(answers, 409)).isEqualTo(1);
            assertThat(List.of(
                            Api.get(DISPATCHER, "/api/incidents/" + one)
                                    .getList("calls")
                                    .size(),
                            Api.get(DISPATCHER, "/api/incidents/" + other)
                                    .getList("calls")
                                    .size()))
                    .containsExactlyInAnyOrder(2, 1);
            return answers;
        });
    }

    private static void race(String name, Callable<List<HttpResponse<String>>> round) throws Exception {
        Map<String, Integer> seen = new TreeMap<>();
        for (int i = 0; i < ROUNDS; i++) {
            List<HttpResponse<String>> answers = round.call();
            assertThat(answers)
                    .as(name)
                    .allSatisfy(answer -> assertThat(answer.statusCode()).isLessThan(500));
            String pair = answers.stream()
                    .map(answer -> String.valueOf(answer.statusCode()))
                    .sorted()
                    .reduce((a, b) -> a + "+" + b)
                    .orElseThrow();
            seen.merge(pair, 1, Integer::sum);
        }
        System.getLogger(RaceResourceTest.class.getName())
                .log(System.Logger.Level.INFO, "{0}: {1} rounds, {2}", name, ROUNDS, seen);
    }

    private static List<HttpResponse<String>> together(HttpRequest first, HttpRequest second) throws Exception {
        var barrier = new CyclicBarrier(2);
        Future<HttpResponse<String>> one = both.submit(() -> {
            barrier.await();
            return ONE.send(first, HttpResponse.BodyHandlers.ofString());
        });
        Future<HttpResponse<String>> other = both.submit(() -> {
            barrier.await();
            return OTHER.send(second, HttpResponse.BodyHandlers.ofString());
        });
        return List.of(one.get(), other.get());
    }

    private static long count(List<HttpResponse<String>> answers, int status) {
        return answers.stream().filter(answer -> answer.statusCode() == status).count();
    }

    private static String key() {
        return UUID.randomUUID().toString();
    }

    private static HttpRequest post(String path, String role, String key, String tag, String body) {
        return request("POST", path, role, key, tag, body);
    }

    private static HttpRequest request(String method, String path, String role, String key, String tag, String body) {
        Supplier<String> basic = () -> Base64.getEncoder()
                .encodeToString(("test-" + role + ':' + Api.token(role)).getBytes(StandardCharsets.UTF_8));
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(Request.server() + path))
                .header("Authorization", "Basic " + basic.get())
                .header("Content-Type", method.equals("PATCH") ? "application/merge-patch+json" : "application/json")
                .header("Idempotency-Key", key)
                .method(method, HttpRequest.BodyPublishers.ofString(body));
        if (tag != null) {
            request.header("If-Match", tag);
        }
        return request.build();
    }

    private String aCase() {
        String incident = World.call(TURTLE, 150.05, "").getString("incidentId");
        return Api.make(COORDINATOR, "/api/cases", """
                        {"incidentId":"%s","foundAt":"2021-11-20T08:00:00Z","animal":{"scientificName":"%s"},
                         "holder":{"memberId":"%s"}}
                        """.formatted(incident, TURTLE, world.rescuer))
                .getString("id");
    }
}
