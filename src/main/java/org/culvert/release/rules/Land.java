package org.culvert.release.rules;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;

/**
 * A piece of land or water of which something is known that bears on where an animal may go.
 *
 * @param name what people call it
 * @param shape polygons, on WGS 84 with longitude as x
 * @param source who says so, or whose map it is
 * @param until the first day on which it no longer holds; null: nobody knows
 */
public record Land(
        Kind kind,
        String name,
        Geometry shape,
        String source,
        @Nullable LocalDate until) {
    /** What is known of it. */
    public enum Kind {
        /** Where the law of one country or of a part of one holds; its name is the ISO 3166 code. */
        jurisdiction,
        /** The land that drains to one water: animals of that water keep to it. */
        catchment,
        /** A lake, dam, wetland or reach that aquatic animals live in. */
        water,
        /** Where animals of the water lay their eggs. */
        nestingGround,
        /** A national park or reserve. */
        protectedArea,
        /** Land of one owner. */
        property,
        /** Land that a rule takes out, such as land about to be cleared. */
        excluded,
        /** Burnt: what lived there waits until it has grown back. */
        burnt,
        /** Under water that does not belong there. */
        flooded,
        /** The area of a council or a roads authority, by its name; it bears on no release. */
        councilArea
    }
}
