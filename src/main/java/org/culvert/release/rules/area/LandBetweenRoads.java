package org.culvert.release.rules.area;

import java.util.ArrayList;
import java.util.List;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.PlaneShapes;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.Structure;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/**
 * The land that roads leave between them: polygons, none of which a road's surface enters. A road's surface is everything
 * within some metres of its line; tunnels have none. Computed once for a network. Immutable and safe for several threads.
 */
public final class LandBetweenRoads {
    /** How far beyond the outermost roads the land goes on. */
    private static final double BEYOND_METRES = 300_000;

    /** A quarter of a circle at a bend or an end, in so many chords. */
    private static final int QUARTER = 2;

    private static final GeometryFactory FACTORY = new GeometryFactory();

    private final STRtree blocks = new STRtree();
    private final double halfWidthMetres;

    private LandBetweenRoads(double halfWidthMetres) {
        this.halfWidthMetres = halfWidthMetres;
    }

    /**
     * @param network on Earth
     * @param halfWidthMetres from a road's line to the end of its surface, greater than zero
     */
    public static LandBetweenRoads of(RoadNetwork network, double halfWidthMetres) {
        var land = new LandBetweenRoads(halfWidthMetres);
        LocalPlane plane = network.frame().plane();
        List<LineString> lines = new ArrayList<>();
        for (int link = 0; link < network.linkCount(); link++) {
            if (network.attributes(link).structure() != Structure.TUNNEL) {
                lines.add(line(network.link(link).vertices(), plane));
            }
        }
        Geometry surfaces =
                FACTORY.createMultiLineString(lines.toArray(new LineString[0])).buffer(halfWidthMetres, QUARTER);
        Envelope around = surfaces.getEnvelopeInternal();
        if (around.isNull()) {
            around = new Envelope(0, 0, 0, 0);
        }
        around.expandBy(BEYOND_METRES);
        Geometry free = OverlayNGRobust.overlay(FACTORY.toGeometry(around), surfaces, OverlayNG.DIFFERENCE);
        for (int i = 0; i < free.getNumGeometries(); i++) {
            Geometry block = PlaneShapes.toEarth(free.getGeometryN(i), plane);
            land.blocks.insert(block.getEnvelopeInternal(), block);
        }
        land.blocks.build();
        return land;
    }

    private static LineString line(double[] longitudeLatitude, LocalPlane plane) {
        Coordinate[] coordinates = new Coordinate[longitudeLatitude.length / 2];
        for (int i = 0; i < coordinates.length; i++) {
            double[] xy = plane.forward(longitudeLatitude[2 * i + 1], longitudeLatitude[2 * i]);
            coordinates[i] = new Coordinate(xy[0], xy[1]);
        }
        return FACTORY.createLineString(coordinates);
    }

    public double halfWidthMetres() {
        return halfWidthMetres;
    }

    /** How many pieces of land there are. */
    public int count() {
        return blocks.size();
    }

    /** The pieces whose box meets a box of longitudes and latitudes, on WGS 84 with longitude as x. */
    List<Polygon> in(Envelope box) {
        List<Polygon> found = new ArrayList<>();
        blocks.query(box, item -> found.add((Polygon) item));
        return found;
    }
}
