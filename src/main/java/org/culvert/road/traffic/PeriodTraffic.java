package org.culvert.road.traffic;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.road.network.LinkTraffic;
import org.culvert.road.network.LinkTraffic.Basis;
import org.jspecify.annotations.Nullable;

/**
 * The traffic of all links of a network in a period, and what it was made of.
 *
 * @param links the traffic of each link
 * @param stations the counts of each station that its figures of the period hang on, in the order of the stations that {@code links} names
 * @param notPlaced counts of the period that the network has no place for
 * @param oneDirection counts of one direction whose other direction nobody entered, so that they say nothing of both
 * @param notAnnual counts that are no annual averages, and say nothing of a year
 * @param sha256 of the figures of all links
 */
public record PeriodTraffic(
        int firstYear,
        int lastYear,
        LinkTraffic links,
        List<List<UUID>> stations,
        int notPlaced,
        int oneDirection,
        int notAnnual,
        String sha256) {

    /** What of it may be told to everybody who sees what it was used for. */
    public TrafficUsed used() {
        Map<Basis, Double> metres = links.metresByBasis();
        return new TrafficUsed(
                firstYear,
                lastYear,
                kilometres(metres.get(Basis.COUNTED)),
                kilometres(metres.get(Basis.ESTIMATED)),
                kilometres(metres.get(Basis.ROADS_FILE)),
                kilometres(metres.get(Basis.UNKNOWN)),
                notPlaced + oneDirection + notAnnual,
                LinkTraffic.RULE,
                sha256);
    }

    private static double kilometres(@Nullable Double metres) {
        return metres == null ? 0 : Math.round(metres) / 1000.0;
    }
}
