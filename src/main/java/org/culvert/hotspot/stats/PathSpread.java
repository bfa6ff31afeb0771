package org.culvert.hotspot.stats;

import java.util.Arrays;
import org.culvert.road.network.RoadGraph;

/**
 * Spreads one event over the pieces within reach by the equal-split discontinuous rule, in order of distance, carrying on
 * as one the paths that arrive at a link end at nearly the same distance. Not safe for several threads.
 */
final class PathSpread {
    private static final int BINS = 512;

    private final RoadGraph graph;
    private final Pieces pieces;
    private final RoadKernel kernel;
    private final Bin[] bins = new Bin[BINS];

    /** Paths about to leave on a link from one of its ends, at distances in one bin. */
    private static final class Bin {
        private int[] end = new int[4];
        private double[] distance = new double[4];
        private double[] weight = new double[4];
        private int count;
        private int done;

        private void add(int leavingEnd, double at, double carrying) {
            for (int i = done; i < count; i++) {
                if (end[i] == leavingEnd) {
                    double both = weight[i] + carrying;
                    distance[i] = (weight[i] * distance[i] + carrying * at) / both;
                    weight[i] = both;
                    return;
                }
            }
            if (count == end.length) {
                end = Arrays.copyOf(end, 2 * count);
                distance = Arrays.copyOf(distance, 2 * count);
                weight = Arrays.copyOf(weight, 2 * count);
            }
            end[count] = leavingEnd;
            distance[count] = at;
            weight[count++] = carrying;
        }
    }

    PathSpread(Pieces pieces, RoadKernel kernel) {
        this.graph = pieces.graph();
        this.pieces = pieces;
        this.kernel = kernel;
        for (int bin = 0; bin < BINS; bin++) {
            bins[bin] = new Bin();
        }
    }

    void from(int piece, KernelRows.RowBuffer into) {
        int link = pieces.linkOf(piece);
        double centre = pieces.centre(piece);
        double length = graph.length(link);
        travel(2 * link + 1, length - centre, 0, 1, into);
        travel(2 * link, centre, 0, 1, into);
        for (Bin bin : bins) {
            while (bin.done < bin.count) {
                int next = bin.done++;
                travel(bin.end[next], 0, bin.distance[next], bin.weight[next], into);
            }
            bin.done = 0;
            bin.count = 0;
        }
    }

    /**
     * Goes along a link away from one of its ends.
     *
     * @param leavingEnd the end that lies behind
     * @param offset how far from that end the way starts
     * @param distance length of the path up to there
     */
    private void travel(int leavingEnd, double offset, double distance, double weight, KernelRows.RowBuffer into) {
        int link = leavingEnd >> 1;
        boolean forwards = (leavingEnd & 1) == 0;
        double length = graph.length(link);
        double reach = kernel.reachMetres();
        int first = pieces.first(link);
        int count = pieces.first(link + 1) - first;
        double pieceLength = length / count;
        double gone = offset;
        double before = kernel.massWithin(distance);
        for (int k = (int) Math.min(count - 1.0, Math.floor(offset / pieceLength)); k < count; k++) {
            double border = k + 1 == count ? length : (k + 1) * pieceLength;
            if (border > gone) {
                double after = kernel.massWithin(distance + border - offset);
                into.add(forwards ? first + k : first + count - 1 - k, weight * (after - before) / pieceLength);
                before = after;
                gone = border;
            }
            if (distance + border - offset >= reach) {
                return;
            }
        }
        arrive(leavingEnd ^ 1, distance + length - offset, weight);
    }

    private void arrive(int end, double distance, double weight) {
        if (distance >= kernel.reachMetres()) {
            return;
        }
        Bin bin = bins[(int) (distance / kernel.reachMetres() * BINS)];
        int node = graph.nodeOfEnd(end);
        int degree = graph.degree(node);
        if (degree == 1) {
            bin.add(end, distance, weight);
            return;
        }
        double share = weight / (degree - 1);
        for (int k = graph.firstEnd(node); k < graph.firstEnd(node + 1); k++) {
            if (graph.endAt(k) != end) {
                bin.add(graph.endAt(k), distance, share);
            }
        }
    }
}
