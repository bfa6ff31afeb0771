package org.culvert.platform.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/** One home folder through what befalls it between two starts; in order, since laying a data folder takes seconds. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class OwnPostgresTest {
    @TempDir
    static Path home;

    @Test
    @Order(1)
    void aNewHomeIsPrivateAndItsDatabaseDurable() throws IOException, SQLException {
        OwnPostgres own = OwnPostgres.start(home);
        try (Connection application = connect(own)) {
            for (String setting : List.of("fsync", "full_page_writes", "synchronous_commit", "data_checksums")) {
                assertThat(Jdbc.findValue(application, "SHOW " + setting))
                        .as(setting)
                        .isEqualTo("on");
            }
            assertThat(Jdbc.findValue(application, "SHOW password_encryption")).isEqualTo("scram-sha-256");
            assertThat(Jdbc.findValue(application, "SHOW listen_addresses")).isEqualTo("127.0.0.1");
            assertThat(Files.getPosixFilePermissions(home.resolve("passwords"))).hasSize(2);
            assertThat(Files.readAllLines(home.resolve("database/pg_hba.conf")))
                    .filteredOn(line -> !line.startsWith("#") && !line.isBlank())
                    .isNotEmpty()
                    .allMatch(line -> line.endsWith("scram-sha-256"));
        } finally {
            own.stop();
        }
    }

    @Test
    @Order(2)
    void theRolesAreApartAndNoneButTheFirstIsASuperuser() throws SQLException {
        OwnPostgres own = OwnPostgres.start(home);
        try (Connection application = connect(own)) {
            assertThat(Jdbc.findValue(application, """
                    SELECT string_agg(rolname || (CASE WHEN rolsuper THEN ' superuser' ELSE '' END)
                        || (CASE WHEN rolcanlogin THEN ' login' ELSE '' END)
                        || (CASE WHEN rolcreaterole OR rolcreatedb OR rolbypassrls THEN ' mighty' ELSE '' END), ', '
                        ORDER BY rolname)
                    FROM pg_roles WHERE rolname LIKE 'culvert%'
                    """))
                    .isEqualTo("culvert_application login, culvert_migrator login, culvert_owner");
            assertThat(Jdbc.findValue(application, "SELECT current_user")).isEqualTo("culvert_application");
            assertThat(Jdbc.findValue(
                            application,
                            "SELECT pg_get_userbyid(datdba) FROM pg_database WHERE datname = current_database()"))
                    .isEqualTo("culvert_owner");
            assertThat(Jdbc.findValue(application, "SELECT pg_has_role('culvert_migrator', 'culvert_owner', 'MEMBER')"))
                    .isEqualTo("t");
            assertThat(Jdbc.findValue(
                            application,
                            "SELECT pg_has_role('culvert_application', 'culvert_owner', 'MEMBER')"
                                    + " OR pg_has_role('culvert_application', 'culvert_migrator', 'MEMBER')"))
                    .isEqualTo("f");
            assertThatThrownBy(() -> Jdbc.execute(application, "CREATE TABLE mine (id int)"))
                    .isInstanceOf(SQLException.class)
                    .hasMessageContaining("permission denied");
        } finally {
            own.stop();
        }
    }

    @Test
    @Order(3)
    void theHomeIsForOneServer() {
        OwnPostgres own = OwnPostgres.start(home);
        try {
            assertThatThrownBy(() -> OwnPostgres.start(home))
                    .isInstanceOf(CannotStartException.class)
                    .hasMessageContaining("(process " + ProcessHandle.current().pid() + ")")
                    .hasMessageContaining("CULVERT_HOME");
        } finally {
            own.stop();
        }
    }

    @Test
    @Order(4)
    void thePortStaysUnlessAnotherProgramTookIt() throws IOException, SQLException {
        int port = Integer.parseInt(Files.readString(home.resolve("port")).strip());
        OwnPostgres own = OwnPostgres.start(home);
        try {
            assertThat(own.access().url()).contains(":" + port + "/");
        } finally {
            own.stop();
        }
        try (ServerSocket stranger = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
            OwnPostgres moved = OwnPostgres.start(home);
            try (Connection application = connect(moved)) {
                assertThat(Jdbc.findValue(application, "SHOW port"))
                        .isNotEqualTo(Integer.toString(stranger.getLocalPort()))
                        .isEqualTo(Files.readString(home.resolve("port")).strip());
            } finally {
                moved.stop();
            }
        }
    }

    /** As after a power cut, when the pid of the lock file soon belongs to another program. */
    @Test
    @Order(5)
    void aLockWhosePidBelongsToAnotherProgramNowDoesNotKeepItDown() throws IOException, SQLException {
        Process stranger = new ProcessBuilder("sleep", "600").start();
        try {
            Files.write(
                    home.resolve("database/postmaster.pid"),
                    List.of(
                            Long.toString(stranger.pid()),
                            home.resolve("database").toString(),
                            "1700000000",
                            Files.readString(home.resolve("port")).strip(),
                            "",
                            "127.0.0.1",
                            "  1234567         0",
                            "ready   "));
            OwnPostgres own = OwnPostgres.start(home);
            try (Connection application = connect(own)) {
                assertThat(application.isValid(0)).isTrue();
                assertThat(stranger.isAlive()).isTrue();
            } finally {
                own.stop();
            }
        } finally {
            stranger.destroyForcibly();
        }
    }

    @Test
    @Order(6)
    void itRefusesToRunWhereRecordsCouldBeLost() throws IOException {
        Path overruling = home.resolve("database/postgresql.auto.conf");
        String before = Files.readString(overruling);
        Files.writeString(overruling, "synchronous_commit = off\nfsync = off\n", StandardOpenOption.APPEND);
        assertThatThrownBy(() -> OwnPostgres.start(home))
                .isInstanceOf(CannotStartException.class)
                .hasMessageContaining("fsync, synchronous_commit must be on");
        Files.writeString(overruling, before);
        assertThat(home.resolve("database/postmaster.pid")).doesNotExist();
        OwnPostgres.start(home).stop();
    }

    @Test
    @Order(7)
    void dataOfAnotherMajorVersionAreNotTouched() throws IOException {
        Path version = home.resolve("database/PG_VERSION");
        String before = Files.readString(version);
        Files.writeString(version, "16\n");
        assertThatThrownBy(() -> OwnPostgres.start(home))
                .isInstanceOf(CannotStartException.class)
                .hasMessageContaining("of PostgreSQL 16 and this server brings 17");
        Files.writeString(version, before);
        OwnPostgres.start(home).stop();
    }

    private static Connection connect(OwnPostgres own) throws SQLException {
        DatabaseAccess access = own.access();
        return Jdbc.connect(access.url(), access.user(), access.password());
    }
}
