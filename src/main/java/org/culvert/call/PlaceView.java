package org.culvert.call;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.geo.Generalisation;
import org.culvert.geo.Position;
import org.culvert.platform.sight.Generalised;
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
        List<PlaceUnderstood.OnRoad> otherRoads)
        implements Generalised {

    /** The cell alone: road, chainage, side and words would lead to the place. */
    @Override
    public Map<String, Object> generalised(double gridDegrees) {
        if (gridDegrees == 0) {
            return Map.of();
        }
        Generalisation cell = Generalisation.of(
                new Position(decimalLatitude, decimalLongitude), coordinateUncertaintyInMeters, gridDegrees);
        return Map.of(
                "decimalLatitude",
                cell.centre().latitude(),
                "decimalLongitude",
                cell.centre().longitude(),
                "coordinateUncertaintyInMeters",
                cell.uncertaintyMetres());
    }
}
