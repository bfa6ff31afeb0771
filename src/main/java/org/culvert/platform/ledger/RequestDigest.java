package org.culvert.platform.ledger;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;

/** Tells whether two requests ask for the same: method, address, and what the body means rather than how it is written. */
final class RequestDigest {
    private final MessageDigest digest;

    RequestDigest(String method, String path, @Nullable String query) {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
        add(method);
        add(path);
        add(query == null ? "" : query);
    }

    void body(@Nullable Object body) {
        try {
            add(Canonical.text(body));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a body that was read cannot be written", e);
        }
    }

    /**
     * Takes in a streamed body by laying it into a file, from which it can then be read.
     *
     * @return a stream over the file, which is deleted when it is closed
     */
    InputStream spool(InputStream body) {
        try {
            Path file = Files.createTempFile("culvert-body-", ".tmp");
            try (var out = new DigestOutputStream(Files.newOutputStream(file), digest)) {
                body.transferTo(out);
            } catch (IOException e) {
                Files.deleteIfExists(file);
                throw e;
            }
            return Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE);
        } catch (IOException e) {
            throw new UncheckedIOException("the body cannot be read", e);
        }
    }

    String hex() {
        return HexFormat.of().formatHex(digest.digest());
    }

    private void add(String part) {
        digest.update(part.getBytes(StandardCharsets.UTF_8));
        digest.update((byte) 0);
    }
}
