package org.culvert.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.culvert.platform.PackagedServer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The packaged server on a PostgreSQL that is not its own: Debian's package postgresql-15. */
class ConfiguredDatabaseIT {
    private static final Path BIN = Path.of("/usr/lib/postgresql/15/bin");
    private static final boolean ROOT = "root".equals(System.getProperty("user.name"));

    private static Path folder;
    private static int port;

    @BeforeAll
    static void startDebiansPostgres() throws IOException, InterruptedException, SQLException {
        assertThat(BIN.resolve("initdb")).as("apt-get install postgresql-15").isExecutable();
        folder = Files.createTempDirectory("culvert-configured");
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = socket.getLocalPort();
        }
        if (ROOT) {
            run("chown", "postgres", folder.toString());
        }
        asPostgres("initdb", "-D", data(), "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8");
        // One who is asked for a password, to see that a wrong one is refused; trust for the rest.
        Files.writeString(Path.of(data(), "pg_hba.conf"), """
                host all asked 127.0.0.1/32 scram-sha-256
                host all all   127.0.0.1/32 trust
                """);
        String options = "-p " + port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories=";
        asPostgres(
                "pg_ctl",
                "start",
                "-w",
                "-s",
                "-D",
                data(),
                "-l",
                folder.resolve("log").toString(),
                "-o",
                options);
        try (Connection postgres = Jdbc.connect(url("postgres"), "postgres", "")) {
            Jdbc.execute(postgres, "CREATE ROLE tables_owner LOGIN");
            Jdbc.execute(postgres, "CREATE ROLE \"rescue-server\" LOGIN");
            Jdbc.execute(postgres, "CREATE ROLE asked LOGIN PASSWORD 'right'");
            Jdbc.execute(postgres, "CREATE DATABASE rescue OWNER tables_owner");
        }
    }

    @AfterAll
    static void stopDebiansPostgres() throws IOException, InterruptedException {
        asPostgres("pg_ctl", "stop", "-w", "-s", "-m", "immediate", "-D", data());
        PostgresBinaries.deleteTree(folder);
    }

    @Test
    void itIsUsedAndNoneIsBrought() throws IOException, SQLException {
        Path work = Files.createTempDirectory("culvert-work");
        Path home = work.resolve("home");
        Map<String, String> environment = Map.of(
                "CULVERT_HOME", home.toString(),
                "CULVERT_DATABASE_URL", url("rescue"),
                "CULVERT_DATABASE_USER", "rescue-server",
                "CULVERT_DATABASE_PASSWORD", "unasked",
                "CULVERT_MIGRATOR_USER", "tables_owner",
                "CULVERT_MIGRATOR_PASSWORD", "unasked");
        try (PackagedServer server = PackagedServer.start(work, environment);
                Connection postgres = Jdbc.connect(url("rescue"), "postgres", "")) {
            assertThat(server.output()).contains("PostgreSQL 15");
            assertThat(home).doesNotExist();
            assertThat(Jdbc.findValue(
                            postgres,
                            "SELECT string_agg(DISTINCT usename, ',') FROM pg_stat_activity"
                                    + " WHERE datname = 'rescue' AND pid <> pg_backend_pid()"))
                    .isEqualTo("rescue-server");
            assertThat(Jdbc.findValue(
                            postgres,
                            "SELECT string_agg(DISTINCT tableowner, ',') FROM pg_tables WHERE schemaname = 'public'"))
                    .isEqualTo("tables_owner");
            assertThat(Jdbc.findValue(
                            postgres,
                            "SELECT bool_or(has_table_privilege('rescue-server', format('%I.%I', schemaname,"
                                    + " tablename), 'TRUNCATE')) FROM pg_tables WHERE schemaname = 'public'"))
                    .isEqualTo("f");
        } finally {
            PostgresBinaries.deleteTree(work);
        }
        try (Connection postgres = Jdbc.connect(url("postgres"), "postgres", "")) {
            assertThat(postgres.isValid(0)).as("it outlives the server").isTrue();
        }
    }

    @Test
    void aRefusedPasswordIsSaidAtOnceAndEndsTheStart() throws IOException {
        Path work = Files.createTempDirectory("culvert-work");
        Map<String, String> environment = Map.of(
                "CULVERT_DATABASE_URL", url("rescue"),
                "CULVERT_DATABASE_USER", "asked",
                "CULVERT_DATABASE_PASSWORD", "wrong");
        try (PackagedServer server = PackagedServer.launch(work, environment)) {
            assertThat(server.awaitEnd()).isEqualTo(1);
            assertThat(server.output())
                    .contains("Culvert cannot start. The configured database")
                    .contains("password authentication failed")
                    .doesNotContain("wrong");
        } finally {
            PostgresBinaries.deleteTree(work);
        }
    }

    private static String data() {
        return folder.resolve("data").toString();
    }

    private static String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    private static void asPostgres(String program, String... arguments) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>();
        if (ROOT) {
            line.addAll(List.of("runuser", "-u", "postgres", "--"));
        }
        line.add(BIN.resolve(program).toString());
        line.addAll(List.of(arguments));
        run(line.toArray(String[]::new));
    }

    private static void run(String... line) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(line)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        assertThat(process.waitFor()).as(String.join(" ", line)).isZero();
    }
}
