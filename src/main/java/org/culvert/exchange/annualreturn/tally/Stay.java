package org.culvert.exchange.annualreturn.tally;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A span in which somebody holds, closed at its start and open at its end.
 *
 * @param link what tells this span apart for who asks, such as the identifier of a link of custody
 * @param own whether it is of the holder whose return it is
 * @param to null while it lasts
 */
public record Stay(
        String link, boolean own, Instant from, @Nullable Instant to) {
    public Stay {
        if (to != null && !to.isAfter(from)) {
            throw new IllegalArgumentException("it ends before it begins: " + link);
        }
    }

    /** What of it lies in a span, or null where nothing does. */
    @Nullable
    Stay within(Instant begin, @Nullable Instant end) {
        Instant cutFrom = from.isBefore(begin) ? begin : from;
        Instant cutTo = end == null || to != null && to.isBefore(end) ? to : end;
        return cutTo != null && !cutTo.isAfter(cutFrom) ? null : new Stay(link, own, cutFrom, cutTo);
    }
}
