package org.culvert.hotspot.stats.rate;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.numbers.gamma.RegularizedGamma;

/**
 * Quantiles with a small <em>relative</em> error, also where they are tiny: bracketed on the logarithm of the value,
 * then found between.
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
        return between(function, target, low, high);
    }

    /** False position with the weights of the Illinois rule, and halving wherever that is slow. */
    private static double between(DoubleUnaryOperator function, double target, double from, double to) {
        double low = from;
        double high = to;
        double atLow = function.applyAsDouble(low) - target;
        double atHigh = function.applyAsDouble(high) - target;
        int side = 0;
        for (int round = 1; high - low > RELATIVE * high; round++) {
            double share = round % 4 != 0 && atLow < 0 && atHigh > 0 ? atLow / (atLow - atHigh) : 0.5;
            double middle = low + (high - low) * share;
            if (middle <= low || middle >= high) {
                middle = low + (high - low) / 2;
            }
            if (middle <= low || middle >= high) {
                break;
            }
            double at = function.applyAsDouble(middle) - target;
            if (at < 0) {
                low = middle;
                atLow = at;
                atHigh /= side < 0 ? 2 : 1;
                side = -1;
            } else if (at > 0) {
                high = middle;
                atHigh = at;
                atLow /= side > 0 ? 2 : 1;
                side = 1;
            } else {
                return middle;
            }
        }
        return low + (high - low) / 2;
    }
}
