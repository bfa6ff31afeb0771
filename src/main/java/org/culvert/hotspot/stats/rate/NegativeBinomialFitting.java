package org.culvert.hotspot.stats.rate;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.culvert.hotspot.stats.rate.NegativeBinomialFit.Outcome;

/** The steps to a {@link NegativeBinomialFit}. */
final class NegativeBinomialFitting {
    private static final int MOST_ROUNDS = 200;
    private static final int MOST_STEPS = 60;
    private static final double STILL = 1e-10;

    private final List<String> names;
    private final double[][] covariates;
    private final double[] logExposure;
    private final int[] counts;
    private final double[] shares;
    private final Overdispersion overdispersion;

    private double[] coefficients;
    private double[] means;
    private double[][] covariance = {};
    private int restless;

    NegativeBinomialFitting(
            List<String> names, double[][] covariates, double[] logExposure, int[] counts, double[] shares) {
        this.names = names;
        this.covariates = covariates;
        this.logExposure = logExposure;
        this.counts = counts;
        this.shares = shares;
        this.overdispersion = new Overdispersion(counts, shares);
        this.coefficients = new double[names.size()];
        this.means = new double[counts.length];
    }

    NegativeBinomialFit fit() {
        Arrays.setAll(means, i -> counts[i] + 0.1);
        if (!score(0, true)) {
            return restless(0);
        }
        double poisson = overdispersion.logLikelihood(means, 0);
        if (overdispersion.score(means, 0) <= 0 && !anyBetterThan(poisson)) {
            return atTheLimit(poisson);
        }
        double k = overdispersion.mostLikely(means, momentEstimate());
        for (int round = 1; round <= MOST_ROUNDS; round++) {
            if (!(k > 0 && k < Double.POSITIVE_INFINITY)) {
                return NegativeBinomialFit.without(
                        Outcome.NOT_CONVERGED, "the overdispersion runs off to " + k, names, round);
            }
            double[] before = coefficients.clone();
            if (!score(k, false)) {
                return restless(round);
            }
            double next = overdispersion.mostLikely(means, k);
            boolean still = Math.abs(next - k) <= STILL * next && greatestMove(before) <= STILL;
            k = next;
            if (still) {
                return found(k, poisson, round);
            }
        }
        return NegativeBinomialFit.without(
                Outcome.NOT_CONVERGED,
                "coefficients and overdispersion did not come to rest in " + MOST_ROUNDS + " rounds",
                names,
                MOST_ROUNDS);
    }

    /** A start for k, with expectation equal to k where the means are right; small and positive at worst. */
    private double momentEstimate() {
        double excess = 0;
        double squares = 0;
        for (int i = 0; i < counts.length; i++) {
            excess += (counts[i] - means[i]) * (counts[i] - means[i]) - means[i];
            squares += means[i] * means[i] / shares[i];
        }
        return Math.max(1e-4, Math.min(1e4, excess / squares));
    }

    private boolean anyBetterThan(double poisson) {
        for (double k = 1e-3; k < 2e3; k *= 10) {
            if (overdispersion.logLikelihood(means, k) > poisson) {
                return true;
            }
        }
        return false;
    }

    /**
     * Fisher scoring for a given k until the coefficients rest. A step that lowers the likelihood is halved.
     *
     * @return false where they do not, or where a column follows from others
     */
    private boolean score(double k, boolean fromCounts) {
        double likelihood = fromCounts ? Double.NEGATIVE_INFINITY : overdispersion.logLikelihood(means, k);
        double[] weights = new double[counts.length];
        double[] response = new double[counts.length];
        for (int step = 0; step < MOST_STEPS; step++) {
            for (int i = 0; i < counts.length; i++) {
                double mean = means[i];
                weights[i] = mean / (1 + k / shares[i] * mean);
                response[i] = Math.log(mean) - logExposure[i] + (counts[i] - mean) / mean;
            }
            var squares = new LeastSquares(covariates, weights, response);
            if (squares.dependentColumn() >= 0) {
                restless = squares.dependentColumn();
                covariance = new double[][] {};
                return false;
            }
            covariance = squares.inverse();
            double[] before = coefficients;
            coefficients = squares.solution();
            double next = likelihoodAtCoefficients(k);
            for (int half = 0; half < 30 && next < likelihood - 1e-9 * Math.abs(likelihood) && step > 0; half++) {
                for (int column = 0; column < coefficients.length; column++) {
                    coefficients[column] = (coefficients[column] + before[column]) / 2;
                }
                next = likelihoodAtCoefficients(k);
            }
            likelihood = next;
            if (!Double.isFinite(likelihood)) {
                return false;
            }
            if ((step > 0 || !fromCounts) && greatestMove(before) <= STILL) {
                return true;
            }
        }
        return false;
    }

    private double likelihoodAtCoefficients(double k) {
        for (int i = 0; i < counts.length; i++) {
            double sum = logExposure[i];
            for (int column = 0; column < coefficients.length; column++) {
                sum += covariates[i][column] * coefficients[column];
            }
            means[i] = Math.max(1e-300, Math.exp(Math.min(sum, 690)));
        }
        return overdispersion.logLikelihood(means, k);
    }

    private double greatestMove(double[] before) {
        double greatest = 0;
        for (int column = 0; column < before.length; column++) {
            double move = Math.abs(coefficients[column] - before[column]) / (1 + Math.abs(coefficients[column]));
            if (!(move <= greatest)) {
                greatest = move;
                restless = column;
            }
        }
        return greatest;
    }

    private NegativeBinomialFit restless(int round) {
        String name = names.get(restless);
        if (covariance.length == 0) {
            return NegativeBinomialFit.without(
                    Outcome.DEPENDENT_COLUMNS, "the column '" + name + "' follows from those before it", names, round);
        }
        return NegativeBinomialFit.without(
                Outcome.NOT_CONVERGED,
                "the coefficient of '" + name
                        + "' does not come to rest; it may be that no event has it, or that all have",
                names,
                round);
    }

    private NegativeBinomialFit atTheLimit(double poisson) {
        return new NegativeBinomialFit(
                Outcome.POISSON_LIMIT,
                "the counts do not scatter more than Poisson counts do: nothing beyond the model tells the sites apart",
                names,
                boxed(coefficients),
                standardErrors(),
                Double.POSITIVE_INFINITY,
                Double.NaN,
                poisson,
                poisson,
                0);
    }

    private NegativeBinomialFit found(double k, double poisson, int round) {
        double information = overdispersion.informationOnTheta(means, k);
        return new NegativeBinomialFit(
                Outcome.CONVERGED,
                String.format(Locale.ROOT, "variance = mean + %.3g mean^2 where the share is 1", k),
                names,
                boxed(coefficients),
                standardErrors(),
                1 / k,
                information > 0 ? 1 / Math.sqrt(information) : Double.NaN,
                overdispersion.logLikelihood(means, k),
                poisson,
                round);
    }

    private List<Double> standardErrors() {
        double[] errors = new double[names.size()];
        Arrays.setAll(errors, column -> Math.sqrt(covariance[column][column]));
        return boxed(errors);
    }

    private static List<Double> boxed(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }
}
