package org.culvert.exchange.records;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.culvert.platform.ledger.RecordView;
import org.jspecify.annotations.Nullable;

/**
 * A file of old records.
 *
 * @param octets how many it has
 * @param sha256 digest of them (SHA-256, FIPS 180-4) in hexadecimal digits
 * @param keepUntil day until which its octets are kept, unless it is called off before
 * @param calledOffAt when somebody called it off
 * @param erasedAt since when its octets, its examples and the rows of its trials are no longer kept
 * @param readingId how it is to be read, as was decided last
 * @param inspection what was found in it; left out in lists and once it is erased
 */
public record RecordFileView(
        UUID id,
        String fileName,
        long octets,
        String sha256,
        LocalDate keepUntil,
        @Nullable Instant calledOffAt,
        @Nullable String calledOffBecause,
        @Nullable Instant erasedAt,
        @Nullable UUID readingId,
        @Nullable RecordInspectionView inspection,
        RecordView record) {}
