package org.culvert.hotspot.stats.rate;

import java.util.List;

/**
 * Stretches without works, whose counts tell how collisions, traffic, animals and reporting changed for everyone.
 *
 * @param before incidents on all of them in the period before, above 0
 * @param after in the period after, above 0
 * @param predictedRatio what a model predicts for them after over before, from traffic and length of the periods alone;
 *     NaN where there is no model
 * @param varianceOfOmega variance of the ratio of their change to that which the treated stretches would have had, 0 or
 *     more: how good a comparison they are (E. Hauer 1997, Observational Before-After Studies in Road Safety, chapter 9);
 *     see {@link #varianceOfOmega(List, List)}
 */
public record ComparisonGroup(int before, int after, double predictedRatio, double varianceOfOmega) {
    public ComparisonGroup {
        if (before < 1 || after < 1) {
            throw new IllegalArgumentException(
                    "comparison stretches need incidents before and after: take more of them, or longer ones");
        }
        if (!Double.isNaN(predictedRatio) && !(predictedRatio > 0)) {
            throw new IllegalArgumentException("a predicted ratio is above 0, or NaN where there is no model");
        }
        if (!(varianceOfOmega >= 0)) {
            throw new IllegalArgumentException("the variance of omega is 0 or more, not " + varianceOfOmega);
        }
    }

    /** {@code (N/M) / (1 + 1/M)}: after over before, corrected for the bias of a ratio. */
    public double ratio() {
        return (double) after / before / (1 + 1.0 / before);
    }

    /** Squared coefficient of variation of the ratio as a forecast for the treated stretches. */
    double squaredVariation() {
        return 1.0 / before + 1.0 / after + varianceOfOmega;
    }

    /**
     * The variance of omega from a series of years before the works: the sample variance of the yearly odds ratios, less
     * what chance in the counts puts there, and at least 0 (Hauer 1997, chapter 9; the formula is from memory).
     *
     * @param treatedByYear incidents on the treated stretches, each above 0
     * @param comparisonByYear incidents on the comparison stretches in the same years, each above 0
     * @throws IllegalArgumentException with fewer than three years, or a count of 0: sum up years or stretches
     */
    public static double varianceOfOmega(List<Integer> treatedByYear, List<Integer> comparisonByYear) {
        int years = treatedByYear.size();
        if (years < 3 || comparisonByYear.size() != years) {
            throw new IllegalArgumentException("both series need the same years, at least three of them");
        }
        if (treatedByYear.stream().anyMatch(count -> count < 1)
                || comparisonByYear.stream().anyMatch(count -> count < 1)) {
            throw new IllegalArgumentException("every year needs incidents in both series: sum up years or stretches");
        }
        double[] odds = new double[years - 1];
        double mean = 0;
        double chance = 0;
        for (int year = 0; year < years - 1; year++) {
            double k = treatedByYear.get(year);
            double l = treatedByYear.get(year + 1);
            double m = comparisonByYear.get(year);
            double n = comparisonByYear.get(year + 1);
            odds[year] = k * n / (l * m) / (1 + 1 / l + 1 / m);
            mean += odds[year] / odds.length;
            chance += (1 / k + 1 / l + 1 / m + 1 / n) / odds.length;
        }
        double squares = 0;
        for (double one : odds) {
            squares += (one - mean) * (one - mean);
        }
        return Math.max(0, squares / (odds.length - 1) - chance);
    }
}
