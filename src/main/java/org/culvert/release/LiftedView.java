package org.culvert.release;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What lifted a test.
 *
 * @param kind {@code permit} or {@code override}
 * @param by the account that recorded it; the author of an override
 */
public record LiftedView(
        UUID id,
        String key,
        String kind,
        @Nullable String reason,
        @Nullable UUID agreedByMemberId,
        @Nullable String number,
        @Nullable String issuedBy,
        @Nullable String documentName,
        UUID by,
        Instant recordedAt) {}
