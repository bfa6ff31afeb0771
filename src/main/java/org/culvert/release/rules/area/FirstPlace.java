package org.culvert.release.rules.area;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.culvert.geo.Geodesy;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.PlaneShapes;
import org.culvert.geo.Position;
import org.culvert.release.rules.Land;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Where to look first: the place in an area that is nearest to where the animal was found, on the side of the road on which it
 * was, and for an animal of the water the nearest water there. A place on a map, that nobody has looked at.
 *
 * @param onSide whether it is on the side of the road on which the animal was; false where that side is not known or nothing of
 *     the area is there
 * @param water the water it is at, by its name on the maps
 */
public record FirstPlace(
        Position position,
        double metres,
        boolean onSide,
        @Nullable String water) {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /**
     * @param beside a point just off the road on the side on which the animal was; null: not known
     * @param waters for an animal of the water; else none
     * @param reachMetres how far its kind goes: water beyond that is not its own; infinite where nobody knows
     */
    public static Optional<FirstPlace> find(
            ReleaseArea area, Position origin, @Nullable Position beside, List<Land> waters, double reachMetres) {
        if (area.isEmpty()) {
            return Optional.empty();
        }
        LocalPlane plane = LocalPlane.around(origin);
        Geometry onPlane = PlaneShapes.toPlane(area.shape(), plane);
        Geometry side = beside == null ? FACTORY.createPolygon() : partAt(onPlane, plane, beside);
        Geometry looked = side.isEmpty() ? onPlane : side;
        List<FirstPlace> atWater = new ArrayList<>();
        for (Land water : waters) {
            Geometry shape = PlaneShapes.densely(water.shape(), plane);
            Geometry shared = within(looked, shape);
            if (!shared.isEmpty()) {
                atWater.add(nearest(shared, plane, origin, !side.isEmpty(), water.name()));
            }
        }
        return Optional.of(atWater.stream()
                .filter(place -> place.metres() <= reachMetres)
                .min(Comparator.comparingDouble(FirstPlace::metres).thenComparing(place -> "" + place.water()))
                .orElseGet(() -> nearest(looked, plane, origin, !side.isEmpty(), null)));
    }

    /** The part of an area that holds a point. */
    private static Geometry partAt(Geometry area, LocalPlane plane, Position beside) {
        Point point = point(plane, beside);
        for (int i = 0; i < area.getNumGeometries(); i++) {
            if (area.getGeometryN(i).covers(point)) {
                return area.getGeometryN(i);
            }
        }
        return FACTORY.createPolygon();
    }

    private static Geometry within(Geometry area, Geometry shape) {
        List<Geometry> shared = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            Geometry part = area.getGeometryN(i);
            if (part.getEnvelopeInternal().intersects(shape.getEnvelopeInternal()) && part.intersects(shape)) {
                shared.add(OverlayNGRobust.overlay(part, shape, OverlayNG.INTERSECTION));
            }
        }
        return FACTORY.createGeometryCollection(shared.toArray(new Geometry[0]));
    }

    private static FirstPlace nearest(
            Geometry area, LocalPlane plane, Position origin, boolean onSide, @Nullable String water) {
        Coordinate at = DistanceOp.nearestPoints(area, point(plane, origin))[0];
        Position position = plane.inverse(at.x, at.y);
        return new FirstPlace(position, Geodesy.metresBetween(origin, position), onSide, water);
    }

    private static Point point(LocalPlane plane, Position position) {
        double[] xy = plane.forward(position);
        return FACTORY.createPoint(new Coordinate(xy[0], xy[1]));
    }
}
