package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;
import org.culvert.road.network.RoadGraph;

/**
 * Events on a network, in order along the links: by link, then by metres from its from-node, then as they were given.
 *
 * <p>An event is known by its rank in that order, 0 to {@code count() - 1}; {@link #given} says which of those given it was.
 * Immutable.
 */
public final class PlacedEvents {
    private static final int LOCAL_BITS = 26;
    private static final double MOST_TICKS_A_METRE = 1e6;
    private static final double MOST_TICKS = 1L << 36;

    private final RoadGraph graph;
    private final int[] first;
    private final int[] given;
    private final int[] link;
    private final double[] metres;

    private PlacedEvents(RoadGraph graph, int[] first, int[] given, int[] link, double[] metres) {
        this.graph = graph;
        this.first = first;
        this.given = given;
        this.link = link;
        this.metres = metres;
    }

    /**
     * @param graph the network
     * @param link the link of each event
     * @param metres its distance from the link's from-node, 0 to the link's length
     * @throws IllegalArgumentException if the arrays differ in length, a link does not exist or an event is not on its link
     */
    public static PlacedEvents of(RoadGraph graph, int[] link, double[] metres) {
        if (link.length != metres.length) {
            throw new IllegalArgumentException("every event needs a link and a distance along it");
        }
        int[] first = new int[graph.linkCount() + 1];
        for (int event = 0; event < link.length; event++) {
            int on = link[event];
            if (on < 0 || on >= graph.linkCount()) {
                throw new IllegalArgumentException("event " + event + " is on link " + on + ", which does not exist");
            }
            if (!(metres[event] >= 0 && metres[event] <= graph.length(on))) {
                throw new IllegalArgumentException(
                        "event " + event + " is at " + metres[event] + " m of a link of " + graph.length(on) + " m");
            }
            first[on + 1]++;
        }
        for (int on = 0; on < graph.linkCount(); on++) {
            first[on + 1] += first[on];
        }
        int[] given = new int[link.length];
        int[] next = Arrays.copyOf(first, graph.linkCount());
        for (int event = 0; event < link.length; event++) {
            given[next[link[event]]++] = event;
        }
        double[] sorted = new double[link.length];
        int[] linkOfRank = new int[link.length];
        long[] keys = new long[0];
        for (int on = 0; on < graph.linkCount(); on++) {
            int size = first[on + 1] - first[on];
            if (size > keys.length) {
                keys = new long[2 * size];
            }
            sortOne(metres, given, first[on], size, graph.length(on), keys);
            for (int rank = first[on]; rank < first[on + 1]; rank++) {
                sorted[rank] = metres[given[rank]];
                linkOfRank[rank] = on;
            }
        }
        return new PlacedEvents(graph, first, given, linkOfRank, sorted);
    }

    /** Sorts the events of one link: by ticks of a micrometre or more, and place, in one number, and what is closer than that by hand. */
    private static void sortOne(double[] metres, int[] given, int from, int size, double length, long[] keys) {
        if (size >= 1 << LOCAL_BITS) {
            throw new IllegalArgumentException("more than " + (1 << LOCAL_BITS) + " events on one link");
        }
        double ticks = Math.min(MOST_TICKS_A_METRE, MOST_TICKS / length);
        int[] before = Arrays.copyOfRange(given, from, from + size);
        for (int i = 0; i < size; i++) {
            keys[i] = (long) (metres[before[i]] * ticks) << LOCAL_BITS | i;
        }
        Arrays.sort(keys, 0, size);
        int mask = (1 << LOCAL_BITS) - 1;
        for (int i = 0; i < size; i++) {
            int event = before[(int) (keys[i] & mask)];
            int at = from + i;
            while (at > from && metres[given[at - 1]] > metres[event]) {
                given[at] = given[at - 1];
                at--;
            }
            given[at] = event;
        }
    }

    public RoadGraph graph() {
        return graph;
    }

    public int count() {
        return link.length;
    }

    /** Which of the events given an event is. */
    public int given(int rank) {
        return given[rank];
    }

    public int link(int rank) {
        return link[rank];
    }

    /** Metres of an event from its link's from-node. */
    public double metres(int rank) {
        return metres[rank];
    }

    /** The first event of a link; {@code first(link + 1)} is one past its last. */
    int first(int ofLink) {
        return first[ofLink];
    }

    /** The first event of a link at no less than so many metres, or one past its last. */
    int firstFrom(int ofLink, double atLeast) {
        int low = first[ofLink];
        int high = first[ofLink + 1];
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (metres[middle] < atLeast) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Values in the order of rank, put back into the order in which the events were given. */
    int[] asGiven(int[] byRank) {
        int[] result = new int[byRank.length];
        for (int rank = 0; rank < byRank.length; rank++) {
            result[given[rank]] = byRank[rank];
        }
        return result;
    }

    /** Values in the order of rank, put back into the order in which the events were given. */
    double[] asGiven(double[] byRank) {
        double[] result = new double[byRank.length];
        for (int rank = 0; rank < byRank.length; rank++) {
            result[given[rank]] = byRank[rank];
        }
        return result;
    }
}
