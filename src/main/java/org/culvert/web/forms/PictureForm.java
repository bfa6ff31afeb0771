package org.culvert.web.forms;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.HexFormat;
import java.util.Objects;
import org.culvert.animal.photograph.PhotographService.SentPhotograph;
import org.culvert.platform.InvalidException;
import org.culvert.platform.file.KeptFiles;
import org.culvert.web.Typed;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.jspecify.annotations.Nullable;

/** A photograph that came with a form. */
public record PictureForm(SentPhotograph picture, String sha256) {
    private static final long LARGEST_BYTES = 10_000_000;
    private static final int LONGEST_CAPTION = 2000;
    private static final String WANTED = "a JPEG or PNG of up to 10 MB";

    /** @throws InvalidException where it is no such file */
    public static PictureForm read(@Nullable FileUpload upload, @Nullable String caption) {
        if (upload == null || upload.size() == 0) {
            throw InvalidException.of("picture", "No photograph was chosen.", WANTED);
        }
        String type = Objects.requireNonNullElse(upload.contentType(), "");
        if (upload.size() > LARGEST_BYTES || !(type.equals("image/jpeg") || type.equals("image/png"))) {
            throw InvalidException.of("picture", "This file cannot be taken.", WANTED);
        }
        String said = Typed.given(caption);
        if (said != null && said.length() > LONGEST_CAPTION) {
            throw InvalidException.of("caption", "This is too long.", "at most " + LONGEST_CAPTION + " characters");
        }
        try {
            byte[] content = Files.readAllBytes(upload.uploadedFile());
            return new PictureForm(
                    new SentPhotograph(type, content, said, null, null),
                    HexFormat.of().formatHex(KeptFiles.sha256(content)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
