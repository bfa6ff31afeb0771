package org.culvert.hotspot.stats.rate;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.numbers.gamma.RegularizedGamma;

/**
 * Quantiles with a small <em>relative</em> error, also where they are tiny: bisection on the logarithm of the value.
 *
 * <p>The general inversion of a distribution function stops at an absolute error, which is not enough for the odds of a
 * beta distribution with one very large parameter.
 */
final class Quantiles {
    private static final double RELATIVE = 1e-14;

    private Quantiles() {}

    /**
     * The value with probability {@code p} below it under a gamma distribution.
     *
     * @param shape above 0
     * @param rate above 0
     */
    static double gamma(double shape, double rate, double p) {
        if (p <= 0.5) {
            return rising(value -> RegularizedGamma.P.value(shape, value), p, shape) / rate;
        }
        return rising(value -> -RegularizedGamma.Q.value(shape, value), p - 1, shape) / rate;
    }

    /**
     * The odds {@code x / (1 - x)} of the quantile {@code x} of a beta distribution.
     *
     * @param a above 0
     * @param b above 0
     */
    static double betaOdds(double a, double b, double p) {
        if (p <= 0.5) {
            return rising(odds -> lowerBeta(odds, a, b), p, a / b);
        }
        return rising(odds -> -upperBeta(odds, a, b), p - 1, a / b);
    }

    private static double lowerBeta(double odds, double a, double b) {
        return odds <= 1
                ? RegularizedBeta.value(odds / (1 + odds), a, b)
                : RegularizedBeta.complement(1 / (1 + odds), b, a);
    }

    private static double upperBeta(double odds, double a, double b) {
        return odds <= 1
                ? RegularizedBeta.complement(odds / (1 + odds), a, b)
                : RegularizedBeta.value(1 / (1 + odds), b, a);
    }

    /** Where a rising function of a positive argument reaches a target. */
    static double rising(DoubleUnaryOperator function, double target, double guess) {
        double low = guess;
        while (low > Double.MIN_NORMAL && function.applyAsDouble(low) > target) {
            low /= 4;
        }
        double high = Math.max(guess, Double.MIN_NORMAL);
        while (high < Double.MAX_VALUE / 4 && function.applyAsDouble(high) < target) {
            high *= 4;
        }
        while (high - low > RELATIVE * high) {
            double middle = high > 2 * low ? Math.sqrt(low) * Math.sqrt(high) : low + (high - low) / 2;
            if (middle <= low || middle >= high) {
                break;
            }
            if (function.applyAsDouble(middle) < target) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low + (high - low) / 2;
    }
}
