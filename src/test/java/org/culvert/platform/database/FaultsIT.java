package org.culvert.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import org.culvert.platform.PackagedServer;
import org.culvert.platform.Patience;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Kills the server, its PostgreSQL, or both, in turn, while calls are taken and every one of them is sent again with its key
 * until it is acknowledged. As many rounds as {@code faults.rounds} says, or three.
 */
class FaultsIT {
    private static final int ROUNDS = Integer.getInteger("faults.rounds", 3);
    private static final int WRITERS = 4;
    private static final int WRITES_BETWEEN_KILLS = 40;
    private static final Duration BEFORE_TRYING_AGAIN = Duration.ofMillis(50);
    private static final String TOKEN = "cvt_of-this-test-only";

    @TempDir
    Path folder;

    private final HttpClient http = HttpClient.newHttpClient();
    private final Map<String, String> callIdByWords = new ConcurrentHashMap<>();
    private final AtomicLong sentAgain = new AtomicLong();
    private volatile boolean enough;
    private volatile PackagedServer server;

    @AfterEach
    void stop() throws IOException, InterruptedException {
        enough = true;
        server.close();
        Path home = home();
        if (Postmaster.anyRunsFrom(home.toRealPath())) {
            new Cluster(new HomeFolder(home), PostgresBinaries.unpackInto(home)).stop();
        }
    }

    @Test
    void whatWasAcknowledgedIsThereOnceWhateverIsKilled() throws Exception {
        UnpackedPostgres.into(home());
        server = start();
        makeADispatcher();
        Map<String, Integer> kills = new TreeMap<>();
        ExecutorService writers = Executors.newFixedThreadPool(WRITERS);
        List<Future<?>> writing = new ArrayList<>();
        try {
            for (int i = 0; i < WRITERS; i++) {
                int writer = i;
                writing.add(writers.submit(() -> writeUntilEnough(writer)));
            }
            for (int round = 0; round < ROUNDS; round++) {
                awaitWrites(callIdByWords.size() + WRITES_BETWEEN_KILLS, writing);
                kills.merge(killOne(round), 1, Integer::sum);
            }
            awaitWrites(callIdByWords.size() + WRITES_BETWEEN_KILLS, writing);
            enough = true;
            for (Future<?> each : writing) {
                each.get();
            }
        } finally {
            enough = true;
            writers.shutdownNow();
        }
        compare(kills);
    }

    private String killOne(int round) throws IOException {
        switch (round % 3) {
            case 0 -> {
                server.kill();
                server = start();
                return "server";
            }
            case 1 -> {
                long killed = postgresPid();
                ProcessHandle.of(killed).orElseThrow().destroyForcibly();
                Patience.until("PostgreSQL is started again", () -> {
                    long now = postgresPid();
                    return now != 0 && now != killed;
                });
                return "PostgreSQL";
            }
            default -> {
                ProcessHandle postgres = ProcessHandle.of(postgresPid()).orElseThrow();
                server.kill();
                postgres.destroyForcibly();
                server = start();
                return "both";
            }
        }
    }

    private PackagedServer start() {
        return PackagedServer.start(folder, Map.of("CULVERT_HOME", home().toString()));
    }

    private void awaitWrites(int writes, List<Future<?>> writing) {
        Patience.until("writes go on", () -> {
            for (Future<?> each : writing) {
                assertThat(each.isDone() ? whyItEnded(each) : "")
                        .as("why a writer gave up")
                        .isEmpty();
            }
            return callIdByWords.size() >= writes;
        });
    }

    private String whyItEnded(Future<?> writer) {
        try {
            return "it ended by itself: " + writer.get();
        } catch (ExecutionException e) {
            String log = server.output();
            return e.getCause() + "\n" + log.substring(Math.max(0, log.indexOf(" ERROR ") - 200));
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private void writeUntilEnough(int writer) {
        for (int i = 0; !enough; i++) {
            String words = "write " + writer + "-" + i;
            callIdByWords.put(
                    words, writeUntilAcknowledged(words, UUID.randomUUID().toString()));
        }
    }

    private String writeUntilAcknowledged(String words, String key) {
        long deadline = System.nanoTime() + Duration.ofMinutes(3).toNanos();
        String last = "nothing";
        while (System.nanoTime() < deadline) {
            try {
                HttpResponse<String> answer = http.send(request(words, key), HttpResponse.BodyHandlers.ofString());
                if (answer.statusCode() == 201) {
                    return new ObjectMapper()
                            .readTree(answer.body())
                            .path("callId")
                            .asText();
                }
                last = answer.statusCode() + " " + answer.body();
                // Away for a moment, or the first sending of this key is still being worked on.
                boolean mayPass = answer.statusCode() == 503
                        || answer.statusCode() == 409 && answer.body().contains("still-running");
                assertThat(mayPass).as(last).isTrue();
            } catch (IOException noAnswer) {
                last = noAnswer.toString();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            sentAgain.incrementAndGet();
            LockSupport.parkNanos(BEFORE_TRYING_AGAIN.toNanos());
        }
        throw new AssertionError("Never acknowledged: " + words + ", last " + last);
    }

    private HttpRequest request(String words, String key) {
        String call = """
                {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                 "caller":{"name":"Some Caller"},"words":"%s",
                 "animals":[{"individualCount":1,"vitality":"alive"}]}
                """.formatted(words);
        return HttpRequest.newBuilder(server.at("/api/calls"))
                .timeout(Duration.ofSeconds(30))
                .header("Authorization", "Bearer " + TOKEN)
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", key)
                .POST(HttpRequest.BodyPublishers.ofString(call))
                .build();
    }

    /** Every write was acknowledged in the end; so what is kept must be these and no others, each whole. */
    private void compare(Map<String, Integer> kills) throws SQLException, IOException {
        Map<String, Integer> timesKept = new TreeMap<>();
        try (Connection owner = connectAsOwner()) {
            try (Statement statement = owner.createStatement();
                    ResultSet rows =
                            statement.executeQuery("SELECT said, count(*) FROM personal.words GROUP BY said")) {
                while (rows.next()) {
                    timesKept.put(rows.getString(1), rows.getInt(2));
                }
            }
            long lost = callIdByWords.keySet().stream()
                    .filter(words -> !timesKept.containsKey(words))
                    .count();
            long doubled =
                    timesKept.values().stream().filter(times -> times > 1).count();
            String figures = "%d rounds %s, %d writes, %d sent again, %d lost, %d doubled"
                    .formatted(ROUNDS, kills, callIdByWords.size(), sentAgain.get(), lost, doubled);
            Path folderOfFigures = Files.createDirectories(Path.of("target", "figures"));
            Files.writeString(folderOfFigures.resolve("faults-" + ROUNDS + ".txt"), figures + "\n");

            assertThat(lost).as(figures).isZero();
            assertThat(doubled).as(figures).isZero();
            assertThat(timesKept.keySet()).as(figures).isEqualTo(new TreeSet<>(callIdByWords.keySet()));
            String writes = Integer.toString(callIdByWords.size());
            for (String table : new String[] {
                "calls",
                "incidents",
                "reported_animals",
                "personal.people",
                "personal.words",
                "personal.idempotency_keys"
            }) {
                assertThat(Jdbc.findValue(owner, "SELECT count(*) FROM " + table))
                        .as(table)
                        .isEqualTo(writes);
            }
            try (Statement statement = owner.createStatement();
                    ResultSet rows = statement.executeQuery(
                            "SELECT w.said, c.id::text FROM calls c JOIN personal.words w ON w.id = c.words_id")) {
                Map<String, String> kept = new TreeMap<>();
                while (rows.next()) {
                    kept.put(rows.getString(1), rows.getString(2));
                }
                assertThat(kept).as("the call that was answered with").isEqualTo(new TreeMap<>(callIdByWords));
            }
        }
    }

    private void makeADispatcher() throws SQLException {
        try (Connection owner = connectAsOwner()) {
            Jdbc.execute(owner, """
                    INSERT INTO accounts (id, username, roles, created_at)
                    VALUES ('01920000-0000-7000-8000-00000000fa17', 'desk', 'dispatcher', now());
                    INSERT INTO api_tokens (id, secret, account_id, name, scopes, created_at)
                    VALUES (gen_random_uuid(), sha256('%s'), '01920000-0000-7000-8000-00000000fa17', 'faults',
                            '*:read *:write', now())
                    """.formatted(TOKEN));
        }
    }

    private Connection connectAsOwner() throws SQLException {
        DatabaseAccess access = OwnPostgres.findAccessOfRunning(home());
        assertThat(access).as("a running server").isNotNull();
        return access.connectAsOwner("culvert test");
    }

    private Path home() {
        return folder.resolve("home");
    }

    private long postgresPid() {
        try {
            Path lock = home().resolve("database/postmaster.pid");
            List<String> lines = Files.exists(lock) ? Files.readAllLines(lock) : List.of();
            return lines.isEmpty() ? 0 : Long.parseLong(lines.get(0).strip());
        } catch (IOException goneMeanwhile) {
            return 0;
        }
    }
}
