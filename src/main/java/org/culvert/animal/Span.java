package org.culvert.animal;

import java.time.Instant;
import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/** A span of time, closed at its start and open at its end, as PostgreSQL writes a {@code tstzrange}. */
record Span(Instant from, @Nullable Instant to) {
    static String text(Instant from, @Nullable Instant to) {
        return "[\"" + from + "\"," + (to == null ? "" : "\"" + to + "\"") + ")";
    }

    static Span parse(String text) {
        String inner = text.substring(1, text.length() - 1).replace("\"", "");
        int comma = inner.indexOf(',');
        String to = inner.substring(comma + 1);
        return new Span(instant(inner.substring(0, comma)), to.isEmpty() ? null : instant(to));
    }

    boolean contains(Instant instant) {
        return !instant.isBefore(from) && (to == null || instant.isBefore(to));
    }

    /** PostgreSQL writes {@code 2026-11-25 18:40:00.5+10}, with minutes of the offset only where there are any. */
    private static Instant instant(String text) {
        String iso = text.replace(' ', 'T');
        if (iso.matches(".*[+-]\\d\\d$")) {
            iso += ":00";
        }
        return OffsetDateTime.parse(iso).toInstant();
    }

    boolean overlaps(Span other) {
        return (other.to == null || from.isBefore(other.to)) && (to == null || other.from.isBefore(to));
    }

    String words() {
        return "from " + from + (to == null ? " on" : " to " + to);
    }
}
