package org.culvert.exchange.demo;

import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadLine;
import org.culvert.road.network.RoadNetwork;

/** The 3,120 km of roads of the demo region. */
public final class RoadsForBenchmark {
    private RoadsForBenchmark() {}

    public static RoadNetwork network() {
        NetworkBuilder builder = NetworkBuilder.geographic();
        for (Road road : DemoRegion.committed().roads()) {
            for (Road.Piece piece : road.pieces()) {
                double[] vertices = new double[2 * (piece.toVertex() - piece.fromVertex() + 1)];
                for (int i = piece.fromVertex(); i <= piece.toVertex(); i++) {
                    vertices[2 * (i - piece.fromVertex())] = road.spots().get(i).longitude();
                    vertices[2 * (i - piece.fromVertex()) + 1] =
                            road.spots().get(i).latitude();
                }
                builder.add(new RoadLine(
                        road.number() + "/" + piece.fromVertex(), RoadAttributes.named(road.name()), null, vertices));
            }
        }
        return builder.build().network();
    }
}
