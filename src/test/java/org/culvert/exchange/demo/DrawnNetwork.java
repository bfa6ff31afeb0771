package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.culvert.hotspot.stats.Chainage;
import org.culvert.road.network.RoadGraph;

/**
 * The network as it was drawn, without reading any file: links between the vertices where roads meet. Carriageways of one
 * road have one number.
 */
final class DrawnNetwork {
    private final List<Link> links = new ArrayList<>();
    private final Map<Road, List<Link>> linksOf = new HashMap<>();
    private final RoadGraph graph;
    private final Chainage chainage;

    record Link(int number, Road road, int strand, double fromMeasure, double toMeasure) {}

    DrawnNetwork(List<Road> roads) {
        Map<Spot, Integer> uses = new HashMap<>();
        for (Road road : roads) {
            for (Road.Piece piece : road.pieces()) {
                for (int i = piece.fromVertex(); i <= piece.toVertex(); i++) {
                    boolean end = i == piece.fromVertex() || i == piece.toVertex();
                    if (end || piece.level() == 0) {
                        uses.merge(road.spots().get(i), end ? 2 : 1, Integer::sum);
                    }
                }
            }
        }
        Map<Spot, Integer> nodes = new HashMap<>();
        List<Integer> from = new ArrayList<>();
        List<Integer> to = new ArrayList<>();
        Map<String, Integer> roadNumbers = new HashMap<>();
        List<Integer> roadOf = new ArrayList<>();
        Map<String, Integer> strands = new HashMap<>();
        for (Road road : roads) {
            int roadNumber = roadNumbers.computeIfAbsent(road.name(), key -> roadNumbers.size());
            int strand = strands.merge(road.name(), 1, Integer::sum);
            for (Road.Piece piece : road.pieces()) {
                int start = piece.fromVertex();
                for (int i = start + 1; i <= piece.toVertex(); i++) {
                    boolean meets =
                            piece.level() == 0 && uses.getOrDefault(road.spots().get(i), 0) > 1;
                    if (meets || i == piece.toVertex()) {
                        Link link = new Link(links.size(), road, strand, road.measures()[start], road.measures()[i]);
                        links.add(link);
                        linksOf.computeIfAbsent(road, key -> new ArrayList<>()).add(link);
                        from.add(nodes.computeIfAbsent(road.spots().get(start), key -> nodes.size()));
                        to.add(nodes.computeIfAbsent(road.spots().get(i), key -> nodes.size()));
                        roadOf.add(roadNumber);
                        start = i;
                    }
                }
            }
        }
        double[] lengths = links.stream()
                .mapToDouble(link -> link.toMeasure() - link.fromMeasure())
                .toArray();
        graph = new RoadGraph(nodes.size(), ints(from), ints(to), lengths);
        chainage = new Chainage(
                ints(roadOf),
                links.stream().mapToInt(Link::strand).toArray(),
                links.stream().mapToDouble(Link::fromMeasure).toArray(),
                links.stream().mapToDouble(Link::toMeasure).toArray(),
                lengths);
    }

    private static int[] ints(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    RoadGraph graph() {
        return graph;
    }

    Chainage chainage() {
        return chainage;
    }

    List<Link> links() {
        return links;
    }

    Link linkAt(Road road, double measure) {
        List<Link> ofRoad = linksOf.getOrDefault(road, List.of());
        for (Link link : ofRoad) {
            if (measure <= link.toMeasure()) {
                return link;
            }
        }
        return ofRoad.get(ofRoad.size() - 1);
    }
}
