package org.culvert.hotspot.stats;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Draws one of many with given weights, by a guide table over the cumulative weights.
 *
 * <p>Chen, H. C. and Asau, Y. (1974), On generating random variates from an empirical distribution, AIIE Transactions 6,
 * 163-166. Immutable.
 */
final class WeightedDraw {
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

    /** The chance of each item, in the order of {@link #items}. */
    double[] chances() {
        double[] chance = upTo.clone();
        for (int i = chance.length - 1; i > 0; i--) {
            chance[i] -= chance[i - 1];
        }
        return chance;
    }

    int[] items() {
        return Arrays.copyOf(item, item.length);
    }
}
