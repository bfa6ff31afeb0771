package org.culvert.hotspot.stats;

import org.culvert.road.network.RoadGraph;

/**
 * A network cut into pieces: each link into {@code ceil(length / pieceMetres)} pieces of equal length, numbered along the
 * link from its from-node and link after link. A position on the border of two pieces belongs to the later one, the end
 * of a link to its last. Immutable.
 */
public final class Pieces {
    private final RoadGraph graph;
    private final int[] first;
    private final int[] linkOf;

    /**
     * @param graph the network
     * @param pieceMetres the longest that a piece may be, in metres, greater than zero
     */
    public Pieces(RoadGraph graph, double pieceMetres) {
        if (!(pieceMetres > 0)) {
            throw new IllegalArgumentException("a piece needs a length greater than zero, not " + pieceMetres);
        }
        this.graph = graph;
        this.first = new int[graph.linkCount() + 1];
        for (int link = 0; link < graph.linkCount(); link++) {
            double pieces = Math.ceil(graph.length(link) / pieceMetres);
            if (first[link] + pieces > Integer.MAX_VALUE / 2.0) {
                throw new IllegalArgumentException("pieces of " + pieceMetres + " m are too many for this network");
            }
            first[link + 1] = first[link] + Math.max(1, (int) pieces);
        }
        this.linkOf = new int[first[graph.linkCount()]];
        for (int link = 0; link < graph.linkCount(); link++) {
            java.util.Arrays.fill(linkOf, first[link], first[link + 1], link);
        }
    }

    /** Number of pieces of the whole network. */
    public int count() {
        return linkOf.length;
    }

    /** The first piece of a link; that of {@code link + 1} is one beyond its last. */
    public int first(int link) {
        return first[link];
    }

    public int linkOf(int piece) {
        return linkOf[piece];
    }

    /** Length of a piece in metres. */
    public double length(int piece) {
        int link = linkOf[piece];
        return graph.length(link) / (first[link + 1] - first[link]);
    }

    /** Where a piece starts, in metres from its link's from-node. */
    public double start(int piece) {
        int link = linkOf[piece];
        return graph.length(link) * (piece - first[link]) / (first[link + 1] - first[link]);
    }

    /** Where a piece ends, in metres from its link's from-node. */
    public double end(int piece) {
        int link = linkOf[piece];
        return graph.length(link) * (piece + 1 - first[link]) / (first[link + 1] - first[link]);
    }

    /** The middle of a piece, in metres from its link's from-node. */
    public double centre(int piece) {
        return 0.5 * (start(piece) + end(piece));
    }

    /** The piece at a position; positions a little off the link count as its ends. */
    public int at(int link, double metres) {
        int pieces = first[link + 1] - first[link];
        int within = (int) Math.floor(metres / graph.length(link) * pieces);
        return first[link] + Math.max(0, Math.min(pieces - 1, within));
    }

    RoadGraph graph() {
        return graph;
    }
}
