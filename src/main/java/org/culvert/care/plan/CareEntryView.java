package org.culvert.care.plan;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.care.plan.PlanEntries.CareKind;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * An entry as kept.
 *
 * @param stepWords what the step asked for, of a task
 * @param date the first day on which the task was due, of a task
 * @param unit of the value
 * @param photographId a photograph of the same case that shows it
 * @param doneLate whether a task was done after it was due
 * @param flags what a vet should hear of: {@code belowLow}, {@code aboveHigh}, {@code flaggedAnswer}, {@code fallsFast}
 */
public record CareEntryView(
        UUID id,
        UUID caseId,
        CareKind kind,
        @Nullable UUID planId,
        @Nullable String stepKey,
        @Nullable Integer day,
        @Nullable String stepWords,
        @Nullable LocalDate date,
        @Nullable Double value,
        @Nullable String unit,
        @Nullable Boolean answer,
        @Nullable String words,
        @Nullable String skippedBecause,
        @Nullable UUID photographId,
        Instant at,
        boolean doneLate,
        List<Flag> flags,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnBecause,
        RecordView record) {
    public enum Flag {
        belowLow,
        aboveHigh,
        flaggedAnswer,
        fallsFast
    }
}
