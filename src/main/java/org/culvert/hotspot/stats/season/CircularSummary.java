package org.culvert.hotspot.stats.season;

import org.culvert.hotspot.stats.season.CircularSample.Moment;

/**
 * Where on the circle a sample lies and how close together: Fisher (1993), Statistical Analysis of Circular Data, section
 * 2.3; Mardia and Jupp (2000), Directional Statistics, chapter 2.
 *
 * @param count how many directions
 * @param meanDirectionRadians direction of the mean vector, 0 to less than 2 pi; NaN where there is none because the
 *     directions cancel out. With two peaks it lies where neither is: see {@link SeasonShape}
 * @param meanDirection95HalfWidthRadians half the width of the 95 % interval of the mean direction, of whatever distribution:
 *     {@code asin(1.96 sqrt((1 - a2) / (2 n R^2)))}, a2 the mean cosine of twice the distance from the mean (Fisher 1993, section
 *     4.4.4); NaN for fewer than 25 directions or where it would be more than a quarter of the circle. Of grouped directions
 *     without the correction of R, and so a little wide
 * @param resultantLength length of the mean vector, 0 (all around) to 1 (all alike); where directions came in groups, it is
 *     corrected for the width of the groups
 * @param circularStandardDeviationRadians {@code sqrt(-2 ln R)}
 * @param kappa concentration of the von Mises distribution of greatest likelihood
 * @param kappaCorrected the same, corrected for the size of the sample
 * @param secondMomentLength length of the mean vector of the doubled directions
 * @param secondMomentDirectionRadians its direction, in doubled directions
 */
public record CircularSummary(
        int count,
        double meanDirectionRadians,
        double meanDirection95HalfWidthRadians,
        double resultantLength,
        double circularStandardDeviationRadians,
        double kappa,
        double kappaCorrected,
        double secondMomentLength,
        double secondMomentDirectionRadians) {
    /** Shorter mean vectors than this are what rounding leaves of none. */
    private static final double NONE = 1e-12;

    private static final int LEAST_FOR_INTERVAL = 25;
    private static final double NORMAL_95 = 1.959963984540054;

    /** @throws IllegalArgumentException if the sample is empty */
    public static CircularSummary of(CircularSample sample) {
        if (sample.count() == 0) {
            throw new IllegalArgumentException("a summary needs at least one direction");
        }
        return of(sample.count(), sample.moment(1), sample.moment(2), 1, 1);
    }

    /**
     * Of counts in equal parts of the circle, such as months taken as equal: all of a part at its middle, and the lengths of
     * the mean vectors corrected for the width {@code a} of a part by {@code (p a / 2) / sin(p a / 2)} (Mardia and Jupp 2000,
     * section 2.4; Zar 1999, Biostatistical Analysis, section 26.5).
     *
     * @throws IllegalArgumentException if there are fewer than 5 parts, a count is negative or all are zero
     */
    public static CircularSummary ofGroups(int[] counts) {
        if (counts.length < 5) {
            throw new IllegalArgumentException("grouped directions need at least 5 parts of the circle");
        }
        double arc = CircularSample.FULL_TURN / counts.length;
        double[] cosine = new double[2];
        double[] sine = new double[2];
        int total = 0;
        for (int part = 0; part < counts.length; part++) {
            if (counts[part] < 0) {
                throw new IllegalArgumentException("a count is zero or more, not " + counts[part]);
            }
            total += counts[part];
            for (int p = 1; p <= 2; p++) {
                cosine[p - 1] += counts[part] * Math.cos(p * (part + 0.5) * arc);
                sine[p - 1] += counts[part] * Math.sin(p * (part + 0.5) * arc);
            }
        }
        if (total == 0) {
            throw new IllegalArgumentException("a summary needs at least one direction");
        }
        return of(
                total,
                new Moment(cosine[0] / total, sine[0] / total),
                new Moment(cosine[1] / total, sine[1] / total),
                groupCorrection(arc, 1),
                groupCorrection(arc, 2));
    }

    /**
     * By what the length of the p-th mean vector of grouped directions is multiplied.
     *
     * @param arcRadians width of a part
     * @param p 1 for the mean vector, 2 for that of the doubled directions
     */
    public static double groupCorrection(double arcRadians, int p) {
        double half = p * arcRadians / 2;
        if (!(half > 0 && half < Math.PI)) {
            throw new IllegalArgumentException("a part is wider than 0 and narrower than the circle");
        }
        return half / Math.sin(half);
    }

    private static CircularSummary of(int count, Moment first, Moment second, double times1, double times2) {
        double length = first.length() < NONE ? 0 : Math.min(1, first.length() * times1);
        double secondLength = second.length() < NONE ? 0 : Math.min(1, second.length() * times2);
        double kappa = VonMises.kappa(length);
        return new CircularSummary(
                count,
                length == 0 ? Double.NaN : first.direction(),
                halfWidth(count, first, second),
                length,
                length == 1 ? 0 : Math.sqrt(-2 * Math.log(length)),
                kappa,
                kappa == 0 ? 0 : VonMises.corrected(kappa, count),
                secondLength,
                secondLength == 0 ? Double.NaN : second.direction());
    }

    private static double halfWidth(int count, Moment first, Moment second) {
        double length = first.length();
        double a2 = second.cosine() * Math.cos(2 * first.direction()) + second.sine() * Math.sin(2 * first.direction());
        double sine = NORMAL_95 * Math.sqrt(Math.max(0, 1 - a2) / (2 * count * length * length));
        return count < LEAST_FOR_INTERVAL || length < NONE || sine > 1 ? Double.NaN : Math.asin(sine);
    }
}
