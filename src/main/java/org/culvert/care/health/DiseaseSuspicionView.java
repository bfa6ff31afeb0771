package org.culvert.care.health;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A suspicion as shown.
 *
 * @param holdId the hold that stands or stood for it; it ends there
 * @param clearedAt when the authority cleared it; null while it stands
 * @param told null: the authority has not been told yet
 * @param advice whom to ring and what to do; empty once it is cleared
 */
public record DiseaseSuspicionView(
        UUID id,
        UUID caseId,
        UUID conditionId,
        String condition,
        UUID holdId,
        String signs,
        String suspectedBy,
        Instant at,
        @Nullable ToldOf told,
        @Nullable Instant clearedAt,
        List<HealthAdvice> advice,
        RecordView record) {

    /** That an authority was told of it. */
    public record ToldOf(String to, String by, @Nullable String reference, Instant at) {}
}
