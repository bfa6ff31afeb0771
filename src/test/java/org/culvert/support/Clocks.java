package org.culvert.support;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;

/** The test's own look at the clock, as fine as the server's. */
public final class Clocks {
    private static final Clock CLOCK = Clock.tick(Clock.systemUTC(), Duration.ofNanos(1000));

    private Clocks() {}

    /** An instant after everything that was answered so far, and before everything that is asked from now on. */
    public static Instant now() {
        Instant start = CLOCK.instant();
        Instant next = CLOCK.instant();
        while (!next.isAfter(start)) {
            Thread.onSpinWait();
            next = CLOCK.instant();
        }
        Instant later = CLOCK.instant();
        while (!later.isAfter(next)) {
            Thread.onSpinWait();
            later = CLOCK.instant();
        }
        return next;
    }
}
