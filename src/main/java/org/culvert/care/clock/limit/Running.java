package org.culvert.care.clock.limit;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One limit as it runs, or ran, for one animal.
 *
 * @param linkId the link of custody that started it, where one did
 * @param startedAt null where it is not known
 * @param dueAt its last instant, extension included; null where that is not known
 * @param warnedFrom from when it warns; null where it is not known when it is due
 * @param extendedUntil until when it was extended, where that is later than its own end
 * @param endedAt null while it runs
 * @param endedBy what ended it
 * @param doubt why it can't be told; null where it can
 */
public record Running(
        State state,
        @Nullable UUID linkId,
        @Nullable Instant startedAt,
        @Nullable Instant dueAt,
        @Nullable Instant warnedFrom,
        @Nullable Instant extendedUntil,
        @Nullable Instant endedAt,
        Limit.@Nullable Ends endedBy,
        @Nullable Doubt doubt) {
    /** How it stands. At the very instant at which it is due there is still time. */
    public enum State {
        running,
        warned,
        overdue,
        endedInTime,
        endedLate,
        cantTell
    }

    /** Why it can't be told. */
    public enum Doubt {
        /** Nobody is recorded as its holder. */
        nobodyHoldsIt,
        /** When it was stable is not recorded; what is said to be due counts from when it came to the clinic, the earliest. */
        stabilisedNotTold,
        /** How the law lists its kind is not recorded; what is said to be due is so if it is listed. */
        listingNotKnown
    }
}
