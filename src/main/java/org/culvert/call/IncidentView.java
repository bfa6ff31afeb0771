package org.culvert.call;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * An incident with its calls and those of the incidents joined to it.
 *
 * @param happenedAt when it happened, or null where nobody knows
 * @param happenedNotBefore the latest instant at which it had certainly not happened
 * @param progress {@code logged}, {@code offered}, {@code underway} or {@code closed}, derived from its attendances
 * @param standsUnder the incident it is joined to, or null
 * @param joins the joins that hold other incidents to this one
 */
public record IncidentView(
        UUID id,
        long number,
        String cause,
        boolean collision,
        @Nullable Instant happenedAt,
        @Nullable Instant happenedNotBefore,
        Instant reportedAt,
        @Nullable PlaceView place,
        String progress,
        @Nullable UUID standsUnder,
        List<JoinView> joins,
        List<CallView> calls,
        RecordView record) {

    /**
     * A decision that two incidents are one.
     *
     * @param undoneAt when it was taken back, or null while it stands
     */
    public record JoinView(
            UUID id,
            UUID keptIncidentId,
            UUID joinedIncidentId,
            String reason,
            Instant joinedAt,
            @Nullable Instant undoneAt,
            @Nullable String undoneReason,
            RecordView record) {}
}
