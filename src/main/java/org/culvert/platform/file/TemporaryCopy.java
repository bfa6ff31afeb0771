package org.culvert.platform.file;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** A copy of what is sent, to be read more than once or after its digest is known; close it, and the copy is gone. */
public final class TemporaryCopy implements AutoCloseable {
    private final Path file;
    private final String sha256;

    private TemporaryCopy(Path file, String sha256) {
        this.file = file;
        this.sha256 = sha256;
    }

    /** @throws InvalidException naming {@code body} where it cannot be read to its end */
    public static TemporaryCopy of(InputStream sent) {
        Path file = null;
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            file = Files.createTempFile("culvert", ".sent");
            Files.copy(new DigestInputStream(sent, digest), file, StandardCopyOption.REPLACE_EXISTING);
            var copy = new TemporaryCopy(file, HexFormat.of().formatHex(digest.digest()));
            file = null;
            return copy;
        } catch (IOException broken) {
            throw InvalidException.of("body", "The file could not be read to its end.", "the whole file");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        } finally {
            delete(file);
        }
    }

    public String sha256() {
        return sha256;
    }

    public InputStream open() {
        try {
            return new BufferedInputStream(Files.newInputStream(file));
        } catch (IOException gone) {
            throw new IllegalStateException("a temporary file cannot be read", gone);
        }
    }

    @Override
    public void close() {
        delete(file);
    }

    private static void delete(@Nullable Path file) {
        if (file != null) {
            try {
                Files.deleteIfExists(file);
            } catch (IOException stays) {
                throw new IllegalStateException("a temporary file cannot be deleted", stays);
            }
        }
    }
}
