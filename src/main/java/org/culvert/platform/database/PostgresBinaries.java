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
import java.util.HexFormat;
import java.util.Locale;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;
import org.jspecify.annotations.Nullable;

/** The PostgreSQL that the build packed for one platform, unpacked into the home folder once. */
final class PostgresBinaries {
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
            String name = "postgresql-" + sum(resource, os, arch);
            Path folder = root.resolve(name);
            if (!Files.isDirectory(folder)) {
                Path half = root.resolve(name + ".new");
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

    /** Tells one build's binaries from another's; it is made at each start, so that a quick one does. */
    private static String sum(String resource, String os, String arch) throws IOException {
        var sum = new CRC32();
        try (InputStream packed = new CheckedInputStream(open(resource, os, arch), sum)) {
            long octets = packed.transferTo(OutputStream.nullOutputStream());
            return HexFormat.of().toHexDigits((int) sum.getValue()) + "-" + Long.toHexString(octets);
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
