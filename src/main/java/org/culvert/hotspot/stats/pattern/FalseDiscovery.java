package org.culvert.hotspot.stats.pattern;

import java.util.stream.IntStream;

/**
 * p-values adjusted for how many were looked at. A p that is NaN (not tested) stays NaN and does not count.
 *
 * <p>Holm and Bonferroni hold the chance of any false finding, Benjamini-Hochberg and Benjamini-Yekutieli the expected share
 * of false ones among the findings. Compare an adjusted p with the level.
 */
public final class FalseDiscovery {
    private FalseDiscovery() {}

    /**
     * Benjamini and Hochberg (1995), Controlling the false discovery rate, Journal of the Royal Statistical Society B 57,
     * 289-300: {@code min over j >= k of m p(j) / j}. For independent tests, and for many that depend positively.
     *
     * @throws IllegalArgumentException if a p is not between 0 and 1
     */
    public static double[] benjaminiHochberg(double[] p) {
        return stepUp(p, 1);
    }

    /**
     * Benjamini and Yekutieli (2001), The control of the false discovery rate in multiple testing under dependency, Annals of
     * Statistics 29, 1165-1188: the above times {@code sum 1/j}. Under any dependence.
     *
     * @throws IllegalArgumentException if a p is not between 0 and 1
     */
    public static double[] benjaminiYekutieli(double[] p) {
        int m = ascending(p).length;
        double harmonic = 0;
        for (int j = 1; j <= m; j++) {
            harmonic += 1.0 / j;
        }
        return stepUp(p, harmonic);
    }

    /**
     * Holm (1979), A simple sequentially rejective multiple test procedure, Scandinavian Journal of Statistics 6, 65-70.
     *
     * @throws IllegalArgumentException if a p is not between 0 and 1
     */
    public static double[] holm(double[] p) {
        int[] order = ascending(p);
        double[] adjusted = p.clone();
        double greatest = 0;
        for (int k = 0; k < order.length; k++) {
            greatest = Math.max(greatest, Math.min(1, (order.length - k) * p[order[k]]));
            adjusted[order[k]] = greatest;
        }
        return adjusted;
    }

    /**
     * Bonferroni: every p times their number.
     *
     * @throws IllegalArgumentException if a p is not between 0 and 1
     */
    public static double[] bonferroni(double[] p) {
        int[] order = ascending(p);
        double[] adjusted = p.clone();
        for (int index : order) {
            adjusted[index] = Math.min(1, order.length * p[index]);
        }
        return adjusted;
    }

    private static double[] stepUp(double[] p, double times) {
        int[] order = ascending(p);
        double[] adjusted = p.clone();
        double least = 1;
        for (int k = order.length - 1; k >= 0; k--) {
            least = Math.min(least, times * order.length * p[order[k]] / (k + 1));
            adjusted[order[k]] = least;
        }
        return adjusted;
    }

    /** The places of those that are numbers, the smallest p first, equal ones in their order. */
    private static int[] ascending(double[] p) {
        for (double one : p) {
            if (one < 0 || one > 1) {
                throw new IllegalArgumentException("a p-value is between 0 and 1, or NaN where not tested, not " + one);
            }
        }
        return IntStream.range(0, p.length)
                .filter(index -> !Double.isNaN(p[index]))
                .boxed()
                .sorted((a, b) -> Double.compare(p[a], p[b]))
                .mapToInt(Integer::intValue)
                .toArray();
    }
}
