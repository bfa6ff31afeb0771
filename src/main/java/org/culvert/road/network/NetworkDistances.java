package org.culvert.road.network;

import java.util.Arrays;

/**
 * Shortest ways along a network by Dijkstra's algorithm (E. W. Dijkstra 1959, doi:10.1007/BF01386390) on flat arrays with a
 * binary heap, stopped at a limit. Costs are metres, or seconds where speeds are given. Links may be used both ways.
 *
 * <p>One instance keeps its arrays from one search to the next: not for several threads at a time. Many searches on one
 * network want one instance a thread.
 */
public final class NetworkDistances {
    private final RoadGraph graph;
    private final double[] costPerMetre;
    private final double[] cost;
    private final int[] search;
    private final int[] reached;
    private int reachedCount;
    private int searchNumber;

    private int[] heapNode = new int[64];
    private double[] heapCost = new double[64];
    private int heapSize;

    private NetworkDistances(RoadGraph graph, double[] costPerMetre) {
        this.graph = graph;
        this.costPerMetre = costPerMetre;
        this.cost = new double[graph.nodeCount()];
        this.search = new int[graph.nodeCount()];
        this.reached = new int[graph.nodeCount()];
    }

    /** Distances in metres. */
    public static NetworkDistances inMetres(RoadGraph graph) {
        double[] ones = new double[graph.linkCount()];
        Arrays.fill(ones, 1);
        return new NetworkDistances(graph, ones);
    }

    /** Travel times in seconds at the speeds of {@link TravelSpeeds}. */
    public static NetworkDistances inSeconds(RoadNetwork network) {
        double[] secondsPerMetre = new double[network.linkCount()];
        for (int link = 0; link < secondsPerMetre.length; link++) {
            secondsPerMetre[link] = 3.6 / TravelSpeeds.kmh(network.attributes(link));
        }
        return new NetworkDistances(network.graph(), secondsPerMetre);
    }

    /** The least cost between two points on links, or infinity if it is more than the limit or there is no way. */
    public double between(LinkPoint from, LinkPoint to, double limit) {
        double direct = from.link() == to.link()
                ? Math.abs(from.metres() - to.metres()) * costPerMetre[from.link()]
                : Double.POSITIVE_INFINITY;
        double toStart = to.metres() * costPerMetre[to.link()];
        double toEnd = (graph.length(to.link()) - to.metres()) * costPerMetre[to.link()];
        search(from, Math.min(limit, direct), graph.from(to.link()), graph.to(to.link()));
        double best = Math.min(
                direct, Math.min(costOf(graph.from(to.link())) + toStart, costOf(graph.to(to.link())) + toEnd));
        return best <= limit ? best : Double.POSITIVE_INFINITY;
    }

    /** Finds the cost of every node within a limit of a point; then ask {@link #costOf} and {@link #reachedNode}. */
    public void searchFrom(LinkPoint from, double limit) {
        search(from, limit, -1, -1);
    }

    /** After a search: the least cost from its start to a point on a link, or infinity where it did not get. */
    public double costOf(LinkPoint start, LinkPoint to) {
        double perMetre = costPerMetre[to.link()];
        double best = start.link() == to.link()
                ? Math.abs(start.metres() - to.metres()) * perMetre
                : Double.POSITIVE_INFINITY;
        best = Math.min(best, costOf(graph.from(to.link())) + to.metres() * perMetre);
        return Math.min(best, costOf(graph.to(to.link())) + (graph.length(to.link()) - to.metres()) * perMetre);
    }

    /** After a search: the least cost to a node, or infinity where it did not get. */
    public double costOf(int node) {
        return search[node] == searchNumber ? cost[node] : Double.POSITIVE_INFINITY;
    }

    /** After a search: the number of nodes that it settled. */
    public int reachedCount() {
        return reachedCount;
    }

    /** After a search: a node that it settled, the nearest first. */
    public int reachedNode(int index) {
        return reached[index];
    }

    private void search(LinkPoint from, double limit, int target1, int target2) {
        searchNumber++;
        reachedCount = 0;
        heapSize = 0;
        int link = from.link();
        offer(graph.from(link), from.metres() * costPerMetre[link], limit);
        offer(graph.to(link), (graph.length(link) - from.metres()) * costPerMetre[link], limit);
        int targetsLeft = target1 < 0 ? Integer.MAX_VALUE : target1 == target2 ? 1 : 2;
        while (heapSize > 0 && targetsLeft > 0) {
            int node = heapNode[0];
            double here = heapCost[0];
            removeFirst();
            if (here > cost[node]) {
                continue;
            }
            reached[reachedCount++] = node;
            if (node == target1 || node == target2) {
                targetsLeft--;
            }
            for (int k = graph.firstEnd(node); k < graph.firstEnd(node + 1); k++) {
                int end = graph.endAt(k);
                int next = end >> 1;
                offer(graph.nodeOfEnd(end ^ 1), here + graph.length(next) * costPerMetre[next], limit);
            }
        }
    }

    private void offer(int node, double newCost, double limit) {
        if (newCost > limit || (search[node] == searchNumber && cost[node] <= newCost)) {
            return;
        }
        search[node] = searchNumber;
        cost[node] = newCost;
        if (heapSize == heapNode.length) {
            heapNode = Arrays.copyOf(heapNode, 2 * heapSize);
            heapCost = Arrays.copyOf(heapCost, 2 * heapSize);
        }
        int at = heapSize++;
        while (at > 0) {
            int parent = (at - 1) >> 1;
            if (heapCost[parent] <= newCost) {
                break;
            }
            heapNode[at] = heapNode[parent];
            heapCost[at] = heapCost[parent];
            at = parent;
        }
        heapNode[at] = node;
        heapCost[at] = newCost;
    }

    private void removeFirst() {
        int node = heapNode[--heapSize];
        double moving = heapCost[heapSize];
        int at = 0;
        while (true) {
            int child = 2 * at + 1;
            if (child >= heapSize) {
                break;
            }
            if (child + 1 < heapSize && heapCost[child + 1] < heapCost[child]) {
                child++;
            }
            if (heapCost[child] >= moving) {
                break;
            }
            heapNode[at] = heapNode[child];
            heapCost[at] = heapCost[child];
            at = child;
        }
        heapNode[at] = node;
        heapCost[at] = moving;
    }
}
