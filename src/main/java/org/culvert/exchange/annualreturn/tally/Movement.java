package org.culvert.exchange.annualreturn.tally;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Something came to the holder or went from it.
 *
 * @param in whether it came
 * @param how {@code transferred}, {@code custodyGap}, how it came to be held at all, or how it ended
 * @param other who had it before, or has it after; null unless it was transferred
 */
public record Movement(
        Counted what,
        boolean in,
        Instant at,
        String how,
        @Nullable Stay other) {}
