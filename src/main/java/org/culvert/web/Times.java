package org.culvert.web;

import io.quarkus.qute.TemplateExtension;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Instants as people read them: {@code instant.words} in a template. */
@TemplateExtension
final class Times {
    private static final DateTimeFormatter WORDS = DateTimeFormatter.ofPattern("d MMM yyyy HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    private Times() {}

    static String words(Instant instant) {
        return WORDS.format(instant);
    }
}
