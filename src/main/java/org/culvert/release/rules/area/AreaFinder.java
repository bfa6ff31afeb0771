package org.culvert.release.rules.area;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.culvert.geo.Geodesy;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.PlaneShapes;
import org.culvert.geo.Position;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.UncertainPosition;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.distance.DistanceOp;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * Finds the area: the circle of the strictest limit, within the origin's catchment where a rule asks for that, less land that
 * is taken out, less the surfaces of roads.
 *
 * <p>All on a transverse Mercator plane laid around the origin: at 50 km lengths are 0.003 % too large, areas 0.006 %. The
 * circle is geodesic. Its radius is the limit less the origin's uncertainty, so that wherever in its own circle the origin is,
 * no point of the area is farther from it than the limit: what can be told is in, what cannot be told is out.
 */
public final class AreaFinder {
    /** Corners of a circle; its area comes out 0.001 % too small, and never reaches beyond it. */
    private static final int CORNERS = 720;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final LandBetweenRoads roads;
    private final AreaQuestion question;
    private final LocalPlane plane;
    private final List<ReleaseArea.Step> steps = new ArrayList<>();
    private final List<ReleaseArea.TakenOut> takenOut = new ArrayList<>();

    private AreaFinder(LandBetweenRoads roads, AreaQuestion question) {
        this.roads = roads;
        this.question = question;
        this.plane = LocalPlane.around(question.origin().position());
    }

    /** @param roads of the network that holds where the origin is */
    public static ReleaseArea find(LandBetweenRoads roads, AreaQuestion question) {
        return new AreaFinder(roads, question).find();
    }

    private ReleaseArea find() {
        Geometry left = circle();
        if (!left.isEmpty() && question.keepToCatchment()) {
            left = withinCatchment(left);
        }
        for (Land.Kind kind : new Land.Kind[] {Land.Kind.excluded, Land.Kind.burnt, Land.Kind.flooded}) {
            for (Land land : sorted(kind)) {
                if (!left.isEmpty()) {
                    left = without(left, land);
                }
            }
        }
        if (!left.isEmpty()) {
            left = betweenRoads(left);
            step(
                    ReleaseArea.Cut.roads,
                    "roads",
                    String.format(
                            Locale.ROOT, "Everything within %.0f m of the middle of a road.", roads.halfWidthMetres()),
                    left,
                    "Nothing: no animal is let go on a road.");
        }
        return new ReleaseArea(
                PlaneShapes.toEarth(left, plane), left.getArea(), steps, takenOut, nearest(left), askFirst(left));
    }

    private Geometry circle() {
        UncertainPosition origin = question.origin();
        List<Limit> widestFirst = question.limits().stream()
                .sorted(Comparator.comparingDouble(Limit::metres).reversed().thenComparing(Limit::key))
                .toList();
        Geometry left = FACTORY.createPolygon();
        for (Limit limit : widestFirst) {
            double radius = limit.metres() - origin.uncertaintyMetres();
            left = radius > 0 ? circle(origin.position(), radius) : FACTORY.createPolygon();
            step(ReleaseArea.Cut.distance, limit.key(), limit.words(), left, opens(limit, origin));
        }
        return left;
    }

    private static String opens(Limit limit, UncertainPosition origin) {
        String better = String.format(
                Locale.ROOT,
                "The origin is known to %,.0f m, which is taken off the distance: a better known one opens more. ",
                origin.uncertaintyMetres());
        return better
                + switch (limit.lifting()) {
                    case byPermit -> "Beyond it, only a permit with its number and document.";
                    case byOverride -> "Beyond it, a named person with a reason.";
                    case byNothing -> "Beyond it, nothing.";
                    case notNeeded -> "It is advice.";
                };
    }

    private Geometry circle(Position centre, double radius) {
        Coordinate[] corners = new Coordinate[CORNERS + 1];
        for (int i = 0; i < CORNERS; i++) {
            double[] xy = plane.forward(Geodesy.WGS84.direct(centre, 360.0 * i / CORNERS, radius));
            corners[i] = new Coordinate(xy[0], xy[1]);
        }
        corners[CORNERS] = corners[0].copy();
        return FACTORY.createPolygon(corners);
    }

    /** The catchments that the whole circle of the origin is certainly in; a circle on a border is in neither. */
    private Geometry withinCatchment(Geometry circle) {
        Geometry origin = originCircle();
        Geometry catchments = FACTORY.createPolygon();
        List<String> names = new ArrayList<>();
        for (Land land : sorted(Land.Kind.catchment)) {
            Geometry shape = PlaneShapes.densely(land.shape(), plane);
            if (shape.covers(origin)) {
                catchments = OverlayNGRobust.overlay(catchments, shape, OverlayNG.UNION);
                names.add(land.name());
            }
        }
        Geometry left = names.isEmpty()
                ? FACTORY.createPolygon()
                : OverlayNGRobust.overlay(circle, catchments, OverlayNG.INTERSECTION);
        step(
                ReleaseArea.Cut.catchment,
                String.join(", ", names),
                names.isEmpty()
                        ? "It is to stay in its catchment, and which that is cannot be told from the maps entered here."
                        : "It is to stay in its catchment: " + String.join(", ", names) + ".",
                left,
                names.isEmpty()
                        ? "A map of the catchments, or an origin that lies in one of them for certain."
                        : "Another water only as the rule that asks for this lets it be lifted.");
        takeOut(ReleaseArea.Cut.catchment, OverlayNGRobust.overlay(circle, catchments, OverlayNG.DIFFERENCE));
        return left;
    }

    private Geometry originCircle() {
        Position centre = question.origin().position();
        double radius = question.origin().uncertaintyMetres();
        return radius > 0 ? circle(centre, radius) : FACTORY.createPoint(new Coordinate(0, 0));
    }

    private Geometry without(Geometry area, Land land) {
        Geometry shape = PlaneShapes.densely(land.shape(), plane);
        if (!shape.getEnvelopeInternal().intersects(area.getEnvelopeInternal()) || !shape.intersects(area)) {
            return area;
        }
        Geometry left = OverlayNGRobust.overlay(area, shape, OverlayNG.DIFFERENCE);
        String until = land.until() == null ? "" : " until " + land.until();
        switch (land.kind()) {
            case burnt ->
                step(
                        ReleaseArea.Cut.burnt,
                        land.name(),
                        "Burnt" + until + ": " + land.name() + " (" + land.source() + ").",
                        left,
                        "Time: when it has grown back, and somebody has looked, end that entry.");
            case flooded ->
                step(
                        ReleaseArea.Cut.flooded,
                        land.name(),
                        "Flooded" + until + ": " + land.name() + " (" + land.source() + ").",
                        left,
                        "Time: when the water is gone, and somebody has looked, end that entry.");
            default ->
                step(
                        ReleaseArea.Cut.excluded,
                        land.name(),
                        "Taken out" + until + ": " + land.name() + " (" + land.source() + ").",
                        left,
                        "An end of that entry, by whoever knows that its ground is gone.");
        }
        takeOut(steps.get(steps.size() - 1).cut(), OverlayNGRobust.overlay(area, shape, OverlayNG.INTERSECTION));
        return left;
    }

    private Geometry betweenRoads(Geometry area) {
        Geometry onEarth = PlaneShapes.toEarth(area.getEnvelope(), plane);
        Envelope box = onEarth.getEnvelopeInternal();
        // The edges of a plane's box bend on Earth
        box.expandBy(0.02 * box.getWidth(), 0.02 * box.getHeight());
        PreparedGeometry prepared = PreparedGeometryFactory.prepare(area);
        List<Polygon> left = new ArrayList<>();
        for (Polygon block : roads.in(box)) {
            Geometry land = PlaneShapes.toPlane(block, plane);
            if (prepared.covers(land)) {
                addPolygons(land, left);
            } else if (prepared.intersects(land)) {
                addPolygons(OverlayNGRobust.overlay(area, land, OverlayNG.INTERSECTION), left);
            }
        }
        return FACTORY.createMultiPolygon(left.toArray(new Polygon[0]));
    }

    /** What two areas share may be a line or a point too: that is no land. */
    private static void addPolygons(Geometry from, List<Polygon> to) {
        for (int i = 0; i < from.getNumGeometries(); i++) {
            if (from.getGeometryN(i) instanceof Polygon polygon && !polygon.isEmpty()) {
                to.add(polygon);
            }
        }
    }

    private ReleaseArea.@Nullable Nearest nearest(Geometry area) {
        if (area.isEmpty()) {
            return null;
        }
        Point origin = FACTORY.createPoint(new Coordinate(0, 0));
        var between = new DistanceOp(area, origin);
        if (between.distance() == 0) {
            return new ReleaseArea.Nearest(question.origin().position(), 0);
        }
        Coordinate point = between.nearestPoints()[0];
        Position position = plane.inverse(point.x, point.y);
        return new ReleaseArea.Nearest(
                position, Geodesy.metresBetween(question.origin().position(), position));
    }

    private List<ReleaseArea.AskFirst> askFirst(Geometry area) {
        List<ReleaseArea.AskFirst> asked = new ArrayList<>();
        Geometry origin = originCircle();
        for (Land.Kind kind : new Land.Kind[] {Land.Kind.protectedArea, Land.Kind.property, Land.Kind.jurisdiction}) {
            for (Land land : sorted(kind)) {
                Geometry shape = PlaneShapes.densely(land.shape(), plane);
                // Of jurisdictions those across a border, as far as that can be told
                if (kind != Land.Kind.jurisdiction || !shape.covers(origin)) {
                    Geometry shared = shared(area, shape);
                    if (!shared.isEmpty()) {
                        asked.add(new ReleaseArea.AskFirst(
                                kind.name(),
                                land.name(),
                                land.source(),
                                shared.getArea(),
                                PlaneShapes.toEarth(shared, plane)));
                    }
                }
            }
        }
        return asked;
    }

    private static Geometry shared(Geometry area, Geometry shape) {
        List<Polygon> parts = new ArrayList<>();
        for (int i = 0; i < area.getNumGeometries(); i++) {
            Geometry part = area.getGeometryN(i);
            if (part.getEnvelopeInternal().intersects(shape.getEnvelopeInternal())) {
                addPolygons(OverlayNGRobust.overlay(part, shape, OverlayNG.INTERSECTION), parts);
            }
        }
        return FACTORY.createMultiPolygon(parts.toArray(new Polygon[0]));
    }

    /** In an order that does not hang on how they came. */
    private List<Land> sorted(Land.Kind kind) {
        return question.lands().stream()
                .filter(land -> land.kind() == kind)
                .sorted(Comparator.comparing(Land::name)
                        .thenComparing(land -> land.shape().norm().toText()))
                .toList();
    }

    /** Keeps what the last step took out. */
    private void takeOut(ReleaseArea.Cut cut, Geometry part) {
        List<Polygon> parts = new ArrayList<>();
        addPolygons(part, parts);
        if (!parts.isEmpty()) {
            takenOut.add(new ReleaseArea.TakenOut(
                    cut,
                    steps.get(steps.size() - 1).words(),
                    PlaneShapes.toEarth(FACTORY.createMultiPolygon(parts.toArray(new Polygon[0])), plane)));
        }
    }

    private void step(ReleaseArea.Cut cut, String key, String words, Geometry left, String opens) {
        steps.add(new ReleaseArea.Step(cut, key, words, left.getArea(), opens));
    }
}
