package org.culvert.road.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Finds places by road: at a chainage, or where two roads meet or cross. */
public final class RoadFinder {
    /** Nodes of one junction of divided roads lie this near each other: common practice, no source. */
    private static final double ONE_JUNCTION_METRES = 100;

    private static final double SAME_PLACE_METRES = 1e-6;

    private final RoadNetwork network;

    public RoadFinder(RoadNetwork network) {
        this.network = network;
    }

    /**
     * Every place on some roads with a chainage, in the order of roads and links; two where a road has the chainage twice. A
     * chainage beyond a road's end by no more than the tolerance is taken as its end.
     *
     * @param toleranceMetres half the precision to which the chainage was given
     */
    public List<LinkPoint> atChainage(List<Road> roads, double chainageMetres, double toleranceMetres) {
        List<LinkPoint> exact = places(roads, chainageMetres, SAME_PLACE_METRES);
        if (!exact.isEmpty()) {
            return exact;
        }
        double[] nearest = {Double.NaN, Double.POSITIVE_INFINITY};
        for (Road road : roads) {
            for (int link : road.links()) {
                consider(nearest, network.fromChainage(link), chainageMetres);
                consider(nearest, network.toChainage(link), chainageMetres);
            }
        }
        boolean nearEnough = nearest[1] <= toleranceMetres;
        return nearEnough ? places(roads, nearest[0], SAME_PLACE_METRES) : List.of();
    }

    private static void consider(double[] nearest, double end, double wanted) {
        if (Math.abs(end - wanted) < nearest[1]) {
            nearest[0] = end;
            nearest[1] = Math.abs(end - wanted);
        }
    }

    private List<LinkPoint> places(List<Road> roads, double chainage, double slack) {
        List<LinkPoint> places = new ArrayList<>();
        for (Road road : roads) {
            for (int link : road.links()) {
                double from = network.fromChainage(link);
                double to = network.toChainage(link);
                if (chainage >= from - slack && chainage <= to + slack) {
                    LinkPoint place = new LinkPoint(
                            link, Math.max(0, Math.min(network.graph().length(link), chainage - from)));
                    if (places.stream().noneMatch(known -> same(known, place))) {
                        places.add(place);
                    }
                }
            }
        }
        return places;
    }

    private boolean same(LinkPoint one, LinkPoint other) {
        double[] here = network.pointAt(one.link(), one.metres());
        double[] there = network.pointAt(other.link(), other.metres());
        return Math.hypot(here[0] - there[0], here[1] - there[1]) < 1e-3
                && network.roadOf(one.link()).number()
                        == network.roadOf(other.link()).number();
    }

    /** The stretches of chainage that a road has, joined where they touch: from, to, from, to. */
    public double[] chainageRanges(Road road) {
        List<double[]> ranges = new ArrayList<>();
        List<Integer> links = new ArrayList<>();
        for (int link : road.links()) {
            links.add(link);
        }
        links.sort(Comparator.comparingDouble(network::fromChainage));
        for (int link : links) {
            double from = network.fromChainage(link);
            double to = network.toChainage(link);
            double[] last = ranges.isEmpty() ? null : ranges.get(ranges.size() - 1);
            if (last != null && from <= last[1] + 0.01) {
                last[1] = Math.max(last[1], to);
            } else {
                ranges.add(new double[] {from, to});
            }
        }
        return ranges.stream().flatMapToDouble(Arrays::stream).toArray();
    }

    /**
     * A junction or crossing of two roads.
     *
     * @param point on a link of the first road
     * @param spreadMetres how far the nodes of the junction are from the point at most; 0 for a single node
     * @param sharesNode whether the roads meet there; false where one passes over the other
     */
    public record Crossing(LinkPoint point, double spreadMetres, boolean sharesNode) {}

    /**
     * Where two roads meet, or where they do not meet at all, where one passes over the other. Nodes within 100 m of each
     * other are one junction, at the node nearest to their middle.
     */
    public List<Crossing> crossings(List<Road> roads, List<Road> others) {
        List<LinkPoint> nodes = sharedNodes(roads, others);
        boolean share = !nodes.isEmpty();
        List<LinkPoint> points = share ? nodes : passes(roads, others);
        List<Crossing> crossings = new ArrayList<>();
        List<LinkPoint> left = new ArrayList<>(points);
        while (!left.isEmpty()) {
            LinkPoint first = left.get(0);
            List<LinkPoint> together = left.stream()
                    .filter(point -> apart(first, point) <= ONE_JUNCTION_METRES)
                    .toList();
            left.removeAll(together);
            crossings.add(crossing(together, share));
        }
        return crossings;
    }

    private Crossing crossing(List<LinkPoint> together, boolean share) {
        LinkPoint middle = together.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (LinkPoint point : together) {
            double farthest = together.stream()
                    .mapToDouble(other -> apart(point, other))
                    .max()
                    .orElse(0);
            if (farthest < least) {
                least = farthest;
                middle = point;
            }
        }
        return new Crossing(middle, least, share);
    }

    private double apart(LinkPoint one, LinkPoint other) {
        double[] here = network.pointAt(one.link(), one.metres());
        double[] there = network.pointAt(other.link(), other.metres());
        return Math.hypot(here[0] - there[0], here[1] - there[1]);
    }

    private List<LinkPoint> sharedNodes(List<Road> roads, List<Road> others) {
        RoadGraph graph = network.graph();
        BitSet ofOthers = new BitSet(graph.nodeCount());
        for (Road other : others) {
            for (int link : other.links()) {
                ofOthers.set(graph.from(link));
                ofOthers.set(graph.to(link));
            }
        }
        BitSet seen = new BitSet(graph.nodeCount());
        List<LinkPoint> points = new ArrayList<>();
        for (Road road : roads) {
            for (int link : road.links()) {
                add(points, seen, ofOthers, graph.from(link), new LinkPoint(link, 0));
                add(points, seen, ofOthers, graph.to(link), new LinkPoint(link, graph.length(link)));
            }
        }
        return points;
    }

    private static void add(List<LinkPoint> points, BitSet seen, BitSet wanted, int node, LinkPoint point) {
        if (wanted.get(node) && !seen.get(node)) {
            seen.set(node);
            points.add(point);
        }
    }

    private List<LinkPoint> passes(List<Road> roads, List<Road> others) {
        BitSet ofOthers = new BitSet(network.linkCount());
        others.forEach(other -> Arrays.stream(other.links()).forEach(ofOthers::set));
        List<LinkPoint> points = new ArrayList<>();
        for (Road road : roads) {
            for (int link : road.links()) {
                for (int segment = network.firstVertex(link); segment < network.firstVertex(link + 1) - 1; segment++) {
                    passesOf(link, segment, ofOthers, points);
                }
            }
        }
        return points;
    }

    private void passesOf(int link, int segment, BitSet ofOthers, List<LinkPoint> points) {
        Coordinate from = vertex(segment);
        Coordinate to = vertex(segment + 1);
        double start = network.vertexMeasure(segment);
        double size = network.vertexMeasure(segment + 1) - start;
        network.index().visit(new Envelope(from, to), (otherLink, otherSegment) -> {
            if (!ofOthers.get(otherLink)) {
                return;
            }
            RobustLineIntersector lines = new RobustLineIntersector();
            lines.computeIntersection(from, to, vertex(otherSegment), vertex(otherSegment + 1));
            if (lines.hasIntersection()) {
                double part = from.distance(lines.getIntersection(0)) / Math.max(from.distance(to), 1e-12);
                double metres = Math.min(network.graph().length(link), start + part * size);
                points.add(new LinkPoint(link, metres));
            }
        });
    }

    private Coordinate vertex(int vertex) {
        return new Coordinate(network.vertexX(vertex), network.vertexY(vertex));
    }
}
