package org.culvert.exchange.features;

import org.culvert.geo.Bounds;

/** Whether a line of longitudes and latitudes has a part in a box, edges included; on the plane, as GeoJSON draws it. */
final class LineInBox {
    private LineInBox() {}

    static boolean meet(double[][] line, Bounds box) {
        if (box.west() <= box.east()) {
            return meet(line, box.west(), box.south(), box.east(), box.north());
        }
        return meet(line, box.west(), box.south(), 180, box.north())
                || meet(line, -180, box.south(), box.east(), box.north());
    }

    private static boolean meet(double[][] line, double west, double south, double east, double north) {
        for (int i = 0; i < line.length; i++) {
            double[] from = line[Math.max(0, i - 1)];
            double[] to = line[i];
            double[] part = {0, 1};
            double dx = to[0] - from[0];
            double dy = to[1] - from[1];
            // Liang and Barsky 1984, doi:10.1145/357332.357333: what each side leaves of the segment
            if (cut(-dx, from[0] - west, part)
                    && cut(dx, east - from[0], part)
                    && cut(-dy, from[1] - south, part)
                    && cut(dy, north - from[1], part)) {
                return true;
            }
        }
        return false;
    }

    private static boolean cut(double slope, double room, double[] part) {
        if (slope == 0) {
            return room >= 0;
        }
        double at = room / slope;
        if (slope < 0) {
            part[0] = Math.max(part[0], at);
        } else {
            part[1] = Math.min(part[1], at);
        }
        return part[0] <= part[1];
    }
}
