package org.culvert.geo;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A position told only to the cell of a grid of degrees, as sensitive species' places are: the centre of the cell stands
 * for every position in it. Nothing is random, so that asking again, or for many records of one place, tells no more.
 *
 * <p>The grids of use are those of the categories of A. D. Chapman, Current Best Practices for Generalizing Sensitive Species
 * Occurrence Data, GBIF 2020, doi:10.15468/doc-5jp4-5g10: 1, 0.1, 0.01 and 0.001 degree. The uncertainty is the geodesic
 * distance from the centre to the farthest corner, plus that of the position itself, in whole metres, rounded up. Immutable.
 *
 * @param centre of the cell, with no more decimals than a centre of that grid has
 * @param uncertaintyMetres radius about the centre that holds the place, in metres
 * @param gridDegrees side of the cell
 */
public record Generalisation(Position centre, double uncertaintyMetres, double gridDegrees) {
    /**
     * The cell that holds a position. Cells begin at the equator and the prime meridian; a position on an edge belongs to the
     * cell north or east of it, except at the north pole and at 180 degrees, where there is none.
     *
     * @param gridDegrees side of the cell, more than 0, at most 90
     * @param uncertaintyMetres of the position, zero or more
     */
    public static Generalisation of(Position exact, double uncertaintyMetres, double gridDegrees) {
        if (!(gridDegrees > 0 && gridDegrees <= 90) || !(uncertaintyMetres >= 0)) {
            throw new IllegalArgumentException(
                    "no cell of " + gridDegrees + " degrees with an uncertainty of " + uncertaintyMetres + " m");
        }
        double latitude = centre(exact.latitude(), gridDegrees, 90);
        double longitude = centre(exact.longitude(), gridDegrees, 180);
        Position centre = new Position(latitude, longitude);
        double farthest = Math.max(
                toCorner(centre, latitude - gridDegrees / 2, gridDegrees),
                toCorner(centre, latitude + gridDegrees / 2, gridDegrees));
        return new Generalisation(centre, Math.ceil(farthest + uncertaintyMetres), gridDegrees);
    }

    private static double centre(double degrees, double grid, double edge) {
        double cell = Math.min(Math.floor(degrees / grid), Math.rint(edge / grid) - 1);
        return BigDecimal.valueOf((cell + 0.5) * grid)
                .setScale(decimals(grid), RoundingMode.HALF_EVEN)
                .doubleValue();
    }

    /** Half a cell has one decimal more than the cell. */
    private static int decimals(double grid) {
        return Math.max(1, BigDecimal.valueOf(grid).stripTrailingZeros().scale() + 1);
    }

    private static double toCorner(Position centre, double latitude, double grid) {
        double within = Math.max(-90, Math.min(90, latitude));
        return Geodesy.WGS84.metres(centre.latitude(), centre.longitude(), within, centre.longitude() + grid / 2);
    }
}
