package org.culvert.platform.ledger;

import java.time.Clock;
import java.time.Instant;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** What corrections have in common. */
public final class Corrections {
    /** Media type of RFC 7396. */
    public static final String MERGE_PATCH = "application/merge-patch+json";

    private static final int SECONDS_OF_CLOCKS_APART = 300;

    private Corrections() {}

    /**
     * A text afterwards, or null.
     *
     * @throws InvalidException naming the field where it is longer than it may be
     */
    public static @Nullable String text(String field, Change<String> change, @Nullable String current, int longest) {
        String text = change.over(current);
        if (change.isMade() && text != null && text.length() > longest) {
            throw InvalidException.of(field, "This is too long.", "at most " + longest + " characters");
        }
        return text;
    }

    /**
     * A text afterwards that may not be empty.
     *
     * @throws InvalidException naming the field where it is empty or longer than it may be
     */
    public static String words(String field, Change<String> change, String current, int longest) {
        String text = change.over(field, current);
        if (change.isMade() && (text.isBlank() || text.length() > longest)) {
            throw InvalidException.of(
                    field, "This is empty or too long.", "some words, at most " + longest + " characters");
        }
        return text;
    }

    /** The name of a value of an enumeration afterwards. */
    public static <E extends Enum<E>> String name(String field, Change<E> change, String current) {
        if (!change.isMade()) {
            return current;
        }
        E value = change.value();
        if (value == null) {
            throw InvalidException.of(field, "This cannot be left open.", "a value, or leave the field out");
        }
        return value.name();
    }

    /** The same for a field that may be empty. */
    public static <E extends Enum<E>> @Nullable String nameOrNone(Change<E> change, @Nullable String current) {
        if (!change.isMade()) {
            return current;
        }
        E value = change.value();
        return value == null ? null : value.name();
    }

    /**
     * An instant afterwards, which has passed.
     *
     * @throws InvalidException naming the field where it is still to come
     */
    public static @Nullable Instant past(String field, Change<Instant> change, @Nullable Instant current, Clock clock) {
        Instant instant = change.over(current);
        if (change.isMade() && instant != null) {
            requirePast(field, instant, clock);
        }
        return instant;
    }

    /** The same for an instant that is always known. */
    public static Instant known(String field, Change<Instant> change, Instant current, Clock clock) {
        Instant instant = change.over(field, current);
        if (change.isMade()) {
            requirePast(field, instant, clock);
        }
        return instant;
    }

    /**
     * An instant as entered, which has passed; now where it is left out.
     *
     * @throws InvalidException naming the field where it is still to come
     */
    public static Instant passed(String field, @Nullable Instant entered, Clock clock) {
        if (entered == null) {
            return clock.instant();
        }
        requirePast(field, entered, clock);
        return entered;
    }

    private static void requirePast(String field, Instant instant, Clock clock) {
        if (instant.isAfter(clock.instant().plusSeconds(SECONDS_OF_CLOCKS_APART))) {
            throw InvalidException.of(field, "This lies in the future.", "an instant that has passed");
        }
    }
}
