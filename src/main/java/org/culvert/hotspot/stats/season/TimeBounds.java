package org.culvert.hotspot.stats.season;

import java.time.Duration;
import java.time.Instant;

/**
 * Between when and when something happened, both ends included: last passed without it, first seen. Equal where the instant
 * is known.
 *
 * @param earliest not after {@code latest}
 * @param latest not before {@code earliest}
 */
public record TimeBounds(Instant earliest, Instant latest) {
    /** @throws IllegalArgumentException if the latest is before the earliest */
    public TimeBounds {
        if (latest.isBefore(earliest)) {
            throw new IllegalArgumentException("the latest instant " + latest + " is before the earliest " + earliest);
        }
    }

    public static TimeBounds at(Instant instant) {
        return new TimeBounds(instant, instant);
    }

    public Duration width() {
        return Duration.between(earliest, latest);
    }

    /** The middle of the two. */
    public Instant middle() {
        return earliest.plus(width().dividedBy(2));
    }
}
