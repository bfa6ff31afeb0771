package org.culvert.road.network;

import org.jspecify.annotations.Nullable;

/**
 * What else is known when a position is put on a road.
 *
 * @param roadName a name or number that someone gave, or null
 * @param direction a direction of travel or a carriageway that someone gave, e.g. "northbound", or null
 */
public record SnapHints(@Nullable String roadName, @Nullable String direction) {
    public static final SnapHints NONE = new SnapHints(null, null);

    public SnapHints {
        roadName = roadName == null || roadName.isBlank() ? null : roadName;
        direction = direction == null || direction.isBlank() ? null : direction;
    }
}
