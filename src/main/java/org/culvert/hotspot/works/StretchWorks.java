package org.culvert.hotspot.works;

import org.jspecify.annotations.Nullable;

/**
 * Works on a stretch, and what they did.
 *
 * @param effect null where it cannot be told yet
 * @param whyNone why it cannot
 */
public record StretchWorks(
        WorksService.WorksView works,
        @Nullable EffectView effect,
        @Nullable String whyNone) {}
