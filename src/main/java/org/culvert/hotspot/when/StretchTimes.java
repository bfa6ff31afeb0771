package org.culvert.hotspot.when;

import java.util.List;
import org.culvert.hotspot.when.CollisionSeasonsView.HourTable;
import org.culvert.hotspot.when.CollisionSeasonsView.LightTable;
import org.jspecify.annotations.Nullable;

/**
 * At what hours and in which light collisions happened on a stretch of road.
 *
 * @param sun over the middle of the stretch, twelve months from January
 */
public record StretchTimes(int yearFrom, int yearTo, LightTable light, HourTable hours, List<SunOfMonth> sun) {
    /**
     * The sun on the middle day of a month, in hours by the clocks of the region; null for what does not happen.
     *
     * @param dawn beginning of civil twilight
     * @param dusk its end
     */
    public record SunOfMonth(
            int month,
            @Nullable Double dawn,
            @Nullable Double sunrise,
            @Nullable Double sunset,
            @Nullable Double dusk) {}
}
