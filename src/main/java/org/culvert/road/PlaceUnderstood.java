package org.culvert.road;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A place as understood: a position with its doubt, and where known the road, the chainage and the side.
 *
 * @param givenAs which way of saying it was used: {@code decimalDegrees}, {@code degreesMinutesSeconds}, {@code grid},
 *     {@code plusCode}, {@code roadAndChainage} or {@code crossingRoads}
 * @param verbatim what was said, in one line
 * @param coordinateUncertaintyInMeters radius in metres that follows from how it was given
 * @param onRoad the road it is pinned to, or null when none is near
 * @param roadInDoubt whether another road is as likely; then {@code onRoad} is the nearest and no more
 * @param otherRoads the other candidates, most likely first
 */
public record PlaceUnderstood(
        String givenAs,
        String verbatim,
        double decimalLatitude,
        double decimalLongitude,
        double coordinateUncertaintyInMeters,
        @Nullable OnRoad onRoad,
        boolean roadInDoubt,
        List<OnRoad> otherRoads) {

    /**
     * A position on a road of the current network.
     *
     * @param roadLinkId the link
     * @param roadName name or label of the road
     * @param carriageway carriageway where the road has several
     * @param decimalLatitude of the point on the road, WGS 84
     * @param decimalLongitude of the point on the road
     * @param metresAlongLink metres from the link's start
     * @param chainageMetres chainage along the road in metres
     * @param chainagePrecisionMetres to how many metres the chainage was given, or null when it was measured from a
     *     position
     * @param offsetMetres distance from the position as given to the road
     * @param side {@code left}, {@code right} or {@code on}, relative to increasing chainage
     * @param speedLimitKmh posted limit, or null where not known
     */
    public record OnRoad(
            UUID roadLinkId,
            String roadName,
            @Nullable String carriageway,
            double decimalLatitude,
            double decimalLongitude,
            double metresAlongLink,
            double chainageMetres,
            @Nullable Double chainagePrecisionMetres,
            double offsetMetres,
            String side,
            @Nullable Double speedLimitKmh) {}
}
