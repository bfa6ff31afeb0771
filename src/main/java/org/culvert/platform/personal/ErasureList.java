package org.culvert.platform.personal;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.culvert.platform.ConflictException;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;

/**
 * The list of who was hidden and who was erased, kept outside of the database, so that a backup from before honours it too.
 * It says when and by which identifier, and nothing of whom.
 */
@ApplicationScoped
class ErasureList {
    private static final Logger LOG = Logger.getLogger(ErasureList.class);

    enum What {
        erased,
        hidden,
        shown
    }

    /** One line. */
    record Entry(Instant at, What what, UUID personId) {
        String line() {
            return at + " " + what + " " + personId + "\n";
        }

        static Entry read(Path file, int number, String line) {
            String[] words = line.strip().split(" ");
            try {
                if (words.length == 3) {
                    return new Entry(Instant.parse(words[0]), What.valueOf(words[1]), UUID.fromString(words[2]));
                }
            } catch (DateTimeParseException | IllegalArgumentException e) {
                throw new IllegalStateException(wrong(file, number), e);
            }
            throw new IllegalStateException(wrong(file, number));
        }

        private static String wrong(Path file, int number) {
            return "line " + number + " of the list of erasures " + file
                    + " is not an instant, one of erased, hidden or shown, and an identifier";
        }
    }

    private final Path file;

    ErasureList(@ConfigProperty(name = "culvert.erasures") String file) {
        this.file = Path.of(file);
    }

    /**
     * Writes a line and waits until it is on the disk. It is written before the change is committed: a change that is then
     * lost is made by the list at the next start.
     */
    synchronized void append(Entry entry) {
        try {
            write(List.of(entry));
        } catch (IOException e) {
            LOG.error("The list of erasures cannot be written", e);
            throw new ConflictException(
                    "Nobody is hidden or erased while the list of erasures cannot be written, since a"
                            + " restored backup would bring them back. CULVERT_ERASURES names its file; the log says what is wrong.");
        }
    }

    /** Adds what other nodes, or a server with another list, did. */
    synchronized void addMissing(List<Entry> done) throws IOException {
        Set<Entry> known = Set.copyOf(read(file));
        List<Entry> missing =
                done.stream().filter(entry -> !known.contains(entry)).toList();
        if (!missing.isEmpty()) {
            write(missing);
        }
    }

    private void write(List<Entry> entries) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        if (!Files.exists(file)) {
            Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.APPEND)) {
            ByteBuffer lines = ByteBuffer.wrap(
                    String.join("", entries.stream().map(Entry::line).toList()).getBytes(StandardCharsets.US_ASCII));
            while (lines.hasRemaining()) {
                channel.write(lines);
            }
            channel.force(true);
        }
    }

    /** @throws IllegalStateException where a whole line is none of the list's; half of a last line was never promised */
    static List<Entry> read(Path file) throws IOException {
        String content;
        try {
            content = Files.readString(file, StandardCharsets.UTF_8);
        } catch (NoSuchFileException nothingYet) {
            return List.of();
        }
        String[] lines = content.split("\n", -1);
        List<Entry> entries = new ArrayList<>();
        for (int i = 0; i < lines.length - 1; i++) {
            if (!lines[i].isBlank()) {
                entries.add(Entry.read(file, i + 1, lines[i]));
            }
        }
        return entries;
    }
}
