package org.culvert.animal.intake;

import java.time.Instant;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * An animal that was taken in, with what its case says now.
 *
 * @param scientificName as it is identified now
 * @param isNotKnownYet whether nobody knows its kind yet
 * @param vitality as it came
 * @param caseState as the case says it
 */
public record SurgeIntakeView(
        UUID id,
        UUID surgeId,
        String sector,
        String temporaryNumber,
        UUID caseId,
        long caseNumber,
        String scientificName,
        boolean isNotKnownYet,
        SurgeEntries.IntakeVitality vitality,
        SurgeEntries.@Nullable Triage triage,
        @Nullable String condition,
        @Nullable Instant foundAt,
        @Nullable Instant foundNotBefore,
        Instant takenInAt,
        UUID holderMemberId,
        String origin,
        String caseState,
        RecordView record) {}
