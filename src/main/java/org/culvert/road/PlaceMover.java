package org.culvert.road;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.culvert.geo.CoordinateReading;
import org.culvert.geo.Geodesy;
import org.culvert.geo.GivenAs;
import org.culvert.geo.Position;
import org.culvert.road.PlaceMoved.Outcome;
import org.culvert.road.PlaceUnderstood.OnRoad;
import org.culvert.road.network.Road;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.SnapHints;
import org.jspecify.annotations.Nullable;

/**
 * Puts places that are on an older version of the roads on the current one. Where the link is still there it stays on it;
 * else it is put on a road anew, by what is known of it. What a person would have to decide is left as it is.
 */
public final class PlaceMover {
    /** A chainage means the same point on two versions if it lies no further apart; common practice, no source. */
    private static final double SAME_CHAINAGE_METRES = 25;

    /** Where a road of the old version was, its successor is within this; common practice, no source. */
    private static final double SUCCESSOR_METRES = 30;

    private final CurrentRoads roads;
    private final RoadNetwork network;
    private final RoadPlaces places;

    public PlaceMover(CurrentRoads roads) {
        this.roads = roads;
        this.network = roads.network();
        this.places = new RoadPlaces(roads, RoadLookup.remembering(network));
    }

    public PlaceMoved move(PlacedBefore before) {
        return before.roadInDoubt() ? moveInDoubt(before) : moveSure(before);
    }

    private PlaceMoved moveSure(PlacedBefore before) {
        OptionalInt link = roads.findLasting(before.lastingId());
        OnRoad found;
        if (link.isPresent()) {
            found = onLink(before, link.getAsInt(), before.partOfLink());
        } else {
            PlaceUnderstood anew = anew(before, before.isByRoad() ? before.onRoad() : before.position());
            found = anew.onRoad();
            if (found == null || before.isByRoad() && apart(before.onRoad(), found) > SUCCESSOR_METRES) {
                return PlaceMoved.not(Outcome.noRoad);
            }
            if (anew.roadInDoubt()) {
                return PlaceMoved.not(Outcome.roadInDoubt);
            }
        }
        Double precision = before.chainagePrecisionMetres();
        Double chainage = before.chainageMetres();
        boolean said = before.givenAs().equals("roadAndChainage");
        if (said && chainage != null && Math.abs(found.chainageMetres() - chainage) > SAME_CHAINAGE_METRES) {
            return PlaceMoved.not(Outcome.otherChainage);
        }
        return moved(before, precision == null ? found : withPrecision(found, precision), false, List.of());
    }

    private PlaceMoved moveInDoubt(PlacedBefore before) {
        List<OnRoad> kept = new ArrayList<>();
        roads.findLasting(before.lastingId()).ifPresent(link -> kept.add(onLink(before, link, before.partOfLink())));
        for (PlacedBefore.OtherPlace other : before.others()) {
            if (other.lastingId() != null) {
                roads.findLasting(other.lastingId())
                        .ifPresent(link -> kept.add(places.onRoad(
                                link, other.partOfLink() * network.graph().length(link))));
            }
        }
        if (kept.size() == 1 + before.others().size()) {
            return moved(before, kept.get(0), true, kept.subList(1, kept.size()));
        }
        if (before.isByRoad()) {
            return PlaceMoved.not(Outcome.roadInDoubt);
        }
        PlaceUnderstood anew = anew(before, before.position());
        return anew.onRoad() == null
                ? PlaceMoved.not(Outcome.noRoad)
                : moved(before, anew.onRoad(), anew.roadInDoubt(), anew.otherRoads());
    }

    /** A place that was given by its position lies beside its link where it did; one given by its road lies on it. */
    private OnRoad onLink(PlacedBefore before, int link, double part) {
        double along = part * network.graph().length(link);
        if (!before.isByRoad()) {
            Optional<OnRoad> beside = places.beside(
                    before.position(), link, Geodesy.metresBetween(before.position(), network.positionAt(link, along)));
            if (beside.isPresent()) {
                return beside.get();
            }
        }
        return places.onRoad(link, along);
    }

    /** With the road that it was on as a hint, and without where that has another name now. */
    private PlaceUnderstood anew(PlacedBefore before, Position at) {
        boolean named = network.findRoads(before.roadName()).stream().anyMatch(Road::named);
        SnapHints hints = new SnapHints(named ? before.roadName() : null, before.carriageway());
        PlaceUnderstood found = near(before, at, hints);
        return named && found.roadInDoubt() ? near(before, at, new SnapHints(null, before.carriageway())) : found;
    }

    private PlaceUnderstood near(PlacedBefore before, Position at, SnapHints hints) {
        double uncertainty = before.isByRoad() ? SUCCESSOR_METRES : Math.max(1, before.coordinateUncertaintyInMeters());
        return places.nearPosition(
                before.givenAs(),
                before.verbatim(),
                new CoordinateReading(at, uncertainty, GivenAs.DECIMAL_DEGREES, before.verbatim(), null),
                hints);
    }

    private static double apart(Position before, OnRoad now) {
        return Geodesy.metresBetween(before, new Position(now.decimalLatitude(), now.decimalLongitude()));
    }

    private static PlaceMoved moved(PlacedBefore before, OnRoad now, boolean inDoubt, List<OnRoad> others) {
        return new PlaceMoved(Outcome.moved, apart(before.onRoad(), now), now, inDoubt, others);
    }

    private static OnRoad withPrecision(OnRoad found, @Nullable Double precision) {
        return new OnRoad(
                found.roadLinkId(),
                found.roadName(),
                found.carriageway(),
                found.decimalLatitude(),
                found.decimalLongitude(),
                found.metresAlongLink(),
                found.chainageMetres(),
                precision,
                found.offsetMetres(),
                found.side(),
                found.speedLimitKmh());
    }
}
