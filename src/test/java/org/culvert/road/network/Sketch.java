package org.culvert.road.network;

import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKTReader;

/** Builds small planar networks from well-known text. */
final class Sketch {
    private final NetworkBuilder builder = NetworkBuilder.planar();
    private int lines;

    static Sketch of() {
        return new Sketch();
    }

    Sketch road(String name, String wkt) {
        return line(RoadAttributes.named(name), wkt);
    }

    Sketch unnamed(String wkt) {
        return line(RoadAttributes.UNKNOWN, wkt);
    }

    Sketch line(RoadAttributes attributes, String wkt) {
        return line(attributes, null, wkt);
    }

    Sketch line(RoadAttributes attributes, @Nullable Double startMeasure, String wkt) {
        builder.add(new RoadLine("line " + ++lines, attributes, startMeasure, vertices(wkt)));
        return this;
    }

    NetworkBuilder.Built built() {
        return builder.build();
    }

    RoadNetwork network() {
        return builder.build().network();
    }

    static double[] vertices(String wkt) {
        try {
            Coordinate[] coordinates = new WKTReader().read(wkt).getCoordinates();
            double[] vertices = new double[2 * coordinates.length];
            for (int i = 0; i < coordinates.length; i++) {
                vertices[2 * i] = coordinates[i].x;
                vertices[2 * i + 1] = coordinates[i].y;
            }
            return vertices;
        } catch (ParseException wrong) {
            throw new IllegalArgumentException(wkt, wrong);
        }
    }
}
