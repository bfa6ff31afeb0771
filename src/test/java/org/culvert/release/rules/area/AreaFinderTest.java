package org.culvert.release.rules.area;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.PolygonArea;
import org.culvert.geo.Geodesy;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.PlaneShapes;
import org.culvert.geo.Position;
import org.culvert.release.rules.Land;
import org.culvert.release.rules.Lifting;
import org.culvert.release.rules.UncertainPosition;
import org.culvert.road.network.NetworkBuilder;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadLine;
import org.culvert.road.network.RoadNetwork;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;

/** Against areas by hand, and against GeographicLib's own (Karney 2013, Algorithms for geodesics, doi:10.1007/s00190-012-0578-z). */
class AreaFinderTest {
    private static final Position ORIGIN = new Position(-33.5, 150.2);
    private static final LocalPlane PLANE = LocalPlane.around(ORIGIN);
    private static final GeometryFactory FACTORY = new GeometryFactory();

    /** One road far from everything asked here. */
    private static final LandBetweenRoads FAR_ROADS =
            LandBetweenRoads.of(network(road("far", 90_000, 90_000, 91_000, 90_000)), 10);

    private static RoadLine road(String key, double... xy) {
        double[] vertices = new double[xy.length];
        for (int i = 0; i < xy.length; i += 2) {
            Position position = PLANE.inverse(xy[i], xy[i + 1]);
            vertices[i] = position.longitude();
            vertices[i + 1] = position.latitude();
        }
        return new RoadLine(key, RoadAttributes.named(key), null, vertices);
    }

    private static RoadNetwork network(RoadLine... lines) {
        NetworkBuilder builder = NetworkBuilder.geographic();
        for (RoadLine line : lines) {
            builder.add(line);
        }
        return builder.build().network();
    }

    private static Land land(Land.Kind kind, String name, double... xy) {
        Coordinate[] corners = new Coordinate[xy.length / 2 + 1];
        for (int i = 0; i < xy.length; i += 2) {
            Position position = PLANE.inverse(xy[i], xy[i + 1]);
            corners[i / 2] = new Coordinate(position.longitude(), position.latitude());
        }
        corners[corners.length - 1] = corners[0].copy();
        return new Land(kind, name, FACTORY.createPolygon(corners), "invented for this test", null);
    }

    private static Land disc(Land.Kind kind, String name, double x, double y, double radius) {
        double[] xy = new double[2 * 400];
        for (int i = 0; i < 400; i++) {
            xy[2 * i] = x + radius * Math.cos(2 * Math.PI * i / 400);
            xy[2 * i + 1] = y + radius * Math.sin(2 * Math.PI * i / 400);
        }
        return land(kind, name, xy);
    }

    private static Limit atMost(double metres) {
        return new Limit("rule", "At most " + metres + " m.", metres, Lifting.byPermit);
    }

    private static ReleaseArea area(LandBetweenRoads roads, double uncertainty, double metres, Land... lands) {
        return AreaFinder.find(
                roads,
                new AreaQuestion(
                        new UncertainPosition(ORIGIN, uncertainty), List.of(atMost(metres)), List.of(lands), false));
    }

    private static double onTheEllipsoid(Geometry shape) {
        double sum = 0;
        for (int i = 0; i < shape.getNumGeometries(); i++) {
            Polygon polygon = (Polygon) shape.getGeometryN(i);
            sum += Math.abs(ring(polygon.getExteriorRing().getCoordinates()));
            for (int hole = 0; hole < polygon.getNumInteriorRing(); hole++) {
                sum -= Math.abs(ring(polygon.getInteriorRingN(hole).getCoordinates()));
            }
        }
        return sum;
    }

    private static double ring(Coordinate[] corners) {
        var area = new PolygonArea(Geodesic.WGS84, false);
        for (int i = 0; i < corners.length - 1; i++) {
            area.AddPoint(corners[i].getY(), corners[i].getX());
        }
        return area.Compute().area;
    }

    /** The figure of the area is that of the ellipsoid within a ten-thousandth, even at 50 km. */
    @ParameterizedTest
    @ValueSource(doubles = {200, 10_000, 20_000, 50_000})
    void aCircleHasItsAreaOnTheEllipsoid(double radius) {
        ReleaseArea area = area(FAR_ROADS, 0, radius);
        assertThat(area.squareMetres()).isCloseTo(Math.PI * radius * radius, within(1e-4 * Math.PI * radius * radius));
        double wanted = onTheEllipsoid(area.shape());
        assertThat(area.squareMetres()).isCloseTo(wanted, within(1e-4 * wanted));
    }

    /** Lengths on the plane against geodesics, every way, out to 50 km. */
    @Test
    void thePlaneIsRightToAThousandthAtFiftyKilometres() {
        double worst = 0;
        for (int azimuth = 0; azimuth < 360; azimuth += 5) {
            for (double out : new double[] {1000, 20_000, 50_000}) {
                double[] one = PLANE.forward(Geodesy.WGS84.direct(ORIGIN, azimuth, out));
                Position at = PLANE.inverse(one[0], one[1]);
                for (int way = 0; way < 360; way += 30) {
                    double[] other = PLANE.forward(Geodesy.WGS84.direct(at, way, 500));
                    double onPlane = Math.hypot(other[0] - one[0], other[1] - one[1]);
                    worst = Math.max(worst, Math.abs(onPlane / 500 - 1));
                }
            }
        }
        assertThat(worst).isLessThan(1e-3);
        // The theory says d^2 / 2 R^2 = 3.1e-5
        assertThat(worst).isBetween(2.5e-5, 4e-5);
    }

    /** Every corner of the circle is as far as the limit less the uncertainty, and no point farther. */
    @Test
    void uncertaintyOfTheOriginIsTakenOffTheDistance() {
        ReleaseArea area = area(FAR_ROADS, 300, 10_000);
        for (Coordinate corner : area.shape().getCoordinates()) {
            assertThat(Geodesy.metresBetween(ORIGIN, new Position(corner.getY(), corner.getX())))
                    .isCloseTo(9700, within(1e-3));
        }
        ReleaseArea none = area(FAR_ROADS, 10_000, 10_000);
        assertThat(none.isEmpty()).isTrue();
        assertThat(none.squareMetres()).isZero();
        assertThat(none.findEmptying().orElseThrow().cut()).isEqualTo(ReleaseArea.Cut.distance);
        assertThat(none.findEmptying().orElseThrow().opens()).contains("known to 10,000 m", "permit");
    }

    /** A circle without what lies beyond a chord at d: r^2 (pi - acos(d / r)) + d sqrt(r^2 - d^2). */
    @Test
    void aCircleCutByAHalfPlane() {
        double r = 5000;
        for (double d : new double[] {-3000, 0, 1200, 4900}) {
            Land beyond = land(Land.Kind.excluded, "beyond", d, -9000, 9000, -9000, 9000, 9000, d, 9000);
            double wanted = r * r * (Math.PI - Math.acos(d / r)) + d * Math.sqrt(r * r - d * d);
            assertThat(area(FAR_ROADS, 0, r, beyond).squareMetres()).isCloseTo(wanted, within(1e-4 * Math.PI * r * r));
        }
    }

    /** Burnt in the middle: a ring, whose nearest points are those of its inner border. */
    @Test
    void aRing() {
        ReleaseArea area = area(FAR_ROADS, 0, 5000, disc(Land.Kind.burnt, "the burn", 0, 0, 2000));
        double wanted = Math.PI * (5000.0 * 5000 - 2000.0 * 2000);
        assertThat(area.squareMetres()).isCloseTo(wanted, within(1e-4 * wanted));
        assertThat(area.nearest().metres()).isCloseTo(2000, within(0.2));
        assertThat(area.steps().get(1).opens()).contains("looked");
    }

    @Test
    void aRoadTakesItsWidthAndLeavesBothSides() {
        LandBetweenRoads roads = LandBetweenRoads.of(network(road("main", -30_000, 0, 0, 0, 30_000, 0)), 10);
        ReleaseArea area = area(roads, 0, 1000);
        assertThat(area.shape().getNumGeometries()).isEqualTo(2);
        double wanted = Math.PI * 1e6 - 2 * (10 * Math.sqrt(1e6 - 100) + 1e6 * Math.asin(0.01));
        assertThat(area.squareMetres()).isCloseTo(wanted, within(1e-4 * wanted));
        assertThat(area.nearest().metres()).isCloseTo(10, within(0.01));
    }

    @Test
    void aCatchmentHoldsWhoeverIsInItForCertain() {
        Land west = land(Land.Kind.catchment, "west", -9000, -9000, 100, -9000, 100, 9000, -9000, 9000);
        Land east = land(Land.Kind.catchment, "east", 100, -9000, 9000, -9000, 9000, 9000, 100, 9000);
        double r = 3000;
        double half = r * r * (Math.PI - Math.acos(100 / r)) + 100 * Math.sqrt(r * r - 100 * 100);
        ReleaseArea known = AreaFinder.find(
                FAR_ROADS,
                new AreaQuestion(new UncertainPosition(ORIGIN, 0), List.of(atMost(r)), List.of(east, west), true));
        assertThat(known.squareMetres()).isCloseTo(half, within(1e-4 * half));
        ReleaseArea onTheBorder = AreaFinder.find(
                FAR_ROADS,
                new AreaQuestion(new UncertainPosition(ORIGIN, 150), List.of(atMost(r)), List.of(east, west), true));
        assertThat(onTheBorder.isEmpty()).isTrue();
        assertThat(onTheBorder.findEmptying().orElseThrow().cut()).isEqualTo(ReleaseArea.Cut.catchment);
        assertThat(onTheBorder.findEmptying().orElseThrow().words()).contains("cannot be told");
    }

    @Test
    void aParkIsAskedFirstAndNotTakenOut() {
        ReleaseArea area = area(FAR_ROADS, 0, 3000, disc(Land.Kind.protectedArea, "the park", 1000, 0, 500));
        assertThat(area.squareMetres()).isCloseTo(Math.PI * 9e6, within(1e-4 * Math.PI * 9e6));
        assertThat(area.askFirst()).singleElement().satisfies(asked -> {
            assertThat(asked.name()).isEqualTo("the park");
            assertThat(asked.squareMetres()).isCloseTo(Math.PI * 25e4, within(1e-3 * Math.PI * 25e4));
        });
    }

    @Test
    void whatLiesAcrossABorderIsAskedFirstAndNotTakenOut() {
        ReleaseArea area = area(
                FAR_ROADS,
                30,
                3000,
                land(Land.Kind.jurisdiction, "AU-NSW", -9000, -9000, 500, -9000, 500, 9000, -9000, 9000),
                land(Land.Kind.jurisdiction, "AU-QLD", 500, -9000, 9000, -9000, 9000, 9000, 500, 9000));
        assertThat(area.askFirst()).singleElement().satisfies(asked -> {
            assertThat(asked.name()).isEqualTo("AU-QLD");
            // The segment of a circle of 2,970 m beyond a chord 500 m from its middle: r2 acos(d/r) - d sqrt(r2 - d2)
            double segment = 2970.0 * 2970 * Math.acos(500 / 2970.0) - 500 * Math.sqrt(2970.0 * 2970 - 500 * 500);
            assertThat(asked.squareMetres()).isCloseTo(segment, within(1e-3 * segment));
            assertThat(onTheEllipsoid(asked.shape())).isCloseTo(asked.squareMetres(), within(1e-3 * segment));
        });
    }

    /** On random roads and maps: the nearest point is of the area and none is nearer; more is allowed by a wider rule. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void whateverRoadsAndMapsThereAre(long seed) {
        var random = new Random(seed);
        List<RoadLine> lines = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            lines.add(road(
                    "road " + i,
                    8000 * random.nextGaussian(),
                    8000 * random.nextGaussian(),
                    8000 * random.nextGaussian(),
                    8000 * random.nextGaussian()));
        }
        LandBetweenRoads roads = LandBetweenRoads.of(network(lines.toArray(new RoadLine[0])), 10);
        List<Land> lands = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            Land.Kind kind = new Land.Kind[] {Land.Kind.excluded, Land.Kind.burnt, Land.Kind.flooded}[i % 3];
            lands.add(disc(
                    kind,
                    "land " + i,
                    3000 * random.nextGaussian(),
                    3000 * random.nextGaussian(),
                    200 + 2000 * random.nextDouble()));
        }
        double metres = 3000 + 4000 * random.nextDouble();
        var origin = new UncertainPosition(ORIGIN, 200 * random.nextDouble());
        ReleaseArea area = AreaFinder.find(roads, new AreaQuestion(origin, List.of(atMost(metres)), lands, false));
        Geometry onPlane = PlaneShapes.toPlane(area.shape(), PLANE);
        double[] xy = PLANE.forward(area.nearest().position());
        var nearest = FACTORY.createPoint(new Coordinate(xy[0], xy[1]));
        assertThat(onPlane.distance(nearest)).isLessThan(1e-5);
        double least = Double.POSITIVE_INFINITY;
        for (Coordinate corner : area.shape().getCoordinates()) {
            least = Math.min(least, Geodesy.metresBetween(ORIGIN, new Position(corner.getY(), corner.getX())));
        }
        assertThat(area.nearest().metres()).isLessThanOrEqualTo(least + 1e-6);
        PreparedGeometry prepared = PreparedGeometryFactory.prepare(onPlane);
        for (int i = 0; i < 2000; i++) {
            double reach = area.nearest().metres() * random.nextDouble() * 0.9999;
            double way = 2 * Math.PI * random.nextDouble();
            var nearer = FACTORY.createPoint(new Coordinate(reach * Math.cos(way), reach * Math.sin(way)));
            assertThat(prepared.covers(nearer) && reach > 0).isFalse();
        }

        ReleaseArea wider =
                AreaFinder.find(roads, new AreaQuestion(origin, List.of(atMost(metres * 1.3)), lands, false));
        assertThat(wider.squareMetres()).isGreaterThanOrEqualTo(area.squareMetres());
        assertThat(onPlane.difference(PlaneShapes.toPlane(wider.shape(), PLANE)).getArea())
                .isLessThan(1);
        ReleaseArea fewer =
                AreaFinder.find(roads, new AreaQuestion(origin, List.of(atMost(metres)), lands.subList(1, 6), false));
        assertThat(fewer.squareMetres()).isGreaterThanOrEqualTo(area.squareMetres() - 1e-3);

        List<Land> shuffled = new ArrayList<>(lands);
        Collections.shuffle(shuffled, random);
        ReleaseArea again = AreaFinder.find(roads, new AreaQuestion(origin, List.of(atMost(metres)), shuffled, false));
        assertThat(again.squareMetres()).isEqualTo(area.squareMetres());
        assertThat(again.nearest()).isEqualTo(area.nearest());
        assertThat(area.shape().isValid()).isTrue();
        assertThat(area.squareMetres()).isCloseTo(onTheEllipsoid(area.shape()), within(1e-4 * area.squareMetres()));
        for (ReleaseArea.Step step : area.steps()) {
            assertThat(step.squareMetresLeft()).isGreaterThanOrEqualTo(area.squareMetres() - 1e-3);
        }
    }

    /** First on the side on which it was; its own water before other land, but none beyond what its kind goes. */
    @Test
    void whereToLookFirst() {
        LandBetweenRoads roads = LandBetweenRoads.of(network(road("main", -30_000, 0, 0, 0, 30_000, 0)), 10);
        ReleaseArea area = area(roads, 0, 3000, disc(Land.Kind.burnt, "the burn", 0, 0, 50));
        Land north = disc(Land.Kind.water, "north water", 0, 600, 100);
        Land south = disc(Land.Kind.water, "south water", 0, -300, 100);
        Position justNorth = PLANE.inverse(0, 11);
        Position offNorth = PLANE.inverse(200, 11);
        assertThat(first(area, null, List.of(), 757).metres()).isCloseTo(50, within(0.1));
        // Just north of the road is burnt: the side is known, yet nothing of the area is there
        assertThat(first(area, justNorth, List.of(), 757).onSide()).isFalse();
        FirstPlace side = first(area, offNorth, List.of(), 757);
        assertThat(side.onSide()).isTrue();
        assertThat(PLANE.forward(side.position())[1]).isGreaterThan(0);
        FirstPlace water = first(area, offNorth, List.of(south, north), 757);
        assertThat(water.water()).isEqualTo("north water");
        assertThat(water.metres()).isCloseTo(500, within(0.5));
        assertThat(first(area, offNorth, List.of(south, north), 400).water()).isNull();
        assertThat(first(area, null, List.of(north, south), 757).water()).isEqualTo("south water");
        ReleaseArea none = area(roads, 0, 3000, disc(Land.Kind.burnt, "all", 0, 0, 4000));
        assertThat(FirstPlace.find(none, ORIGIN, null, List.of(), 757)).isEmpty();
    }

    private static FirstPlace first(ReleaseArea area, Position beside, List<Land> waters, double reach) {
        return FirstPlace.find(area, ORIGIN, beside, waters, reach).orElseThrow();
    }

    @Test
    void anOriginInTheAreaIsItsOwnNearestPoint() {
        ReleaseArea area = area(FAR_ROADS, 30, 5000);
        assertThat(area.nearest().metres()).isZero();
    }
}
