package org.culvert.web.traffic;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.function.Function;
import org.culvert.platform.InvalidException;
import org.culvert.road.file.SentFile;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** A file of counts that came with a form, and lies on the disk of this node until the form is answered. */
record SentCounts(Path octets, String sha256, boolean geoPackage) {
    /** SQLite's file format, section 1.3.1; a GeoPackage is such a file. */
    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

    /** @throws InvalidException where none was chosen */
    static SentCounts of(@Nullable FileUpload file) {
        if (file == null || file.fileName() == null || file.fileName().isBlank()) {
            throw InvalidException.of("file", "No file was chosen.", "a file of counts, as GeoJSON or GeoPackage");
        }
        Path octets = file.uploadedFile();
        try (InputStream in = Files.newInputStream(octets);
                var digested = new DigestInputStream(in, MessageDigest.getInstance("SHA-256"))) {
            boolean geoPackage = Arrays.equals(digested.readNBytes(SQLITE.length), SQLITE);
            digested.transferTo(OutputStream.nullOutputStream());
            return new SentCounts(
                    octets, HexFormat.of().formatHex(digested.getMessageDigest().digest()), geoPackage);
        } catch (IOException e) {
            throw new UncheckedIOException("a file that was sent cannot be read", e);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
    }

    /** @throws InvalidException where another file was tried */
    void requireTried(@Nullable String triedSha256) {
        if (!sha256.equals(triedSha256)) {
            throw InvalidException.of(
                    "file", "This is not the file that was tried.", "the same file, or to try this one first");
        }
    }

    <T> T read(@Nullable String crs, @Nullable String layer, Function<SentFile, T> reader) {
        try (InputStream in = Files.newInputStream(octets)) {
            return reader.apply(new SentFile(geoPackage, crs, layer, in));
        } catch (IOException e) {
            throw new UncheckedIOException("a file that was sent cannot be read", e);
        }
    }
}
