package org.culvert.geo;

import org.jspecify.annotations.Nullable;

/**
 * What was understood from coordinates as someone gave them.
 *
 * @param position on WGS 84
 * @param uncertaintyMetres radius of the circle around the position that holds the place; see {@link Uncertainty}
 * @param givenAs how they were given
 * @param verbatim word for word as given
 * @param verbatimSrs the reference system they were given in, e.g. {@code EPSG:28356}; null where degrees were given
 *     without one, which is read as WGS 84
 */
public record CoordinateReading(
        Position position,
        double uncertaintyMetres,
        GivenAs givenAs,
        String verbatim,
        @Nullable String verbatimSrs) {}
