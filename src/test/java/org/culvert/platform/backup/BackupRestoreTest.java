package org.culvert.platform.backup;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.culvert.platform.database.ServerDatabase;
import org.culvert.support.DebianPostgres;
import org.culvert.support.World;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A backup of the running server, with all that tests before this entered, restored into other databases and compared with it
 * table by table.
 */
@QuarkusTest
class BackupRestoreTest {
    @TempDir
    static Path folder;

    private static final List<String> ENDED = List.of("public.sessions", "public.one_time_links");

    @BeforeEach
    void makeAWorld() {
        World.shared();
        for (int i = 0; i < 5; i++) {
            BackupWorld.call("before the backup " + i);
        }
    }

    @Test
    void aBackupHoldsEveryTableAndRestoresFrom17To15AndBackTo17() throws Exception {
        openSession();
        Path of17 = folder.resolve("of-17.zip");
        Map<String, String> source = backUpWhileNothingChanges(of17);
        assertThat(Files.getPosixFilePermissions(of17)).isEqualTo(PosixFilePermissions.fromString("rw-------"));

        try (DebianPostgres debian = DebianPostgres.start()) {
            BackupWorld.Ended down = BackupWorld.run(debian.environment(), "restore", of17);
            assertThat(down.code()).as(down.said()).isZero();
            assertThat(contents(debian.environment())).isEqualTo(source);

            Path of15 = folder.resolve("of-15.zip");
            assertThat(BackupWorld.run(debian.environment(), "backup", of15).code())
                    .isZero();
            Map<String, String> home = BackupWorld.home(folder.resolve("upgraded"));
            BackupWorld.Ended up = BackupWorld.run(home, "restore", of15);
            assertThat(up.code()).as(up.said()).isZero();
            assertThat(contents(home)).isEqualTo(source);
            assertThat(BackupWorld.column(home, "SELECT id::text FROM sessions WHERE ended_at IS NULL"))
                    .as("who was signed in then signs in again")
                    .isEmpty();
            assertThat(BackupWorld.column(
                            home, "SELECT id::text FROM one_time_links WHERE used_at IS NULL AND expires_at > now()"))
                    .isEmpty();

            BackupWorld.Ended again = BackupWorld.run(home, "restore", of15);
            assertThat(again.code()).isEqualTo(1);
            assertThat(again.said()).contains("holds records already").contains("Make a new database");
            assertThat(contents(home)).isEqualTo(source);
        }
        BackupWorld.note(source.size() + " tables and sequences alike after 17 to 15 to 17: " + source);
    }

    /** Events that wait are tried again in the background meanwhile: a backup counts that was taken between two such times. */
    private static Map<String, String> backUpWhileNothingChanges(Path file) throws Exception {
        for (int tries = 0; tries < 10; tries++) {
            Map<String, String> before = contents(BackupWorld.running());
            Files.deleteIfExists(file);
            BackupWorld.Ended made = BackupWorld.run(BackupWorld.running(), "backup", file);
            assertThat(made.code()).as(made.said()).isZero();
            if (contents(BackupWorld.running()).equals(before)) {
                return before;
            }
        }
        throw new AssertionError("the database never stood still for as long as a backup takes");
    }

    /** Someone is signed in, and holds a link, at the time of the backup. */
    private static void openSession() throws SQLException {
        try (ServerDatabase database = ServerDatabase.openToRead(BackupWorld.running());
                Connection connection = database.access().connectAsOwner("culvert test");
                Statement statement = connection.createStatement()) {
            statement.execute("""
                    INSERT INTO sessions (id, secret, account_id, form_secret, created_at, last_seen_at, expires_at)
                    SELECT gen_random_uuid(), decode(md5(random()::text), 'hex'), id, 'x', now(), now(), now() + interval '1 h'
                    FROM accounts WHERE username = 'test-admin';
                    INSERT INTO one_time_links (id, secret, account_id, purpose, created_at, created_by, expires_at)
                    SELECT gen_random_uuid(), decode(md5(random()::text), 'hex'), id, 'reset', now(), id, now() + interval '1 h'
                    FROM accounts WHERE username = 'test-admin'
                    """);
        }
    }

    /** Rows of every table and a sum over them that no order changes, made by the database and not by what is tested. */
    private static Map<String, String> contents(Map<String, String> environment) throws SQLException {
        Map<String, String> contents = new TreeMap<>();
        try (ServerDatabase database = ServerDatabase.openToRead(environment);
                Connection connection = database.access().connectAsOwner("culvert test");
                Statement statement = connection.createStatement()) {
            statement.execute("SET timezone = 'UTC'");
            List<String> tables = new ArrayList<>();
            try (ResultSet rows = statement.executeQuery("SELECT format('%I.%I', schemaname, tablename) FROM pg_tables"
                    + " WHERE schemaname IN ('public', 'personal') AND tablename <> 'flyway_schema_history'")) {
                while (rows.next()) {
                    tables.add(rows.getString(1));
                }
            }
            for (String table : tables) {
                // Of sign-ins only the number: those that were open are ended.
                String row = ENDED.contains(table) ? "''" : "t::text";
                try (ResultSet rows = statement.executeQuery("SELECT count(*) || ' rows ' || coalesce(sum(('x' ||"
                        + " substr(md5(" + row + "), 1, 15))::bit(60)::bigint), 0) FROM " + table + " t")) {
                    rows.next();
                    contents.put(table, rows.getString(1));
                }
            }
            try (ResultSet rows = statement.executeQuery(
                    "SELECT sequencename, last_value FROM pg_sequences WHERE schemaname IN ('public', 'personal')")) {
                while (rows.next()) {
                    contents.put("sequence " + rows.getString(1), String.valueOf(rows.getString(2)));
                }
            }
        }
        return contents;
    }
}
