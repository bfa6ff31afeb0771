package org.culvert.hotspot.stats;

import java.util.List;

/**
 * A stretch of one road on which events are denser than the kind of chance allows.
 *
 * <p>The interval is the exact one for a Poisson count, and is not corrected for the stretch having been chosen by looking
 * where the count is high: before it is quoted as a forecast, that must be said.
 *
 * @param rank 1 for the greatest excess
 * @param road number of the road
 * @param spans what it covers, in order of chainage
 * @param fromChainageMetres where it starts along the road; of a divided road, along the carriageway with more events
 * @param toChainageMetres where it ends
 * @param lengthMetres length of road covered, two carriageways side by side counted once
 * @param incidents events recorded on it
 * @param expected events that the kind of chance would record on it
 * @param intervalLow lower end of the 95 % interval of the count
 * @param intervalHigh upper end
 * @param adjustedP the smallest p on it, adjusted for all places of the network
 */
public record Hotspot(
        int rank,
        int road,
        List<Span> spans,
        double fromChainageMetres,
        double toChainageMetres,
        double lengthMetres,
        int incidents,
        double expected,
        double intervalLow,
        double intervalHigh,
        double adjustedP) {
    /**
     * Part of a link.
     *
     * @param link the link
     * @param fromMetres where the part starts, from the link's from-node
     * @param toMetres where it ends, greater than {@code fromMetres}
     * @param incidents events recorded on it
     */
    public record Span(int link, double fromMetres, double toMetres, int incidents) {}

    public Hotspot {
        spans = List.copyOf(spans);
    }

    /** Incidents beyond what chance would record. */
    public double excess() {
        return incidents - expected;
    }

    Hotspot withRank(int newRank) {
        return new Hotspot(
                newRank,
                road,
                spans,
                fromChainageMetres,
                toChainageMetres,
                lengthMetres,
                incidents,
                expected,
                intervalLow,
                intervalHigh,
                adjustedP);
    }
}
