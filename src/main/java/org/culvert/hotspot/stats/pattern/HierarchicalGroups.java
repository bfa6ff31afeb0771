package org.culvert.hotspot.stats.pattern;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Groups of differing density, without a distance to be chosen: HDBSCAN (Campello, Moulavi and Sander 2013, Density-based
 * clustering based on hierarchical density estimates, PAKDD 2013, doi:10.1007/978-3-642-37456-2_14).
 *
 * <p>The core distance of an event is that to the {@code minimumEvents}-th nearest, itself the first; two events are as far
 * apart as the greatest of both core distances and their distance. The minimum spanning tree of that, cut from its longest
 * edge down, falls apart; parts of fewer than {@code minimumEvents} fall out of their group, and where two or more parts are as
 * large they are groups of their own. The groups are chosen whose stability, {@code sum (1/d_leave - 1/d_born)} over their
 * events, is greatest; the whole is never one. Edges of equal length are cut together, so that neither order nor chance decides;
 * where other programs cut them one by one, an event at the very edge of a group may be in none here. Distances under a
 * millimetre count as one. A description, no test. Time grows with the square of the number of events.
 *
 * @param count how many groups there are
 * @param group of each event, 1 to count in the order of their first events; 0 for none
 * @param coreMetres core distance of each event
 * @param stability of each group in order
 */
public record HierarchicalGroups(int count, int[] group, double[] coreMetres, List<Double> stability) {
    private static final double LEAST_METRES = 1e-3;
    private static final double ALIKE = 1e-12;

    public HierarchicalGroups {
        stability = List.copyOf(stability);
    }

    /**
     * @param distances symmetric
     * @param minimumEvents for a core distance and for a group, at least 2
     * @throws IllegalArgumentException if there are fewer events than that, or it is less than 2
     */
    public static HierarchicalGroups of(DistanceRows distances, int minimumEvents) {
        if (minimumEvents < 2 || distances.count() < minimumEvents) {
            throw new IllegalArgumentException("a group has at least 2 events, and there are at least that many");
        }
        double[] core = coreDistances(distances, minimumEvents);
        Hierarchy hierarchy = Hierarchy.of(spanningTree(distances, core), distances.count());
        return choose(condense(hierarchy, minimumEvents), core);
    }

    private static double[] coreDistances(DistanceRows distances, int minimumEvents) {
        double[] core = new double[distances.count()];
        double[] row = new double[core.length];
        for (int event = 0; event < core.length; event++) {
            distances.from(event, row);
            double[] nearest = new double[minimumEvents];
            Arrays.fill(nearest, Double.POSITIVE_INFINITY);
            for (double away : row) {
                int at = minimumEvents - 1;
                if (away >= nearest[at]) {
                    continue;
                }
                while (at > 0 && nearest[at - 1] > away) {
                    nearest[at] = nearest[at - 1];
                    at--;
                }
                nearest[at] = away;
            }
            core[event] = nearest[minimumEvents - 1];
        }
        return core;
    }

    private record Edge(int one, int other, double metres) {}

    /** R. C. Prim 1957, doi:10.1002/j.1538-7305.1957.tb01515.x. */
    private static List<Edge> spanningTree(DistanceRows distances, double[] core) {
        int n = core.length;
        boolean[] in = new boolean[n];
        double[] nearest = new double[n];
        int[] by = new int[n];
        double[] row = new double[n];
        Arrays.fill(nearest, Double.POSITIVE_INFINITY);
        List<Edge> edges = new ArrayList<>(n - 1);
        int last = 0;
        in[0] = true;
        for (int step = 1; step < n; step++) {
            distances.from(last, row);
            int next = -1;
            for (int event = 0; event < n; event++) {
                if (in[event]) {
                    continue;
                }
                double mutual = Math.max(row[event], Math.max(core[last], core[event]));
                if (mutual < nearest[event]) {
                    nearest[event] = mutual;
                    by[event] = last;
                }
                if (next < 0 || nearest[event] < nearest[next]) {
                    next = event;
                }
            }
            edges.add(new Edge(by[next], next, nearest[next]));
            in[next] = true;
            last = next;
        }
        return edges;
    }

    /** What joins what at which distance: events are nodes 0 to n-1, joins come after, the last being the whole. */
    private record Hierarchy(int events, List<List<Integer>> children, List<Double> metres, List<Integer> size) {
        static Hierarchy of(List<Edge> edges, int n) {
            List<Edge> ascending = new ArrayList<>(edges);
            ascending.sort((a, b) -> Double.compare(a.metres(), b.metres()));
            int[] parent = IntStream.range(0, n).toArray();
            int[] nodeOf = IntStream.range(0, n).toArray();
            var hierarchy = new Hierarchy(n, new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
            for (int from = 0; from < ascending.size(); ) {
                double metres = ascending.get(from).metres();
                int to = from;
                while (to < ascending.size() && (ascending.get(to).metres() <= metres * (1 + ALIKE))) {
                    to++;
                }
                hierarchy.joinTogether(ascending.subList(from, to), parent, nodeOf, metres);
                from = to;
            }
            return hierarchy;
        }

        private void joinTogether(List<Edge> edges, int[] parent, int[] nodeOf, double metres) {
            List<Integer> before = new ArrayList<>();
            for (Edge edge : edges) {
                before.add(root(parent, edge.one()));
                before.add(root(parent, edge.other()));
            }
            int[] roots = before.stream()
                    .mapToInt(Integer::intValue)
                    .sorted()
                    .distinct()
                    .toArray();
            for (Edge edge : edges) {
                int a = root(parent, edge.one());
                int b = root(parent, edge.other());
                parent[Math.max(a, b)] = Math.min(a, b);
            }
            int[] joined = new int[roots.length];
            Arrays.setAll(joined, i -> root(parent, roots[i]));
            int[] order = IntStream.range(0, roots.length)
                    .boxed()
                    .sorted((a, b) -> Integer.compare(joined[a], joined[b]))
                    .mapToInt(Integer::intValue)
                    .toArray();
            for (int from = 0; from < order.length; ) {
                List<Integer> children = new ArrayList<>();
                int events = 0;
                int whole = joined[order[from]];
                int to = from;
                while (to < order.length && joined[order[to]] == whole) {
                    int child = nodeOf[roots[order[to]]];
                    children.add(child);
                    events += sizeOf(child);
                    to++;
                }
                this.children.add(children);
                this.metres.add(metres);
                this.size.add(events);
                nodeOf[whole] = this.events + this.children.size() - 1;
                from = to;
            }
        }

        private static int root(int[] parent, int of) {
            int at = of;
            while (parent[at] != at) {
                parent[at] = parent[parent[at]];
                at = parent[at];
            }
            return at;
        }

        int sizeOf(int node) {
            return node < events ? 1 : size.get(node - events);
        }

        double closeness(int node) {
            return 1 / Math.max(LEAST_METRES, metres.get(node - events));
        }

        List<Integer> childrenOf(int node) {
            return children.get(node - events);
        }

        List<Integer> eventsUnder(int node) {
            List<Integer> found = new ArrayList<>();
            Deque<Integer> open = new ArrayDeque<>(List.of(node));
            while (!open.isEmpty()) {
                int at = open.pop();
                if (at < events) {
                    found.add(at);
                } else {
                    open.addAll(childrenOf(at));
                }
            }
            return found;
        }
    }

    /** The groups that ever were: the parent of each, how stable, and in which every event was last. Group 0 is the whole. */
    private record Condensed(List<Integer> parent, List<Double> stability, int[] lastGroup) {}

    private record Part(int node, int group) {}

    private static Condensed condense(Hierarchy hierarchy, int minimumEvents) {
        List<Integer> parent = new ArrayList<>(List.of(-1));
        List<Double> stability = new ArrayList<>(List.of(0.0));
        List<Double> born = new ArrayList<>(List.of(0.0));
        int[] lastGroup = new int[hierarchy.events()];
        Deque<Part> open = new ArrayDeque<>();
        open.push(new Part(hierarchy.events() + hierarchy.children().size() - 1, 0));
        while (!open.isEmpty()) {
            Part part = open.pop();
            int group = part.group();
            double now = hierarchy.closeness(part.node());
            List<Integer> children = hierarchy.childrenOf(part.node());
            List<Integer> large = children.stream()
                    .filter(child -> hierarchy.sizeOf(child) >= minimumEvents)
                    .toList();
            for (int child : children) {
                boolean stays = large.size() == 1 && large.get(0) == child;
                if (stays) {
                    open.push(new Part(child, group));
                    continue;
                }
                stability.set(group, stability.get(group) + hierarchy.sizeOf(child) * (now - born.get(group)));
                if (hierarchy.sizeOf(child) >= minimumEvents) {
                    parent.add(group);
                    stability.add(0.0);
                    born.add(now);
                    open.push(new Part(child, parent.size() - 1));
                } else {
                    for (int event : hierarchy.eventsUnder(child)) {
                        lastGroup[event] = group;
                    }
                }
            }
        }
        return new Condensed(parent, stability, lastGroup);
    }

    /** Children come after their parents, so that from the last to the first each knows the best that is below it. */
    private static HierarchicalGroups choose(Condensed condensed, double[] core) {
        int groups = condensed.parent().size();
        double[] below = new double[groups];
        boolean[] itself = new boolean[groups];
        for (int group = groups - 1; group > 0; group--) {
            double own = condensed.stability().get(group);
            itself[group] = own >= below[group];
            below[condensed.parent().get(group)] += Math.max(own, below[group]);
        }
        int[] chosen = new int[groups];
        for (int group = 1; group < groups; group++) {
            int above = chosen[condensed.parent().get(group)];
            chosen[group] = above > 0 ? above : itself[group] ? group : 0;
        }
        int[] number = new int[groups];
        int[] result = new int[core.length];
        List<Double> stability = new ArrayList<>();
        for (int event = 0; event < result.length; event++) {
            int group = chosen[condensed.lastGroup()[event]];
            if (group > 0 && number[group] == 0) {
                stability.add(condensed.stability().get(group));
                number[group] = stability.size();
            }
            result[event] = number[group];
        }
        return new HierarchicalGroups(stability.size(), result, core, stability);
    }
}
