package org.culvert.road.traffic;

import org.culvert.platform.InvalidException;
import org.culvert.road.PlaceAsGiven;
import org.culvert.road.PlaceReading;
import org.culvert.road.PlaceUnderstood;
import org.jspecify.annotations.Nullable;

/**
 * Where on the roads traffic was counted.
 *
 * @param toChainageMetres the same as {@code fromChainageMetres} at a point
 * @param decimalLatitude on the road; of a stretch in its middle
 * @param offsetMetres how far the place that was given lies from the road
 */
record CountedPlace(
        String road,
        @Nullable String carriageway,
        double fromChainageMetres,
        double toChainageMetres,
        int networkNumber,
        double decimalLatitude,
        double decimalLongitude,
        double offsetMetres,
        String verbatim,
        double uncertaintyMetres) {
    private static final int MOST_NAMED = 6;

    /**
     * Puts a place on its road.
     *
     * @param networkNumber of the roads that the reading knows
     * @throws InvalidException naming {@code place} where no road is near, or which one is in doubt
     */
    static CountedPlace at(PlaceReading reading, PlaceAsGiven given, int networkNumber) {
        PlaceUnderstood place = reading.understand(given);
        PlaceUnderstood.OnRoad on = place.onRoad();
        if (on == null) {
            throw InvalidException.of(
                    "place",
                    "No road of the current network lies within " + Math.round(place.coordinateUncertaintyInMeters())
                            + " m of this place.",
                    place.otherRoads().isEmpty()
                            ? "a place at a road of the network"
                            : "a place at a road; the nearest is "
                                    + place.otherRoads().get(0).roadName() + ", "
                                    + Math.round(place.otherRoads().get(0).offsetMetres()) + " m away");
        }
        if (place.roadInDoubt()) {
            throw InvalidException.of(
                    "place",
                    "More than one road may be meant, or the road that was named is not there.",
                    wanted(place));
        }
        return new CountedPlace(
                on.roadName(),
                on.carriageway(),
                on.chainageMetres(),
                on.chainageMetres(),
                networkNumber,
                on.decimalLatitude(),
                on.decimalLongitude(),
                on.offsetMetres(),
                place.verbatim(),
                place.coordinateUncertaintyInMeters());
    }

    private static String wanted(PlaceUnderstood place) {
        PlaceUnderstood.OnRoad on = place.onRoad();
        StringBuilder roads = new StringBuilder(on == null ? "" : name(on));
        place.otherRoads().stream()
                .limit(MOST_NAMED)
                .forEach(other -> roads.append(", ").append(name(other)));
        return "the name of the road, and its carriageway where it has several: " + roads;
    }

    private static String name(PlaceUnderstood.OnRoad on) {
        return on.carriageway() == null ? on.roadName() : on.roadName() + " (" + on.carriageway() + ")";
    }

    /**
     * A stretch between two places of one road, with a place in its middle.
     *
     * @throws InvalidException where its ends lie on different roads
     */
    static CountedPlace between(CountedPlace one, CountedPlace middle, CountedPlace other) {
        if (!isOnRoadOf(one, other) || !isOnRoadOf(one, middle)) {
            throw InvalidException.of(
                    "place",
                    "The line begins on " + one.road + " and ends on " + other.road + ", or leaves its road between.",
                    "a line along one road and one carriageway");
        }
        return new CountedPlace(
                one.road,
                one.carriageway,
                Math.min(one.fromChainageMetres, other.fromChainageMetres),
                Math.max(one.fromChainageMetres, other.fromChainageMetres),
                one.networkNumber,
                middle.decimalLatitude,
                middle.decimalLongitude,
                Math.max(middle.offsetMetres, Math.max(one.offsetMetres, other.offsetMetres)),
                "from " + one.verbatim + " to " + other.verbatim,
                Math.max(one.uncertaintyMetres, other.uncertaintyMetres));
    }

    private static boolean isOnRoadOf(CountedPlace one, CountedPlace other) {
        return one.road.equals(other.road)
                && (one.carriageway == null ? other.carriageway == null : one.carriageway.equals(other.carriageway));
    }
}
