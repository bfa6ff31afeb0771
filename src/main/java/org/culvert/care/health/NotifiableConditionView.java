package org.culvert.care.health;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A disease that must be notified.
 *
 * @param jurisdiction null: wherever the network works
 * @param hotline null: none is on record, and that of the state is to be rung
 */
public record NotifiableConditionView(
        UUID id,
        @Nullable String jurisdiction,
        String name,
        List<String> taxonGroups,
        String signs,
        String source,
        LocalDate readOn,
        LocalDate reviewBy,
        @Nullable Hotline hotline,
        RecordView record) {

    /** @param reviewIsDue whether the day from which it should be looked up again has come */
    public record Hotline(
            String name, String number, String source, LocalDate readOn, LocalDate reviewBy, boolean reviewIsDue) {}
}
