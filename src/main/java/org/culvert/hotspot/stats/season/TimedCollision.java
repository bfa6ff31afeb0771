package org.culvert.hotspot.stats.season;

import java.time.Instant;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;

/**
 * When and where one collision happened, and when it was told of: two times that are never taken one for the other.
 *
 * @param happened between which instants; null where nobody knows
 * @param reported when somebody reported it; null where not recorded
 * @param position where, for the sun; null where not known
 */
public record TimedCollision(
        @Nullable TimeBounds happened,
        @Nullable Instant reported,
        @Nullable Position position) {}
