package org.culvert.hotspot.stats.season;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Whether several samples, such as species, have the same distribution on the circle: the uniform-scores test of Watson and
 * Wheeler, Mardia's form for g samples (Mardia 1972, A multi-sample uniform scores test on a circle and its parametric
 * competitor, Journal of the Royal Statistical Society B 34, 102-113).
 *
 * <p>All N directions together get uniform scores {@code beta = 2 pi rank / N}; {@code W = 2 sum (C^2 + S^2) / n}, with C and
 * S the sums of the scores' cosines and sines in each sample. Equal directions all get the mean of their ranks, so that
 * neither order nor chance decides; with many ties W is somewhat smaller than chi-square, and {@link #byPermutation} is the
 * better p. W does not change when the circle is turned.
 *
 * <p>For two samples some programs print {@code 2 (N-1) R1^2 / (n1 n2)}, which is {@code (N-1) / N} of this W.
 */
public final class WatsonWheeler {
    /** Smaller samples want {@link #byPermutation}: the usual rule of the textbooks for chi-square. */
    public static final int LEAST_FOR_CHI_SQUARE = 10;

    private static final double TIE = 1e-9;

    private WatsonWheeler() {}

    /**
     * p from chi-square on {@code 2 (g - 1)} degrees of freedom.
     *
     * @throws IllegalArgumentException if there are fewer than two samples or one has fewer than 10 directions
     */
    public static Verdict byChiSquare(List<CircularSample> samples) {
        Scores scores = Scores.of(samples);
        for (int size : scores.size) {
            if (size < LEAST_FOR_CHI_SQUARE) {
                throw new IllegalArgumentException("for chi-square every sample needs at least " + LEAST_FOR_CHI_SQUARE
                        + " directions, one has " + size + ": use permutations");
            }
        }
        double w = scores.w(scores.sampleOf);
        int degrees = 2 * (samples.size() - 1);
        return new Verdict(
                "Watson-Wheeler",
                w,
                ChiSquaredDistribution.of(degrees).survivalProbability(w),
                "chi-square on " + degrees + " degrees of freedom (Mardia 1972)");
    }

    /**
     * p by dealing the directions out to the samples anew.
     *
     * @throws IllegalArgumentException if there are fewer than two samples, an empty one, or no permutation
     */
    public static Verdict byPermutation(List<CircularSample> samples, int permutations, long seed) {
        if (permutations < 1) {
            throw new IllegalArgumentException("at least one permutation is needed");
        }
        Scores scores = Scores.of(samples);
        double w = scores.w(scores.sampleOf);
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
        int[] dealt = scores.sampleOf.clone();
        int atLeast = 0;
        for (int permutation = 0; permutation < permutations; permutation++) {
            for (int i = dealt.length - 1; i > 0; i--) {
                int j = random.nextInt(i + 1);
                int swapped = dealt[i];
                dealt[i] = dealt[j];
                dealt[j] = swapped;
            }
            if (scores.w(dealt) >= w - TIE * Math.max(1, w)) {
                atLeast++;
            }
        }
        return new Verdict(
                "Watson-Wheeler",
                w,
                (1.0 + atLeast) / (permutations + 1.0),
                permutations + " permutations, seed " + seed);
    }

    private record Scores(int[] sampleOf, int[] size, double[] cosine, double[] sine) {
        static Scores of(List<CircularSample> samples) {
            if (samples.size() < 2) {
                throw new IllegalArgumentException("at least two samples are compared");
            }
            int[] size = samples.stream().mapToInt(CircularSample::count).toArray();
            if (Arrays.stream(size).anyMatch(count -> count == 0)) {
                throw new IllegalArgumentException("an empty sample cannot be compared");
            }
            int total = Arrays.stream(size).sum();
            double[] all = new double[total];
            int at = 0;
            for (CircularSample sample : samples) {
                for (int i = 0; i < sample.count(); i++) {
                    all[at++] = sample.ascending(i);
                }
            }
            double[] ascending = all.clone();
            Arrays.sort(ascending);
            int[] sampleOf = new int[total];
            double[] cosine = new double[total];
            double[] sine = new double[total];
            int[] next = new int[samples.size()];
            // In the order of direction, then of sample, so that a permutation deals the same cards whatever came
            // first.
            for (int first = 0; first < total; ) {
                int last = first;
                while (last + 1 < total && ascending[last + 1] == ascending[first]) {
                    last++;
                }
                double rank = (first + last) / 2.0 + 1;
                double beta = CircularSample.FULL_TURN * rank / total;
                int placed = first;
                for (int sample = 0; sample < size.length; sample++) {
                    while (next[sample] < size[sample]
                            && samples.get(sample).ascending(next[sample]) == ascending[first]) {
                        next[sample]++;
                        sampleOf[placed++] = sample;
                    }
                }
                for (int i = first; i <= last; i++) {
                    cosine[i] = Math.cos(beta);
                    sine[i] = Math.sin(beta);
                }
                first = last + 1;
            }
            return new Scores(sampleOf, size, cosine, sine);
        }

        double w(int[] dealt) {
            double[] c = new double[size.length];
            double[] s = new double[size.length];
            for (int i = 0; i < dealt.length; i++) {
                c[dealt[i]] += cosine[i];
                s[dealt[i]] += sine[i];
            }
            double w = 0;
            for (int sample = 0; sample < size.length; sample++) {
                w += 2 * (c[sample] * c[sample] + s[sample] * s[sample]) / size[sample];
            }
            return w;
        }
    }
}
