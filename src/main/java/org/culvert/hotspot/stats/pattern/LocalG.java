package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The local statistics of Getis and Ord: whether values around a place are higher or lower together than elsewhere.
 *
 * <p>Getis and Ord (1992), The analysis of spatial association by use of distance statistics, Geographical Analysis 24,
 * 189-206; Ord and Getis (1995), Local spatial autocorrelation statistics, Geographical Analysis 27, 286-306. Sparse counts
 * are not normal: take {@link #permutationP}, and adjust either for the number of places ({@link FalseDiscovery}). For display
 * beside a search for hotspots, not instead of one.
 *
 * <p>Immutable.
 */
public final class LocalG {
    private final double[] value;
    private final int[][] neighbour;
    private final double[][] weight;

    /**
     * @param value of each place
     * @param neighbours of each place, without itself, each once
     * @throws IllegalArgumentException if the arrays differ in length, a value is not finite, there are fewer than 3 places, or
     *     a neighbour does not exist, is the place itself or comes twice
     */
    public LocalG(double[] value, int[][] neighbours) {
        this(value, neighbours, ones(neighbours));
    }

    /**
     * @param weights of the neighbours, greater than zero; the place itself weighs 1 in {@link #giStar}
     * @throws IllegalArgumentException as the other constructor, or if a weight is not greater than zero
     */
    public LocalG(double[] value, int[][] neighbours, double[][] weights) {
        int n = value.length;
        if (n < 3 || neighbours.length != n || weights.length != n) {
            throw new IllegalArgumentException("at least 3 places are needed, each with neighbours and their weights");
        }
        for (int place = 0; place < n; place++) {
            if (!Double.isFinite(value[place]) || neighbours[place].length != weights[place].length) {
                throw new IllegalArgumentException("place " + place + " needs a finite value and a weight a neighbour");
            }
            int[] sorted = neighbours[place].clone();
            Arrays.sort(sorted);
            for (int i = 0; i < sorted.length; i++) {
                boolean twice = i > 0 && sorted[i] == sorted[i - 1];
                if (sorted[i] < 0 || sorted[i] >= n || sorted[i] == place || twice || !(weights[place][i] > 0)) {
                    throw new IllegalArgumentException("place " + place
                            + " has a neighbour that is none, is itself, comes twice or has no weight above zero");
                }
            }
        }
        this.value = value.clone();
        this.neighbour = Arrays.stream(neighbours).map(int[]::clone).toArray(int[][]::new);
        this.weight = Arrays.stream(weights).map(double[]::clone).toArray(double[][]::new);
    }

    private static double[][] ones(int[][] neighbours) {
        double[][] ones = new double[neighbours.length][];
        for (int place = 0; place < ones.length; place++) {
            ones[place] = new double[neighbours[place].length];
            Arrays.fill(ones[place], 1);
        }
        return ones;
    }

    /** Standardised Gi of every place, its own value left out of everything; NaN where all the others are alike. */
    public double[] gi() {
        int n = value.length;
        double[] z = new double[n];
        for (int place = 0; place < n; place++) {
            double mean = 0;
            for (int other = 0; other < n; other++) {
                mean += other == place ? 0 : value[other];
            }
            mean /= n - 1;
            double variance = 0;
            for (int other = 0; other < n; other++) {
                double off = value[other] - mean;
                variance += other == place ? 0 : off * off;
            }
            z[place] = standardised(place, false, mean, variance / (n - 1), n - 1);
        }
        return z;
    }

    /** Standardised Gi* of every place, its own value included with weight 1; NaN where all values are alike. */
    public double[] giStar() {
        int n = value.length;
        double mean = Arrays.stream(value).sum() / n;
        double variance = 0;
        for (double one : value) {
            variance += (one - mean) * (one - mean);
        }
        double[] z = new double[n];
        for (int place = 0; place < n; place++) {
            z[place] = standardised(place, true, mean, variance / n, n);
        }
        return z;
    }

    /** {@code (sum w x - W mean) / (s sqrt((n sum w^2 - W^2) / (n - 1)))}, over n values. */
    private double standardised(int place, boolean self, double mean, double variance, int n) {
        double sum = self ? value[place] : 0;
        double weights = self ? 1 : 0;
        double squares = weights;
        for (int i = 0; i < neighbour[place].length; i++) {
            double w = weight[place][i];
            sum += w * value[neighbour[place][i]];
            weights += w;
            squares += w * w;
        }
        double spread = variance * (n * squares - weights * weights) / (n - 1);
        return spread > 1e-12 * Math.max(1, mean * mean) ? (sum - weights * mean) / Math.sqrt(spread) : Double.NaN;
    }

    /** p of values at least as high by the normal distribution; NaN where the statistic is. */
    public static double[] upperP(double[] z) {
        NormalDistribution normal = NormalDistribution.of(0, 1);
        return Arrays.stream(z)
                .map(one -> Double.isNaN(one) ? Double.NaN : normal.survivalProbability(one))
                .toArray();
    }

    /**
     * p of values at least as high, the place's own value held and the others dealt out anew (Anselin 1995, Local indicators of
     * spatial association, Geographical Analysis 27, 93-115). The same for Gi and Gi*. NaN for a place without neighbours.
     *
     * @param permutations such as 999
     * @param seed of the generators, one for each place
     */
    public double[] permutationP(int permutations, long seed) {
        if (permutations < 1) {
            throw new IllegalArgumentException("at least one permutation is needed");
        }
        int n = value.length;
        double[] p = new double[n];
        double[] others = new double[n - 1];
        double[] simulated = new double[permutations];
        for (int place = 0; place < n; place++) {
            int size = neighbour[place].length;
            if (size == 0) {
                p[place] = Double.NaN;
                continue;
            }
            double observed = 0;
            for (int i = 0; i < size; i++) {
                observed += weight[place][i] * value[neighbour[place][i]];
            }
            System.arraycopy(value, 0, others, 0, place);
            System.arraycopy(value, place + 1, others, place, n - 1 - place);
            UniformRandomProvider random = Simulations.generator(seed, place);
            for (int permutation = 0; permutation < permutations; permutation++) {
                double sum = 0;
                for (int i = 0; i < size; i++) {
                    int j = i + random.nextInt(n - 1 - i);
                    double drawn = others[j];
                    others[j] = others[i];
                    others[i] = drawn;
                    sum += weight[place][i] * drawn;
                }
                simulated[permutation] = sum;
            }
            p[place] = Simulations.chance(observed, simulated);
        }
        return p;
    }
}
