package org.culvert.road.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
     * @param otherPoint the same place on a link of the other road
     * @param spreadMetres how far the nodes of the junction are from the point at most; 0 for a single node
     * @param sharesNode whether the roads meet there; false where one passes over the other
     */
    public record Crossing(LinkPoint point, LinkPoint otherPoint, double spreadMetres, boolean sharesNode) {}

    /** The same place on links of two roads. */
    private record Meeting(LinkPoint point, LinkPoint other) {}

    /**
     * Where two roads meet, or where they do not meet at all, where one passes over the other. Nodes within 100 m of each
     * other are one junction, at the node nearest to their middle.
     */
    public List<Crossing> crossings(List<Road> roads, List<Road> others) {
        List<Meeting> meetings = sharedNodes(roads, others);
        boolean share = !meetings.isEmpty();
        List<Meeting> left = new ArrayList<>(share ? meetings : passes(roads, others));
        List<Crossing> crossings = new ArrayList<>();
        while (!left.isEmpty()) {
            Meeting first = left.get(0);
            List<Meeting> together = left.stream()
                    .filter(meeting -> apart(first.point, meeting.point) <= ONE_JUNCTION_METRES)
                    .toList();
            left.removeAll(together);
            crossings.add(crossing(together, share));
        }
        return crossings;
    }

    private Crossing crossing(List<Meeting> together, boolean share) {
        Meeting middle = together.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (Meeting meeting : together) {
            double farthest = together.stream()
                    .mapToDouble(other -> apart(meeting.point, other.point))
                    .max()
                    .orElse(0);
            if (farthest < least) {
                least = farthest;
                middle = meeting;
            }
        }
        return new Crossing(middle.point, middle.other, least, share);
    }

    private double apart(LinkPoint one, LinkPoint other) {
        double[] here = network.pointAt(one.link(), one.metres());
        double[] there = network.pointAt(other.link(), other.metres());
        return Math.hypot(here[0] - there[0], here[1] - there[1]);
    }

    private List<Meeting> sharedNodes(List<Road> roads, List<Road> others) {
        RoadGraph graph = network.graph();
        Map<Integer, LinkPoint> ofOthers = new HashMap<>();
        for (Road other : others) {
            for (int link : other.links()) {
                ofOthers.putIfAbsent(graph.from(link), new LinkPoint(link, 0));
                ofOthers.putIfAbsent(graph.to(link), new LinkPoint(link, graph.length(link)));
            }
        }
        Map<Integer, Meeting> byNode = new LinkedHashMap<>();
        for (Road road : roads) {
            for (int link : road.links()) {
                meet(byNode, ofOthers, graph.from(link), new LinkPoint(link, 0));
                meet(byNode, ofOthers, graph.to(link), new LinkPoint(link, graph.length(link)));
            }
        }
        return List.copyOf(byNode.values());
    }

    private static void meet(
            Map<Integer, Meeting> byNode, Map<Integer, LinkPoint> ofOthers, int node, LinkPoint point) {
        LinkPoint other = ofOthers.get(node);
        if (other != null) {
            byNode.putIfAbsent(node, new Meeting(point, other));
        }
    }

    private List<Meeting> passes(List<Road> roads, List<Road> others) {
        BitSet ofOthers = new BitSet(network.linkCount());
        others.forEach(other -> Arrays.stream(other.links()).forEach(ofOthers::set));
        List<Meeting> meetings = new ArrayList<>();
        for (Road road : roads) {
            for (int link : road.links()) {
                for (int segment = network.firstVertex(link); segment < network.firstVertex(link + 1) - 1; segment++) {
                    passesOf(link, segment, ofOthers, meetings);
                }
            }
        }
        return meetings;
    }

    private void passesOf(int link, int segment, BitSet ofOthers, List<Meeting> meetings) {
        Envelope box = new Envelope(vertex(segment), vertex(segment + 1));
        network.index().visit(box, (otherLink, otherSegment) -> {
            if (!ofOthers.get(otherLink)) {
                return;
            }
            RobustLineIntersector lines = new RobustLineIntersector();
            lines.computeIntersection(
                    vertex(segment), vertex(segment + 1), vertex(otherSegment), vertex(otherSegment + 1));
            if (lines.hasIntersection()) {
                Coordinate place = lines.getIntersection(0);
                meetings.add(new Meeting(along(link, segment, place), along(otherLink, otherSegment, place)));
            }
        });
    }

    private LinkPoint along(int link, int segment, Coordinate place) {
        Coordinate from = vertex(segment);
        double part = from.distance(place) / Math.max(from.distance(vertex(segment + 1)), 1e-12);
        double start = network.vertexMeasure(segment);
        double metres = start + part * (network.vertexMeasure(segment + 1) - start);
        return new LinkPoint(link, Math.min(network.graph().length(link), metres));
    }

    private Coordinate vertex(int vertex) {
        return new Coordinate(network.vertexX(vertex), network.vertexY(vertex));
    }
}
