package org.culvert.exchange.records;

import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A trial of a file of old records.
 *
 * @param state {@code waiting}, {@code underway}, {@code done} or {@code failed}
 * @param rowsRight rows that can be taken as they stand
 * @param rowsDoubtful rows that can be taken where somebody says so
 * @param rowsApart rows of domestic animals, and rows that repeat another word for word: counted, and never taken
 * @param rowsRefused rows that cannot be taken as they stand
 * @param networkNumber version of the roads on which places were looked up; null where none were imported
 * @param stale why its rows can no longer be taken, or null while they can
 * @param signs what the whole file shows, once it is done
 * @param summary what its rows have, once it is done
 * @param failure why it failed
 */
public record RecordTrialView(
        UUID id,
        UUID recordFileId,
        UUID readingId,
        String state,
        @Nullable Instant begunAt,
        @Nullable Instant finishedAt,
        long rowsRead,
        long rowsRight,
        long rowsDoubtful,
        long rowsApart,
        long rowsRefused,
        @Nullable Integer networkNumber,
        @Nullable String stale,
        @Nullable RecordTrialSigns signs,
        @Nullable RecordTrialSummary summary,
        @Nullable String failure,
        RecordView record) {}
