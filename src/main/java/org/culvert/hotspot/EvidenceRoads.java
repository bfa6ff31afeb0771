package org.culvert.hotspot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import org.culvert.hotspot.stats.Carriageways;
import org.culvert.hotspot.stats.Chainage;
import org.culvert.hotspot.stats.Chance;
import org.culvert.road.network.LinkTraffic;
import org.culvert.road.network.Road;
import org.culvert.road.network.RoadGraph;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.SnapCandidate;
import org.culvert.road.network.SnapHints;
import org.jspecify.annotations.Nullable;

/**
 * A road network as the search wants it: which road each link is of, its chainage, its other carriageway, its class and
 * its traffic.
 */
public final class EvidenceRoads {
    /** Bands of equal length into which known traffic is cut. */
    static final int TRAFFIC_BANDS = 4;

    /** Two carriageways of a road lie no further apart than this; a choice of ours (common practice, no source). */
    private static final double CARRIAGEWAYS_APART_METRES = 80;

    private final RoadNetwork network;
    private final LinkTraffic traffic;
    private final Chainage chainage;

    EvidenceRoads(RoadNetwork network, LinkTraffic traffic) {
        this.network = network;
        this.traffic = traffic;
        int links = network.linkCount();
        int[] road = new int[links];
        double[] from = new double[links];
        double[] to = new double[links];
        double[] length = new double[links];
        Map<String, Integer> numbers = new HashMap<>();
        for (int link = 0; link < links; link++) {
            road[link] = numbers.computeIfAbsent(roadKey(network.roadOf(link)), key -> numbers.size());
            from[link] = network.fromChainage(link);
            to[link] = network.toChainage(link);
            length[link] = network.graph().length(link);
        }
        this.chainage = new Chainage(road, strands(network), from, to, length);
    }

    /** The carriageways of a road are one road; a road without a name is one of its own. */
    private static String roadKey(Road road) {
        return road.named() ? "name " + road.label().toLowerCase(Locale.ROOT) : "road " + road.number();
    }

    /** Links of one carriageway that hang together, numbered by their first link. */
    private static int[] strands(RoadNetwork network) {
        RoadGraph graph = network.graph();
        int[] strand = new int[network.linkCount()];
        Arrays.setAll(strand, link -> link);
        for (int node = 0; node < graph.nodeCount(); node++) {
            for (int i = graph.firstEnd(node); i < graph.firstEnd(node + 1); i++) {
                for (int k = i + 1; k < graph.firstEnd(node + 1); k++) {
                    int one = graph.endAt(i) >> 1;
                    int other = graph.endAt(k) >> 1;
                    if (network.roadOf(one).number() == network.roadOf(other).number()) {
                        join(strand, one, other);
                    }
                }
            }
        }
        for (int link = 0; link < strand.length; link++) {
            strand[link] = root(strand, link);
        }
        return strand;
    }

    private static void join(int[] strand, int one, int other) {
        int a = root(strand, one);
        int b = root(strand, other);
        strand[Math.max(a, b)] = Math.min(a, b);
    }

    private static int root(int[] strand, int link) {
        int at = link;
        while (strand[at] != at) {
            at = strand[at];
        }
        return at;
    }

    RoadNetwork network() {
        return network;
    }

    Chainage chainage() {
        return chainage;
    }

    /** What lies beside a place on a road that has carriageways: the nearest point of another one of the same road. */
    Carriageways carriageways() {
        return (link, metres) -> {
            String carriageway = network.attributes(link).carriageway();
            if (carriageway == null) {
                return null;
            }
            double[] at = network.pointAt(link, metres);
            SnapCandidate nearest = null;
            for (SnapCandidate candidate : network.snap(at[0], at[1], CARRIAGEWAYS_APART_METRES, SnapHints.NONE)
                    .candidates()) {
                boolean beside = chainage.road(candidate.link()) == chainage.road(link)
                        && isOther(
                                carriageway,
                                network.attributes(candidate.link()).carriageway());
                if (beside && (nearest == null || nearer(candidate, nearest))) {
                    nearest = candidate;
                }
            }
            return nearest == null ? null : new Carriageways.Place(nearest.link(), nearest.metres());
        };
    }

    private static boolean isOther(String carriageway, @Nullable String candidate) {
        return candidate != null && !candidate.equals(carriageway);
    }

    private static boolean nearer(SnapCandidate candidate, SnapCandidate nearest) {
        int byOffset = Double.compare(candidate.offsetMetres(), nearest.offsetMetres());
        return byOffset < 0 || (byOffset == 0 && candidate.link() < nearest.link());
    }

    Chance.PerTrafficAndClass perTrafficAndClass() {
        int links = network.linkCount();
        Map<String, Integer> numbers = new TreeMap<>();
        for (int link = 0; link < links; link++) {
            numbers.put(roadClass(link), 0);
        }
        int next = 0;
        for (Map.Entry<String, Integer> entry : numbers.entrySet()) {
            entry.setValue(next++);
        }
        int[] roadClass = new int[links];
        double[] aadt = new double[links];
        for (int link = 0; link < links; link++) {
            roadClass[link] = numbers.getOrDefault(roadClass(link), 0);
            aadt[link] = traffic.vehiclesPerDay(link);
        }
        return new Chance.PerTrafficAndClass(roadClass, aadt, TRAFFIC_BANDS);
    }

    private String roadClass(int link) {
        return Objects.requireNonNullElse(network.attributes(link).roadClass(), "");
    }

    /** Owners that the network names, in order. */
    public static List<String> owners(RoadNetwork network) {
        var owners = new TreeSet<String>();
        for (int link = 0; link < network.linkCount(); link++) {
            String owner = network.attributes(link).owner();
            if (owner != null) {
                owners.add(owner);
            }
        }
        return new ArrayList<>(owners);
    }
}
