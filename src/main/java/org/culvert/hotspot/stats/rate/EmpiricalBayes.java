package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.numbers.gamma.RegularizedGamma;

/**
 * What a site may be expected to have, from its own count and from what sites like it have.
 *
 * <p>The true means of sites alike are spread as a gamma distribution with mean {@code mu} and variance {@code k mu^2};
 * given a count x, the posterior of a site's own mean is gamma with shape {@code 1/k + x} and rate {@code 1/(k mu) + 1}.
 * Its mean is {@code w mu + (1 - w) x} with {@code w = 1 / (1 + k mu)}, its variance {@code (1 - w)} times that (E. Hauer,
 * D. W. Harwood, F. M. Council and M. S. Griffith 2002, Transportation Research Record 1784, 126-131,
 * doi:10.3141/1784-16). So a site that was picked because its count was high is not taken at its word.
 *
 * <p>Where little is expected the prediction weighs much, whatever the count: a quiet site far from its like is drawn in
 * strongly and ranks low by excess, although {@link #chanceAbovePredicted()} is near 1. Read both; a search for clusters
 * finds such sites.
 *
 * <p>At k = 0 nothing tells sites alike apart: the estimate is {@code mu} with no spread, and there is no excess. The
 * uncertainty of mu and k themselves is not in the interval. All figures are for the whole length and all years of the
 * count; see {@link #perKilometreYear(double, double)}.
 *
 * @param predicted mu, for the length and years of the count
 * @param overdispersion k, of a site of this length
 * @param incidents x
 * @param weight w, the weight of the prediction
 * @param estimate the posterior mean
 * @param variance the posterior variance
 * @param posterior the interval with equal tails
 * @param chanceAbovePredicted posterior probability that the site's own mean is above mu: that it has an excess at all
 */
public record EmpiricalBayes(
        double predicted,
        double overdispersion,
        int incidents,
        double weight,
        double estimate,
        double variance,
        Interval posterior,
        double chanceAbovePredicted) {
    /** An estimate and whose it is. */
    public record Named(String id, EmpiricalBayes estimate) {}

    /** An estimate, whose it is, and its place in the order of excess, 1 for the greatest. */
    public record Ranked(int rank, String id, EmpiricalBayes estimate) {}

    /**
     * One year of a site of which only the sum over years is told apart from its like.
     *
     * @param year the year
     * @param factor what is predicted for it over what is predicted for the first year
     * @param estimate of that year's mean
     * @param variance of that estimate
     */
    public record Year(int year, double factor, double estimate, double variance) {}

    /**
     * The estimate.
     *
     * @param predicted above 0, for the length and years of the count
     * @param overdispersion k, not theta: 0 or more
     * @param incidents 0 or more
     * @param level of the interval
     * @throws IllegalArgumentException where one of these is not so
     */
    public static EmpiricalBayes of(double predicted, double overdispersion, int incidents, double level) {
        Interval.requireLevel(level);
        if (!(predicted > 0 && Double.isFinite(predicted))) {
            throw new IllegalArgumentException("a prediction is above 0, not " + predicted);
        }
        if (!(overdispersion >= 0 && Double.isFinite(overdispersion))) {
            throw new IllegalArgumentException("the overdispersion is 0 or more, not " + overdispersion);
        }
        if (incidents < 0) {
            throw new IllegalArgumentException("incidents are 0 or more");
        }
        double weight = 1 / (1 + overdispersion * predicted);
        double estimate = weight * predicted + (1 - weight) * incidents;
        if (overdispersion == 0) {
            return new EmpiricalBayes(
                    predicted, 0, incidents, 1, predicted, 0, new Interval(predicted, predicted, level), 0);
        }
        double shape = 1 / overdispersion + incidents;
        double rate = 1 / (overdispersion * predicted) + 1;
        double tail = (1 - level) / 2;
        var posterior = new Interval(Quantiles.gamma(shape, rate, tail), Quantiles.gamma(shape, rate, 1 - tail), level);
        return new EmpiricalBayes(
                predicted,
                overdispersion,
                incidents,
                weight,
                estimate,
                (1 - weight) * estimate,
                posterior,
                RegularizedGamma.Q.value(shape, rate * predicted));
    }

    /** k of a site from Hauer's phi per kilometre, which is theta of one kilometre: {@code 1 / (phi L)}. */
    public static double overdispersionFromPhi(double phiPerKilometre, double lengthMetres) {
        if (!(phiPerKilometre > 0 && lengthMetres > 0)) {
            throw new IllegalArgumentException("phi and length are above 0");
        }
        return 1 / (phiPerKilometre * lengthMetres / 1000);
    }

    /** The estimate less what is predicted. */
    public double excess() {
        return estimate - predicted;
    }

    /** Square root of the variance. */
    public double standardError() {
        return Math.sqrt(variance);
    }

    /** The interval of the excess. */
    public Interval excessInterval() {
        return new Interval(posterior.low() - predicted, posterior.high() - predicted, posterior.level());
    }

    /** Posterior probability that the site's own mean, over the length and years of the count, is above a value. */
    public double chanceAbove(double value) {
        if (overdispersion == 0) {
            return predicted > value ? 1 : 0;
        }
        return value <= 0 ? 1 : RegularizedGamma.Q.value(shape(), (1 / (overdispersion * predicted) + 1) * value);
    }

    /** A figure of this estimate per kilometre and year. */
    public static double perKilometreYear(double figure, double lengthMetres, double years) {
        return figure / (lengthMetres / 1000 * years);
    }

    /** The estimate per kilometre and year. */
    public double perKilometreYear(double lengthMetres, double years) {
        return perKilometreYear(estimate, lengthMetres, years);
    }

    /** Coefficient of variation of the estimate. */
    public double coefficientOfVariation() {
        return standardError() / estimate;
    }

    double shape() {
        return 1 / overdispersion + incidents;
    }

    /**
     * The estimate by years: each year has the share of it that the prediction gives that year (Hauer and others 2002,
     * the full procedure). The variances are of estimates that rise and fall together.
     *
     * @param years in order
     * @param predictedByYear for each, above 0
     * @param incidents in all these years together
     * @throws IllegalArgumentException where the two are of unequal length or empty, or a prediction is not above 0
     */
    public static List<Year> byYear(
            List<Integer> years, List<Double> predictedByYear, double overdispersion, int incidents) {
        if (years.isEmpty() || years.size() != predictedByYear.size()) {
            throw new IllegalArgumentException("every year needs one prediction");
        }
        if (!predictedByYear.stream().allMatch(value -> value > 0)) {
            throw new IllegalArgumentException("a prediction is above 0");
        }
        double whole = predictedByYear.stream().mapToDouble(Double::doubleValue).sum();
        EmpiricalBayes all = of(whole, overdispersion, incidents, 0.95);
        double first = predictedByYear.get(0);
        List<Year> byYear = new ArrayList<>();
        for (int i = 0; i < years.size(); i++) {
            double share = predictedByYear.get(i) / whole;
            byYear.add(new Year(
                    years.get(i),
                    predictedByYear.get(i) / first,
                    share * all.estimate(),
                    share * share * all.variance()));
        }
        return byYear;
    }

    /**
     * Another period's estimate, by the ratio of what is predicted for it to what was predicted for this one.
     *
     * @param predictedThen above 0
     */
    public Year forecast(int year, double predictedThen) {
        if (!(predictedThen > 0)) {
            throw new IllegalArgumentException("a prediction is above 0");
        }
        double factor = predictedThen / predicted;
        return new Year(year, factor, factor * estimate, factor * factor * variance);
    }

    /** By excess, the greatest first; equal ones by estimate, the greatest first, then by name. */
    public static List<Ranked> rank(List<Named> estimates) {
        List<Named> ordered = estimates.stream()
                .sorted(Comparator.comparingDouble(
                                (Named named) -> -named.estimate().excess())
                        .thenComparingDouble(named -> -named.estimate().estimate())
                        .thenComparing(Named::id))
                .toList();
        List<Ranked> ranked = new ArrayList<>();
        for (Named named : ordered) {
            ranked.add(new Ranked(ranked.size() + 1, named.id(), named.estimate()));
        }
        return ranked;
    }
}
