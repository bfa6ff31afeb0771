package org.culvert.road.traffic;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.culvert.geo.Position;
import org.culvert.road.CurrentRoads;
import org.culvert.road.network.LinkTraffic;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.SnapCandidate;
import org.culvert.road.network.SnapHints;
import org.culvert.road.network.TrafficStation;
import org.jspecify.annotations.Nullable;

/** Says what the counts and estimates that stand tell of the traffic of every link. */
@ApplicationScoped
public class TrafficReader {
    /** A road that was drawn anew is still the road on which somebody counted (common practice, no source). */
    private static final double DRAWN_ANEW_METRES = 30;

    private final TrafficCountService counts;

    TrafficReader(TrafficCountService counts) {
        this.counts = counts;
    }

    /** Where a count lies on a network. */
    private record Lying(int link, double metres) {}

    /** Counts of one place, kind and year that are to become one figure. */
    private record Placed(TrafficCount count, Lying at) {}

    /**
     * The traffic of a period.
     *
     * @param firstYear calendar year
     * @param lastYear calendar year, included
     */
    @Transactional
    public PeriodTraffic find(CurrentRoads roads, int firstYear, int lastYear) {
        RoadNetwork network = roads.network();
        Map<String, List<Placed>> places = new TreeMap<>();
        int notPlaced = 0;
        int notAnnual = 0;
        for (TrafficCount count : counts.listStanding()) {
            if (!count.measure.equals(TrafficMeasure.annualAverage.name())) {
                notAnnual += isIn(count, firstYear, lastYear) ? 1 : 0;
                continue;
            }
            Lying at = find(count, roads);
            if (at == null) {
                notPlaced += isIn(count, firstYear, lastYear) ? 1 : 0;
                continue;
            }
            places.computeIfAbsent(placeKey(count), key -> new ArrayList<>()).add(new Placed(count, at));
        }
        List<TrafficStation> stations = new ArrayList<>();
        List<List<UUID>> ids = new ArrayList<>();
        int oneDirection = 0;
        for (List<Placed> place : places.values()) {
            TreeMap<Integer, Double> byYear = new TreeMap<>();
            TreeMap<Integer, List<UUID>> used = new TreeMap<>();
            Map<Integer, List<TrafficCount>> years = new TreeMap<>();
            place.forEach(placed -> years.computeIfAbsent(placed.count.year(), year -> new ArrayList<>())
                    .add(placed.count));
            for (Map.Entry<Integer, List<TrafficCount>> year : years.entrySet()) {
                List<TrafficCount> figure = bothDirections(year.getValue(), network, place.get(0).at);
                if (figure.isEmpty()) {
                    oneDirection += (int) year.getValue().stream()
                            .filter(count -> isIn(count, firstYear, lastYear))
                            .count();
                    continue;
                }
                byYear.put(
                        year.getKey(),
                        figure.stream()
                                .mapToDouble(count -> count.vehiclesPerDay)
                                .sum());
                used.put(year.getKey(), figure.stream().map(TrafficCount::id).toList());
            }
            if (!byYear.isEmpty()) {
                Placed last = place.get(place.size() - 1);
                stations.add(new TrafficStation(
                        last.at.link,
                        last.at.metres,
                        covered(last, roads),
                        !last.count.kind.equals(TrafficCountKind.estimated.name()),
                        byYear));
                ids.add(within(used, firstYear, lastYear));
            }
        }
        LinkTraffic links = LinkTraffic.of(network, stations, firstYear, lastYear);
        return new PeriodTraffic(
                firstYear, lastYear, links, ids, notPlaced, oneDirection, notAnnual, sha256(network, links));
    }

    /** What figures of a period hang on: those of its years, and of the nearest before and after it. */
    private static List<UUID> within(TreeMap<Integer, List<UUID>> byYear, int firstYear, int lastYear) {
        Integer before = byYear.floorKey(firstYear);
        Integer after = byYear.ceilingKey(lastYear);
        return byYear
                .subMap(before == null ? firstYear : before, true, after == null ? lastYear : after, true)
                .values()
                .stream()
                .flatMap(List::stream)
                .toList();
    }

    private static boolean isIn(TrafficCount count, int firstYear, int lastYear) {
        return count.year() >= firstYear && count.year() <= lastYear;
    }

    /** Years of one place belong together by the name of its station, else by where it lies to the metre. */
    private static String placeKey(TrafficCount count) {
        String kind = count.kind.equals(TrafficCountKind.estimated.name()) ? "estimated" : "counted";
        String where = count.station == null
                ? "at " + count.carriageway + " " + Math.round(count.fromChainageMetres) + " "
                        + Math.round(count.toChainageMetres)
                : "station " + count.station.strip().toLowerCase(Locale.ROOT);
        return count.road.toLowerCase(Locale.ROOT) + "\n" + where + "\n" + kind;
    }

    /**
     * What makes the traffic of both directions: a figure of both, or one of each of two directions, or the only one of a road
     * that is travelled one way. Of several, a counter that stands there all the year goes before one that does not, more days
     * counted before fewer, and what was entered later before what was entered earlier.
     */
    private static List<TrafficCount> bothDirections(List<TrafficCount> year, RoadNetwork network, Lying at) {
        Comparator<TrafficCount> better = Comparator.<TrafficCount, Boolean>comparing(
                        count -> !count.kind.equals(TrafficCountKind.continuous.name()))
                .thenComparing(count -> count.daysCounted == null ? 0 : -count.daysCounted)
                .thenComparing(TrafficCount::id, Comparator.reverseOrder());
        Optional<TrafficCount> both = year.stream()
                .filter(count -> count.directions.equals(TrafficDirections.both.name()))
                .min(better);
        if (both.isPresent()) {
            return List.of(both.get());
        }
        Map<String, TrafficCount> each = new TreeMap<>();
        for (TrafficCount count : year.stream().sorted(better).toList()) {
            String direction = count.direction != null ? count.direction : count.carriageway;
            each.putIfAbsent(direction == null ? "" : direction.strip().toLowerCase(Locale.ROOT), count);
        }
        if (each.size() == 2 && !each.containsKey("")) {
            return List.copyOf(each.values());
        }
        boolean oneWay = Boolean.TRUE.equals(network.attributes(at.link).oneWay())
                && network.attributes(at.link).carriageway() == null;
        return each.size() == 1 && oneWay ? List.copyOf(each.values()) : List.of();
    }

    /** On the same road, and on the same carriageway where it has several; null where it is no longer there. */
    private static @Nullable Lying find(TrafficCount count, CurrentRoads roads) {
        RoadNetwork network = roads.network();
        SnapCandidate nearest = null;
        for (SnapCandidate one : network.snap(
                        new Position(count.decimalLatitude, count.decimalLongitude),
                        DRAWN_ANEW_METRES,
                        new SnapHints(count.road, null))
                .candidates()) {
            if (!network.road(one.road()).label().equalsIgnoreCase(count.road) || !isOn(count, network, one.link())) {
                continue;
            }
            if (nearest == null
                    || one.offsetMetres() < nearest.offsetMetres()
                    || one.offsetMetres() == nearest.offsetMetres() && one.link() < nearest.link()) {
                nearest = one;
            }
        }
        return nearest == null ? null : new Lying(nearest.link(), nearest.metres());
    }

    private static boolean isOn(TrafficCount count, RoadNetwork network, int link) {
        String carriageway = network.attributes(link).carriageway();
        return count.carriageway == null || carriageway == null || count.carriageway.equals(carriageway);
    }

    /** The links whose middle lies in a counted stretch, while its chainages are those of the current network. */
    private static int[] covered(Placed placed, CurrentRoads roads) {
        TrafficCount count = placed.count;
        if (!count.isStretch() || count.networkNumber != roads.number()) {
            return new int[0];
        }
        RoadNetwork network = roads.network();
        List<Integer> links = new ArrayList<>();
        for (int link : network.roadOf(placed.at.link).links()) {
            double middle = network.chainageAt(link, network.graph().length(link) / 2);
            if (link == placed.at.link || middle >= count.fromChainageMetres && middle <= count.toChainageMetres) {
                links.add(link);
            }
        }
        return links.stream().mapToInt(Integer::intValue).toArray();
    }

    private static String sha256(RoadNetwork network, LinkTraffic links) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (int link = 0; link < network.linkCount(); link++) {
                digest.update(
                        (links.basis(link) + " " + links.vehiclesPerDay(link) + "\n").getBytes(StandardCharsets.UTF_8));
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every JDK has SHA-256", impossible);
        }
    }
}
