package org.culvert.road;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.culvert.road.network.Road;
import org.culvert.road.network.RoadFinder;
import org.culvert.road.network.RoadGraph;
import org.culvert.road.network.RoadNames;
import org.culvert.road.network.RoadNetwork;

/** Places in one line, and how such a line may go on. */
@ApplicationScoped
public class SaidPlaces {
    /**
     * How a line may go on.
     *
     * @param text the line as it would be
     * @param hint what there is of that road, in words; empty for a crossing, which is whole
     */
    public record Suggestion(String text, String hint) {}

    private final RoadService roads;

    SaidPlaces(RoadService roads) {
        this.roads = roads;
    }

    /**
     * One of the ways of giving a place.
     *
     * @throws org.culvert.platform.InvalidException of {@code place}, where it is none of them
     */
    public PlaceAsGiven read(String said) {
        return PlaceText.read(said, isRoad(roads.findCurrent()));
    }

    private static Predicate<String> isRoad(Optional<CurrentRoads> current) {
        return name ->
                current.map(roads -> !roads.network().findRoads(name).isEmpty()).orElse(false);
    }

    /** Roads whose names begin like that or contain it; after a road, those that it meets. */
    public List<Suggestion> suggest(String typed, int most) {
        CurrentRoads current = roads.findCurrent().orElse(null);
        String text = typed.strip();
        if (current == null || text.isEmpty()) {
            return List.of();
        }
        RoadNetwork network = current.network();
        for (String[] sides : PlaceText.aroundCrossings(typed + " ")) {
            List<Road> found = network.findRoads(sides[0]);
            if (!found.isEmpty()) {
                return crossings(network, found, sides[1], most);
            }
        }
        List<Suggestion> suggested = new ArrayList<>();
        Set<String> labels = new LinkedHashSet<>();
        network.suggestRoads(text, 4 * most).forEach(road -> labels.add(road.label()));
        for (String label : labels) {
            suggested.add(new Suggestion(label + " ", kilometres(network, label)));
        }
        List<Road> itself = network.findRoads(text);
        if (!itself.isEmpty()) {
            suggested.addAll(crossings(network, itself, "", most));
        }
        return suggested.size() > most ? suggested.subList(0, most) : suggested;
    }

    private static String kilometres(RoadNetwork network, String label) {
        var finder = new RoadFinder(network);
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (Road road : network.findRoads(label)) {
            for (double end : finder.chainageRanges(road)) {
                from = Math.min(from, end);
                to = Math.max(to, end);
            }
        }
        return to < from ? "" : String.format(Locale.ROOT, "%.1f–%.1f km", from / 1000, to / 1000);
    }

    private static List<Suggestion> crossings(RoadNetwork network, List<Road> roads, String begun, int most) {
        RoadGraph graph = network.graph();
        var nodes = new BitSet();
        Set<String> own = new LinkedHashSet<>();
        for (Road road : roads) {
            own.add(road.label());
            for (int link : road.links()) {
                nodes.set(graph.from(link));
                nodes.set(graph.to(link));
            }
        }
        Set<String> met = new TreeSet<>();
        String wanted = RoadNames.comparable(begun);
        for (int link = 0; link < network.linkCount(); link++) {
            Road other = network.roadOf(link);
            if (other.named()
                    && !own.contains(other.label())
                    && (nodes.get(graph.from(link)) || nodes.get(graph.to(link)))
                    && RoadNames.comparable(other.label()).contains(wanted)) {
                met.add(other.label());
            }
        }
        String road = roads.get(0).label();
        return met.stream()
                .limit(most)
                .map(label -> new Suggestion(road + " / " + label, ""))
                .toList();
    }
}
