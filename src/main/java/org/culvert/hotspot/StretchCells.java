package org.culvert.hotspot;

import java.util.List;
import org.culvert.geo.Generalisation;
import org.culvert.geo.Position;

/** A stretch told only to the cells of a grid: where along the road, and where on the map. */
final class StretchCells {
    /** A degree along a meridian, as the grid's cells are high; the mean of the WGS 84 ellipsoid, 10,001,966 m by 90. */
    private static final double METRES_PER_DEGREE = 111_133;

    private StretchCells() {}

    /** Neither the ends nor the course of the stretch can be read off what is left, nor its length. */
    static HotspotReport.Stretch generalise(HotspotReport.Stretch exact, double gridDegrees) {
        double step = Math.rint(gridDegrees * METRES_PER_DEGREE);
        double from = Math.floor(exact.fromChainageMetres() / step) * step;
        double to = Math.max(Math.ceil(exact.toChainageMetres() / step) * step, from + step);
        double south = 90;
        double north = -90;
        double west = 180;
        double east = -180;
        for (double[][] line : exact.lines()) {
            for (double[] point : line) {
                Position centre = centre(point[1], point[0], gridDegrees);
                south = Math.min(south, centre.latitude());
                north = Math.max(north, centre.latitude());
                west = Math.min(west, centre.longitude());
                east = Math.max(east, centre.longitude());
            }
        }
        double half = gridDegrees / 2;
        double[][] box = {
            corner(west - half, south - half),
            corner(east + half, south - half),
            corner(east + half, north + half),
            corner(west - half, north + half),
            corner(west - half, south - half)
        };
        return new HotspotReport.Stretch(
                exact.rank(),
                exact.road(),
                exact.owner(),
                from,
                to,
                to - from,
                exact.incidents(),
                exact.intervalLow(),
                exact.intervalHigh(),
                exact.expected(),
                exact.excess(),
                exact.adjustedP(),
                // by kilometre of the stretch as it is would tell its length
                Math.rint(exact.incidentsPerKilometreAndYear() * exact.lengthMetres() / (to - from) * 100) / 100,
                point(exact.from(), gridDegrees),
                point(exact.to(), gridDegrees),
                List.<double[][]>of(box),
                // nor the road as a curve
                null);
    }

    private static HotspotReport.Point point(HotspotReport.Point exact, double gridDegrees) {
        Position centre = centre(exact.decimalLatitude(), exact.decimalLongitude(), gridDegrees);
        return new HotspotReport.Point(centre.latitude(), centre.longitude());
    }

    private static Position centre(double latitude, double longitude, double gridDegrees) {
        return Generalisation.of(new Position(latitude, longitude), 0, gridDegrees)
                .centre();
    }

    private static double[] corner(double longitude, double latitude) {
        return new double[] {Math.rint(longitude * 1e6) / 1e6, Math.rint(latitude * 1e6) / 1e6};
    }
}
