package org.culvert.hotspot.stats.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.culvert.hotspot.stats.Checks;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

class NetworkClustersTest {
    /** Source: dbscan 1.1-11 for R on spatstat's network distances, eps 150, 3 events, itself counted. */
    @Test
    void smallNetworkFallsIntoTheGroupsOfR() {
        List<CSVRecord> rows = Checks.csv("dbscan/net_small_netdist_eps150_min3.csv");
        PlacedEvents events = Placed.small();
        NetworkClusters.Groups groups = NetworkClusters.dbscan(events, 150, 3, 1);
        int[] expected = rows.stream()
                .mapToInt(row -> Integer.parseInt(row.get("dbscan")))
                .toArray();
        int[] within = rows.stream()
                .mapToInt(row -> Integer.parseInt(row.get("n_within_eps")))
                .toArray();
        assertThat(Placed.partition(groups.group())).isEqualTo(Placed.partition(expected));
        assertThat(events.asGiven(NetworkClusters.countWithin(events, 150, Integer.MAX_VALUE, 1)))
                .isEqualTo(within);
        for (int event = 0; event < within.length; event++) {
            assertThat(groups.core()[event]).isEqualTo(within[event] >= 3);
        }
        assertThat(groups.ungrouped()).isEqualTo(10);
    }

    /** No source: the definition, with all distances by the search for one pair. */
    @Test
    void groupsAreThoseOfTheDefinition() {
        int withGroups = 0;
        for (int trial = 0; trial < 200; trial++) {
            var random = Placed.random(trial);
            RoadGraph graph = Placed.anyNetwork(random);
            PlacedEvents events = Placed.anyEvents(graph, 10 + random.nextInt(60), random);
            double eps = 5 + random.nextDouble() * (trial % 3 == 0 ? 300 : 60);
            int minimum = 1 + random.nextInt(5);
            NetworkClusters.Groups groups = NetworkClusters.dbscan(events, eps, minimum, 2);
            double[][] metres = Placed.distances(events);
            int n = events.count();
            boolean[] core = new boolean[n];
            for (int a = 0; a < n; a++) {
                core[a] = Arrays.stream(metres[a]).filter(away -> away <= eps).count() >= minimum;
                assertThat(groups.core()[events.given(a)])
                        .as("core, trial %s", trial)
                        .isEqualTo(core[a]);
            }
            int[] expected = components(metres, core, eps);
            int[] ours = new int[n];
            for (int rank = 0; rank < n; rank++) {
                ours[rank] = groups.group()[events.given(rank)];
            }
            assertThat(groups.count()).isEqualTo(Arrays.stream(expected).max().orElse(0));
            withGroups += groups.count() > 1 ? 1 : 0;
            for (int a = 0; a < n; a++) {
                if (core[a]) {
                    assertThat(ours[a]).as("trial %s", trial).isEqualTo(expected[a]);
                    continue;
                }
                double nearest = Double.POSITIVE_INFINITY;
                int group = 0;
                for (int b = 0; b < n; b++) {
                    if (core[b] && metres[a][b] <= eps && metres[a][b] < nearest - 1e-6) {
                        nearest = metres[a][b];
                        group = expected[b];
                    }
                }
                assertThat(ours[a]).as("border, trial %s", trial).isEqualTo(group);
            }
        }
        assertThat(withGroups).isGreaterThan(100);
    }

    /** Components of the cores, numbered in the order of rank. */
    private static int[] components(double[][] metres, boolean[] core, double eps) {
        int[] group = new int[core.length];
        int next = 0;
        for (int start = 0; start < core.length; start++) {
            if (!core[start] || group[start] > 0) {
                continue;
            }
            group[start] = ++next;
            Deque<Integer> open = new ArrayDeque<>(List.of(start));
            while (!open.isEmpty()) {
                int at = open.pop();
                for (int other = 0; other < core.length; other++) {
                    if (core[other] && group[other] == 0 && metres[at][other] <= eps) {
                        group[other] = next;
                        open.push(other);
                    }
                }
            }
        }
        return group;
    }

    /** No source: the invariant of the room. */
    @Test
    void neitherOrderNorThreadsChangeAnything() {
        var random = Placed.random(77);
        RoadGraph graph = Placed.anyNetwork(random);
        PlacedEvents events = Placed.anyEvents(graph, 120, random);
        NetworkClusters.Groups groups = NetworkClusters.dbscan(events, 30, 4, 1);
        int[] order = Placed.shuffled(120, random);
        NetworkClusters.Groups again = NetworkClusters.dbscan(Placed.reordered(events, order), 30, 4, 3);
        assertThat(again.count()).isEqualTo(groups.count()).isGreaterThan(1);
        for (int i = 0; i < order.length; i++) {
            assertThat(again.group()[i]).isEqualTo(groups.group()[order[i]]);
        }
    }

    /** No source: chainages to 0.1 km, so that distances are exactly eps. */
    @Test
    void eventsExactlyAtEpsAreNear() {
        var graph = new RoadGraph(3, new int[] {0, 1}, new int[] {1, 2}, new double[] {1000.3, 999.7});
        double[] chainage = {900, 1000, 1100, 1200};
        int[] link = {0, 0, 1, 1};
        double[] metres = {900, 1000, 1100 - 1000.3, 1200 - 1000.3};
        NetworkClusters.Groups groups = NetworkClusters.dbscan(PlacedEvents.of(graph, link, metres), 100, 2, 1);
        assertThat(groups.group()).hasSize(chainage.length).containsOnly(1);
    }

    @Test
    void settingsOutOfRangeAreRefused() {
        assertThatThrownBy(() -> NetworkClusters.dbscan(Placed.small(), 0, 3, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("greater than zero");
    }

    /** Source: dbscan 1.1-11 for R, HDBSCAN of 160 points in the plane, 6 points. */
    @Test
    void hierarchyOfThePlaneIsThatOfR() {
        List<CSVRecord> rows = Checks.csv("dbscan/planar160.csv");
        double[] x = Checks.column(rows, "x");
        double[] y = Checks.column(rows, "y");
        HierarchicalGroups groups = HierarchicalGroups.of(plane(x, y), 6);
        double[] core = Checks.column(rows, "hdb_coredist");
        int[] expected = rows.stream()
                .mapToInt(row -> Integer.parseInt(row.get("hdbscan_min6")))
                .toArray();
        for (int i = 0; i < core.length; i++) {
            assertThat(groups.coreMetres()[i]).isCloseTo(core[i], within(1e-9));
        }
        assertThat(groups.count()).isEqualTo(3);
        // R counts an event on after its part has become too small to be a group; the paper does not. The group that
        // falls apart
        // into two before that has R's own figure, the others those of an independent script in Python, below R's.
        var scores = Checks.json("dbscan/planar160_hdbscan.json").get("cluster_scores");
        double[] stability = new double[4];
        for (int i = 0; i < expected.length; i++) {
            if (groups.group()[i] > 0) {
                stability[expected[i]] = groups.stability().get(groups.group()[i] - 1);
            }
        }
        assertThat(stability[2]).isCloseTo(scores.get("2").asDouble(), within(1e-11));
        assertThat(stability[1])
                .isCloseTo(0.795847, within(1e-6))
                .isLessThan(scores.get("1").asDouble());
        assertThat(stability[3])
                .isCloseTo(1.679479, within(1e-6))
                .isLessThan(scores.get("3").asDouble());
        // One event came into its group at the very edge at which that was born: R's membership of it is 0, and here it
        // is in none.
        int[] ours = groups.group().clone();
        int atTheEdge = 0;
        for (int i = 0; i < ours.length; i++) {
            if (ours[i] == 0 && expected[i] > 0) {
                assertThat(Checks.number(rows.get(i), "hdb_prob")).isZero();
                ours[i] = groups.group()[firstOf(expected, expected[i])];
                atTheEdge++;
            }
        }
        assertThat(atTheEdge).isEqualTo(1);
        assertThat(Placed.partition(ours)).isEqualTo(Placed.partition(expected));
    }

    private static int firstOf(int[] values, int wanted) {
        int at = 0;
        while (values[at] != wanted) {
            at++;
        }
        return at;
    }

    private static DistanceRows plane(double[] x, double[] y) {
        return new DistanceRows() {
            @Override
            public int count() {
                return x.length;
            }

            @Override
            public void from(int event, double[] into) {
                Arrays.setAll(into, i -> Math.hypot(x[i] - x[event], y[i] - y[event]));
            }
        };
    }

    /** Source: dbscan 1.1-11 for R on spatstat's network distances, 3 events. */
    @Test
    void hierarchyOfTheSmallNetworkIsThatOfR() {
        List<CSVRecord> rows = Checks.csv("dbscan/net_small_netdist_eps150_min3.csv");
        PlacedEvents events = Placed.small();
        HierarchicalGroups groups = HierarchicalGroups.of(DistanceRows.alongRoads(events, Double.POSITIVE_INFINITY), 3);
        double[] core = events.asGiven(groups.coreMetres());
        int[] group = Placed.partition(events.asGiven(groups.group()));
        int[] expected = Placed.partition(rows.stream()
                .mapToInt(row -> Integer.parseInt(row.get("hdbscan")))
                .toArray());
        for (int i = 0; i < core.length; i++) {
            assertThat(core[i]).isCloseTo(Checks.number(rows.get(i), "hdb_coredist"), within(1e-6));
        }
        // Event 11 is as far from the one group as from the other, to the last digit: R gives it to one, and here it is
        // in none.
        assertThat(group[10]).isZero();
        group[10] = expected[10];
        assertThat(group).isEqualTo(expected);
    }

    /** No source: the invariant of the room, and copied pins. */
    @Test
    void hierarchyDependsOnNeitherOrderNorTies() {
        for (int trial = 0; trial < 40; trial++) {
            var random = Placed.random(trial);
            double[] x = new double[60];
            double[] y = new double[60];
            Arrays.setAll(x, i -> 10 * random.nextInt(12));
            Arrays.setAll(y, i -> 10 * random.nextInt(5));
            HierarchicalGroups groups = HierarchicalGroups.of(plane(x, y), 4);
            int[] order = Placed.shuffled(60, random);
            HierarchicalGroups again = HierarchicalGroups.of(
                    plane(
                            Arrays.stream(order).mapToDouble(i -> x[i]).toArray(),
                            Arrays.stream(order).mapToDouble(i -> y[i]).toArray()),
                    4);
            int[] same = new int[60];
            for (int i = 0; i < 60; i++) {
                same[order[i]] = again.group()[i];
            }
            assertThat(Placed.partition(same)).as("trial %s", trial).isEqualTo(Placed.partition(groups.group()));
        }
    }
}
