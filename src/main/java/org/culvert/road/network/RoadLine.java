package org.culvert.road.network;

import org.jspecify.annotations.Nullable;

/**
 * A line of a road as it comes from a source, before it is joined with others.
 *
 * @param key what the source calls it, e.g. "line 12"; shown to people, need not be unique
 * @param attributes what is known of it
 * @param startMeasureMetres chainage at its first vertex by the owner's calibration, or null
 * @param vertices first and second coordinate in turn: longitude and latitude, or x and y in the source's unit. The
 *     direction in which they run is that of increasing chainage. Not copied: leave it alone afterwards
 */
public record RoadLine(
        String key, RoadAttributes attributes, @Nullable Double startMeasureMetres, double[] vertices) {
    public RoadLine {
        if (vertices.length % 2 != 0) {
            throw new IllegalArgumentException("vertices come in pairs");
        }
    }

    int vertexCount() {
        return vertices.length / 2;
    }
}
