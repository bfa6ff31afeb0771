package org.culvert.platform.backup;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.culvert.platform.Role;
import org.culvert.platform.database.ServerDatabase;
import org.culvert.platform.personal.ListedErasures;
import org.culvert.platform.personal.PersonalWorld;
import org.culvert.support.Api;
import org.culvert.support.DebianPostgres;
import org.culvert.support.World;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backups of the running server, restored into other databases and compared with it table by table. */
@QuarkusTest
class BackupRestoreTest {
    @TempDir
    static Path folder;

    private static final List<String> ENDED = List.of("public.sessions", "public.one_time_links");

    @ConfigProperty(name = "culvert.erasures")
    String erasures;

    private record Ended(int code, String said) {}

    @BeforeEach
    void makeAWorld() {
        World.shared();
        for (int i = 0; i < 5; i++) {
            call("before the backup " + i);
        }
    }

    @Test
    void aBackupHoldsEveryTableAndRestoresFrom17To15AndBackTo17() throws Exception {
        openSession();
        Path of17 = folder.resolve("of-17.zip");
        Map<String, String> source = backUpWhileNothingChanges(of17);
        assertThat(Files.getPosixFilePermissions(of17)).isEqualTo(PosixFilePermissions.fromString("rw-------"));

        try (DebianPostgres debian = DebianPostgres.start()) {
            Ended down = run(debian.environment(), "restore", of17);
            assertThat(down.code()).as(down.said()).isZero();
            assertThat(contents(debian.environment())).isEqualTo(source);

            Path of15 = folder.resolve("of-15.zip");
            assertThat(run(debian.environment(), "backup", of15).code()).isZero();
            Map<String, String> home =
                    Map.of("CULVERT_HOME", folder.resolve("upgraded").toString());
            Ended up = run(home, "restore", of15);
            assertThat(up.code()).as(up.said()).isZero();
            assertThat(contents(home)).isEqualTo(source);
            assertThat(column(home, "SELECT id::text FROM sessions WHERE ended_at IS NULL"))
                    .as("who was signed in then signs in again")
                    .isEmpty();
            assertThat(column(home, "SELECT id::text FROM one_time_links WHERE used_at IS NULL AND expires_at > now()"))
                    .isEmpty();

            Ended again = run(home, "restore", of15);
            assertThat(again.code()).isEqualTo(1);
            assertThat(again.said()).contains("holds records already").contains("Make a new database");
            assertThat(contents(home)).isEqualTo(source);
        }
        note(source.size() + " tables and sequences alike after 17 to 15 to 17: " + source);
    }

    /** Events that wait are tried again in the background meanwhile: a backup counts that was taken between two such times. */
    private static Map<String, String> backUpWhileNothingChanges(Path file) throws Exception {
        for (int tries = 0; tries < 10; tries++) {
            Map<String, String> before = contents(running());
            Files.deleteIfExists(file);
            Ended made = run(running(), "backup", file);
            assertThat(made.code()).as(made.said()).isZero();
            if (contents(running()).equals(before)) {
                return before;
            }
        }
        throw new AssertionError("the database never stood still for as long as a backup takes");
    }

    @Test
    void aBackupTakenUnderWritesIsWholeAndHasWhatWasAcknowledgedBefore() throws Exception {
        AtomicBoolean enough = new AtomicBoolean();
        List<String> acknowledged = new ArrayList<>();
        ExecutorService writer = Executors.newSingleThreadExecutor();
        Path file = folder.resolve("under-writes.zip");
        int before;
        try {
            acknowledged.add(call("while it runs 0"));
            Future<?> writing = writer.submit(() -> {
                for (int i = 1; !enough.get(); i++) {
                    String id = call("while it runs " + i);
                    synchronized (acknowledged) {
                        acknowledged.add(id);
                    }
                }
            });
            while (size(acknowledged) < 3) {
                Thread.onSpinWait();
            }
            before = size(acknowledged);
            assertThat(run(running(), "backup", file).code()).isZero();
            enough.set(true);
            writing.get();
        } finally {
            writer.shutdownNow();
        }
        Map<String, String> home =
                Map.of("CULVERT_HOME", folder.resolve("under-writes").toString());
        // Foreign keys are checked again while it is restored: a torn transaction would fail here.
        Ended restored = run(home, "restore", file);
        assertThat(restored.code()).as(restored.said()).isZero();
        List<String> held = column(home, "SELECT id::text FROM calls");
        assertThat(held).containsAll(acknowledged.subList(0, before));
        note("writes acknowledged before the backup " + before + ", until its end " + acknowledged.size()
                + ", of these held "
                + acknowledged.stream().filter(held::contains).count());
    }

    @Test
    void whoWasErasedOrHiddenSinceTheBackupDoesNotComeBack() throws Exception {
        PersonalWorld.endDuties();
        String erased = PersonalWorld.callerOf(PersonalWorld.call(
                "2015-03-04T05:00:00Z", "{\"name\":\"Rosalind Backagain\"}", "Rosalind Backagain was here"));
        String hidden =
                PersonalWorld.callerOf(PersonalWorld.call("2026-03-04T05:00:00Z", "{\"name\":\"Hid Later\"}", "words"));
        Path file = folder.resolve("before-erasure.zip");
        assertThat(run(running(), "backup", file).code()).isZero();

        Api.change(Role.COORDINATOR, PersonalWorld.person(hidden), "/hiding", "{\"reason\":\"asked\"}")
                .statusCode(200);
        PersonalWorld.enterDuties("people");
        PersonalWorld.eraseWhoIsDue();
        PersonalWorld.endDuties();

        Map<String, String> without =
                Map.of("CULVERT_HOME", folder.resolve("without-list").toString());
        assertThat(run(without, "restore", file).said()).contains("There is no list of erasures");
        assertThat(standing(without))
                .as("without the list, so that there is something to honour")
                .isNotEmpty();

        Map<String, String> with =
                Map.of("CULVERT_HOME", folder.resolve("with-list").toString(), "CULVERT_ERASURES", erasures);
        Ended restored = run(with, "restore", file);
        assertThat(restored.code()).as(restored.said()).isZero();
        assertThat(restored.said()).contains("Honoured the list of erasures");
        assertThat(standing(with)).isEmpty();
        assertThat(column(with, "SELECT person_id::text FROM erasures")).contains(erased);
        assertThat(column(with, "SELECT id::text FROM personal.people WHERE hidden_at IS NOT NULL"))
                .contains(hidden);
        // A server that starts on the database does the same, and does it once.
        try (ServerDatabase database = ServerDatabase.openToFill(without);
                Connection owner = database.access().connectAsOwner("culvert test")) {
            assertThat(ListedErasures.honour(owner, Path.of(erasures)).erased()).isPositive();
            assertThat(ListedErasures.honour(owner, Path.of(erasures)).erased()).isZero();
            assertThat(PersonalWorld.whereItStands(owner, List.of("Backagain"))).isEmpty();
            database.keep();
        }
        note("erased people that a restored backup brought back: 0");
    }

    private static Map<String, Integer> standing(Map<String, String> environment) throws SQLException {
        try (ServerDatabase database = ServerDatabase.openToRead(environment);
                Connection connection = database.access().connectAsOwner("culvert test")) {
            return PersonalWorld.whereItStands(connection, List.of("Backagain"));
        }
    }

    @Test
    void aDamagedFileIsRefusedAndNothingIsLeft() throws IOException {
        Path file = folder.resolve("to-damage.zip");
        assertThat(run(running(), "backup", file).code()).isZero();
        byte[] whole = Files.readAllBytes(file);

        assertRefused("flipped", withABitFlippedThatMatters(whole), "is damaged");
        assertRefused("cut", Arrays.copyOf(whole, whole.length - 100), "is damaged");
        assertRefused("none", "not a backup".getBytes(StandardCharsets.UTF_8), "is damaged");

        assertThat(run(running(), "backup", file).said()).contains("is there already");
        assertThat(Files.readAllBytes(file)).isEqualTo(whole);
        try (var left = Files.list(folder)) {
            assertThat(left.filter(path -> path.getFileName().toString().contains(".part-")))
                    .isEmpty();
        }
    }

    /** Most bits of the file are content; a few are of zip's own headers that nobody reads, such as the time of an entry. */
    private static byte[] withABitFlippedThatMatters(byte[] whole) throws IOException {
        long seed = 20261125;
        Random random = new Random(seed);
        int tries = 60;
        List<byte[]> damaged = new ArrayList<>();
        for (int i = 0; i < tries; i++) {
            byte[] flipped = whole.clone();
            flipped[random.nextInt(flipped.length)] ^= (byte) (1 << random.nextInt(8));
            try {
                BackupFile.open(Files.write(folder.resolve("flip.zip"), flipped))
                        .close();
            } catch (BackupException refused) {
                damaged.add(flipped);
            }
        }
        note("bits flipped " + tries + ", refused " + damaged.size());
        assertThat(damaged).as("seed " + seed).hasSizeGreaterThan(tries / 2);
        return damaged.get(0);
    }

    private static void assertRefused(String name, byte[] bytes, String why) throws IOException {
        Path file = Files.write(folder.resolve(name + ".zip"), bytes);
        Path home = folder.resolve("home-" + name);
        Ended ended = run(Map.of("CULVERT_HOME", home.toString()), "restore", file);
        assertThat(ended.code()).as(name).isEqualTo(1);
        assertThat(ended.said()).contains(why);
        assertThat(home.resolve("database")).doesNotExist();
    }

    @Test
    void aFileOfAnotherBuildsSchemaIsRefused() throws IOException {
        Path file = folder.resolve("to-alter.zip");
        assertThat(run(running(), "backup", file).code()).isZero();
        assertThat(alteredAndRestored(file, "\"format\" : 1", "\"format\" : 2")).contains("is of format 2");
        assertThat(alteredAndRestored(file, "\"schemaVersion\" : \"", "\"schemaVersion\" : \"9"))
                .contains("this server knows up to");
    }

    private static String alteredAndRestored(Path file, String from, String to) throws IOException {
        Path altered = folder.resolve("altered-" + Math.abs(to.hashCode()) + ".zip");
        try (var in = new ZipFile(file.toFile());
                var out = new ZipOutputStream(Files.newOutputStream(altered))) {
            for (var entry : Collections.list(in.entries())) {
                byte[] bytes = in.getInputStream(entry).readAllBytes();
                if (entry.getName().equals(BackupManifest.ENTRY)) {
                    String json = new String(bytes, StandardCharsets.UTF_8);
                    assertThat(json).contains(from);
                    bytes = json.replace(from, to).getBytes(StandardCharsets.UTF_8);
                }
                out.putNextEntry(new ZipEntry(entry.getName()));
                out.write(bytes);
            }
        }
        Path home = folder.resolve("home-" + altered.getFileName());
        Ended ended = run(Map.of("CULVERT_HOME", home.toString()), "restore", altered);
        assertThat(ended.code()).as(ended.said()).isEqualTo(1);
        assertThat(home.resolve("database")).doesNotExist();
        return ended.said();
    }

    /** Someone is signed in, and holds a link, at the time of the backup. */
    private static void openSession() throws SQLException {
        try (ServerDatabase database = ServerDatabase.openToRead(running());
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

    private static int size(List<String> list) {
        synchronized (list) {
            return list.size();
        }
    }

    private static String call(String words) {
        return Api.make(Role.DISPATCHER, "/api/calls", """
                        {"people":{"anyoneHurt":"no","offTheRoad":"yes"},"cause":"collisionWithVehicle",
                         "caller":{"name":"Some Caller","phone":"000"},"words":"%s \\\\ \\t and a second\\nline",
                         "animals":[{"taxonGroup":"turtles","individualCount":1,"vitality":"alive"}]}
                        """.formatted(words)).getString("callId");
    }

    /** The database of the running server, as an operator would name it. */
    private static Map<String, String> running() {
        Map<String, String> environment = new HashMap<>();
        environment.put("CULVERT_DATABASE_URL", System.getProperty("quarkus.flyway.jdbc-url"));
        environment.put("CULVERT_DATABASE_USER", System.getProperty("quarkus.datasource.username"));
        environment.put("CULVERT_DATABASE_PASSWORD", System.getProperty("quarkus.datasource.password"));
        environment.put("CULVERT_MIGRATOR_USER", System.getProperty("quarkus.flyway.username"));
        environment.put("CULVERT_MIGRATOR_PASSWORD", System.getProperty("quarkus.flyway.password"));
        return environment;
    }

    private static Ended run(Map<String, String> environment, String word, Path file) {
        var said = new ByteArrayOutputStream();
        var stream = new PrintStream(said, true, StandardCharsets.UTF_8);
        int code = new BackupCommand(environment, stream, stream).run(word, file.toString());
        return new Ended(code, said.toString(StandardCharsets.UTF_8));
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

    private static List<String> column(Map<String, String> environment, String sql) throws SQLException {
        List<String> values = new ArrayList<>();
        try (ServerDatabase database = ServerDatabase.openToRead(environment);
                Connection connection = database.access().connectAsOwner("culvert test");
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                values.add(rows.getString(1));
            }
        }
        return values;
    }

    /** Keeps a figure beside the test's own report. */
    private static void note(String words) throws IOException {
        Path figures = Files.createDirectories(Path.of("target", "figures"));
        Files.writeString(
                figures.resolve("backup.txt"), words + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }
}
