package org.culvert.platform.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.culvert.platform.Role.ADMIN;
import static org.culvert.platform.Role.COORDINATOR;
import static org.culvert.platform.Role.DISPATCHER;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.culvert.platform.FormSignIn;
import org.culvert.platform.Patience;
import org.culvert.platform.database.TestDatabase;
import org.culvert.support.Answer;
import org.culvert.support.Api;
import org.culvert.support.Request;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is told to the server of people, rightly or wrongly, stands in none of its logs. */
@QuarkusTest
class LogsResourceTest {
    /** Of one run alone, since the database's log keeps those before it. */
    private static final String MARK = UUID.randomUUID().toString().substring(0, 8);

    private static final String NAME = "Wilhelmina-" + MARK;
    private static final String PHONE = "0491-570-" + MARK;
    private static final String WORDS = "a wombat by the letterbox of " + MARK;
    private static final String CALL = """
            {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
             "caller":{"name":"%s","phone":"%s"},"words":"%s",
             "place":{"decimalDegrees":{"latitude":"-30.5","longitude":"150.02"}}}
            """.formatted(NAME, PHONE, WORDS);

    private World world;

    @BeforeEach
    void makeWorld() {
        world = World.shared();
    }

    @Test
    void nothingThatIsToldOfPeopleIsLogged() throws IOException {
        List<String> ids = new ArrayList<>();
        Set<Integer> statuses = new TreeSet<>();
        List<String> lines;
        try (ConsoleLog log = ConsoleLog.listen()) {
            for (Answer response : tell()) {
                ids.add(response.header(RequestId.HEADER));
                statuses.add(response.statusCode());
            }
            var browser = new FormSignIn(URI.create(Request.server() + "/"));
            assertThat(browser.signIn(NAME, WORDS).statusCode()).isEqualTo(401);
            assertThat(browser.get("/invitation/" + MARK + "secret").statusCode())
                    .isEqualTo(404);
            assertThat(browser.get("/sign-in?next=/" + MARK).statusCode()).isEqualTo(200);
            // A line is written when its answer is sent: its reader may be faster.
            Patience.until(
                    "every request has its line",
                    () -> ids.stream()
                            .allMatch(id -> log.lines().stream().anyMatch(line -> line.contains(" " + id + " "))));
            lines = List.copyOf(log.lines());
        }
        assertThat(statuses).contains(200, 201, 400, 401, 403, 404, 409);
        assertThat(lines).anyMatch(line -> line.contains("GET /{purpose: invitation|reset}/{secret} 404"));
        assertThat(lines).anyMatch(line -> line.matches("(?s).* GET /api/calls/\\{id} 400 \\d+ ms [0-9a-f-]{36}\\s*"));
        assertThat(lines).filteredOn(line -> line.contains(MARK)).isEmpty();
        assertThat(inTheDatabasesLog()).isEmpty();
    }

    private List<Answer> tell() {
        List<Answer> answers = new ArrayList<>();
        answers.add(Api.as(DISPATCHER).body(CALL).post("/api/calls"));
        String id = answers.get(0).jsonPath().getString("callId");
        answers.add(Api.as(DISPATCHER).get("/api/calls/" + id));
        answers.add(Api.as(DISPATCHER)
                .contentType("application/merge-patch+json")
                .header("If-Match", Api.tag(DISPATCHER, "/api/calls/" + id))
                .body("{\"reason\":\"" + WORDS + "\",\"words\":\"not " + WORDS + "\"}")
                .patch("/api/calls/" + id));
        for (String wrong : wrongCalls()) {
            answers.add(Api.as(DISPATCHER).body(wrong).post("/api/calls"));
        }
        answers.add(Api.as(ADMIN).body(CALL).post("/api/calls"));
        for (String path : List.of(
                "/api/calls/", "/api/cases?cursor=", "/api/cases?asOf=", "/api/cases?limit=", "/", "/" + MARK + "/")) {
            answers.add(Api.as(DISPATCHER).get(path + NAME));
        }
        for (int i = 0; i < 2; i++) {
            answers.add(Api.as(COORDINATOR).body(member(NAME)).post("/api/members"));
        }
        answers.add(Api.as(COORDINATOR).body(member(NAME + " ".repeat(5000))).post("/api/members"));
        answers.add(Api.as(COORDINATOR).body(member(NAME + "\\u0000")).post("/api/members"));
        answers.add(Api.as(COORDINATOR)
                .body(member(NAME + "2").replace("150.01", "15000"))
                .post("/api/members"));
        answers.add(Api.as(COORDINATOR)
                .body(member(NAME + "3")
                        .replace(world.network, UUID.randomUUID().toString()))
                .post("/api/members"));
        answers.add(Request.given().basic(NAME, PHONE).get("/api/calls"));
        answers.add(Request.given().header("Authorization", "Bearer " + MARK).get("/api/calls"));
        answers.add(Request.given().header("Authorization", NAME).get("/api/calls"));
        answers.add(Api.as(DISPATCHER).header("If-Match", MARK).body("{}").patch("/api/calls/" + id));
        answers.add(Api.as(DISPATCHER)
                .header("Idempotency-Key", MARK + "\u00e9")
                .body(CALL)
                .post("/api/calls"));
        return answers;
    }

    private static List<String> wrongCalls() {
        return List.of(
                CALL.substring(0, CALL.length() - 4),
                CALL.replace("\"cause\":\"collisionWithVehicle\"", "\"cause\":\"" + WORDS + "\""),
                CALL.replace("\"anyoneHurt\":\"no\"", "\"anyoneHurt\":\"" + NAME + "\""),
                CALL.replace("\"caller\":{", "\"caller\":{\"" + NAME + "\":\"" + PHONE + "\","),
                CALL.replace("\"caller\":{\"name\":", "\"caller\":{\"name\":{\"first\":")
                        .replace("},\"words\"", "}},\"words\""),
                CALL.replace("\"-30.5\"", "\"" + WORDS + "\""),
                CALL.replace("\"people\"", "\"receivedAt\":\"" + PHONE + "\",\"people\""),
                CALL.replace("\"people\"", "\"incidentId\":\"" + NAME + "\",\"people\""),
                CALL.replace("\"people\"", "\"incidentId\":\"" + UUID.randomUUID() + "\",\"people\""),
                CALL.replace(PHONE, PHONE.repeat(50)),
                CALL.replace(WORDS, WORDS + "\\u0000"),
                CALL.replace(WORDS, WORDS + "\\ud800"),
                "\"" + WORDS + "\"",
                WORDS);
    }

    private String member(String name) {
        return """
                {"organisationId":"%s","callSign":"%s","name":"%s","homeLatitude":-30.49,"homeLongitude":150.01,
                 "attends":true,"cares":false}
                """.formatted(world.network, NAME, name);
    }

    /** Its own one alone: what a network's own PostgreSQL logs is for that network to say. */
    private static List<String> inTheDatabasesLog() throws IOException {
        Path folder = TestDatabase.home().resolve("database-log");
        if (System.getenv("CULVERT_TEST_DATABASE_URL") != null) {
            return List.of();
        }
        List<String> found = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1)
                        .lines()
                        .filter(line -> line.contains(MARK))
                        .forEach(found::add);
            }
        }
        return found;
    }
}
