package org.culvert.road;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.culvert.road.network.Road;
import org.culvert.road.network.RoadNetwork;

/**
 * Roads by the names that people give them. One that remembers asks the network once for each name, since a table has the same
 * names over and over. Safe for several threads.
 */
final class RoadLookup {
    private static final int MOST_SUGGESTIONS = 8;

    /** A table in which every row has another name is not worth remembering, nor is there room. */
    private static final int MOST_REMEMBERED = 20_000;

    private final RoadNetwork network;
    private final boolean remembers;
    private final Map<String, List<Road>> found = new ConcurrentHashMap<>();
    private final Map<String, String> suggested = new ConcurrentHashMap<>();

    private RoadLookup(RoadNetwork network, boolean remembers) {
        this.network = network;
        this.remembers = remembers;
    }

    static RoadLookup of(RoadNetwork network) {
        return new RoadLookup(network, false);
    }

    static RoadLookup remembering(RoadNetwork network) {
        return new RoadLookup(network, true);
    }

    /** Every road that a name may mean; none where nothing is called so. */
    List<Road> find(String name) {
        List<Road> known = found.get(name);
        if (known != null) {
            return known;
        }
        List<Road> roads = network.findRoads(name);
        if (remembers && found.size() < MOST_REMEMBERED) {
            found.put(name, roads);
        }
        return roads;
    }

    /** What roads are called that begin with the first word of a name, in one line; empty where there are none. */
    String labelsBeginningLike(String name) {
        String word = firstWord(name);
        String known = suggested.get(word);
        if (known != null) {
            return known;
        }
        String labels = network.suggestRoads(word, MOST_SUGGESTIONS).stream()
                .map(Road::label)
                .distinct()
                .collect(Collectors.joining(", "));
        if (remembers && suggested.size() < MOST_REMEMBERED) {
            suggested.put(word, labels);
        }
        return labels;
    }

    private static String firstWord(String name) {
        String stripped = name.strip();
        int blank = stripped.indexOf(' ');
        return blank < 0 ? stripped : stripped.substring(0, blank);
    }
}
