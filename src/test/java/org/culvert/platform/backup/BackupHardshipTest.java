package org.culvert.platform.backup;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.culvert.platform.Role;
import org.culvert.platform.database.ServerDatabase;
import org.culvert.platform.personal.ListedErasures;
import org.culvert.platform.personal.PersonalWorld;
import org.culvert.support.Api;
import org.culvert.support.World;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Backups under writes, with people who were erased since, damaged, and of another build. It comes first, while the database
 * holds little: none of it asks for more, and each backup is read to its end many times.
 */
@QuarkusTest
@Order(1)
class BackupHardshipTest {
    @TempDir
    static Path folder;

    @ConfigProperty(name = "culvert.erasures")
    String erasures;

    @BeforeEach
    void makeAWorld() {
        World.shared();
        for (int i = 0; i < 5; i++) {
            BackupWorld.call("before the backup " + i);
        }
    }

    @Test
    void aBackupTakenUnderWritesIsWholeAndHasWhatWasAcknowledgedBefore() throws Exception {
        AtomicBoolean enough = new AtomicBoolean();
        List<String> acknowledged = new ArrayList<>();
        ExecutorService writer = Executors.newSingleThreadExecutor();
        Path file = folder.resolve("under-writes.zip");
        int before;
        try {
            acknowledged.add(BackupWorld.call("while it runs 0"));
            Future<?> writing = writer.submit(() -> {
                for (int i = 1; !enough.get(); i++) {
                    String id = BackupWorld.call("while it runs " + i);
                    synchronized (acknowledged) {
                        acknowledged.add(id);
                    }
                }
            });
            while (size(acknowledged) < 3) {
                Thread.onSpinWait();
            }
            before = size(acknowledged);
            assertThat(BackupWorld.run(BackupWorld.running(), "backup", file).code())
                    .isZero();
            enough.set(true);
            writing.get();
        } finally {
            writer.shutdownNow();
        }
        Map<String, String> home = BackupWorld.home(folder.resolve("under-writes"));
        // Foreign keys are checked again while it is restored: a torn transaction would fail here.
        BackupWorld.Ended restored = BackupWorld.run(home, "restore", file);
        assertThat(restored.code()).as(restored.said()).isZero();
        List<String> held = BackupWorld.column(home, "SELECT id::text FROM calls");
        assertThat(held).containsAll(acknowledged.subList(0, before));
        BackupWorld.note("writes acknowledged before the backup " + before + ", until its end " + acknowledged.size()
                + ", of these held "
                + acknowledged.stream().filter(held::contains).count());
    }

    @Test
    void whoWasErasedOrHiddenSinceTheBackupDoesNotComeBack() throws Exception {
        PersonalWorld.endDuties();
        String erased = PersonalWorld.callerOf(PersonalWorld.call(
                "2014-03-04T05:00:00Z", "{\"name\":\"Rosalind Backagain\"}", "Rosalind Backagain was here"));
        String hidden =
                PersonalWorld.callerOf(PersonalWorld.call("2026-03-04T05:00:00Z", "{\"name\":\"Hid Later\"}", "words"));
        Path file = folder.resolve("before-erasure.zip");
        assertThat(BackupWorld.run(BackupWorld.running(), "backup", file).code())
                .isZero();

        Api.change(Role.COORDINATOR, PersonalWorld.person(hidden), "/hiding", "{\"reason\":\"asked\"}")
                .statusCode(200);
        PersonalWorld.enterDuties("people");
        PersonalWorld.eraseWhoIsDue();
        PersonalWorld.endDuties();

        Map<String, String> without = BackupWorld.home(folder.resolve("without-list"));
        assertThat(BackupWorld.run(without, "restore", file).said()).contains("There is no list of erasures");
        assertThat(standing(without))
                .as("without the list, so that there is something to honour")
                .isNotEmpty();

        Map<String, String> with = new HashMap<>(BackupWorld.home(folder.resolve("with-list")));
        with.put("CULVERT_ERASURES", erasures);
        BackupWorld.Ended restored = BackupWorld.run(with, "restore", file);
        assertThat(restored.code()).as(restored.said()).isZero();
        assertThat(restored.said()).contains("Honoured the list of erasures");
        assertThat(standing(with)).isEmpty();
        assertThat(BackupWorld.column(with, "SELECT person_id::text FROM erasures"))
                .contains(erased);
        assertThat(BackupWorld.column(with, "SELECT id::text FROM personal.people WHERE hidden_at IS NOT NULL"))
                .contains(hidden);
        // A server that starts on the database does the same, and does it once.
        try (ServerDatabase database = ServerDatabase.openToFill(without);
                Connection owner = database.access().connectAsOwner("culvert test")) {
            assertThat(ListedErasures.honour(owner, Path.of(erasures)).erased()).isPositive();
            assertThat(ListedErasures.honour(owner, Path.of(erasures)).erased()).isZero();
            assertThat(PersonalWorld.whereItStands(owner, List.of("Backagain"))).isEmpty();
            database.keep();
        }
        BackupWorld.note("erased people that a restored backup brought back: 0");
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
        assertThat(BackupWorld.run(BackupWorld.running(), "backup", file).code())
                .isZero();
        byte[] whole = Files.readAllBytes(file);

        assertRefused("flipped", withABitFlippedThatMatters(whole), "is damaged");
        assertRefused("cut", Arrays.copyOf(whole, whole.length - 100), "is damaged");
        assertRefused("none", "not a backup".getBytes(StandardCharsets.UTF_8), "is damaged");

        assertThat(BackupWorld.run(BackupWorld.running(), "backup", file).said())
                .contains("is there already");
        assertThat(Files.readAllBytes(file)).isEqualTo(whole);
        try (var left = Files.list(folder)) {
            assertThat(left.filter(path -> path.getFileName().toString().contains(".part-")))
                    .isEmpty();
        }
    }

    /** Of content; a few bits of it tell nothing, since the last octet of what is compressed is filled up. */
    private static byte[] withABitFlippedThatMatters(byte[] whole) throws IOException {
        long seed = 20261125;
        Random random = new Random(seed);
        int tries = 60;
        int[] content = content(whole);
        List<byte[]> damaged = new ArrayList<>();
        for (int i = 0; i < tries; i++) {
            byte[] flipped = whole.clone();
            flipped[content[random.nextInt(content.length)]] ^= (byte) (1 << random.nextInt(8));
            try {
                BackupFile.open(Files.write(folder.resolve("flip.zip"), flipped))
                        .close();
            } catch (BackupException refused) {
                damaged.add(flipped);
            }
        }
        BackupWorld.note("bits flipped " + tries + ", refused " + damaged.size());
        assertThat(damaged.size()).as("seed " + seed).isGreaterThan(tries * 9 / 10);
        return damaged.get(0);
    }

    /**
     * Where in a file of zip the content of entries lies that have more than a hundred octets: by its directory, as PKWARE's
     * APPNOTE 4.3.7, 4.3.12 and 4.3.16 have it.
     */
    private static int[] content(byte[] zip) {
        ByteBuffer in = ByteBuffer.wrap(zip).order(ByteOrder.LITTLE_ENDIAN);
        int end = zip.length - 22;
        while (in.getInt(end) != 0x06054b50) {
            end--;
        }
        int entry = in.getInt(end + 16);
        IntStream.Builder content = IntStream.builder();
        for (int i = in.getShort(end + 10); i > 0; i--) {
            int octets = in.getInt(entry + 20);
            int local = in.getInt(entry + 42);
            int from = local + 30 + in.getShort(local + 26) + in.getShort(local + 28);
            if (octets > 100) {
                IntStream.range(from, from + octets).forEach(content);
            }
            entry += 46 + in.getShort(entry + 28) + in.getShort(entry + 30) + in.getShort(entry + 32);
        }
        return content.build().toArray();
    }

    private static void assertRefused(String name, byte[] bytes, String why) throws IOException {
        Path file = Files.write(folder.resolve(name + ".zip"), bytes);
        Path home = folder.resolve("home-" + name);
        BackupWorld.Ended ended = BackupWorld.run(BackupWorld.home(home), "restore", file);
        assertThat(ended.code()).as(name).isEqualTo(1);
        assertThat(ended.said()).contains(why);
        assertThat(home.resolve("database")).doesNotExist();
    }

    @Test
    void aFileOfAnotherBuildsSchemaIsRefused() throws IOException {
        Path file = folder.resolve("to-alter.zip");
        assertThat(BackupWorld.run(BackupWorld.running(), "backup", file).code())
                .isZero();
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
        BackupWorld.Ended ended = BackupWorld.run(BackupWorld.home(home), "restore", altered);
        assertThat(ended.code()).as(ended.said()).isEqualTo(1);
        assertThat(home.resolve("database")).doesNotExist();
        return ended.said();
    }

    private static int size(List<String> list) {
        synchronized (list) {
            return list.size();
        }
    }
}
