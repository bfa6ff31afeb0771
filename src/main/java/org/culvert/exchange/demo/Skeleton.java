package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The country roads as a plane graph: towns and scattered crossroads, joined where no third lies in the circle over the
 * line between them (Gabriel and Sokal 1969), thinned, given classes by what they join, and run together into roads that
 * go straight on at their crossroads.
 */
final class Skeleton {
    private final Settings settings;
    private final Ground ground;
    private final Dice dice;
    private final List<Spot> nodes = new ArrayList<>();
    private final List<Edge> edges = new ArrayList<>();

    private static final class Edge {
        final int a;
        final int b;
        final double length;
        RoadClass kind = RoadClass.TERTIARY;

        Edge(int a, int b, double length) {
            this.a = a;
            this.b = b;
            this.length = length;
        }

        int other(int node) {
            return node == a ? b : a;
        }
    }

    /** Nodes in order along one road, with its class. */
    record Chain(RoadClass kind, List<Spot> nodes) {}

    private Skeleton(Settings settings) {
        this.settings = settings;
        this.ground = settings.ground();
        this.dice = new Dice(settings.seed(), "skeleton of roads");
    }

    static Skeleton make(Settings settings) {
        Skeleton skeleton = new Skeleton(settings);
        skeleton.scatter();
        skeleton.join();
        skeleton.thin();
        skeleton.classify();
        return skeleton;
    }

    List<Spot> nodes() {
        return nodes;
    }

    Spot nodeNear(double x, double y) {
        Spot wanted = ground.spot(x, y);
        Spot best = nodes.get(0);
        for (Spot node : nodes) {
            if (ground.distance(node, wanted) < ground.distance(best, wanted)) {
                best = node;
            }
        }
        return best;
    }

    private void scatter() {
        settings.towns().forEach(town -> nodes.add(ground.spot(town.x(), town.y())));
        Spot main = nodes.get(0);
        for (int dart = 0; dart < 40_000; dart++) {
            Spot spot = ground.spot(
                    dice.between(2_500, ground.widthMetres() - 2_500),
                    dice.between(2_500, ground.heightMetres() - 2_500));
            double apart = 5_200 + 4_000 * StrictMath.min(1, ground.distance(spot, main) / 45_000);
            if (nodes.stream().allMatch(node -> ground.distance(node, spot) > apart)) {
                nodes.add(spot);
            }
        }
    }

    private void join() {
        for (int a = 0; a < nodes.size(); a++) {
            for (int b = a + 1; b < nodes.size(); b++) {
                double length = ground.distance(nodes.get(a), nodes.get(b));
                if (length < 16_000 && circleIsEmpty(a, b)) {
                    edges.add(new Edge(a, b, length));
                }
            }
        }
    }

    private boolean circleIsEmpty(int a, int b) {
        double square = StrictMath.pow(ground.distance(nodes.get(a), nodes.get(b)), 2);
        for (int c = 0; c < nodes.size(); c++) {
            if (c != a
                    && c != b
                    && StrictMath.pow(ground.distance(nodes.get(a), nodes.get(c)), 2)
                                    + StrictMath.pow(ground.distance(nodes.get(b), nodes.get(c)), 2)
                            < square) {
                return false;
            }
        }
        return true;
    }

    /** Takes out a part of the roads, but never the last way to a place. */
    private void thin() {
        int target = (int) (edges.size() * 0.8);
        for (Edge edge : dice.shuffled(edges)) {
            if (edges.size() > target && way(edge.a, edge.b, edge).length > 2) {
                edges.remove(edge);
            }
        }
    }

    private void classify() {
        for (Edge edge : edges) {
            edge.kind = dice.chance(0.62) ? RoadClass.TERTIARY : RoadClass.UNCLASSIFIED;
        }
        List<Settings.Town> towns = settings.towns();
        for (int town = towns.size() - 1; town > 0; town--) {
            raise(way(0, town, null), towns.get(town).streets() > 3 ? RoadClass.PRIMARY : RoadClass.SECONDARY);
        }
        for (int town = 1; town < towns.size(); town++) {
            int next = town % (towns.size() - 1) + 1;
            raise(way(town, next, null), RoadClass.SECONDARY);
        }
    }

    private void raise(int[] way, RoadClass kind) {
        for (int i = 1; i < way.length; i++) {
            for (Edge edge : edges) {
                boolean same = edge.a == way[i - 1] && edge.b == way[i] || edge.b == way[i - 1] && edge.a == way[i];
                if (same && edge.kind.compareTo(kind) > 0) {
                    edge.kind = kind;
                }
            }
        }
    }

    /** The nodes of the shortest way, without one edge; empty if there is none. */
    private int[] way(int from, int to, @Nullable Edge without) {
        double[] distance = new double[nodes.size()];
        int[] before = new int[nodes.size()];
        boolean[] done = new boolean[nodes.size()];
        Arrays.fill(distance, Double.POSITIVE_INFINITY);
        Arrays.fill(before, -1);
        distance[from] = 0;
        for (int round = 0; round < nodes.size(); round++) {
            int nearest = -1;
            for (int node = 0; node < nodes.size(); node++) {
                if (!done[node] && (nearest < 0 || distance[node] < distance[nearest])) {
                    nearest = node;
                }
            }
            if (nearest < 0 || Double.isInfinite(distance[nearest])) {
                break;
            }
            done[nearest] = true;
            for (Edge edge : edges) {
                if (edge != without && (edge.a == nearest || edge.b == nearest)) {
                    int other = edge.other(nearest);
                    if (distance[nearest] + edge.length < distance[other]) {
                        distance[other] = distance[nearest] + edge.length;
                        before[other] = nearest;
                    }
                }
            }
        }
        if (Double.isInfinite(distance[to])) {
            return new int[0];
        }
        List<Integer> way = new ArrayList<>();
        for (int node = to; node >= 0; node = before[node]) {
            way.add(0, node);
        }
        return way.stream().mapToInt(Integer::intValue).toArray();
    }

    /** Runs edges of one class together, straight on at each node. */
    List<Chain> chains() {
        List<Chain> chains = new ArrayList<>();
        List<Edge> left = new ArrayList<>(edges);
        while (!left.isEmpty()) {
            Edge first = left.remove(0);
            List<Integer> way = new ArrayList<>(List.of(first.a, first.b));
            extend(way, first.kind, left);
            Collections.reverse(way);
            extend(way, first.kind, left);
            chains.add(new Chain(first.kind, way.stream().map(nodes::get).toList()));
        }
        return chains;
    }

    private void extend(List<Integer> way, RoadClass kind, List<Edge> left) {
        while (true) {
            int last = way.get(way.size() - 1);
            int previous = way.get(way.size() - 2);
            Edge best = null;
            double bestCosine = 0.5;
            for (Edge edge : left) {
                if (edge.kind == kind && (edge.a == last || edge.b == last)) {
                    double cosine = straightness(previous, last, edge.other(last));
                    if (cosine > bestCosine) {
                        best = edge;
                        bestCosine = cosine;
                    }
                }
            }
            if (best == null || way.contains(best.other(last))) {
                return;
            }
            left.remove(best);
            way.add(best.other(last));
        }
    }

    private double straightness(int a, int b, int c) {
        double ux = ground.x(nodes.get(b)) - ground.x(nodes.get(a));
        double uy = ground.y(nodes.get(b)) - ground.y(nodes.get(a));
        double vx = ground.x(nodes.get(c)) - ground.x(nodes.get(b));
        double vy = ground.y(nodes.get(c)) - ground.y(nodes.get(b));
        return (ux * vx + uy * vy) / (Ground.hypotenuse(ux, uy) * Ground.hypotenuse(vx, vy));
    }
}
