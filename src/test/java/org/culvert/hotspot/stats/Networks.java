package org.culvert.hotspot.stats;

import java.util.Arrays;
import java.util.BitSet;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.road.network.RoadGraph;

/** Small road networks for tests. */
final class Networks {
    private Networks() {}

    static UniformRandomProvider random(long seed) {
        return RandomSource.XO_SHI_RO_256_PP.create(seed);
    }

    /** One road of links of equal length, end to end, from node 0. */
    static RoadGraph oneRoad(int links, double linkMetres) {
        double[] length = new double[links];
        Arrays.fill(length, linkMetres);
        return new RoadGraph(
                links + 1,
                IntStream.range(0, links).toArray(),
                IntStream.rangeClosed(1, links).toArray(),
                length);
    }

    /** {@code side * side} nodes in a square; first all links to the right, row by row, then all links upwards. */
    static RoadGraph grid(int side, double linkMetres) {
        int links = 2 * side * (side - 1);
        int[] from = new int[links];
        int[] to = new int[links];
        double[] length = new double[links];
        Arrays.fill(length, linkMetres);
        int link = 0;
        for (int row = 0; row < side; row++) {
            for (int column = 0; column + 1 < side; column++) {
                from[link] = row * side + column;
                to[link++] = row * side + column + 1;
            }
        }
        for (int column = 0; column < side; column++) {
            for (int row = 0; row + 1 < side; row++) {
                from[link] = row * side + column;
                to[link++] = (row + 1) * side + column;
            }
        }
        return new RoadGraph(side * side, from, to, length);
    }

    /** On a {@link #grid}: every row of links is one road, and every column. */
    static Chainage gridChainage(int side, RoadGraph graph) {
        int links = graph.linkCount();
        int[] road = IntStream.range(0, links).map(link -> link / (side - 1)).toArray();
        double[] from = IntStream.range(0, links)
                .mapToDouble(link -> link % (side - 1) * graph.length(link))
                .toArray();
        double[] to = IntStream.range(0, links)
                .mapToDouble(link -> from[link] + graph.length(link))
                .toArray();
        return new Chainage(road, new int[links], from, to, lengths(graph));
    }

    /** All links are one road, end to end in their order. */
    static Chainage oneChainage(RoadGraph graph) {
        int links = graph.linkCount();
        double[] from = new double[links];
        double[] to = new double[links];
        double at = 0;
        for (int link = 0; link < links; link++) {
            from[link] = at;
            at += graph.length(link);
            to[link] = at;
        }
        return new Chainage(new int[links], new int[links], from, to, lengths(graph));
    }

    /** Every link is a road of its own. */
    static Chainage ownChainage(RoadGraph graph) {
        double[] length = lengths(graph);
        return new Chainage(
                IntStream.range(0, length.length).toArray(),
                new int[length.length],
                new double[length.length],
                length,
                length);
    }

    static double[] lengths(RoadGraph graph) {
        return IntStream.range(0, graph.linkCount()).mapToDouble(graph::length).toArray();
    }

    /** A connected network with loops, parallel links and dead ends. */
    static RoadGraph anyNetwork(UniformRandomProvider random) {
        int nodes = 3 + random.nextInt(12);
        int links = nodes - 1 + random.nextInt(8);
        int[] from = new int[links];
        int[] to = new int[links];
        double[] length = new double[links];
        for (int link = 0; link < links; link++) {
            from[link] = link < nodes - 1 ? random.nextInt(link + 1) : random.nextInt(nodes);
            to[link] = link < nodes - 1 ? link + 1 : random.nextInt(nodes);
            length[link] = 20 + 400 * random.nextDouble();
        }
        return new RoadGraph(nodes, from, to, length);
    }

    static BitSet all(int count) {
        var set = new BitSet();
        set.set(0, count);
        return set;
    }
}
