package org.culvert.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.PackagedServer;
import org.culvert.platform.Patience;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/** The life of one packaged server and its PostgreSQL, with what kills them; in order, since a start takes seconds. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ServerLifeIT {
    private static final String REGION = """
            {"name": "Three Rivers", "timeZone": "Australia/Brisbane", "countryCode": "AU",
             "south": -28.0, "west": 152.0, "north": -26.0, "east": 154.0}""";

    @TempDir
    static Path folder;

    private static Path home;
    private static PackagedServer server;

    @BeforeAll
    static void startOnAnEmptyHome() {
        home = UnpackedPostgres.into(folder.resolve("home"));
        server = start();
    }

    private static PackagedServer start() {
        return PackagedServer.start(folder, Map.of("CULVERT_HOME", home.toString()));
    }

    @AfterAll
    static void stopWhatIsLeft() throws IOException, InterruptedException {
        server.close();
        if (Postmaster.anyRunsFrom(home.toRealPath())) {
            new Cluster(new HomeFolder(home), PostgresBinaries.unpackInto(home)).stop();
        }
    }

    @Test
    @Order(1)
    void itsDatabaseIsDurableAndEveryConnectionOfItsIsThatOfTheApplication() throws IOException, SQLException {
        try (Connection postgres = connectAs(Roles.SUPERUSER)) {
            for (String setting : new String[] {"fsync", "full_page_writes", "synchronous_commit"}) {
                assertThat(Jdbc.findValue(postgres, "SHOW " + setting))
                        .as(setting)
                        .isEqualTo("on");
            }
            assertThat(Jdbc.findValue(
                            postgres,
                            "SELECT string_agg(DISTINCT usename, ',') FROM pg_stat_activity"
                                    + " WHERE datname = 'culvert' AND pid <> pg_backend_pid()"))
                    .isEqualTo("culvert_application");
            assertThat(Jdbc.findValue(
                            postgres,
                            "SELECT string_agg(DISTINCT tableowner, ',') FROM pg_tables"
                                    + " WHERE schemaname IN ('public', 'personal')"))
                    .isEqualTo("culvert_owner");
        }
    }

    @Test
    @Order(2)
    void whatIsEnteredIsAnswered() throws IOException {
        HttpResponse<String> settled = server.sendAsAdmin(HttpRequest.newBuilder(server.at("/api/region"))
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", UUID.randomUUID().toString())
                .PUT(HttpRequest.BodyPublishers.ofString(REGION)));
        assertThat(settled.statusCode()).as(settled.body()).isBetween(200, 201);
        assertThat(regionName()).isEqualTo("Three Rivers");
    }

    @Test
    @Order(3)
    void aSecondServerOnTheSameHomeIsRefusedAndHarmsNothing() throws IOException {
        long postgres = postgresPid();
        try (PackagedServer second = PackagedServer.launch(folder, Map.of("CULVERT_HOME", home.toString()))) {
            assertThat(second.awaitEnd()).isEqualTo(1);
            assertThat(second.output()).contains("Another Culvert server").contains("is running in " + home);
        }
        assertThat(postgresPid()).isEqualTo(postgres);
        assertThat(regionName()).isEqualTo("Three Rivers");
    }

    @Test
    @Order(4)
    void killedPostgresIsStartedAgainOnItsPortAndTheServerSays503Meanwhile() throws IOException {
        String port = Files.readString(home.resolve("port"));
        long killed = postgresPid();
        Path program = program();
        Path aside = program.resolveSibling("postgres.aside");
        // Without its program it cannot come back: the time without a database is as long as the test wants.
        Files.move(program, aside);
        kill(killed);
        Patience.until("the server sees that its database is gone", () -> server.status("/api/region") == 503);
        HttpResponse<String> away = server.get("/api/region");
        assertThat(away.statusCode()).isEqualTo(503);
        assertThat(away.headers().firstValue("Retry-After"))
                .hasValueSatisfying(
                        seconds -> assertThat(Integer.parseInt(seconds)).isPositive());
        assertThat(away.headers().firstValue("Content-Type")).hasValue("application/problem+json");
        HttpResponse<String> signingIn = server.sendAsAdmin(
                HttpRequest.newBuilder(server.at("/api/region")).GET());
        assertThat(signingIn.statusCode()).as("while nobody can be recognised").isEqualTo(503);
        assertThat(signingIn.headers().firstValue("Retry-After")).isPresent();
        assertThat(server.status("/q/health/ready")).isEqualTo(503);
        assertThat(server.status("/q/health/live")).isEqualTo(200);

        Files.move(aside, program);
        Patience.until("the server answers again", () -> server.status("/api/region") == 200);
        assertThat(server.isAlive()).isTrue();
        assertThat(postgresPid()).isNotEqualTo(killed);
        assertThat(Files.readString(home.resolve("port"))).isEqualTo(port);
        assertThat(regionName()).isEqualTo("Three Rivers");
        server.awaitReady();
        for (int i = 0; i < 50; i++) {
            assertThat(server.status("/api/region"))
                    .as("no dead connection is left")
                    .isEqualTo(200);
        }
    }

    @Test
    @Order(5)
    void killedServerLeavesItsPostgresAndTheNextOneAdoptsIt() throws IOException {
        long postgres = postgresPid();
        server.kill();
        assertThat(ProcessHandle.of(postgres)).isPresent();
        server = start();
        assertThat(postgresPid()).isEqualTo(postgres);
        assertThat(regionName()).isEqualTo("Three Rivers");
    }

    @Test
    @Order(6)
    void bothKilledComeBackWithWhatWasEntered() throws IOException {
        long postgres = postgresPid();
        server.kill();
        kill(postgres);
        server = start();
        assertThat(postgresPid()).isNotEqualTo(postgres);
        assertThat(regionName()).isEqualTo("Three Rivers");
    }

    @Test
    @Order(7)
    void stoppedInOrderItTakesItsPostgresWithIt() throws IOException {
        long postgres = postgresPid();
        server.close();
        Patience.until("PostgreSQL is gone", () -> !Postmaster.anyRunsFrom(home));
        assertThat(home.resolve("database/postmaster.pid")).doesNotExist();
        String log = Files.readString(log());
        assertThat(log.substring(log.lastIndexOf("received fast shutdown request")))
                .as("stopped process %d in order", postgres)
                .contains("database system is shut down");
    }

    private static String regionName() throws IOException {
        JsonNode region = new ObjectMapper().readTree(server.get("/api/region").body());
        return region.path("name").asText();
    }

    private static Path log() throws IOException {
        try (var logs = Files.list(home.resolve("database-log"))) {
            return logs.filter(file -> file.getFileName().toString().startsWith("postgresql-"))
                    .max((a, b) ->
                            Long.compare(a.toFile().lastModified(), b.toFile().lastModified()))
                    .orElseThrow();
        }
    }

    private static Path program() throws IOException {
        try (var folders = Files.list(home)) {
            return folders.filter(path -> path.getFileName().toString().startsWith("postgresql-"))
                    .findFirst()
                    .orElseThrow()
                    .resolve("bin/postgres");
        }
    }

    private static long postgresPid() throws IOException {
        return Long.parseLong(
                Files.readAllLines(home.resolve("database/postmaster.pid")).get(0));
    }

    private static void kill(long pid) {
        ProcessHandle.of(pid).orElseThrow().destroyForcibly();
    }

    private static Connection connectAs(String role) throws IOException, SQLException {
        String port = Files.readString(home.resolve("port")).strip();
        return Jdbc.connect(
                "jdbc:postgresql://127.0.0.1:" + port + "/culvert",
                role,
                new HomeFolder(home).passwords().of(role));
    }
}
