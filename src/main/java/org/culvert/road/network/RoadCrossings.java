package org.culvert.road.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.culvert.geo.Position;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;

/** Which roads lie across the straight way between two places. Immutable and safe for several threads. */
public final class RoadCrossings {
    /** The line is looked for in parts of this length: a long slanting one would meet the boxes of half a network. */
    private static final double PART_METRES = 1000;

    private final RoadNetwork network;

    public RoadCrossings(RoadNetwork network) {
        this.network = network;
    }

    /**
     * Crossings in order from the start, each link once and where it is met first. Tunnels are crossed like any other road:
     * the caller knows their structure.
     */
    public List<RoadCrossing> between(Position start, Position end) {
        double[] from = network.frame().plane().forward(start);
        double[] to = network.frame().plane().forward(end);
        return between(from[0], from[1], to[0], to[1]);
    }

    /** The same in x and y on the network's plane. */
    public List<RoadCrossing> between(double fromX, double fromY, double toX, double toY) {
        double length = Math.hypot(toX - fromX, toY - fromY);
        int parts = (int) Math.max(1, Math.ceil(length / PART_METRES));
        List<RoadCrossing> met = new ArrayList<>();
        for (int part = 0; part < parts; part++) {
            var start = new Coordinate(fromX + (toX - fromX) * part / parts, fromY + (toY - fromY) * part / parts);
            var end = new Coordinate(
                    fromX + (toX - fromX) * (part + 1) / parts, fromY + (toY - fromY) * (part + 1) / parts);
            double before = length * part / parts;
            var intersector = new RobustLineIntersector();
            network.index().visit(new Envelope(start, end), (link, segment) -> {
                intersector.computeIntersection(
                        start,
                        end,
                        new Coordinate(network.vertexX(segment), network.vertexY(segment)),
                        new Coordinate(network.vertexX(segment + 1), network.vertexY(segment + 1)));
                for (int i = 0; i < intersector.getIntersectionNum(); i++) {
                    met.add(new RoadCrossing(link, before + start.distance(intersector.getIntersection(i))));
                }
            });
        }
        met.sort(Comparator.comparingDouble(RoadCrossing::metresFromStart).thenComparingInt(RoadCrossing::link));
        var seen = new java.util.HashSet<Integer>();
        return met.stream().filter(crossing -> seen.add(crossing.link())).toList();
    }
}
