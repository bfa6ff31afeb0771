package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;
import org.culvert.road.network.RoadGraph;

/**
 * The core nearest to each node of a network, within eps, and from it the groups of all events: see {@link NetworkClusters}.
 *
 * <p>One search from all cores at once. Of cores equally near the one with the lower rank is taken.
 */
final class NearestCores {
    private static final int NONE = -1;

    private final PlacedEvents events;
    private final RoadGraph graph;
    private final boolean[] core;
    private final double upTo;
    private final int[] parent;
    private final int[] nearest;
    private final double[] metres;
    private final int[] firstCore;
    private final int[] lastCore;
    private int groupCount;

    private int[] heapNode = new int[64];
    private int[] heapCore = new int[64];
    private double[] heapMetres = new double[64];
    private int heapSize;

    NearestCores(PlacedEvents events, boolean[] core, double eps) {
        this.events = events;
        this.graph = events.graph();
        this.core = core;
        this.upTo = eps + Reach.MICROMETRE;
        this.parent = new int[events.count()];
        this.nearest = new int[graph.nodeCount()];
        this.metres = new double[graph.nodeCount()];
        this.firstCore = new int[graph.linkCount()];
        this.lastCore = new int[graph.linkCount()];
        for (int rank = 0; rank < parent.length; rank++) {
            parent[rank] = rank;
        }
        Arrays.fill(nearest, NONE);
        Arrays.fill(metres, Double.POSITIVE_INFINITY);
        joinAlongLinks();
        search();
        joinOverNodes();
    }

    /** Joins the cores that follow one another on a link within eps, and begins the search at those nearest to its ends. */
    private void joinAlongLinks() {
        for (int link = 0; link < graph.linkCount(); link++) {
            firstCore[link] = NONE;
            lastCore[link] = NONE;
            for (int rank = events.first(link); rank < events.first(link + 1); rank++) {
                if (!core[rank]) {
                    continue;
                }
                if (firstCore[link] == NONE) {
                    firstCore[link] = rank;
                } else if (events.metres(rank) - events.metres(lastCore[link]) <= upTo) {
                    join(rank, lastCore[link]);
                }
                lastCore[link] = rank;
            }
            if (firstCore[link] != NONE) {
                offer(graph.from(link), firstCore[link], events.metres(firstCore[link]));
                offer(graph.to(link), lastCore[link], graph.length(link) - events.metres(lastCore[link]));
            }
        }
    }

    private void search() {
        while (heapSize > 0) {
            int node = heapNode[0];
            int by = heapCore[0];
            double here = heapMetres[0];
            removeFirst();
            if (here != metres[node] || by != nearest[node]) {
                continue;
            }
            for (int k = graph.firstEnd(node); k < graph.firstEnd(node + 1); k++) {
                int end = graph.endAt(k);
                if (firstCore[end >> 1] == NONE) {
                    offer(graph.nodeOfEnd(end ^ 1), by, here + graph.length(end >> 1));
                }
            }
        }
    }

    /** Joins the cores on either side of every edge: link without cores, or its ends up to the cores on it. */
    private void joinOverNodes() {
        for (int link = 0; link < graph.linkCount(); link++) {
            int from = graph.from(link);
            int to = graph.to(link);
            if (firstCore[link] == NONE) {
                joinIf(nearest[from], nearest[to], metres[from] + graph.length(link) + metres[to]);
            } else {
                joinIf(nearest[from], firstCore[link], metres[from] + events.metres(firstCore[link]));
                joinIf(nearest[to], lastCore[link], metres[to] + (graph.length(link) - events.metres(lastCore[link])));
            }
        }
    }

    private void joinIf(int one, int other, double apart) {
        if (one != NONE && other != NONE && apart <= upTo) {
            join(one, other);
        }
    }

    int groupCount() {
        return groupCount;
    }

    /** The group of every event by rank, 0 for none. */
    int[] groups() {
        int[] group = new int[parent.length];
        int[] numberOfRoot = new int[parent.length];
        for (int rank = 0; rank < parent.length; rank++) {
            if (core[rank]) {
                int root = root(rank);
                if (numberOfRoot[root] == 0) {
                    numberOfRoot[root] = ++groupCount;
                }
                group[rank] = numberOfRoot[root];
            }
        }
        for (int link = 0; link < graph.linkCount(); link++) {
            int before = NONE;
            int after = NONE;
            for (int rank = events.first(link); rank < events.first(link + 1); rank++) {
                if (core[rank]) {
                    before = rank;
                    continue;
                }
                if (after < rank) {
                    after = rank + 1;
                    while (after < events.first(link + 1) && !core[after]) {
                        after++;
                    }
                }
                group[rank] = groupOfNearest(link, rank, before, after, group);
            }
        }
        return group;
    }

    private int groupOfNearest(int link, int rank, int before, int after, int[] group) {
        double here = events.metres(rank);
        double best = upTo;
        int number = 0;
        int[] by = {
            before, after < events.first(link + 1) ? after : NONE, nearest[graph.from(link)], nearest[graph.to(link)]
        };
        for (int way = 0; way < by.length; way++) {
            if (by[way] == NONE) {
                continue;
            }
            double away = switch (way) {
                case 0 -> here - events.metres(before);
                case 1 -> events.metres(after) - here;
                case 2 -> metres[graph.from(link)] + here;
                default -> metres[graph.to(link)] + (graph.length(link) - here);
            };
            int candidate = group[by[way]];
            boolean alike = Math.abs(away - best) <= Reach.MICROMETRE && number > 0;
            if (alike ? candidate < number : away <= best) {
                number = candidate;
                best = away;
            }
        }
        return number;
    }

    private int root(int of) {
        int at = of;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }

    /** The lower rank becomes the root. */
    private void join(int one, int other) {
        int a = root(one);
        int b = root(other);
        parent[Math.max(a, b)] = Math.min(a, b);
    }

    private void offer(int node, int by, double away) {
        if (away > upTo || away > metres[node] || (away == metres[node] && by >= nearest[node])) {
            return;
        }
        metres[node] = away;
        nearest[node] = by;
        if (heapSize == heapNode.length) {
            heapNode = Arrays.copyOf(heapNode, 2 * heapSize);
            heapCore = Arrays.copyOf(heapCore, 2 * heapSize);
            heapMetres = Arrays.copyOf(heapMetres, 2 * heapSize);
        }
        int at = heapSize++;
        while (at > 0 && heapMetres[(at - 1) >> 1] > away) {
            move((at - 1) >> 1, at);
            at = (at - 1) >> 1;
        }
        heapNode[at] = node;
        heapCore[at] = by;
        heapMetres[at] = away;
    }

    private void removeFirst() {
        int last = --heapSize;
        int at = 0;
        while (true) {
            int child = 2 * at + 1;
            if (child >= last) {
                break;
            }
            if (child + 1 < last && heapMetres[child + 1] < heapMetres[child]) {
                child++;
            }
            if (heapMetres[child] >= heapMetres[last]) {
                break;
            }
            move(child, at);
            at = child;
        }
        move(last, at);
    }

    private void move(int from, int to) {
        heapNode[to] = heapNode[from];
        heapCore[to] = heapCore[from];
        heapMetres[to] = heapMetres[from];
    }
}
