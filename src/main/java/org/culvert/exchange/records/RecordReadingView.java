package org.culvert.exchange.records;

import java.util.List;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * How somebody decided that a file is to be read. It never changes: another decision is another reading.
 *
 * @param name under which it is proposed for files with the same headings
 * @param headings of the columns
 */
public record RecordReadingView(
        UUID id,
        UUID recordFileId,
        @Nullable String name,
        List<String> headings,
        RecordReadingSettings settings,
        RecordView record) {}
