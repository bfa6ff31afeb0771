package org.culvert.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.culvert.geo.CoordinateReading;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.culvert.geo.Uncertainty;
import org.culvert.platform.InvalidException;
import org.culvert.road.PlaceUnderstood.OnRoad;
import org.culvert.road.network.ChainageReading;
import org.culvert.road.network.LinkPoint;
import org.culvert.road.network.Road;
import org.culvert.road.network.RoadFinder;
import org.culvert.road.network.RoadNames;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.Side;
import org.culvert.road.network.Snap;
import org.culvert.road.network.SnapCandidate;
import org.culvert.road.network.SnapHints;
import org.jspecify.annotations.Nullable;

/** Places on one version of the roads: near a position, at a chainage, at a crossing. */
final class RoadPlaces {
    /** Width of a road and of what marks its chainage: common practice, no source. */
    private static final double LEAST_UNCERTAINTY_METRES = 10;

    /** Who names a crossing means somewhere by it: common practice, no source. */
    private static final double BY_A_CROSSING_METRES = 100;

    private static final int MOST_RANGES = 8;

    private final CurrentRoads roads;
    private final RoadNetwork network;
    private final RoadFinder finder;
    private final RoadLookup lookup;

    RoadPlaces(CurrentRoads roads, RoadLookup lookup) {
        this.roads = roads;
        this.network = roads.network();
        this.finder = new RoadFinder(network);
        this.lookup = lookup;
    }

    /** The road at or near a position, the others that may be meant, and whether that is in doubt. */
    PlaceUnderstood nearPosition(String way, String verbatim, CoordinateReading reading, PlaceAsGiven given) {
        return nearPosition(way, verbatim, reading, new SnapHints(given.roadName(), given.direction()));
    }

    PlaceUnderstood nearPosition(String way, String verbatim, CoordinateReading reading, SnapHints hints) {
        Position position = reading.position();
        Snap snap = network.snap(position, reading.uncertaintyMetres(), hints);
        OnRoad best = snap.best().map(candidate -> onRoad(candidate)).orElse(null);
        List<OnRoad> others = new ArrayList<>();
        List<Integer> shown = new ArrayList<>();
        snap.best().ifPresent(candidate -> shown.add(candidate.road()));
        for (SnapCandidate candidate : snap.candidates()) {
            if (!shown.contains(candidate.road())) {
                shown.add(candidate.road());
                others.add(onRoad(candidate));
            }
        }
        SnapCandidate beyond = snap.nearestBeyond();
        if (beyond != null) {
            others.add(onRoad(beyond));
        }
        boolean nameElsewhere = best != null && Boolean.FALSE.equals(snap.nameFound());
        return new PlaceUnderstood(
                way,
                verbatim,
                position.latitude(),
                position.longitude(),
                reading.uncertaintyMetres(),
                best,
                snap.ambiguous() || nameElsewhere,
                others);
    }

    /** The place at a chainage; several if the road has it several times, then the uncertainty covers them all. */
    PlaceUnderstood atChainage(PlaceAsGiven.RoadAndChainage said, PlaceAsGiven given) {
        ChainageReading chainage = ChainageReading.read(said.chainageKilometres());
        String field = "place.roadAndChainage.road";
        List<Road> meant = ofCarriageway(requireRoads(field, said.road()), said.carriageway(), given.direction());
        List<LinkPoint> points = finder.atChainage(meant, chainage.metres(), Math.max(1, chainage.uncertaintyMetres()));
        if (points.isEmpty()) {
            throw InvalidException.of(
                    "place.roadAndChainage.chainageKilometres",
                    said.road().strip() + " has no " + said.chainageKilometres().strip()
                            + " km in the current network.",
                    "a chainage on it: " + ranges(meant));
        }
        double own = Math.max(LEAST_UNCERTAINTY_METRES, chainage.uncertaintyMetres());
        String verbatim = said.road().strip() + " km "
                + said.chainageKilometres().strip()
                + (said.carriageway() == null ? "" : " " + said.carriageway().strip());
        return atPoints("roadAndChainage", verbatim, points, own, chainage.precisionMetres(), given);
    }

    /** The junction of two roads; several if they meet several times, then the uncertainty covers them all. */
    PlaceUnderstood atCrossing(PlaceAsGiven.CrossingRoads said, PlaceAsGiven given) {
        List<Road> roadsMeant = requireRoads("place.crossingRoads.road", said.road());
        List<Road> others = requireRoads("place.crossingRoads.crossingRoad", said.crossingRoad());
        List<RoadFinder.Crossing> crossings = finder.crossings(roadsMeant, others);
        if (crossings.isEmpty()) {
            throw InvalidException.of(
                    "place.crossingRoads",
                    said.road().strip() + " and " + said.crossingRoad().strip()
                            + " do not meet in the current network.",
                    "two roads that meet or cross");
        }
        double spread = crossings.stream()
                .mapToDouble(RoadFinder.Crossing::spreadMetres)
                .max()
                .orElse(0);
        // A junction is on both roads; only a road named besides tells on which of them it happened.
        String named = given.roadName();
        boolean second = named != null && others.stream().anyMatch(road -> RoadNames.matches(named, road));
        boolean first = named != null && roadsMeant.stream().anyMatch(road -> RoadNames.matches(named, road));
        List<LinkPoint> points = new ArrayList<>();
        for (RoadFinder.Crossing crossing : crossings) {
            points.add(second && !first ? crossing.otherPoint() : crossing.point());
            if (first == second) {
                points.add(crossing.otherPoint());
            }
        }
        String verbatim = said.road().strip() + " / " + said.crossingRoad().strip();
        return atPoints("crossingRoads", verbatim, points, BY_A_CROSSING_METRES + spread, null, given);
    }

    private PlaceUnderstood atPoints(
            String way,
            String verbatim,
            List<LinkPoint> points,
            double ownUncertainty,
            @Nullable Double precision,
            PlaceAsGiven given) {
        List<OnRoad> all = points.stream()
                .map(point -> onRoad(point.link(), point.metres(), precision, 0, Side.ON))
                .toList();
        Position position =
                network.positionAt(points.get(0).link(), points.get(0).metres());
        double farthest = 0;
        for (LinkPoint point : points) {
            farthest = Math.max(
                    farthest, Geodesy.metresBetween(position, network.positionAt(point.link(), point.metres())));
        }
        double stated = given.uncertaintyMetres() == null ? 0 : Uncertainty.combined(0, given.uncertaintyMetres());
        return new PlaceUnderstood(
                way,
                verbatim,
                position.latitude(),
                position.longitude(),
                Math.max(stated, ownUncertainty) + farthest,
                all.get(0),
                all.size() > 1,
                all.subList(1, all.size()));
    }

    /** Whether a name means a road of a label. */
    boolean mayMean(String name, String label) {
        return lookup.find(name).stream().anyMatch(road -> road.label().equals(label));
    }

    private List<Road> requireRoads(String field, String name) {
        List<Road> found = lookup.find(name);
        if (!found.isEmpty()) {
            return found;
        }
        String known = lookup.labelsBeginningLike(name);
        throw InvalidException.of(
                field,
                "There is no road called " + name.strip() + " in the current network.",
                known.isEmpty() ? "the name or number of a road of the network" : "perhaps one of: " + known);
    }

    private List<Road> ofCarriageway(List<Road> found, @Nullable String carriageway, @Nullable String direction) {
        if (carriageway != null && !carriageway.isBlank()) {
            List<Road> matching = found.stream()
                    .filter(road -> road.carriageway() != null && Road.sameCarriageway(road.carriageway(), carriageway))
                    .toList();
            if (matching.isEmpty() && found.stream().anyMatch(road -> road.carriageway() != null)) {
                throw InvalidException.of(
                        "place.roadAndChainage.carriageway",
                        found.get(0).label() + " has no carriageway " + carriageway.strip() + ".",
                        found.stream()
                                .map(road -> road.carriageway() == null ? "none" : road.carriageway())
                                .distinct()
                                .collect(Collectors.joining(", ")));
            }
            return matching.isEmpty() ? found : matching;
        }
        if (direction != null && !direction.isBlank()) {
            List<Road> matching = found.stream()
                    .filter(road -> road.carriageway() != null && Road.sameCarriageway(road.carriageway(), direction))
                    .toList();
            return matching.isEmpty() ? found : matching;
        }
        return found;
    }

    private String ranges(List<Road> meant) {
        List<String> texts = new ArrayList<>();
        for (Road road : meant) {
            double[] ranges = finder.chainageRanges(road);
            for (int i = 0; i < ranges.length && texts.size() < MOST_RANGES; i += 2) {
                texts.add(String.format(
                        Locale.ROOT, "%s km %.3f to %.3f", road.fullLabel(), ranges[i] / 1000, ranges[i + 1] / 1000));
            }
        }
        return String.join("; ", texts);
    }

    /** The point of a link that is nearest to a position, if it is no further than something. */
    Optional<OnRoad> beside(Position position, int link, double metres) {
        return network.snap(position, metres, SnapHints.NONE).candidates().stream()
                .filter(candidate -> candidate.link() == link)
                .findFirst()
                .map(this::onRoad);
    }

    /** A point on a link that was said, or measured along it. */
    OnRoad onRoad(int link, double metres) {
        return onRoad(link, metres, null, 0, Side.ON);
    }

    private OnRoad onRoad(SnapCandidate candidate) {
        return onRoad(candidate.link(), candidate.metres(), null, candidate.offsetMetres(), candidate.side());
    }

    private OnRoad onRoad(int link, double metres, @Nullable Double precision, double offset, Side side) {
        Road road = network.roadOf(link);
        Position position = network.positionAt(link, metres);
        return new OnRoad(
                roads.linkId(link),
                road.label(),
                road.carriageway(),
                position.latitude(),
                position.longitude(),
                metres,
                network.chainageAt(link, metres),
                precision,
                offset,
                side.name().toLowerCase(Locale.ROOT),
                RoadService.asDouble(network.attributes(link).speedLimitKmh()));
    }
}
