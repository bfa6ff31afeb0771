package org.culvert.web;

import io.quarkus.qute.TemplateExtension;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Instants and lengths as people read them: {@code instant.words} in a template. */
@TemplateExtension
final class Times {
    private static final DateTimeFormatter WORDS = DateTimeFormatter.ofPattern("d MMM yyyy HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    private Times() {}

    static String words(Instant instant) {
        return WORDS.format(instant);
    }

    /** How long ago, in units that need no translation (min, h, d: SI Brochure, table 8). */
    static String ago(Instant instant, Instant now) {
        long minutes = Math.max(0, Duration.between(instant, now).toMinutes());
        if (minutes < 120) {
            return minutes + " min";
        }
        return minutes < 48 * 60 ? minutes / 60 + " h" : minutes / (24 * 60) + " d";
    }

    /** Metres as kilometres, to ten metres. */
    static String asKilometres(Double metres) {
        return String.format(Locale.ROOT, "%.2f", metres / 1000);
    }
}
