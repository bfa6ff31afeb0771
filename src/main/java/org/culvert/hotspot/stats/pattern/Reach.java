package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;
import org.culvert.road.network.LinkPoint;
import org.culvert.road.network.NetworkDistances;
import org.culvert.road.network.RoadGraph;

/**
 * The events within a distance of a point along the roads, by a search that stops at that distance.
 *
 * <p>One instance keeps its arrays from one search to the next: one for each thread.
 */
final class Reach {
    /** Sums along two ways to the same place differ by rounding: what is nearer to the limit than this is within it. */
    static final double MICROMETRE = 1e-6;

    private final PlacedEvents events;
    private final RoadGraph graph;
    private final NetworkDistances distances;
    private final int[] seen;
    private int search;

    private int[] touched = new int[16];
    private int touchedCount;
    private int[] found = new int[64];
    private double[] distance = new double[64];
    private int count;

    Reach(PlacedEvents events) {
        this.events = events;
        this.graph = events.graph();
        this.distances = NetworkDistances.inMetres(graph);
        this.seen = new int[graph.linkCount()];
    }

    /** Finds the events within a distance of a point; then ask {@link #count}, {@link #event} and {@link #metres}. */
    void search(int link, double metres, double limit) {
        travel(link, metres, limit);
        count = 0;
        for (int i = 0; i < touchedCount; i++) {
            gather(touched[i], link, metres, limit);
        }
    }

    /** Finds the links within a distance of a point, the point's own first; then ask {@link #touchedCount}. */
    void travel(int link, double metres, double limit) {
        distances.searchFrom(new LinkPoint(link, metres), limit + MICROMETRE);
        search++;
        touchedCount = 0;
        touch(link);
        for (int i = 0; i < distances.reachedCount(); i++) {
            int node = distances.reachedNode(i);
            for (int k = graph.firstEnd(node); k < graph.firstEnd(node + 1); k++) {
                touch(graph.endAt(k) >> 1);
            }
        }
    }

    private void touch(int link) {
        if (seen[link] == search) {
            return;
        }
        seen[link] = search;
        if (touchedCount == touched.length) {
            touched = Arrays.copyOf(touched, 2 * touchedCount);
        }
        touched[touchedCount++] = link;
    }

    private void gather(int on, int link, double metres, double limit) {
        double toFrom = distances.costOf(graph.from(on));
        double toTo = distances.costOf(graph.to(on));
        double length = graph.length(on);
        double upTo = limit + MICROMETRE;
        boolean own = on == link;
        int end = events.first(on + 1);
        int at = events.first(on);
        while (at < end && events.metres(at) <= upTo - toFrom) {
            add(at, own, metres, toFrom, toTo, length);
            at++;
        }
        if (own && at < end) {
            at = Math.max(at, events.firstFrom(on, metres - upTo));
            while (at < end && events.metres(at) <= metres + upTo) {
                add(at, true, metres, toFrom, toTo, length);
                at++;
            }
        }
        if (at < end && toTo < upTo) {
            at = Math.max(at, events.firstFrom(on, length - (upTo - toTo)));
            while (at < end) {
                add(at, own, metres, toFrom, toTo, length);
                at++;
            }
        }
    }

    private void add(int event, boolean own, double metres, double toFrom, double toTo, double length) {
        double there = events.metres(event);
        double away = Math.min(toFrom + there, toTo + (length - there));
        if (own) {
            away = Math.min(away, Math.abs(there - metres));
        }
        if (count == found.length) {
            found = Arrays.copyOf(found, 2 * count);
            distance = Arrays.copyOf(distance, 2 * count);
        }
        found[count] = event;
        distance[count++] = away;
    }

    /** How many events were found. */
    int count() {
        return count;
    }

    /** An event found, by rank. */
    int event(int index) {
        return found[index];
    }

    /** Its distance. */
    double metres(int index) {
        return distance[index];
    }

    /** How many links the search touched. */
    int touchedCount() {
        return touchedCount;
    }

    int touched(int index) {
        return touched[index];
    }

    /** After a search: the distance to a node, or infinity where it did not get. */
    double toNode(int node) {
        return distances.costOf(node);
    }
}
