package org.culvert.web.desk;

import java.util.List;
import java.util.Locale;
import org.culvert.call.CallReceipt;
import org.culvert.call.PlaceView;
import org.culvert.geo.Position;
import org.culvert.road.CurrentRoads;
import org.culvert.road.PlaceUnderstood;
import org.culvert.road.PlaceUnderstood.OnRoad;
import org.jspecify.annotations.Nullable;

/**
 * A place as a dispatcher sees it.
 *
 * @param uncertainty in whole metres
 * @param road null where none is near
 * @param kilometres along it, null likewise
 * @param otherRoads that it may be on, each with its kilometres
 * @param near incidents that may be the same
 */
public record DeskWhere(
        double latitude,
        double longitude,
        String uncertainty,
        @Nullable String road,
        @Nullable String kilometres,
        @Nullable String carriageway,
        @Nullable String speedLimit,
        boolean inDoubt,
        List<Other> otherRoads,
        PlacePicture picture,
        List<CallReceipt.Candidate> near) {
    /** Another road that a place may be on. */
    public record Other(String road, String kilometres, String metres) {}

    static DeskWhere of(PlaceUnderstood place, @Nullable CurrentRoads roads, List<CallReceipt.Candidate> near) {
        OnRoad on = place.onRoad();
        return of(
                new Position(place.decimalLatitude(), place.decimalLongitude()),
                place.coordinateUncertaintyInMeters(),
                on == null ? null : on.roadName(),
                on == null ? null : on.chainageMetres(),
                on == null ? null : on.carriageway(),
                on == null ? null : on.speedLimitKmh(),
                place.roadInDoubt(),
                place.otherRoads(),
                roads,
                near);
    }

    static DeskWhere of(
            PlaceView place,
            @Nullable Double speedLimitKmh,
            @Nullable CurrentRoads roads,
            List<CallReceipt.Candidate> near) {
        return of(
                new Position(place.decimalLatitude(), place.decimalLongitude()),
                place.coordinateUncertaintyInMeters(),
                place.roadName(),
                place.chainageMetres(),
                place.carriageway(),
                speedLimitKmh,
                place.roadIsInDoubt(),
                place.otherRoads(),
                roads,
                near);
    }

    private static DeskWhere of(
            Position at,
            double uncertaintyMetres,
            @Nullable String road,
            @Nullable Double chainageMetres,
            @Nullable String carriageway,
            @Nullable Double speedLimitKmh,
            boolean inDoubt,
            List<OnRoad> others,
            @Nullable CurrentRoads roads,
            List<CallReceipt.Candidate> near) {
        return new DeskWhere(
                at.latitude(),
                at.longitude(),
                String.format(Locale.ROOT, "%.0f", uncertaintyMetres),
                road,
                chainageMetres == null ? null : kilometres(chainageMetres),
                carriageway,
                speedLimitKmh == null ? null : String.format(Locale.ROOT, "%.0f", speedLimitKmh),
                inDoubt,
                others.stream()
                        .map(other -> new Other(
                                other.roadName(),
                                kilometres(other.chainageMetres()),
                                String.format(Locale.ROOT, "%.0f", other.offsetMetres())))
                        .toList(),
                PlacePicture.of(at, uncertaintyMetres, road, roads),
                near);
    }

    static String kilometres(double metres) {
        return String.format(Locale.ROOT, "%.2f", metres / 1000);
    }
}
