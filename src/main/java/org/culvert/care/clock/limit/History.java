package org.culvert.care.clock.limit;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What happened to one animal in one case, as far as limits ask.
 *
 * @param custody links in the order of their beginnings; they do not overlap
 * @param visits visits to a clinic while it lived, in the order of arrival
 * @param endedAt when the case ended; null while it has not
 * @param dead whether it ended in death
 */
public record History(
        Instant foundAt,
        List<Held> custody,
        List<Seen> visits,
        @Nullable Instant endedAt,
        boolean dead) {
    /** A visit to a clinic, and when the animal was stable there, where that is told. */
    public record Seen(Instant arrivedAt, @Nullable Instant stabilisedAt) {}

    public History {
        custody = List.copyOf(custody);
        visits = List.copyOf(visits);
    }

    /** When it was first stable, if that was told. */
    Optional<Instant> stabilised() {
        return visits.stream()
                .map(Seen::stabilisedAt)
                .filter(java.util.Objects::nonNull)
                .min(java.util.Comparator.naturalOrder());
    }
}
