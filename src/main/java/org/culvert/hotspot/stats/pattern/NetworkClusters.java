package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;
import java.util.function.IntConsumer;
import org.culvert.hotspot.stats.Parallel;
import org.culvert.road.network.RoadGraph;

/**
 * Groups of events by their density along the roads: DBSCAN (Ester, Kriegel, Sander and Xu 1996, A density-based algorithm for
 * discovering clusters in large spatial databases with noise, KDD-96, 226-231) on network distance.
 *
 * <p>An event is a core if at least {@code minimumEvents} events, itself among them, are within eps of it. Cores within eps of
 * each other are of one group, and what is within eps of a core, but is none, joins the group of its nearest core; if two are
 * equally near, the group with the lower number. All else is in no group. Distances within a micrometre of eps count as within
 * it. A description, no test: groups come out of chance as well.
 *
 * <p>Neighbours are found along each link by two pointers, and over its ends, for events within eps of them, by a search
 * that stops at eps. That the cores of one group hang together is found without looking at pairs: of every two cores on
 * either side of an edge of the network's division by nearest core (Mehlhorn 1988, A faster approximation algorithm for the
 * Steiner problem in graphs, Information Processing Letters 27, 125-128, shows that those edges hold a minimum spanning tree).
 */
public final class NetworkClusters {
    private NetworkClusters() {}

    /**
     * Groups, in the order in which the events were given.
     *
     * @param count how many groups there are
     * @param group of each event, 1 to count in the order of their first cores along the links; 0 for none
     * @param core whether each event is a core
     */
    public record Groups(int count, int[] group, boolean[] core) {
        /** How many events are in no group. */
        public int ungrouped() {
            return (int) Arrays.stream(group).filter(one -> one == 0).count();
        }
    }

    /**
     * @param events the events
     * @param epsMetres how near is near, greater than zero
     * @param minimumEvents how many make a core, itself counted, at least 1
     * @param threads how many threads may be used; the result is the same for any
     * @throws IllegalArgumentException if a setting is out of range
     */
    public static Groups dbscan(PlacedEvents events, double epsMetres, int minimumEvents, int threads) {
        if (!(epsMetres > 0) || Double.isInfinite(epsMetres) || minimumEvents < 1 || threads < 1) {
            throw new IllegalArgumentException(
                    "eps is a length greater than zero, and at least one event and one thread are needed");
        }
        boolean[] core = new boolean[events.count()];
        int[] within = countWithin(events, epsMetres, minimumEvents, threads);
        for (int rank = 0; rank < core.length; rank++) {
            core[rank] = within[rank] >= minimumEvents;
        }
        var cores = new NearestCores(events, core, epsMetres);
        int[] group = cores.groups();
        boolean[] coreAsGiven = new boolean[core.length];
        for (int rank = 0; rank < core.length; rank++) {
            coreAsGiven[events.given(rank)] = core[rank];
        }
        return new Groups(cores.groupCount(), events.asGiven(group), coreAsGiven);
    }

    /** How many events, itself counted, are within eps of each, by rank; counting may stop at so many. */
    static int[] countWithin(PlacedEvents events, double eps, int enough, int threads) {
        RoadGraph graph = events.graph();
        int[] within = new int[events.count()];
        int links = graph.linkCount();
        int chunk = Math.max(1, links / (64 * threads));
        Parallel.forEach((links + chunk - 1) / chunk, threads, () -> {
            var reach = new Reach(events);
            return (IntConsumer) part -> {
                for (int link = part * chunk; link < Math.min(links, (part + 1) * chunk); link++) {
                    countOnLink(events, link, eps, enough, within, reach);
                }
            };
        });
        return within;
    }

    private static void countOnLink(PlacedEvents events, int link, double eps, int enough, int[] within, Reach reach) {
        int first = events.first(link);
        int end = events.first(link + 1);
        double upTo = eps + Reach.MICROMETRE;
        double length = events.graph().length(link);
        int low = first;
        int high = first;
        for (int rank = first; rank < end; rank++) {
            double here = events.metres(rank);
            while (here - events.metres(low) > upTo) {
                low++;
            }
            while (high < end && events.metres(high) - here <= upTo) {
                high++;
            }
            int count = high - low;
            if (count < enough && (here <= upTo || length - here <= upTo)) {
                reach.search(link, here, eps);
                count = reach.count();
            }
            within[rank] = count;
        }
    }
}
