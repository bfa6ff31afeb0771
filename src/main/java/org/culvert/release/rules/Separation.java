package org.culvert.release.rules;

/**
 * How far two places are from each other, where each is known to a circle only. Metres, geodesic on WGS 84.
 *
 * <p>Let d be the distance of the two centres, u and v the radii. The geodesic distance is a metric, so by its triangle
 * inequality the distance D of the two true places obeys {@code d - u - v <= D <= d + u + v}. Hence, against a limit L
 * that may be reached but not passed ("at most"):
 *
 * <ul>
 *   <li>{@code d + u + v <= L}: certainly within, wherever in their circles the places are;
 *   <li>{@code d - u - v > L}: certainly beyond;
 *   <li>else nobody can tell.
 * </ul>
 *
 * The bounds are attained, so no narrower ones hold. They are bounds and no confidence interval: no chance is assigned to
 * where in its circle a place is.
 *
 * @param distanceMetres d, from centre to centre
 * @param originUncertaintyMetres u
 * @param siteUncertaintyMetres v
 */
public record Separation(double distanceMetres, double originUncertaintyMetres, double siteUncertaintyMetres) {
    public double doubtMetres() {
        return originUncertaintyMetres + siteUncertaintyMetres;
    }

    /** The least the distance can be; never below zero. */
    public double leastMetres() {
        return Math.max(0, distanceMetres - doubtMetres());
    }

    public double greatestMetres() {
        return distanceMetres + doubtMetres();
    }

    /** Pass when certainly at most the limit, fail when certainly more, else can't tell. */
    public Verdict atMost(double limitMetres) {
        if (greatestMetres() <= limitMetres) {
            return Verdict.pass;
        }
        return leastMetres() > limitMetres ? Verdict.fail : Verdict.cantTell;
    }

    /** Whether the two circles touch, so that the two may be one place. */
    public boolean mayBeOnePlace() {
        return distanceMetres <= doubtMetres();
    }
}
