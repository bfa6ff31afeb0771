package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;

/** Distances from one event to all: along roads, or by any other measure that is symmetric. */
public interface DistanceRows {
    int count();

    /**
     * Writes the distance from one event to each, itself among them with 0; infinity where there is no way.
     *
     * @param into as long as {@link #count}
     */
    void from(int event, double[] into);

    /**
     * Distances along roads, events by rank. Searches stop at a distance: what is farther apart counts as not joined, so that
     * large networks stay affordable.
     *
     * @param farthestMetres greater than zero, infinity for no limit
     * @throws IllegalArgumentException if it is not
     */
    static DistanceRows alongRoads(PlacedEvents events, double farthestMetres) {
        if (!(farthestMetres > 0)) {
            throw new IllegalArgumentException("the farthest distance is greater than zero, not " + farthestMetres);
        }
        var reach = new Reach(events);
        return new DistanceRows() {
            @Override
            public int count() {
                return events.count();
            }

            @Override
            public void from(int event, double[] into) {
                Arrays.fill(into, Double.POSITIVE_INFINITY);
                reach.search(events.link(event), events.metres(event), farthestMetres);
                for (int i = 0; i < reach.count(); i++) {
                    into[reach.event(i)] = reach.metres(i);
                }
            }
        };
    }
}
