package org.culvert.release.rules;

import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;

/**
 * A position and how far from it the place may be: the point and radius of J. Wieczorek, Q. Guo and R. Hijmans, The
 * point-radius method for georeferencing locality descriptions and calculating associated uncertainty, International
 * Journal of Geographical Information Science 18 (2004) 745-767, doi:10.1080/13658810412331280211.
 *
 * @param position centre of the circle, on WGS 84
 * @param uncertaintyMetres radius of the circle that holds the place, in metres, zero or more
 */
public record UncertainPosition(Position position, double uncertaintyMetres) {
    /** @throws IllegalArgumentException if the uncertainty is negative or no finite number */
    public UncertainPosition {
        if (!(uncertaintyMetres >= 0) || Double.isInfinite(uncertaintyMetres)) {
            throw new IllegalArgumentException("an uncertainty of " + uncertaintyMetres + " m is not possible");
        }
    }

    public static UncertainPosition of(double latitude, double longitude, double uncertaintyMetres) {
        return new UncertainPosition(new Position(latitude, longitude), uncertaintyMetres);
    }

    /** How far another place is, as far as that can be known. */
    public Separation to(UncertainPosition other) {
        return new Separation(
                Geodesy.metresBetween(position, other.position), uncertaintyMetres, other.uncertaintyMetres);
    }
}
