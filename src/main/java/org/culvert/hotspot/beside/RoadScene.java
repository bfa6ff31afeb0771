package org.culvert.hotspot.beside;

import java.util.List;
import org.culvert.hotspot.stats.pattern.PlacedEvents;
import org.culvert.road.network.RoadGraph;
import org.culvert.road.network.RoadNetwork;

/** The roads on which it all happened, and places on them as reports have them. */
public record RoadScene(RoadNetwork network) {
    /** A place on a road. */
    public record PlaceOnRoad(String road, double chainageMetres, double decimalLatitude, double decimalLongitude) {}

    PlaceOnRoad place(int link, double metres) {
        double[] at = network.pointAt(link, metres);
        return new PlaceOnRoad(
                label(link),
                Figures.rounded(network.chainageAt(link, metres), 0),
                Figures.rounded(at[1], 6),
                Figures.rounded(at[0], 6));
    }

    String label(int link) {
        return network.roadOf(link).label();
    }

    RoadGraph graph() {
        return network.graph();
    }

    /** Events in the order given, each on its link. */
    PlacedEvents placed(List<DatedEvent> events) {
        int[] link = events.stream().mapToInt(dated -> dated.event().link()).toArray();
        double[] metres = events.stream()
                .mapToDouble(dated -> Math.max(
                        0,
                        Math.min(
                                graph().length(dated.event().link()),
                                dated.event().metres())))
                .toArray();
        return PlacedEvents.of(graph(), link, metres);
    }
}
