package org.culvert.road.network;

import org.culvert.geo.Bounds;
import org.culvert.geo.Geodesy;
import org.culvert.geo.LocalPlane;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;

/**
 * How the vertices of a network are laid on a plane in metres, and how lengths are measured: on the ellipsoid for
 * longitudes and latitudes, on the plane itself for networks that are planar from the start.
 */
public final class NetworkFrame {
    private static final NetworkFrame PLANAR = new NetworkFrame(null, null);

    private final @Nullable Bounds bounds;
    private final @Nullable LocalPlane plane;

    private NetworkFrame(@Nullable Bounds bounds, @Nullable LocalPlane plane) {
        this.bounds = bounds;
        this.plane = plane;
    }

    /** Vertices are x and y in metres. There are no positions on Earth. */
    public static NetworkFrame planar() {
        return PLANAR;
    }

    /** Vertices are longitude and latitude on WGS 84, laid on a plane around the middle of the bounds. */
    public static NetworkFrame geographic(Bounds bounds) {
        return new NetworkFrame(bounds, LocalPlane.around(bounds.centre()));
    }

    public boolean isGeographic() {
        return plane != null;
    }

    /** The bounds that fix a geographic frame: from equal bounds comes the same frame. */
    public Bounds bounds() {
        if (bounds == null) {
            throw new IllegalStateException("a planar network has no bounds on Earth");
        }
        return bounds;
    }

    /** The plane of a geographic frame. */
    public LocalPlane plane() {
        if (plane == null) {
            throw new IllegalStateException("a planar network has no positions on Earth");
        }
        return plane;
    }

    double[] toPlane(double first, double second) {
        return plane == null ? new double[] {first, second} : plane.forward(second, first);
    }

    double metres(double first1, double second1, double first2, double second2) {
        if (plane == null) {
            return Math.hypot(first2 - first1, second2 - second1);
        }
        return Geodesy.WGS84.metres(second1, first1, second2, first2);
    }

    Position position(double x, double y) {
        return plane().inverse(x, y);
    }
}
