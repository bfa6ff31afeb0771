package org.culvert.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;
import org.culvert.platform.PackagedServer;
import org.culvert.support.DebianPostgres;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The packaged server on a PostgreSQL that is not its own: Debian's package postgresql-15. */
class ConfiguredDatabaseIT {
    private static DebianPostgres debian;

    @BeforeAll
    static void startDebiansPostgres() throws IOException, InterruptedException, SQLException {
        debian = DebianPostgres.start();
    }

    @AfterAll
    static void stopDebiansPostgres() throws IOException, InterruptedException {
        debian.close();
    }

    @Test
    void itIsUsedAndNoneIsBrought() throws IOException, SQLException {
        Path work = Files.createTempDirectory("culvert-work");
        Path home = work.resolve("home");
        Map<String, String> environment = new HashMap<>(debian.environment());
        environment.put("CULVERT_HOME", home.toString());
        try (PackagedServer server = PackagedServer.start(work, environment);
                Connection postgres = Jdbc.connect(debian.url("rescue"), "postgres", "")) {
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
            assertThat(Jdbc.findValue(postgres, "SELECT string_agg(DISTINCT left(hash, 7), ',') FROM passwords"))
                    .as("how passwords are hashed: tests of the running server do it with less work")
                    .isEqualTo("$2a$11$");
        } finally {
            PostgresBinaries.deleteTree(work);
        }
        try (Connection postgres = Jdbc.connect(debian.url("postgres"), "postgres", "")) {
            assertThat(postgres.isValid(0)).as("it outlives the server").isTrue();
        }
    }

    @Test
    void aRefusedPasswordIsSaidAtOnceAndEndsTheStart() throws IOException {
        Path work = Files.createTempDirectory("culvert-work");
        Map<String, String> environment = Map.of(
                "CULVERT_DATABASE_URL", debian.url("rescue"),
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
}
