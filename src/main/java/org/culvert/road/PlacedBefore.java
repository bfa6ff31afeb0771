package org.culvert.road;

import java.util.List;
import java.util.UUID;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;

/**
 * A place as it was put on a road of an older version.
 *
 * @param givenAs as in {@link PlaceUnderstood}
 * @param position as understood from what was given
 * @param onRoad the point of the old road
 * @param lastingId of the old link
 * @param partOfLink how far along the old link it is: 0 at its start, 1 at its end
 * @param roadName name or label of the old road
 * @param chainageMetres along the old road
 * @param others lasting identifiers of the links of the other roads that it may be on, null where one is not known any more
 */
public record PlacedBefore(
        String givenAs,
        String verbatim,
        Position position,
        double coordinateUncertaintyInMeters,
        Position onRoad,
        UUID lastingId,
        double partOfLink,
        String roadName,
        @Nullable String carriageway,
        @Nullable Double chainageMetres,
        @Nullable Double chainagePrecisionMetres,
        boolean roadInDoubt,
        List<OtherPlace> others) {

    /** A point on another road that it may be on. */
    public record OtherPlace(@Nullable UUID lastingId, double partOfLink, Position onRoad) {}

    boolean isByRoad() {
        return givenAs.equals("roadAndChainage") || givenAs.equals("crossingRoads");
    }
}
