package org.culvert.care.schedule;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;

/**
 * How a weight runs: the median of the slopes of all pairs of weighings (H. Theil, A rank-invariant method of linear and
 * polynomial regression analysis, Proc. Kon. Ned. Akad. Wet. 53, 1950; P. K. Sen, Estimates of the regression coefficient
 * based on Kendall's tau, J. Am. Stat. Assoc. 63, 1968, doi:10.1080/01621459.1968.10480934). One slip of the scales among
 * four weighings or more moves it little.
 *
 * <p>The interval is Sen's, from the normal approximation of Kendall's S with its variance corrected for ties; ranks are
 * rounded to the nearest. It assumes weighings that err independently of each other. Where so few weighings cannot bear the
 * confidence asked for there is no interval: for 95 % five are needed, where none are tied.
 *
 * <p>The line goes through the median of what is left over, so that its first value is the first fitted weight.
 *
 * @param gramsPerDay a day is 24 hours
 * @param lowGramsPerDay lower end of the interval, or null
 * @param highGramsPerDay upper end, or null
 * @param firstFittedGrams the line at the first weighing
 * @param weighings how many there are
 */
public record WeightTrend(
        double gramsPerDay,
        @Nullable Double lowGramsPerDay,
        @Nullable Double highGramsPerDay,
        double firstFittedGrams,
        int weighings) {
    private static final double SECONDS_PER_DAY = 86_400;

    /** Fewer weighings, or fewer days on which they were made, are no trend. */
    public static final int FEWEST = 3;

    /**
     * The trend, or empty below three weighings on three local days, or where the first fitted weight would not be above 0.
     *
     * @param confidence of the interval, between 0 and 1
     */
    public static Optional<WeightTrend> of(List<Weighing> weighings, ZoneId zone, double confidence) {
        long days = weighings.stream()
                .map(weighing -> weighing.at().atZone(zone).toLocalDate())
                .distinct()
                .count();
        if (weighings.size() < FEWEST || days < FEWEST) {
            return Optional.empty();
        }
        Instant first =
                weighings.stream().map(Weighing::at).min(Instant::compareTo).orElseThrow();
        double[] at = weighings.stream()
                .mapToDouble(weighing -> Duration.between(first, weighing.at()).toSeconds() / SECONDS_PER_DAY)
                .toArray();
        double[] grams = weighings.stream().mapToDouble(Weighing::grams).toArray();
        WeightTrend trend = of(at, grams, confidence);
        return trend.firstFittedGrams > 0 ? Optional.of(trend) : Optional.empty();
    }

    /**
     * The same of figures.
     *
     * @param at days from the first, which is 0 or, for other origins, the least; two of them differ
     * @param confidence between 0 and 1
     */
    static WeightTrend of(double[] at, double[] grams, double confidence) {
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException("a confidence lies between 0 and 1");
        }
        int n = at.length;
        List<Double> pairs = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                if (at[i] != at[j]) {
                    pairs.add((grams[j] - grams[i]) / (at[j] - at[i]));
                }
            }
        }
        if (pairs.isEmpty()) {
            throw new IllegalArgumentException("weighings at one instant have no slope");
        }
        double[] slopes =
                pairs.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double slope = median(slopes);
        double[] left = new double[n];
        for (int i = 0; i < n; i++) {
            left[i] = grams[i] - slope * at[i];
        }
        Arrays.sort(left);
        double z = NormalDistribution.of(0, 1).inverseCumulativeProbability(1 - (1 - confidence) / 2);
        double width = z * Math.sqrt(variance(at, grams));
        int rank = (int) Math.round((slopes.length - width) / 2);
        boolean borne = rank >= 1;
        return new WeightTrend(
                slope,
                borne ? slopes[rank - 1] : null,
                borne ? slopes[slopes.length - rank] : null,
                median(left) + slope * Arrays.stream(at).min().orElseThrow(),
                n);
    }

    /** Of Kendall's S: Sen 1968, and for ties in both Kendall, Rank Correlation Methods, 1955, in its leading terms. */
    private static double variance(double[] at, double[] grams) {
        return (term(at.length) - ties(at) - ties(grams)) / 18;
    }

    private static double ties(double[] values) {
        Map<Double, Integer> counts = new HashMap<>();
        for (double value : values) {
            counts.merge(value, 1, Integer::sum);
        }
        return counts.values().stream().mapToDouble(WeightTrend::term).sum();
    }

    private static double term(int count) {
        return (double) count * (count - 1) * (2 * count + 5);
    }

    private static double median(double[] sorted) {
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /** Per cent of the first fitted weight in seven days; below 0 for a weight that falls. */
    public double percentPerWeek() {
        return 100 * 7 * gramsPerDay / firstFittedGrams;
    }

    /** Whether it falls faster than some per cent a week. The slope itself is asked, not its interval: doubt raises no bar. */
    public boolean fallsFasterThan(double percentPerWeek) {
        return -percentPerWeek() > percentPerWeek;
    }
}
