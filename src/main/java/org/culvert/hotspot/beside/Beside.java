package org.culvert.hotspot.beside;

import org.jspecify.annotations.Nullable;

/** All sections beside the hotspots; null what was not asked for, or is not told. */
public record Beside(
        @Nullable IsItNew isItNew,
        @Nullable IsItLasting isItLasting,
        @Nullable Sensitivity sensitivity,
        @Nullable Secondary secondary,
        @Nullable RestsOn restsOn) {
    public static final Beside NONE = new Beside(null, null, null, null, null);
}
