package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import org.culvert.road.network.RoadGraph;

/**
 * Joins significant pieces that meet on one road, trims each stretch to the events on it, and ranks what is left.
 *
 * <p>A kernel leaks up side roads: so a stretch without events of its own is not named, whatever its density.
 */
final class HotspotNaming {
    private static final double INTERVAL_LEVEL = 0.95;

    private final RoadGraph graph;
    private final Pieces pieces;
    private final Chainage chainage;
    private final Twins twins;
    private final int[] eventsIn;
    private final double[] expectedIn;
    private final Settings settings;

    HotspotNaming(
            Pieces pieces, Chainage chainage, Twins twins, int[] eventsIn, double[] expectedIn, Settings settings) {
        this.graph = pieces.graph();
        this.pieces = pieces;
        this.chainage = chainage;
        this.twins = twins;
        this.eventsIn = eventsIn;
        this.expectedIn = expectedIn;
        this.settings = settings;
    }

    List<Hotspot> name(double[] adjustedP, IntPredicate links) {
        var significant = new BitSet();
        for (int piece = 0; piece < pieces.count(); piece++) {
            if (adjustedP[piece] <= settings.alpha() && links.test(pieces.linkOf(piece))) {
                significant.set(piece);
            }
        }
        List<Hotspot> named = new ArrayList<>();
        for (List<Integer> meeting : stretches(significant)) {
            var stretch = new Stretch(meeting);
            if (stretch.incidents() >= settings.minimumIncidents()) {
                named.add(stretch.describe(adjustedP));
            }
        }
        named.sort(Comparator.comparingDouble((Hotspot hotspot) -> -hotspot.excess())
                .thenComparingDouble(Hotspot::adjustedP)
                .thenComparingInt(Hotspot::road)
                .thenComparingDouble(Hotspot::fromChainageMetres)
                .thenComparingInt(hotspot -> hotspot.spans().get(0).link()));
        List<Hotspot> ranked = new ArrayList<>();
        for (Hotspot hotspot : named) {
            ranked.add(hotspot.withRank(ranked.size() + 1));
        }
        return ranked;
    }

    /** Sets of significant pieces that meet on one road, each by its smallest piece. */
    private Iterable<List<Integer>> stretches(BitSet significant) {
        int[] parent = new int[pieces.count()];
        for (int piece = 0; piece < parent.length; piece++) {
            parent[piece] = piece;
        }
        for (int piece = significant.nextSetBit(0); piece >= 0; piece = significant.nextSetBit(piece + 1)) {
            if (significant.get(piece + 1) && pieces.linkOf(piece) == pieces.linkOf(piece + 1)) {
                join(parent, piece, piece + 1);
            }
            int twin = twins.of(piece);
            if (twin >= 0 && significant.get(twin) && roadOf(piece) == roadOf(twin)) {
                join(parent, piece, twin);
            }
        }
        for (int node = 0; node < graph.nodeCount(); node++) {
            for (int i = graph.firstEnd(node); i < graph.firstEnd(node + 1); i++) {
                int one = pieceAtEnd(graph.endAt(i));
                if (!significant.get(one)) {
                    continue;
                }
                for (int k = i + 1; k < graph.firstEnd(node + 1); k++) {
                    int other = pieceAtEnd(graph.endAt(k));
                    if (significant.get(other) && roadOf(one) == roadOf(other)) {
                        join(parent, one, other);
                    }
                }
            }
        }
        Map<Integer, List<Integer>> byRoot = new TreeMap<>();
        significant.stream()
                .forEach(piece -> byRoot.computeIfAbsent(root(parent, piece), key -> new ArrayList<>())
                        .add(piece));
        return byRoot.values();
    }

    private int roadOf(int piece) {
        return chainage.road(pieces.linkOf(piece));
    }

    private int pieceAtEnd(int end) {
        int link = end >> 1;
        return (end & 1) == 0 ? pieces.first(link) : pieces.first(link + 1) - 1;
    }

    private static int root(int[] parent, int piece) {
        int at = piece;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }

    private static void join(int[] parent, int one, int other) {
        int a = root(parent, one);
        int b = root(parent, other);
        parent[Math.max(a, b)] = Math.min(a, b);
    }

    /**
     * The stretch from its first event to its last, along its main strand: that with the most events. Pieces of another
     * carriageway lie where the piece beside them does.
     */
    private final class Stretch {
        private final List<Integer> inOrder = new ArrayList<>();
        private final int mainStrand;

        Stretch(List<Integer> pieces) {
            Map<Integer, Integer> eventsOf = new TreeMap<>();
            pieces.forEach(piece -> eventsOf.merge(strandOf(piece), eventsIn[piece], Integer::sum));
            this.mainStrand = eventsOf.entrySet().stream()
                    .max(Map.Entry.<Integer, Integer>comparingByValue()
                            .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                    .map(Map.Entry::getKey)
                    .orElseThrow();
            var events = pieces.stream()
                    .filter(piece -> eventsIn[piece] > 0)
                    .mapToDouble(this::along)
                    .summaryStatistics();
            pieces.stream()
                    .filter(piece -> along(piece) >= events.getMin() && along(piece) <= events.getMax())
                    .sorted(Comparator.comparingDouble(this::along).thenComparing(Comparator.naturalOrder()))
                    .forEach(inOrder::add);
        }

        private double along(int piece) {
            int twin = twins.of(piece);
            return middle(strandOf(piece) != mainStrand && twin >= 0 ? twin : piece);
        }

        int incidents() {
            return inOrder.stream().mapToInt(piece -> eventsIn[piece]).sum();
        }

        Hotspot describe(double[] adjustedP) {
            var covered = new BitSet();
            inOrder.forEach(covered::set);
            boolean onMain = inOrder.stream().anyMatch(piece -> strandOf(piece) == mainStrand);
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            double length = 0;
            double expected = 0;
            double p = 1;
            for (int piece : inOrder) {
                int link = pieces.linkOf(piece);
                if (!onMain || strandOf(piece) == mainStrand) {
                    double start = chainage.at(link, pieces.start(piece));
                    double end = chainage.at(link, pieces.end(piece));
                    low = Math.min(low, Math.min(start, end));
                    high = Math.max(high, Math.max(start, end));
                }
                boolean both = twins.of(piece) >= 0 && covered.get(twins.of(piece));
                length += both ? pieces.length(piece) / 2 : pieces.length(piece);
                expected += expectedIn[piece];
                p = Math.min(p, adjustedP[piece]);
            }
            CountInterval interval = CountInterval.of(incidents(), INTERVAL_LEVEL);
            return new Hotspot(
                    0,
                    roadOf(inOrder.get(0)),
                    spans(inOrder),
                    low,
                    high,
                    length,
                    incidents(),
                    expected,
                    interval.low(),
                    interval.high(),
                    p);
        }
    }

    private int strandOf(int piece) {
        return chainage.strand(pieces.linkOf(piece));
    }

    private double middle(int piece) {
        return chainage.at(pieces.linkOf(piece), pieces.centre(piece));
    }

    /** The runs of neighbouring pieces on each link, in the order in which the chainage first meets them. */
    private List<Hotspot.Span> spans(List<Integer> stretch) {
        var left = new BitSet();
        stretch.forEach(left::set);
        List<Hotspot.Span> spans = new ArrayList<>();
        for (int piece : stretch) {
            if (!left.get(piece)) {
                continue;
            }
            int link = pieces.linkOf(piece);
            int first = piece;
            while (first > pieces.first(link) && left.get(first - 1)) {
                first--;
            }
            int last = piece;
            while (last + 1 < pieces.first(link + 1) && left.get(last + 1)) {
                last++;
            }
            int incidents = 0;
            for (int covered = first; covered <= last; covered++) {
                incidents += eventsIn[covered];
            }
            left.clear(first, last + 1);
            spans.add(new Hotspot.Span(link, pieces.start(first), pieces.end(last), incidents));
        }
        return spans;
    }
}
