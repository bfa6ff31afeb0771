package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Residuals of a model summed up in the order of a covariate, with the bounds that a right model keeps to: a plot that
 * shows where a model is wrong along that covariate.
 *
 * <p>With {@code s(n)} the sum of squared residuals up to the n-th, the bounds are
 * {@code +-2 sqrt(s(n) (1 - s(n)/s(N)))}: the walk of independent residuals tied to its end (E. Hauer and J. Bamfo 1997,
 * Two tools for finding what function links the dependent variable to the explanatory variables, Proceedings of the ICTCT
 * conference, Lund; E. Hauer, The Art of Regression Modeling in Road Safety, Springer 2015,
 * doi:10.1007/978-3-319-12529-9). Sites of equal covariate are one step, so that their order changes nothing.
 *
 * @param steps in order of the covariate
 */
public record CumulativeResiduals(List<Step> steps) {
    /**
     * One site's count beside the model's.
     *
     * @param covariate finite
     * @param incidents counted
     * @param expected by the model
     */
    public record Residual(double covariate, int incidents, double expected) {}

    /**
     * One point of the plot.
     *
     * @param covariate where
     * @param sum residuals up to here, counted less expected
     * @param bound two standard deviations of that sum under a right model; the other bound is its negative
     */
    public record Step(double covariate, double sum, double bound) {
        /** Whether the sum lies outside the bounds. */
        public boolean isOutside() {
            return Math.abs(sum) > bound * (1 + 1e-9) + 1e-9;
        }
    }

    public CumulativeResiduals {
        steps = List.copyOf(steps);
    }

    /**
     * Sums up.
     *
     * @throws IllegalArgumentException where a covariate is not finite
     */
    public static CumulativeResiduals of(List<Residual> residuals) {
        if (!residuals.stream().allMatch(residual -> Double.isFinite(residual.covariate()))) {
            throw new IllegalArgumentException("leave out residuals whose covariate is not known");
        }
        List<Residual> ordered = residuals.stream()
                .sorted(Comparator.comparingDouble(Residual::covariate)
                        .thenComparingDouble(Residual::expected)
                        .thenComparingInt(Residual::incidents))
                .toList();
        double whole =
                ordered.stream().mapToDouble(CumulativeResiduals::squared).sum();
        List<Step> steps = new ArrayList<>();
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < ordered.size(); i++) {
            Residual residual = ordered.get(i);
            sum += residual.incidents() - residual.expected();
            squares += squared(residual);
            if (i + 1 == ordered.size() || ordered.get(i + 1).covariate() > residual.covariate()) {
                double share = whole > 0 ? Math.min(1, squares / whole) : 1;
                steps.add(new Step(residual.covariate(), sum, 2 * Math.sqrt(squares * (1 - share))));
            }
        }
        return new CumulativeResiduals(steps);
    }

    /**
     * Share of the steps before the last that lie outside the bounds; 0 for fewer than two steps. A right model has a few
     * per cent, and neighbouring steps go together.
     */
    public double shareOutside() {
        long outside = steps.stream()
                .limit(Math.max(0, steps.size() - 1))
                .filter(Step::isOutside)
                .count();
        return steps.size() < 2 ? 0 : (double) outside / (steps.size() - 1);
    }

    private static double squared(Residual residual) {
        double difference = residual.incidents() - residual.expected();
        return difference * difference;
    }
}
