package org.culvert.web.records;

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
import org.culvert.platform.InvalidException;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** A file that came with a form, and lies on the disk of this node until the form is answered. */
public record SentFile(String name, Path octets, String sha256) {
    /** @throws InvalidException where none was chosen */
    public static SentFile of(@Nullable FileUpload file) {
        if (file == null || file.fileName() == null || file.fileName().isBlank()) {
            throw InvalidException.of("file", "No file was chosen.", "a file of this machine");
        }
        return new SentFile(nameAlone(file.fileName()), file.uploadedFile(), sha256(file.uploadedFile()));
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

    /** Takes a file. */
    public interface Taker {
        URI take(String name, InputStream octets);
    }

    public URI read(Taker taker) {
        try (InputStream in = Files.newInputStream(octets)) {
            return taker.take(name, in);
        } catch (IOException e) {
            throw new UncheckedIOException("a file that was sent cannot be read", e);
        }
    }
}
