package org.culvert.call;

import java.util.List;
import java.util.UUID;
import org.culvert.road.PlaceUnderstood;
import org.jspecify.annotations.Nullable;

/** A place as reported ({@code givenAs}, {@code verbatim}) beside as understood. */
public record PlaceView(
        UUID id,
        String givenAs,
        String verbatim,
        double decimalLatitude,
        double decimalLongitude,
        double coordinateUncertaintyInMeters,
        @Nullable UUID roadLinkId,
        @Nullable String roadName,
        @Nullable String carriageway,
        @Nullable Double metresAlongLink,
        @Nullable Double chainageMetres,
        @Nullable Double chainagePrecisionMetres,
        @Nullable Double offsetMetres,
        @Nullable String side,
        boolean roadIsInDoubt,
        List<PlaceUnderstood.OnRoad> otherRoads) {}
