package org.culvert.care.health;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A report as shown.
 *
 * @param day in the region
 * @param isPlaced whether its place is known; one without is counted with none
 * @param alertId the alert that it is in, or null
 */
public record SyndromeReportView(
        UUID id,
        UUID caseId,
        UUID syndromeId,
        String syndrome,
        LocalDate day,
        @Nullable String words,
        boolean isPlaced,
        @Nullable UUID alertId,
        @Nullable Instant withdrawnAt,
        @Nullable String withdrawnBecause,
        String note,
        RecordView record) {
    static final String NOTE =
            "Where a disease that must be notified is suspected, one animal is enough: enter that suspicion by itself and ring"
                    + " the hotline. Check your local code and your licensed vet.";
}
