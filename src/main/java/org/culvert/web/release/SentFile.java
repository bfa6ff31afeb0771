package org.culvert.web.release;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import org.culvert.platform.InvalidException;
import org.culvert.platform.file.KeptFiles;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** A photograph or a document that came with a form. */
record SentFile(String name, String mediaType, byte[] content) {
    static final List<String> PICTURES = List.of("image/jpeg", "image/png");
    static final List<String> DOCUMENTS = List.of("application/pdf", "image/jpeg", "image/png");
    private static final int LONGEST_NAME = 200;

    /** Whether one was chosen. */
    static boolean isChosen(@Nullable FileUpload upload) {
        return upload != null && upload.size() > 0;
    }

    /** @throws InvalidException where none was chosen, or it is of no wanted kind, or larger */
    static SentFile read(String field, @Nullable FileUpload upload, List<String> kinds, long largest, String wanted) {
        if (upload == null || upload.size() == 0) {
            throw InvalidException.of(field, "No file was chosen.", wanted);
        }
        String type = Objects.requireNonNullElse(upload.contentType(), "");
        if (upload.size() > largest || !kinds.contains(type)) {
            throw InvalidException.of(field, "This file cannot be taken.", wanted);
        }
        String name = Objects.requireNonNullElse(upload.fileName(), "");
        String alone = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1)
                .strip();
        try {
            return new SentFile(
                    alone.isEmpty() ? "document" : alone.substring(0, Math.min(LONGEST_NAME, alone.length())),
                    type,
                    Files.readAllBytes(upload.uploadedFile()));
        } catch (IOException e) {
            throw new UncheckedIOException("a file that was sent cannot be read", e);
        }
    }

    /** By which a retry is told from another file. */
    String sha256() {
        return HexFormat.of().formatHex(KeptFiles.sha256(content));
    }
}
