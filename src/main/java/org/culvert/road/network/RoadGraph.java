package org.culvert.road.network;

/**
 * The topology and the lengths of a road network, on flat arrays.
 *
 * <p>Nodes are {@code 0 .. nodeCount-1}, links {@code 0 .. linkCount-1}. A link runs from {@link #from} to {@link #to};
 * a position on it is the pair (link, metres from its from-node), {@code 0 <= metres <= length(link)}. Links are
 * undirected for distance: animals and callers do not mind one-way streets. Parallel links and loops are allowed.
 *
 * <p>An end of a link is numbered {@code 2 * link} (its from-end) or {@code 2 * link + 1} (its to-end). The ends that
 * meet at a node are found in compressed rows: {@code endAt(k)} for {@code k} in {@code [firstEnd(node),
 * firstEnd(node + 1))}, in increasing order. A loop shows both its ends at its node, so that {@link #degree} counts it
 * twice, as the theory of kernels on networks wants.
 *
 * <p>Immutable and safe for use by several threads. Lengths are in metres and greater than zero.
 */
public final class RoadGraph {
    private final int[] from;
    private final int[] to;
    private final double[] length;
    private final int[] firstEnd;
    private final int[] endAt;

    /**
     * @param nodeCount number of nodes
     * @param from from-node of each link
     * @param to to-node of each link
     * @param length length of each link in metres, finite and greater than zero
     * @throws IllegalArgumentException if the arrays differ in length, a node does not exist or a length is not positive
     */
    public RoadGraph(int nodeCount, int[] from, int[] to, double[] length) {
        if (from.length != to.length || from.length != length.length) {
            throw new IllegalArgumentException("from, to and length must have one entry a link");
        }
        this.from = from.clone();
        this.to = to.clone();
        this.length = length.clone();
        this.firstEnd = new int[nodeCount + 1];
        for (int link = 0; link < from.length; link++) {
            if (from[link] < 0 || from[link] >= nodeCount || to[link] < 0 || to[link] >= nodeCount) {
                throw new IllegalArgumentException("link " + link + " names a node that does not exist");
            }
            if (!(length[link] > 0) || Double.isInfinite(length[link])) {
                throw new IllegalArgumentException("link " + link + " has no positive, finite length");
            }
            firstEnd[from[link] + 1]++;
            firstEnd[to[link] + 1]++;
        }
        for (int node = 0; node < nodeCount; node++) {
            firstEnd[node + 1] += firstEnd[node];
        }
        this.endAt = new int[2 * from.length];
        int[] next = firstEnd.clone();
        for (int link = 0; link < from.length; link++) {
            endAt[next[from[link]]++] = 2 * link;
            endAt[next[to[link]]++] = 2 * link + 1;
        }
    }

    public int nodeCount() {
        return firstEnd.length - 1;
    }

    public int linkCount() {
        return from.length;
    }

    public int from(int link) {
        return from[link];
    }

    public int to(int link) {
        return to[link];
    }

    /** Length of a link in metres. */
    public double length(int link) {
        return length[link];
    }

    /** Length of the whole network in metres. */
    public double totalLength() {
        double sum = 0;
        for (double metres : length) {
            sum += metres;
        }
        return sum;
    }

    /** Number of link ends that meet at a node; a loop counts twice, a dead end has 1. */
    public int degree(int node) {
        return firstEnd[node + 1] - firstEnd[node];
    }

    /** Index of the first end at a node in {@link #endAt}; the last is {@code firstEnd(node + 1) - 1}. */
    public int firstEnd(int node) {
        return firstEnd[node];
    }

    /** The end at an index: {@code 2 * link} for a from-end, {@code 2 * link + 1} for a to-end. */
    public int endAt(int index) {
        return endAt[index];
    }

    /** The node at an end of a link. */
    public int nodeOfEnd(int end) {
        return (end & 1) == 0 ? from[end >> 1] : to[end >> 1];
    }
}
