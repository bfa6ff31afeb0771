package org.culvert.platform;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Reads parameters: limits and cursors of lists that are ordered by their time-ordered identifier, identifiers and days. */
public final class Paging {
    public static final int DEFAULT_LIMIT = 50;
    public static final int MAXIMUM_LIMIT = 1000;
    private static final String A_DAY = "a day such as 2026-11-25";

    private Paging() {}

    /** A limit between 1 and {@link #MAXIMUM_LIMIT}; larger ones are clamped. */
    public static int limit(@Nullable Integer asked) {
        if (asked == null) {
            return DEFAULT_LIMIT;
        }
        if (asked < 1) {
            throw InvalidException.of("limit", "A page needs at least one row.", "1 to " + MAXIMUM_LIMIT);
        }
        return Math.min(asked, MAXIMUM_LIMIT);
    }

    /** The identifier after which the page starts. */
    public static @Nullable UUID cursor(@Nullable String asked) {
        return asked == null ? null : uuid("cursor", asked);
    }

    /**
     * A day of a query or a form.
     *
     * @throws InvalidException naming {@code field} when it is none, or of a year that nobody means
     */
    public static LocalDate day(String field, String text) {
        try {
            LocalDate day = LocalDate.parse(text);
            if (day.getYear() >= 1 && day.getYear() <= 9999) {
                return day;
            }
        } catch (DateTimeException noDay) {
            throw InvalidException.of(field, "This is no day.", A_DAY);
        }
        throw InvalidException.of(field, "No such year is meant.", A_DAY);
    }

    public static UUID uuid(String field, String text) {
        try {
            return UUID.fromString(text);
        } catch (IllegalArgumentException e) {
            throw InvalidException.of(field, "This is no identifier.", "an identifier as this server gave it");
        }
    }
}
