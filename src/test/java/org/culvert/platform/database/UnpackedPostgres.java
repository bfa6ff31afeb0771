package org.culvert.platform.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.stream.Stream;

/**
 * The PostgreSQL that the server brings, unpacked once for all tests: a server that starts on a new folder unpacks it for
 * seconds. Those that are about the first start leave it to the server.
 */
public final class UnpackedPostgres {
    private static final Path TEMPLATE = Path.of("target", "postgres-unpacked");

    private UnpackedPostgres() {}

    /** Lays the unpacked binaries into a home folder, as links to the same files where that can be; answers the folder. */
    public static synchronized Path into(Path home) {
        try {
            Path root = new HomeFolder(home).root();
            Files.createDirectories(TEMPLATE);
            // Other processes of the tests do the same
            try (FileChannel file = FileChannel.open(
                            TEMPLATE.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                    FileLock lock = file.lock()) {
                if (!lock.isValid()) {
                    throw new IllegalStateException("the lock of " + TEMPLATE + " was lost");
                }
                Path unpacked = PostgresBinaries.unpackInto(TEMPLATE)
                        .program("postgres")
                        .getParent()
                        .getParent();
                Path own = root.resolve(unpacked.getFileName());
                if (!Files.exists(own)) {
                    Path half = root.resolve(unpacked.getFileName() + ".new");
                    PostgresBinaries.deleteTree(half);
                    link(unpacked, half);
                    Files.move(half, own, StandardCopyOption.ATOMIC_MOVE);
                }
            }
            return home;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void link(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path one : (Iterable<Path>) all::iterator) {
                Path copy = to.resolve(from.relativize(one).toString());
                if (Files.isSymbolicLink(one)) {
                    Files.createSymbolicLink(copy, Files.readSymbolicLink(one));
                } else if (Files.isDirectory(one, LinkOption.NOFOLLOW_LINKS)) {
                    Files.createDirectory(copy);
                } else {
                    linkFile(one, copy);
                }
            }
        }
    }

    private static void linkFile(Path from, Path to) throws IOException {
        try {
            Files.createLink(to, from);
        } catch (FileAlreadyExistsException e) {
            throw e;
        } catch (IOException | UnsupportedOperationException otherFileSystem) {
            Files.copy(from, to, StandardCopyOption.COPY_ATTRIBUTES);
        }
    }
}
