package org.culvert.platform.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * The two clocks of a record and its current revision.
 *
 * @param happenedAt when it happened in the world, or null where nobody knows
 * @param recordedAt when it was entered
 * @param recordedBy name of the account that entered it
 * @param lateByHours whole hours from when it could have been entered until it was, when more than one; else null
 * @param revision 1 while it stands as it was entered, one more for every revision
 * @param revisedAt when the current revision was made, or null while the first one stands; likewise the others
 */
public record RecordView(
        @Nullable Instant happenedAt,
        Instant recordedAt,
        String recordedBy,
        @Nullable Long lateByHours,
        int revision,
        @Nullable Instant revisedAt,
        @Nullable String revisedBy,
        @Nullable String revisionReason) {}
