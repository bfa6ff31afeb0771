package org.culvert.geo;

import org.locationtech.jts.densify.Densifier;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.GeometryTransformer;

/** Shapes between longitude and latitude and the x and y of a plane. */
public final class PlaneShapes {
    /**
     * An edge of a map runs straight in longitude and latitude (RFC 7946, section 3.1.1), which a plane bends: vertices are put
     * in so that none is longer than this. An edge of 500 m strays by millimetres.
     */
    private static final double LONGEST_EDGE_DEGREES = 0.005;

    private PlaneShapes() {}

    public static Geometry toPlane(Geometry onEarth, LocalPlane plane) {
        return transform(onEarth, plane, true);
    }

    /** Of a map whose edges may be long: they are bent as the plane bends them. */
    public static Geometry densely(Geometry onEarth, LocalPlane plane) {
        return toPlane(Densifier.densify(onEarth, LONGEST_EDGE_DEGREES), plane);
    }

    public static Geometry toEarth(Geometry onPlane, LocalPlane plane) {
        return transform(onPlane, plane, false);
    }

    private static Geometry transform(Geometry geometry, LocalPlane plane, boolean forward) {
        return new GeometryTransformer() {
            @Override
            protected CoordinateSequence transformCoordinates(CoordinateSequence from, Geometry parent) {
                CoordinateSequence to = factory.getCoordinateSequenceFactory().create(from.size(), 2);
                for (int i = 0; i < from.size(); i++) {
                    if (forward) {
                        double[] xy = plane.forward(from.getY(i), from.getX(i));
                        to.setOrdinate(i, 0, xy[0]);
                        to.setOrdinate(i, 1, xy[1]);
                    } else {
                        Position position = plane.inverse(from.getX(i), from.getY(i));
                        to.setOrdinate(i, 0, position.longitude());
                        to.setOrdinate(i, 1, position.latitude());
                    }
                }
                return to;
            }
        }.transform(geometry);
    }
}
