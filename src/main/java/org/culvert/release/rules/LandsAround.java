package org.culvert.release.rules;

import java.util.ArrayList;
import java.util.List;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.PlaneShapes;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;

/** Pieces of land, laid on a plane once, for many places. Immutable; not for several threads at once. */
public final class LandsAround {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private record Laid(Land land, IndexedPointInAreaLocator inside, IndexedFacetDistance border) {}

    private final LocalPlane plane;
    private final List<Laid> laid = new ArrayList<>();

    /** @param centre around which all the places lie */
    public LandsAround(List<Land> lands, Position centre) {
        this.plane = LocalPlane.around(centre);
        for (Land land : lands) {
            Geometry shape = PlaneShapes.densely(land.shape(), plane);
            laid.add(new Laid(
                    land, new IndexedPointInAreaLocator(shape), new IndexedFacetDistance(shape.getBoundary())));
        }
    }

    /**
     * How each lies to an origin and to a site.
     *
     * @param origin null: nobody knows
     */
    public List<LandSaid> said(@Nullable UncertainPosition origin, UncertainPosition site) {
        List<LandSaid> said = new ArrayList<>();
        for (Laid one : laid) {
            Coordinate at = coordinate(site);
            boolean inside = one.inside.locate(at) != Location.EXTERIOR;
            said.add(new LandSaid(
                    one.land.kind(),
                    one.land.name(),
                    one.land.source(),
                    one.land.until(),
                    origin == null ? Verdict.cantTell : in(one, origin),
                    in(one, site),
                    inside ? 0 : one.border.distance(FACTORY.createPoint(at))));
        }
        return said;
    }

    private Verdict in(Laid one, UncertainPosition place) {
        Coordinate at = coordinate(place);
        if (place.uncertaintyMetres() > 0
                && one.border.isWithinDistance(FACTORY.createPoint(at), place.uncertaintyMetres())) {
            return Verdict.cantTell;
        }
        return one.inside.locate(at) != Location.EXTERIOR ? Verdict.pass : Verdict.fail;
    }

    private Coordinate coordinate(UncertainPosition place) {
        double[] xy = plane.forward(place.position());
        return new Coordinate(xy[0], xy[1]);
    }
}
