package org.culvert.care.health;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What whoever entered an exposure is told: what to do, and nothing of the person.
 *
 * @param hold {@code set}, {@code kept} where one stood already, or {@code none}
 */
public record ExposureReceipt(
        UUID id,
        @Nullable UUID caseId,
        String hold,
        @Nullable UUID holdId,
        List<HealthAdvice> advice,
        String note) {
    static final String NOTE =
            "Whom it concerns is kept apart and read by very few. This is no medical advice: the public health unit decides.";
}
