package org.culvert.road.network;

import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The traffic of every link in a period of years, and where it is known from.
 *
 * <p>A link has the figure of the nearest station along its own road, as far as the road goes on without meeting a major
 * junction and no further than {@link #FARTHEST_METRES}. Counted stations go before estimated ones. A link that no station
 * reaches has what the file of roads says of it, which has no year; else its traffic is not known. The nearest count on the
 * same road between junctions at which traffic changes is what traffic sections of road agencies are made of (FHWA, Traffic
 * Monitoring Guide, 2022; HPMS Field Manual, 2016); what counts as major, and the greatest distance, are choices of ours
 * (common practice, no source). Between two years traffic runs on a straight line, as in the predictive method of the
 * Highway Safety Manual (AASHTO 2010, part C); unlike there, no figure is carried beyond the first and last year.
 *
 * <p>Traffic is in vehicles a day in both directions together; a carriageway on which nothing was counted has that of the one
 * beside it. Immutable.
 */
public final class LinkTraffic {
    /** The rule in one sentence, for people. */
    public static final String RULE =
            "Each piece of road has the traffic of the nearest station along the same road, up to the next major junction and at"
                    + " most 20 km, counted before estimated; between counted years on a straight line, never beyond them;"
                    + " elsewhere what the file of roads says, or not known.";

    /** How far along a road a station speaks for it. */
    public static final double FARTHEST_METRES = 20_000;

    /** Two carriageways of a road lie no further apart than this (common practice, no source). */
    private static final double CARRIAGEWAYS_APART_METRES = 80;

    /** Words for roads that bring so little traffic that a junction with one ends no section (common practice, no source). */
    private static final Set<String> MINOR = Set.of(
            "residential",
            "living_street",
            "service",
            "track",
            "local",
            "locale",
            "access",
            "unclassified",
            "footway",
            "path",
            "pedestrian",
            "steps",
            "cycleway",
            "bridleway");

    /** Where the traffic of a link is known from. */
    public enum Basis {
        COUNTED,
        ESTIMATED,
        /** An attribute of the file of roads, of no stated year. */
        ROADS_FILE,
        UNKNOWN
    }

    private final RoadNetwork network;
    private final double[] vehicles;
    private final Basis[] basis;
    private final int[] station;
    private final double[] metresToStation;
    private final int[] years;

    private LinkTraffic(RoadNetwork network) {
        int links = network.linkCount();
        this.network = network;
        this.vehicles = new double[links];
        this.basis = new Basis[links];
        this.station = new int[links];
        this.metresToStation = new double[links];
        this.years = new int[links];
        Arrays.fill(station, -1);
        Arrays.fill(metresToStation, Double.NaN);
        for (int link = 0; link < links; link++) {
            Integer known = network.attributes(link).aadt();
            vehicles[link] = known == null || known <= 0 ? Double.NaN : known;
            basis[link] = known == null || known <= 0 ? Basis.UNKNOWN : Basis.ROADS_FILE;
        }
    }

    /** What the file of roads says, and nothing else. */
    public static LinkTraffic ofRoadsFile(RoadNetwork network) {
        return new LinkTraffic(network);
    }

    /**
     * @param stations in an order that stays: of two equally near the earlier one counts
     * @param firstYear calendar year
     * @param lastYear calendar year, included
     */
    public static LinkTraffic of(RoadNetwork network, List<TrafficStation> stations, int firstYear, int lastYear) {
        var traffic = new LinkTraffic(network);
        traffic.spread(stations, firstYear, lastYear, true);
        traffic.spread(stations, firstYear, lastYear, false);
        return traffic;
    }

    private record Reached(double metres, int station, int link) {}

    private void spread(List<TrafficStation> stations, int firstYear, int lastYear, boolean counted) {
        RoadGraph graph = network.graph();
        TrafficStation.OfPeriod[] told = new TrafficStation.OfPeriod[stations.size()];
        var queue = new PriorityQueue<Reached>(Comparator.comparingDouble(Reached::metres)
                .thenComparingInt(Reached::station)
                .thenComparingInt(Reached::link));
        int[] reachedBy = new int[network.linkCount()];
        double[] metres = new double[network.linkCount()];
        Arrays.fill(reachedBy, -1);
        for (int i = 0; i < stations.size(); i++) {
            TrafficStation one = stations.get(i);
            told[i] = one.of(firstYear, lastYear);
            if (one.counted() != counted || told[i].years() == 0 || !(told[i].vehiclesPerDay() > 0)) {
                continue;
            }
            if (one.links().length == 0) {
                double length = graph.length(one.link());
                queue.add(new Reached(Math.abs(one.metres() - length / 2), i, one.link()));
                goOn(queue, graph.from(one.link()), one.link(), one.metres(), i);
                goOn(queue, graph.to(one.link()), one.link(), length - one.metres(), i);
            }
            for (int link : one.links()) {
                queue.add(new Reached(0, i, link));
                goOn(queue, graph.from(link), link, 0, i);
                goOn(queue, graph.to(link), link, 0, i);
            }
        }
        while (!queue.isEmpty()) {
            Reached next = queue.remove();
            int link = next.link();
            if (reachedBy[link] >= 0 || next.metres() > FARTHEST_METRES) {
                continue;
            }
            reachedBy[link] = next.station();
            metres[link] = next.metres();
            goOn(queue, graph.from(link), link, next.metres() + graph.length(link) / 2, next.station());
            goOn(queue, graph.to(link), link, next.metres() + graph.length(link) / 2, next.station());
        }
        besides(reachedBy, metres);
        for (int link = 0; link < reachedBy.length; link++) {
            if (reachedBy[link] >= 0 && station[link] < 0) {
                station[link] = reachedBy[link];
                metresToStation[link] = metres[link];
                vehicles[link] = told[reachedBy[link]].vehiclesPerDay();
                years[link] = told[reachedBy[link]].years();
                basis[link] = counted ? Basis.COUNTED : Basis.ESTIMATED;
            }
        }
    }

    /** Beyond a node, unless it is a major junction, to the links of the same road. */
    private void goOn(PriorityQueue<Reached> queue, int node, int from, double metresToNode, int byStation) {
        if (metresToNode > FARTHEST_METRES || isMajor(node, from)) {
            return;
        }
        RoadGraph graph = network.graph();
        for (int i = graph.firstEnd(node); i < graph.firstEnd(node + 1); i++) {
            int link = graph.endAt(i) >> 1;
            if (link != from && isSameRoad(link, from)) {
                queue.add(new Reached(metresToNode + graph.length(link) / 2, byStation, link));
            }
        }
    }

    /** Whether the road changes its class there, or meets another that is not minor, or any with a name if it is minor itself. */
    private boolean isMajor(int node, int of) {
        RoadGraph graph = network.graph();
        for (int i = graph.firstEnd(node); i < graph.firstEnd(node + 1); i++) {
            int link = graph.endAt(i) >> 1;
            boolean ends = isSameRoad(link, of)
                    ? !plainClass(link).equals(plainClass(of))
                    : !isMinor(link) || isMinor(of) && network.roadOf(link).named();
            if (ends) {
                return true;
            }
        }
        return false;
    }

    private boolean isMinor(int link) {
        return MINOR.contains(plainClass(link)) && network.attributes(link).ref() == null;
    }

    private String plainClass(int link) {
        String roadClass = network.attributes(link).roadClass();
        return roadClass == null ? "" : roadClass.toLowerCase(Locale.ROOT).strip();
    }

    private boolean isSameRoad(int one, int other) {
        Road here = network.roadOf(one);
        Road there = network.roadOf(other);
        return here.number() == there.number()
                || here.named() && there.named() && here.label().equalsIgnoreCase(there.label());
    }

    /** A carriageway that no station reaches has the station of the one beside its middle. */
    private void besides(int[] reachedBy, double[] metres) {
        int[] before = reachedBy.clone();
        for (int link = 0; link < before.length; link++) {
            String carriageway = network.attributes(link).carriageway();
            if (before[link] >= 0 || carriageway == null) {
                continue;
            }
            double[] middle = network.pointAt(link, network.graph().length(link) / 2);
            SnapCandidate nearest = null;
            for (SnapCandidate one : network.snap(middle[0], middle[1], CARRIAGEWAYS_APART_METRES, SnapHints.NONE)
                    .candidates()) {
                boolean beside = before[one.link()] >= 0
                        && isSameRoad(one.link(), link)
                        && isOther(carriageway, network.attributes(one.link()).carriageway());
                if (beside && (nearest == null || isNearer(one, nearest))) {
                    nearest = one;
                }
            }
            if (nearest != null) {
                reachedBy[link] = before[nearest.link()];
                metres[link] = metres[nearest.link()];
            }
        }
    }

    private static boolean isOther(String carriageway, @Nullable String candidate) {
        return candidate != null && !candidate.equals(carriageway);
    }

    private static boolean isNearer(SnapCandidate one, SnapCandidate nearest) {
        int byOffset = Double.compare(one.offsetMetres(), nearest.offsetMetres());
        return byOffset < 0 || byOffset == 0 && one.link() < nearest.link();
    }

    /** Vehicles a day in both directions, above 0; NaN where not known. */
    public double vehiclesPerDay(int link) {
        return vehicles[link];
    }

    public Basis basis(int link) {
        return basis[link];
    }

    /** The number of the station in the list that was given; -1 where none speaks for the link. */
    public int station(int link) {
        return station[link];
    }

    /** Metres along the road from the middle of the link to its station; NaN where it has none. */
    public double metresToStation(int link) {
        return metresToStation[link];
    }

    /** How many years of the period its station knows; 0 where it has none. */
    public int years(int link) {
        return years[link];
    }

    /** Metres of the whole network by where their traffic is known from, each basis with its figure. */
    public Map<Basis, Double> metresByBasis() {
        Map<Basis, Double> metres = new EnumMap<>(Basis.class);
        for (Basis one : Basis.values()) {
            metres.put(one, 0.0);
        }
        for (int link = 0; link < basis.length; link++) {
            metres.merge(basis[link], network.graph().length(link), Double::sum);
        }
        return metres;
    }
}
