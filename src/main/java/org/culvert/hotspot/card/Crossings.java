package org.culvert.hotspot.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.culvert.hotspot.card.StretchCard.Crossing;
import org.culvert.road.network.Road;
import org.culvert.road.network.RoadGraph;
import org.culvert.road.network.RoadNetwork;

/** The roads by which people know a place on another one. */
final class Crossings {
    private static final int MOST_ON_IT = 6;

    private Crossings() {}

    /** Roads with a name of their own that meet a road of a label on a stretch, with the next before and behind it. */
    static List<Crossing> of(RoadNetwork network, String label, double from, double to) {
        List<Crossing> all = new ArrayList<>();
        Set<Crossing> met = new HashSet<>();
        for (Road road : network.roads()) {
            if (road.label().equals(label) || road.fullLabel().equals(label)) {
                for (int link : road.links()) {
                    at(network, road, link, network.graph().from(link), network.fromChainage(link), from, to, met);
                    at(network, road, link, network.graph().to(link), network.toChainage(link), from, to, met);
                }
            }
        }
        met.stream()
                .filter(crossing -> crossing.metresBeyond() == 0)
                .sorted(Comparator.comparingDouble(Crossing::chainageMetres).thenComparing(Crossing::road))
                .limit(MOST_ON_IT)
                .forEach(all::add);
        met.stream()
                .filter(crossing -> crossing.chainageMetres() < from)
                .min(Comparator.comparingDouble(Crossing::metresBeyond).thenComparing(Crossing::road))
                .ifPresent(before -> all.add(0, before));
        met.stream()
                .filter(crossing -> crossing.chainageMetres() > to)
                .min(Comparator.comparingDouble(Crossing::metresBeyond).thenComparing(Crossing::road))
                .ifPresent(all::add);
        return all;
    }

    private static void at(
            RoadNetwork network,
            Road road,
            int link,
            int node,
            double chainage,
            double from,
            double to,
            Set<Crossing> met) {
        RoadGraph graph = network.graph();
        double beyond = Math.max(0, Math.max(from - chainage, chainage - to));
        for (int k = graph.firstEnd(node); k < graph.firstEnd(node + 1); k++) {
            int other = graph.endAt(k) / 2;
            Road crossing = network.roadOf(other);
            if (other != link && crossing.named() && !crossing.label().equals(road.label())) {
                met.add(new Crossing(crossing.label(), Math.rint(chainage), Math.rint(beyond)));
            }
        }
    }
}
