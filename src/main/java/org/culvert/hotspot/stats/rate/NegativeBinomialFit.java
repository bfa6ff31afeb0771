package org.culvert.hotspot.stats.rate;

import java.util.Arrays;
import java.util.List;

/**
 * A log-linear model for counts that scatter more than Poisson counts do: {@code log mu_i = log exposure_i + x_i b} and
 * {@code Var(y_i) = mu_i + k mu_i^2}.
 *
 * <p>Fitted by maximum likelihood: coefficients by Fisher scoring (iteratively reweighted least squares) for a given
 * theta = 1/k, theta by its own likelihood for given means, in turn, until neither moves (W. N. Venables and B. D. Ripley,
 * Modern Applied Statistics with S, 4th ed. 2002, section 7.4; J. M. Hilbe, Negative Binomial Regression, 2nd ed. 2011).
 * Standard errors are those of the expected information with theta taken as known. Theta may be proportional to a share of
 * each site, such as its length (E. Hauer 2001, Accident Analysis and Prevention 33, 799-808,
 * doi:10.1016/S0001-4575(00)00094-4); otherwise it is common.
 *
 * <p>Where the counts do not scatter more than Poisson counts, the likelihood has no greatest value at a finite theta: the
 * outcome is {@link Outcome#POISSON_LIMIT}, with k = 0 and theta infinite, and that is a result. It is judged by the
 * Poisson fit: the likelihood neither rises as k leaves 0 (sum of {@code (y - mu)^2 - y} at most 0; Levin and Reeds 1977,
 * Annals of Statistics 5, 79-87, for one sample) nor is greater at any k from 1/1000 to 1000 in steps of ten.
 *
 * <p>Immutable; the same input gives the same bytes.
 *
 * @param outcome whether there are estimates, and if not why not
 * @param remark a sentence that says the same, with figures
 * @param names of the coefficients
 * @param coefficients b; empty without estimates
 * @param standardErrors of the coefficients
 * @param theta 1/k; infinite at the Poisson limit; NaN without estimates
 * @param thetaStandardError from the observed information at the fitted means; NaN at the limit
 * @param logLikelihood with all constants; NaN without estimates
 * @param poissonLogLikelihood of the Poisson model with the same columns, for comparison
 * @param rounds how often coefficients and theta were fitted in turn
 */
public record NegativeBinomialFit(
        Outcome outcome,
        String remark,
        List<String> names,
        List<Double> coefficients,
        List<Double> standardErrors,
        double theta,
        double thetaStandardError,
        double logLikelihood,
        double poissonLogLikelihood,
        int rounds) {
    /** How a fit ended. */
    public enum Outcome {
        /** Estimates, with more scatter than Poisson counts have. */
        CONVERGED,
        /** Estimates, with no more scatter than Poisson counts have. */
        POISSON_LIMIT,
        /** All counts are zero. */
        NO_EVENTS,
        /** Not more counts than coefficients. */
        TOO_FEW_COUNTS,
        /** A column follows from others. */
        DEPENDENT_COLUMNS,
        /** The steps did not come to rest. */
        NOT_CONVERGED;

        /** Whether there are estimates. */
        public boolean hasEstimates() {
            return this == CONVERGED || this == POISSON_LIMIT;
        }
    }

    public NegativeBinomialFit {
        names = List.copyOf(names);
        coefficients = List.copyOf(coefficients);
        standardErrors = List.copyOf(standardErrors);
    }

    /** With a common theta. See {@link #of(List, double[][], double[], int[], double[])}. */
    public static NegativeBinomialFit of(
            List<String> names, double[][] covariates, double[] logExposure, int[] counts) {
        double[] shares = new double[counts.length];
        Arrays.fill(shares, 1);
        return of(names, covariates, logExposure, counts, shares);
    }

    /**
     * Fits the model.
     *
     * @param names of the columns
     * @param covariates a row per count; a column of ones where a constant is wanted, since none is added
     * @param logExposure natural logarithm of what the mean is proportional to
     * @param counts zero or more
     * @param shares what theta is multiplied by for each count, above 0
     * @throws IllegalArgumentException where the sizes differ, a number is not finite, a count is negative or a share not
     *     above 0
     */
    public static NegativeBinomialFit of(
            List<String> names, double[][] covariates, double[] logExposure, int[] counts, double[] shares) {
        require(names, covariates, logExposure, counts, shares);
        if (counts.length <= names.size()) {
            return without(
                    Outcome.TOO_FEW_COUNTS,
                    counts.length + " counts are too few for " + names.size() + " coefficients",
                    names,
                    0);
        }
        if (Arrays.stream(counts).allMatch(count -> count == 0)) {
            return without(Outcome.NO_EVENTS, "all " + counts.length + " counts are zero", names, 0);
        }
        return new NegativeBinomialFitting(names, covariates, logExposure, counts, shares).fit();
    }

    /** k, the overdispersion where the share is 1: 1/theta, or 0 at the Poisson limit. */
    public double overdispersion() {
        requireEstimates();
        return 1 / theta;
    }

    /**
     * The mean at given covariates.
     *
     * @throws IllegalStateException without estimates
     */
    public double mean(double[] covariates, double logExposure) {
        requireEstimates();
        double sum = logExposure;
        for (int column = 0; column < covariates.length; column++) {
            sum += covariates[column] * coefficients.get(column);
        }
        return Math.exp(sum);
    }

    /** Akaike's criterion, counting theta where it is finite. */
    public double akaike() {
        int parameters = coefficients.size() + (outcome == Outcome.CONVERGED ? 1 : 0);
        return 2 * parameters - 2 * logLikelihood;
    }

    private void requireEstimates() {
        if (!outcome.hasEstimates()) {
            throw new IllegalStateException("there are no estimates: " + remark);
        }
    }

    static NegativeBinomialFit without(Outcome outcome, String remark, List<String> names, int rounds) {
        return new NegativeBinomialFit(
                outcome, remark, names, List.of(), List.of(), Double.NaN, Double.NaN, Double.NaN, Double.NaN, rounds);
    }

    private static void require(
            List<String> names, double[][] covariates, double[] logExposure, int[] counts, double[] shares) {
        if (covariates.length != counts.length
                || logExposure.length != counts.length
                || shares.length != counts.length) {
            throw new IllegalArgumentException("every count needs a row of covariates, an exposure and a share");
        }
        if (names.isEmpty()) {
            throw new IllegalArgumentException("a model needs at least one column, such as one of ones");
        }
        for (int i = 0; i < counts.length; i++) {
            if (covariates[i].length != names.size()) {
                throw new IllegalArgumentException("row " + i + " does not have " + names.size() + " covariates");
            }
            if (!Arrays.stream(covariates[i]).allMatch(Double::isFinite) || !Double.isFinite(logExposure[i])) {
                throw new IllegalArgumentException("row " + i
                        + " has a covariate or an exposure that is not finite; leave it out or give it a level");
            }
            if (counts[i] < 0) {
                throw new IllegalArgumentException("count " + i + " is negative");
            }
            if (!(shares[i] > 0 && shares[i] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("share " + i + " is not above 0");
            }
        }
    }
}
