package org.culvert.exchange.files;

import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A file that was brought, and how far its reading is.
 *
 * @param told what was told beside it, as its entry has it
 * @param state {@code waiting}, {@code underway}, {@code tried}, {@code taken} or {@code failed}
 * @param step what is done with it now, as {@link org.culvert.platform.file.ReadingWatch} has it
 * @param whole how many there are to be done in the step; 0 where that is not known
 * @param octetsAreKept whether it can be read again without being sent
 */
public record BroughtFileView(
        UUID id,
        BroughtFileKind kind,
        String fileName,
        long octets,
        Map<String, Object> told,
        String state,
        String step,
        long done,
        long whole,
        @Nullable Instant endedAt,
        @Nullable FileResult result,
        @Nullable FileFailure failure,
        boolean octetsAreKept,
        RecordView record) {
    public boolean isRunning() {
        return state.equals("waiting") || state.equals("underway");
    }
}
