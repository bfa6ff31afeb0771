package org.culvert.platform.database;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;
import org.jspecify.annotations.Nullable;

/** The PostgreSQL that the build packed for one platform, unpacked into the home folder once. */
final class PostgresBinaries {
    private static final int HASH_LETTERS = 12;

    private final Path folder;

    private PostgresBinaries(Path folder) {
        this.folder = folder;
    }

    Path program(String name) {
        return folder.resolve("bin").resolve(name);
    }

    /** Name of the packed binaries for a platform, as the {@code os.name} and {@code os.arch} properties give it. */
    static String resourceName(String osName, String osArch) {
        String os = osName.toLowerCase(Locale.ROOT);
        String system = os.startsWith("linux") ? "linux" : os.startsWith("mac") ? "darwin" : os.replace(' ', '_');
        String machine = switch (osArch) {
            case "amd64", "x86_64" -> "x86_64";
            case "aarch64", "arm64" -> "arm_64";
            default -> osArch;
        };
        return "postgres-" + system + "-" + machine + ".txz";
    }

    static PostgresBinaries unpackInto(Path root) {
        return unpackInto(root, System.getProperty("os.name"), System.getProperty("os.arch"));
    }

    static PostgresBinaries unpackInto(Path root, String os, String arch) {
        String resource = resourceName(os, arch);
        try {
            String hash = hash(resource, os, arch);
            Path folder = root.resolve("postgresql-" + hash.substring(0, HASH_LETTERS));
            if (!Files.isDirectory(folder)) {
                Path half = root.resolve("postgresql-" + hash.substring(0, HASH_LETTERS) + ".new");
                deleteTree(half);
                try (InputStream packed = open(resource, os, arch)) {
                    unpack(packed, half);
                }
                Files.move(half, folder, StandardCopyOption.ATOMIC_MOVE);
            }
            return new PostgresBinaries(folder);
        } catch (IOException e) {
            throw new CannotStartException("PostgreSQL cannot be unpacked into " + root + ": " + e, e);
        }
    }

    private static InputStream open(String resource, String os, String arch) {
        InputStream packed = PostgresBinaries.class.getResourceAsStream("/" + resource);
        if (packed == null) {
            throw new CannotStartException("This build brings no PostgreSQL for " + os + " on " + arch
                    + ". Set CULVERT_DATABASE_URL, CULVERT_DATABASE_USER and CULVERT_DATABASE_PASSWORD to use a"
                    + " PostgreSQL of yours (15 or later), or build on the platform you run on: Linux or macOS, on"
                    + " x86-64 or arm64.");
        }
        return packed;
    }

    private static String hash(String resource, String os, String arch) throws IOException {
        try (InputStream packed = open(resource, os, arch);
                DigestInputStream digest = new DigestInputStream(packed, MessageDigest.getInstance("SHA-256"))) {
            digest.transferTo(OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(digest.getMessageDigest().digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every JDK has SHA-256", e);
        }
    }

    private static void unpack(InputStream packed, Path target) throws IOException {
        try (TarArchiveInputStream tar =
                new TarArchiveInputStream(new XZCompressorInputStream(new BufferedInputStream(packed)))) {
            for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
                Path path = target.resolve(entry.getName()).normalize();
                if (!path.startsWith(target)) {
                    throw new IOException("The archive reaches outside its folder: " + entry.getName());
                }
                Files.createDirectories(entry.isDirectory() ? path : path.getParent());
                if (entry.isSymbolicLink()) {
                    Files.createSymbolicLink(path, Path.of(entry.getLinkName()));
                } else if (entry.isFile()) {
                    Files.copy(tar, path);
                    boolean runs = (entry.getMode() & 0100) != 0;
                    Files.setPosixFilePermissions(
                            path, PosixFilePermissions.fromString(runs ? "rwxr-xr-x" : "rw-r--r--"));
                }
            }
        }
    }

    static void deleteTree(Path root) throws IOException {
        if (!Files.exists(root)) {
            return;
        }
        Files.walkFileTree(root, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException failure) throws IOException {
                if (failure != null) {
                    throw failure;
                }
                Files.delete(folder);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
