package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which road each link belongs to, and the distance along that road at its ends.
 *
 * <p>A road is any set of links under one number; its strands are its carriageways and the parts of it that do not hang
 * together, whose chainages may be alike. A link of no named road gets a number of its own. Chainage is linear along a
 * link and may rise or fall from its from-node. Immutable.
 */
public final class Chainage {
    /** A position on the network. */
    record Position(int link, double metres) {}

    private final int[] road;
    private final int[] strand;
    private final double[] atFrom;
    private final double[] atTo;
    private final double[] length;
    private final Map<Integer, List<Integer>> linksOfRoad = new HashMap<>();

    /**
     * @param road number of the road of each link
     * @param strand number of the strand of each link within its road
     * @param chainageAtFrom metres along the road at each link's from-node
     * @param chainageAtTo metres along the road at each link's to-node
     * @param length length of each link in metres
     */
    public Chainage(int[] road, int[] strand, double[] chainageAtFrom, double[] chainageAtTo, double[] length) {
        int links = road.length;
        if (strand.length != links
                || chainageAtFrom.length != links
                || chainageAtTo.length != links
                || length.length != links) {
            throw new IllegalArgumentException("every link needs a road, a strand, two chainages and a length");
        }
        this.road = road.clone();
        this.strand = strand.clone();
        this.atFrom = chainageAtFrom.clone();
        this.atTo = chainageAtTo.clone();
        this.length = length.clone();
        for (int link = 0; link < links; link++) {
            if (!Double.isFinite(atFrom[link]) || !Double.isFinite(atTo[link])) {
                throw new IllegalArgumentException("link " + link + " has no chainage");
            }
            linksOfRoad.computeIfAbsent(road[link], key -> new ArrayList<>()).add(link);
        }
        for (List<Integer> ofOne : linksOfRoad.values()) {
            ofOne.sort(Comparator.<Integer>comparingDouble(this::low).thenComparing(Comparator.naturalOrder()));
        }
    }

    public int road(int link) {
        return road[link];
    }

    public int strand(int link) {
        return strand[link];
    }

    /** Metres along the road at a position of a link. */
    public double at(int link, double metres) {
        return atFrom[link] + (atTo[link] - atFrom[link]) * (metres / length[link]);
    }

    /** Smaller of the chainages at a link's two ends. */
    double low(int link) {
        return Math.min(atFrom[link], atTo[link]);
    }

    /** Larger of the chainages at a link's two ends. */
    double high(int link) {
        return Math.max(atFrom[link], atTo[link]);
    }

    int linkCount() {
        return road.length;
    }

    /** The links of a link's road, of all its strands, in order of chainage. */
    List<Integer> linksBeside(int link) {
        return linksOfRoad.getOrDefault(road[link], List.of());
    }

    /**
     * The position at a chainage on a link's own strand; in a gap or beyond the ends of the strand, the nearest end of a
     * link. Where a chainage comes twice on a strand, the given link is preferred, then the first.
     */
    Position locate(int nearLink, double chainage) {
        int best = nearLink;
        double bestMiss = miss(nearLink, chainage);
        for (int link : linksBeside(nearLink)) {
            if (strand[link] == strand[nearLink] && miss(link, chainage) < bestMiss) {
                best = link;
                bestMiss = miss(link, chainage);
            }
        }
        double span = atTo[best] - atFrom[best];
        double fraction = span == 0 ? 0.5 : (chainage - atFrom[best]) / span;
        return new Position(best, length[best] * Math.max(0, Math.min(1, fraction)));
    }

    private double miss(int link, double chainage) {
        return Math.max(0, Math.max(low(link) - chainage, chainage - high(link)));
    }

    /** Where an event at a position is written down when its chainage is rounded to a step. */
    Position round(int link, double metres, double stepMetres) {
        return locate(link, Math.rint(at(link, metres) / stepMetres) * stepMetres);
    }
}
