package org.culvert.animal.intake;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import java.util.List;
import java.util.Map;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.GeoJsonPolygons;
import org.culvert.geo.Position;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/**
 * The ground of a sector as GeoJSON (RFC 7946).
 *
 * @param coordinates longitude before latitude, on WGS 84: of a Polygon its rings, of a MultiPolygon its polygons
 */
public record SectorArea(
        @NotNull @Pattern(regexp = "Polygon|MultiPolygon", message = "must be Polygon or MultiPolygon")
        String type,

        @NotNull List<Object> coordinates) {

    /**
     * The same, as it is kept: valid, its outer rings counterclockwise.
     *
     * @throws InvalidException naming the part of {@code area} that is wrong
     */
    static @Nullable SectorArea read(@Nullable SectorArea told) {
        if (told == null) {
            return null;
        }
        try {
            Geometry shape = GeoJsonPolygons.read(told.type, told.coordinates);
            return new SectorArea(GeoJsonPolygons.type(shape), GeoJsonPolygons.coordinates(shape));
        } catch (CoordinateException wrong) {
            Position other = wrong.otherReading();
            throw InvalidException.of(
                    "area." + wrong.field(),
                    wrong.whatIsWrong(),
                    wrong.whatWouldBeRight(),
                    other == null
                            ? null
                            : Map.of("decimalLatitude", other.latitude(), "decimalLongitude", other.longitude()));
        }
    }
}
