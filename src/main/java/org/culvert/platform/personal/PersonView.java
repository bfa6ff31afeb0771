package org.culvert.platform.personal;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Somebody the network has personal data of.
 *
 * @param kind {@code people} for callers, finders and holders, {@code members} for those of the roster
 * @param callSign of a member
 * @param calls how many calls of theirs there are
 * @param hiddenAt since when they are hidden from everybody who works with records
 * @param erasureRequestedAt when they asked to be erased
 * @param dueOn the day on which they are erased; null while nobody can tell
 * @param why why they are still here, in words
 */
public record PersonView(
        UUID id,
        String kind,
        @Nullable String name,
        @Nullable String phone,
        @Nullable String email,
        @Nullable String address,
        @Nullable String callSign,
        int calls,
        @Nullable Instant lastDealingAt,
        @Nullable Instant hiddenAt,
        @Nullable Instant erasureRequestedAt,
        @Nullable Instant erasedAt,
        @Nullable LocalDate dueOn,
        String why) {}
