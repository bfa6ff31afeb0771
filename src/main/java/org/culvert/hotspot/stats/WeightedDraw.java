package org.culvert.hotspot.stats;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;

/**
 * Draws one of many with given weights, by a guide table over the cumulative weights.
 *
 * <p>Chen, H. C. and Asau, Y. (1974), On generating random variates from an empirical distribution, AIIE Transactions 6,
 * 163-166. Immutable.
 */
final class WeightedDraw {
    private static final double MOST = Math.nextDown(1.0);

    private final int[] item;
    private final double[] upTo;
    private final int[] guide;

    /**
     * @param item what is drawn, not empty
     * @param weight its weights, greater than zero
     */
    WeightedDraw(int[] item, double[] weight) {
        this.item = item;
        this.upTo = new double[item.length];
        double sum = 0;
        for (int i = 0; i < item.length; i++) {
            sum += weight[i];
            upTo[i] = sum;
        }
        if (!(sum > 0)) {
            throw new IllegalArgumentException("there is nothing to draw from");
        }
        for (int i = 0; i < item.length; i++) {
            upTo[i] /= sum;
        }
        upTo[item.length - 1] = 1;
        this.guide = new int[item.length];
        int at = 0;
        for (int slot = 0; slot < guide.length; slot++) {
            while (upTo[at] <= (double) slot / guide.length) {
                at++;
            }
            guide[slot] = at;
        }
    }

    int draw(UniformRandomProvider random) {
        double u = random.nextDouble();
        int at = guide[(int) (u * guide.length)];
        while (upTo[at] <= u) {
            at++;
        }
        return item[at];
    }

    /**
     * Draws many, in the order of the items. Sums of exponential gaps, over the sum of one gap more, are sorted uniform
     * numbers: Devroye (1986), Non-Uniform Random Variate Generation, section V.3.1. So what is read, here and by whom the
     * draws are for, lies in a row.
     *
     * @param drawn filled from {@code from} with {@code count} draws
     */
    void draw(UniformRandomProvider random, int[] drawn, int from, int count) {
        var gap = ZigguratSampler.Exponential.of(random);
        double[] sum = new double[count + 1];
        double all = 0;
        for (int i = 0; i <= count; i++) {
            all += gap.sample();
            sum[i] = all;
        }
        for (int i = 0; i < count; i++) {
            // Below one, even where rounding has it otherwise
            double u = Math.min(sum[i] / all, MOST);
            int at = guide[(int) (u * guide.length)];
            while (upTo[at] <= u) {
                at++;
            }
            drawn[from + i] = item[at];
        }
    }

    /** The chance of each item, in the order of {@link #items}. */
    double[] chances() {
        double[] chance = upTo.clone();
        for (int i = chance.length - 1; i > 0; i--) {
            chance[i] -= chance[i - 1];
        }
        return chance;
    }

    int count() {
        return item.length;
    }

    int[] items() {
        return Arrays.copyOf(item, item.length);
    }
}
