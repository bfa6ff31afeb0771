package org.culvert.exchange.records;

import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A taking of rows into the register.
 *
 * @param state {@code waiting}, {@code underway}, {@code done} or {@code failed}; until it is done nothing of it is in the register
 * @param rowsEntered rows made ready so far
 * @param rowsTaken rows taken, once it is done
 * @param importId which all its records carry
 * @param failure why nothing was taken
 */
public record RecordTakingView(
        UUID id,
        UUID trialId,
        String which,
        boolean doubtful,
        boolean oneIncident,
        String reason,
        String state,
        @Nullable Instant begunAt,
        @Nullable Instant finishedAt,
        long rowsEntered,
        @Nullable Long rowsTaken,
        @Nullable UUID importId,
        @Nullable String failure,
        RecordView record) {}
