package org.culvert.platform;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Reads the {@code limit} and {@code cursor} parameters of lists that are ordered by their time-ordered identifier. */
public final class Paging {
    public static final int DEFAULT_LIMIT = 50;
    public static final int MAXIMUM_LIMIT = 1000;

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

    public static UUID uuid(String field, String text) {
        try {
            return UUID.fromString(text);
        } catch (IllegalArgumentException e) {
            throw InvalidException.of(field, "This is no identifier.", "an identifier as this server gave it");
        }
    }
}
