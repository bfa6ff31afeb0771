package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.hotspot.stats.Checks;
import org.culvert.road.network.LinkPoint;
import org.culvert.road.network.NetworkDistances;
import org.culvert.road.network.RoadGraph;

/** Networks and events for the tests of this room. */
final class Placed {
    private Placed() {}

    static UniformRandomProvider random(long seed) {
        return RandomSource.XO_SHI_RO_256_PP.create(seed);
    }

    /** The 16 events of the small network of net_small. */
    static PlacedEvents small() {
        RoadGraph graph = Checks.smallNetwork();
        List<CSVRecord> rows = Checks.csv("net_small/points.csv");
        int[] link = rows.stream()
                .mapToInt(row -> Integer.parseInt(row.get("seg")) - 1)
                .toArray();
        double[] metres = new double[link.length];
        Arrays.setAll(metres, i -> Checks.number(rows.get(i), "tp") * graph.length(link[i]));
        return PlacedEvents.of(graph, link, metres);
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

    static PlacedEvents anyEvents(RoadGraph graph, int count, UniformRandomProvider random) {
        int[] link = new int[count];
        double[] metres = new double[count];
        for (int event = 0; event < count; event++) {
            link[event] = random.nextInt(graph.linkCount());
            metres[event] = random.nextDouble() * graph.length(link[event]);
        }
        return PlacedEvents.of(graph, link, metres);
    }

    /** The same events, given in another order. */
    static PlacedEvents reordered(PlacedEvents events, int[] order) {
        int[] rankOf = new int[events.count()];
        for (int rank = 0; rank < rankOf.length; rank++) {
            rankOf[events.given(rank)] = rank;
        }
        return PlacedEvents.of(
                events.graph(),
                Arrays.stream(order).map(given -> events.link(rankOf[given])).toArray(),
                Arrays.stream(order)
                        .mapToDouble(given -> events.metres(rankOf[given]))
                        .toArray());
    }

    static int[] shuffled(int count, UniformRandomProvider random) {
        int[] order = IntStream.range(0, count).toArray();
        Simulations.shuffle(order, random);
        return order;
    }

    /** Distances between all events by rank, by the search for one pair. */
    static double[][] distances(PlacedEvents events) {
        var search = NetworkDistances.inMetres(events.graph());
        double[][] metres = new double[events.count()][events.count()];
        for (int a = 0; a < metres.length; a++) {
            for (int b = 0; b < metres.length; b++) {
                metres[a][b] = search.between(
                        new LinkPoint(events.link(a), events.metres(a)),
                        new LinkPoint(events.link(b), events.metres(b)),
                        Double.POSITIVE_INFINITY);
            }
        }
        return metres;
    }

    /** Groups renumbered in the order in which they come, 0 staying 0, so that partitions can be compared. */
    static int[] partition(int[] groups) {
        int[] number = new int[Arrays.stream(groups).max().orElse(0) + 1];
        int[] result = new int[groups.length];
        int next = 0;
        for (int i = 0; i < groups.length; i++) {
            if (groups[i] > 0 && number[groups[i]] == 0) {
                number[groups[i]] = ++next;
            }
            result[i] = groups[i] > 0 ? number[groups[i]] : 0;
        }
        return result;
    }
}
