package org.culvert.web.forms;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import org.culvert.platform.InvalidException;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** A file that came with a form, and lies on the disk of this node until the form is answered. */
public record SentFile(String name, String mediaType, long size, Path octets, String sha256) {
    private static final int LONGEST_NAME = 200;

    /**
     * What a field takes.
     *
     * @param mediaTypes none: any
     * @param wanted the same in words
     */
    public record Taken(List<String> mediaTypes, long largestBytes, String wanted) {
        public static final Taken PICTURE =
                new Taken(List.of("image/jpeg", "image/png"), 10_000_000, "a JPEG or PNG of up to 10 MB");
        public static final Taken DOCUMENT = new Taken(
                List.of("application/pdf", "image/jpeg", "image/png"), 20_000_000, "a PDF, JPEG or PNG of up to 20 MB");
    }

    /** @throws InvalidException where none was chosen */
    public static SentFile of(@Nullable FileUpload file) {
        return require("file", chosen(file), "a file of this machine");
    }

    /** Null where none was chosen. */
    public static @Nullable SentFile chosen(@Nullable FileUpload file) {
        return file == null || file.fileName() == null || file.fileName().isBlank()
                ? null
                : new SentFile(
                        nameAlone(file.fileName()),
                        Objects.requireNonNullElse(file.contentType(), ""),
                        file.size(),
                        file.uploadedFile(),
                        sha256(file.uploadedFile()));
    }

    private static SentFile require(String field, @Nullable SentFile file, String wanted) {
        if (file == null) {
            throw InvalidException.of(field, "No file was chosen.", wanted);
        }
        return file;
    }

    /** Some browsers sent the folders of the sender too. */
    private static String nameAlone(String sent) {
        return sent.substring(Math.max(sent.lastIndexOf('/'), sent.lastIndexOf('\\')) + 1);
    }

    private static String sha256(Path octets) {
        try (InputStream in = Files.newInputStream(octets);
                var digested = new DigestInputStream(in, MessageDigest.getInstance("SHA-256"))) {
            digested.transferTo(OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(digested.getMessageDigest().digest());
        } catch (IOException e) {
            throw new UncheckedIOException("a file that was sent cannot be read", e);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
    }

    /** By which a retry is told from another file. */
    public List<String> told() {
        return List.of(name, sha256);
    }

    /** As {@link #told()}, of a file that need not be chosen. */
    public static List<String> told(@Nullable SentFile file) {
        return file == null ? List.of() : file.told();
    }

    /** As documents are called that are kept. */
    public String shortName() {
        String stripped = name.strip();
        return stripped.isEmpty() ? "document" : stripped.substring(0, Math.min(LONGEST_NAME, stripped.length()));
    }

    /**
     * All of it.
     *
     * @throws InvalidException where none was chosen, or it is of no wanted kind, or larger
     */
    public static byte[] content(String field, @Nullable SentFile file, Taken taken) {
        SentFile sent = require(field, file, taken.wanted());
        if (sent.size == 0) {
            throw InvalidException.of(field, "This file is empty.", taken.wanted());
        }
        boolean isOfAKind = taken.mediaTypes().isEmpty() || taken.mediaTypes().contains(sent.mediaType);
        if (sent.size > taken.largestBytes() || !isOfAKind) {
            throw InvalidException.of(field, "This file cannot be taken.", taken.wanted());
        }
        try {
            return Files.readAllBytes(sent.octets);
        } catch (IOException e) {
            throw new UncheckedIOException("a file that was sent cannot be read", e);
        }
    }

    /** Takes a file. */
    public interface Taker {
        URI take(String name, InputStream octets);
    }

    /** Gives it to what takes it, once. */
    public URI read(Taker taker) {
        try (InputStream in = Files.newInputStream(octets)) {
            return taker.take(name, in);
        } catch (IOException e) {
            throw new UncheckedIOException("a file that was sent cannot be read", e);
        }
    }
}
