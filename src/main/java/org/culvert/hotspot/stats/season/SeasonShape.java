package org.culvert.hotspot.stats.season;

import java.util.List;
import java.util.Locale;

/**
 * Whether a sample tells of a season, and of one or of two, by a rule laid down beforehand:
 *
 * <ol>
 *   <li>Rayleigh's test of the directions and of the doubled directions, the two p-values by Holm's method. If neither is at
 *       most alpha, no season is told. That is not the same as "there is none".
 *   <li>If Rayleigh's test of the directions is not, but that of the doubled ones is, there are two peaks about half a circle
 *       apart.
 *   <li>Else two peaks (there may be more) if both of these have p at most alpha, and one peak if not: Silverman's test of one
 *       mode, which takes a peak of any shape but is misled by an even background; and the test of one von Mises peak over an
 *       even background, which takes any background but is misled by a peak of another shape. A strongly lopsided peak of
 *       some hundred events may still be called two.
 * </ol>
 *
 * The mean direction is of use for one peak alone: of two it lies between.
 *
 * @param decision what the rule says
 * @param alpha the level asked for
 * @param rayleigh of the directions
 * @param rayleighOfDoubled of the doubled directions
 * @param oneModeP p of Silverman's test, NaN where the rule did not come to it
 * @param onePeakOverBackgroundP p of one peak over an even background, NaN where the rule did not come to it
 * @param peaksRadians where the peaks are: for one peak the mean direction; for two the modes of the smoothed sample, the
 *     higher first; empty where none is told
 * @param because the rule's reason in words, with its figures
 */
public record SeasonShape(
        Decision decision,
        double alpha,
        Verdict rayleigh,
        Verdict rayleighOfDoubled,
        double oneModeP,
        double onePeakOverBackgroundP,
        List<Double> peaksRadians,
        String because) {
    /** What a sample tells. */
    public enum Decision {
        ONE_PEAK,
        TWO_PEAKS,
        NONE_TOLD
    }

    public SeasonShape {
        peaksRadians = List.copyOf(peaksRadians);
    }

    /**
     * @param sample at least 5 directions
     * @param alpha between 0 and 1
     * @param simulations for each of the two tests of one peak, such as 999
     * @param seed of the generator
     * @throws IllegalArgumentException if the sample is too small or a setting is out of range
     */
    public static SeasonShape of(CircularSample sample, double alpha, int simulations, long seed) {
        if (!(alpha > 0 && alpha < 1) || simulations < 1) {
            throw new IllegalArgumentException("alpha is between 0 and 1, and there is at least one simulation");
        }
        Verdict single = Uniformity.rayleigh(sample);
        Verdict doubled = Uniformity.rayleigh(sample.doubled());
        boolean smallerHolds = Math.min(single.p(), doubled.p()) <= alpha / 2;
        boolean one = smallerHolds && single.p() <= (single.p() <= doubled.p() ? alpha / 2 : alpha);
        boolean two = smallerHolds && doubled.p() <= (doubled.p() < single.p() ? alpha / 2 : alpha);
        String figures = say(
                "Rayleigh p = %.3g, of the doubled directions p = %.3g, at alpha = %.3g for both together",
                single.p(), doubled.p(), alpha);
        if (!one && !two) {
            return new SeasonShape(
                    Decision.NONE_TOLD,
                    alpha,
                    single,
                    doubled,
                    Double.NaN,
                    Double.NaN,
                    List.of(),
                    figures + ": too little to tell a season, which is not to say that there is none");
        }
        if (!one) {
            return new SeasonShape(
                    Decision.TWO_PEAKS,
                    alpha,
                    single,
                    doubled,
                    Double.NaN,
                    Double.NaN,
                    Modality.modes(sample, 2),
                    figures + ": nothing in the directions, a peak in the doubled ones");
        }
        double oneMode = Modality.chanceOfOneMode(sample, simulations, seed);
        double onePeak = PeakOverBackground.chance(sample, simulations, seed);
        String because = figures
                + say("; one mode of any shape p = %.3g, one peak over an even background p = %.3g", oneMode, onePeak);
        boolean more = Math.max(oneMode, onePeak) <= alpha;
        return new SeasonShape(
                more ? Decision.TWO_PEAKS : Decision.ONE_PEAK,
                alpha,
                single,
                doubled,
                oneMode,
                onePeak,
                more ? Modality.modes(sample, 2) : List.of(sample.moment(1).direction()),
                because);
    }

    private static String say(String format, Object... figures) {
        return String.format(Locale.ROOT, format, figures);
    }
}
