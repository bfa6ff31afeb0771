package org.culvert.hotspot;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Collisions by road and year. They are counts of what was reported, and no hotspots: where more people drive or look, more is
 * reported.
 *
 * @param smallestCount counts below this, and those that would give them back, are left out for roads authorities; null
 *     where nothing is left out
 * @param years the columns
 * @param roads the rows; none where the places of the group are not told
 * @param incidents totals by year, null where left out
 * @param total of all, null where left out
 */
public record CollisionCountsView(
        LocalDate from,
        LocalDate to,
        @Nullable String taxonGroup,
        @Nullable String seasonWindow,
        @Nullable Integer smallestCount,
        List<Integer> years,
        List<RoadView> roads,
        List<@Nullable Integer> incidents,
        @Nullable Integer total,
        String note) {

    /**
     * A road.
     *
     * @param incidents by year, null where left out
     */
    public record RoadView(
            String roadName,
            List<@Nullable Integer> incidents,
            @Nullable Integer total) {}
}
