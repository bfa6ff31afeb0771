package org.culvert.care.health;

import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/** A syndrome as shown. */
public record SyndromeView(
        UUID id,
        String name,
        @Nullable String taxonGroup,
        String words,
        String source,
        LocalDate readOn,
        RecordView record) {}
