package org.culvert.geo;

import org.jspecify.annotations.Nullable;

/**
 * How far from a position the place may be, in metres, by the way the position was given.
 *
 * <p>Two parts. The <em>resolution</em> is what the digits can tell apart: a whole unit of the last digit in both axes,
 * since figures are cut off as often as they are rounded; metres in latitude and in longitude are combined as
 * {@code sqrt((M d)^2 + (N cos(latitude) d)^2)}, M and N being the ellipsoid's radii of curvature and d the unit in
 * radians (J. Wieczorek, Q. Guo and R. Hijmans, The point-radius method for georeferencing locality descriptions and
 * calculating associated uncertainty, International Journal of Geographical Information Science 18 (2004) 745-767,
 * doi:10.1080/13658810412331280211). The <em>measurement</em> is what the receiver or the map can tell: as stated, or
 * {@value #RECEIVER_METRES} m where nobody said. Unstated, the two add up, as the point-radius method has it. A stated
 * uncertainty stands as it is, unless the digits are coarser.
 */
public final class Uncertainty {
    /** A satellite receiver whose accuracy was not recorded, or a pin set by hand: common practice, no source. */
    public static final double RECEIVER_METRES = 30;

    private static final double A = 6378137;
    private static final double E2 = (2 - 1 / 298.257223563) / 298.257223563;

    private Uncertainty() {}

    /** Metres that one unit of the last digit covers, for degrees at a latitude. */
    public static double resolutionMetres(double latitude, double unitDegrees) {
        double sine = Math.sin(Math.toRadians(latitude));
        double w = Math.sqrt(1 - E2 * sine * sine);
        double meridianRadius = A * (1 - E2) / (w * w * w);
        double parallelRadius = A / w * Math.cos(Math.toRadians(latitude));
        return Math.hypot(meridianRadius, parallelRadius) * Math.toRadians(unitDegrees);
    }

    /** Metres that a square of the grid covers from corner to corner. */
    public static double gridResolutionMetres(double unitMetres) {
        return unitMetres * Math.sqrt(2);
    }

    /** Resolution and measurement together. */
    public static double combined(double resolutionMetres, @Nullable Double statedMetres) {
        if (statedMetres == null) {
            return resolutionMetres + RECEIVER_METRES;
        }
        if (!(statedMetres > 0) || statedMetres.isInfinite()) {
            throw new CoordinateException(
                    "coordinateUncertaintyInMeters",
                    "an uncertainty of " + statedMetres + " m is not possible",
                    "metres greater than zero, or nothing if it is not known",
                    null);
        }
        return Math.max(resolutionMetres, statedMetres);
    }
}
