package org.culvert.care.clock.limit;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One link of custody.
 *
 * @param authorised whether an authorisation was listed on its first day, or another licence was named, or the holder is a wildlife
 *     authority
 * @param clinic whether the holder is a clinic or works at one
 * @param to null while it lasts
 */
public record Held(
        UUID id,
        boolean authorised,
        boolean clinic,
        Instant from,
        @Nullable Instant to) {}
