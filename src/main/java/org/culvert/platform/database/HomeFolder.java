package org.culvert.platform.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Properties;
import org.jspecify.annotations.Nullable;

/**
 * The folder a server keeps its own PostgreSQL in, for one server at a time.
 *
 * <pre>
 * server.lock          held by the running server
 * passwords            of the database's roles, readable by the owner alone
 * port                 the port of our PostgreSQL, the same at every start
 * postgresql-…         the binaries
 * database             the data
 * database-log         a week of PostgreSQL's own log
 * </pre>
 */
final class HomeFolder {
    private static final int PASSWORD_BYTES = 24;

    private final Path root;
    private @Nullable FileChannel lockChannel;

    HomeFolder(Path root) {
        try {
            if (!Files.isDirectory(root)) {
                Files.createDirectories(root);
                Files.setPosixFilePermissions(root, PosixFilePermissions.fromString("rwx------"));
            }
            // Without links, as the operating system names the programs that run from here.
            this.root = root.toRealPath();
        } catch (IOException e) {
            throw new CannotStartException("The data folder " + root + " cannot be made: " + e, e);
        }
    }

    Path root() {
        return root;
    }

    Path data() {
        return root.resolve("database");
    }

    Path log() {
        return root.resolve("database-log");
    }

    /** Takes the folder for this server; the operating system lets go of it however the server ends. */
    void lock() {
        Path file = root.resolve("server.lock");
        try {
            FileChannel channel = FileChannel.open(
                    file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            FileLock lock = tryLock(channel);
            if (lock == null) {
                String holder = Files.readString(file).strip();
                channel.close();
                throw new CannotStartException("Another Culvert server"
                        + (holder.isEmpty() ? "" : " (process " + holder + ")")
                        + " is running in " + root
                        + ". Stop it first, or choose another data folder with CULVERT_HOME.");
            }
            channel.truncate(0);
            channel.write(ByteBuffer.wrap((ProcessHandle.current().pid() + "\n").getBytes(StandardCharsets.US_ASCII)));
            lockChannel = channel;
        } catch (IOException e) {
            throw new CannotStartException("The data folder " + root + " cannot be locked: " + e, e);
        }
    }

    /** Whether a server of another process holds the folder now. */
    boolean isHeld() {
        Path file = root.resolve("server.lock");
        if (!Files.exists(file)) {
            return false;
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE);
                FileLock lock = tryLock(channel)) {
            return lock == null;
        } catch (IOException e) {
            throw new CannotStartException("The data folder " + root + " cannot be looked into: " + e, e);
        }
    }

    private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException heldByThisProcess) {
            return null;
        }
    }

    void unlock() {
        FileChannel channel = lockChannel;
        lockChannel = null;
        if (channel != null) {
            try {
                channel.close();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /** The passwords of this folder's roles, made at random the first time. */
    Passwords passwords() {
        Path file = root.resolve("passwords");
        try {
            Properties kept = new Properties();
            if (Files.exists(file)) {
                try (var in = Files.newBufferedReader(file)) {
                    kept.load(in);
                }
            } else {
                for (String role : Roles.WITH_LOGIN) {
                    kept.setProperty(role, randomPassword());
                }
                StringBuilder lines = new StringBuilder();
                for (String role : Roles.WITH_LOGIN) {
                    lines.append(role)
                            .append('=')
                            .append(kept.getProperty(role))
                            .append('\n');
                }
                writePrivately(file, lines.toString());
            }
            return new Passwords(kept);
        } catch (IOException e) {
            throw new CannotStartException("The passwords of the database in " + file + " cannot be used: " + e, e);
        }
    }

    private static String randomPassword() {
        byte[] bytes = new byte[PASSWORD_BYTES];
        new SecureRandom().nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** Writes a file that nobody else could read at any moment, and that is there whole or not at all. */
    void writePrivately(Path file, String content) throws IOException {
        Path half = file.resolveSibling(file.getFileName() + ".new");
        Files.deleteIfExists(half);
        Files.createFile(half, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        try (FileChannel channel = FileChannel.open(half, StandardOpenOption.WRITE)) {
            ByteBuffer bytes = ByteBuffer.wrap(content.getBytes(StandardCharsets.UTF_8));
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
            channel.force(true);
        }
        Files.move(half, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    @Nullable
    Integer findPort() {
        Path file = root.resolve("port");
        try {
            return Files.exists(file) ? Integer.valueOf(Files.readString(file).strip()) : null;
        } catch (IOException | NumberFormatException e) {
            throw new CannotStartException("The port of the database in " + file + " cannot be read: " + e, e);
        }
    }

    void keepPort(int port) {
        try {
            writePrivately(root.resolve("port"), port + "\n");
        } catch (IOException e) {
            throw new CannotStartException("The port of the database cannot be kept in " + root + ": " + e, e);
        }
    }

    /** The passwords of the roles that log in. */
    record Passwords(Properties byRole) {
        String of(String role) {
            String password = byRole.getProperty(role);
            if (password == null) {
                throw new CannotStartException("The file of passwords has none for " + role + ".");
            }
            return password;
        }

        @Override
        public String toString() {
            return "passwords of " + byRole.stringPropertyNames();
        }
    }
}
