package org.culvert.care.health;

import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/** A threshold as shown. */
public record AlertThresholdView(
        UUID id,
        @Nullable UUID syndromeId,
        int smallestCount,
        double withinKilometres,
        int withinDays,
        String source,
        LocalDate readOn,
        LocalDate validFrom,
        @Nullable LocalDate validTo,
        RecordView record) {}
