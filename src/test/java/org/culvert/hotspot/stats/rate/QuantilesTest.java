package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.numbers.gamma.RegularizedGamma;
import org.junit.jupiter.api.Test;

class QuantilesTest {
    private static final double[] PROBABILITIES = {1e-6, 0.025, 0.3, 0.5, 0.8, 0.975, 1 - 1e-6};

    @Test
    void gammaQuantilesGiveTheirProbabilityBack() {
        for (double shape : new double[] {0.05, 0.7, 1, 4, 60, 3000, 1e8}) {
            for (double p : PROBABILITIES) {
                double quantile = Quantiles.gamma(shape, 3, p);
                double back = p <= 0.5
                        ? RegularizedGamma.P.value(shape, 3 * quantile)
                        : 1 - RegularizedGamma.Q.value(shape, 3 * quantile);
                assertThat(back).as("shape %s, p %s", shape, p).isCloseTo(p, within(1e-8 * p + 1e-12));
            }
        }
    }

    /** The quantile of an exponential distribution, in closed form. */
    @Test
    void gammaOfShapeOneIsExponential() {
        for (double p : PROBABILITIES) {
            double closed = -Math.log1p(-p) / 2.5;
            assertThat(Quantiles.gamma(1, 2.5, p)).isCloseTo(closed, within(1e-9 * closed));
        }
    }

    /** Beta(a, 1) has the distribution function x^a, and beta(1, b) has 1 - (1 - x)^b. */
    @Test
    void betaOddsAreTheClosedFormsWhereThereAreAny() {
        for (double parameter : new double[] {0.3, 1, 7, 1e6}) {
            for (double p : PROBABILITIES) {
                double x = Math.exp(Math.log(p) / parameter);
                double rest = -Math.expm1(Math.log(p) / parameter);
                assertThat(Quantiles.betaOdds(parameter, 1, p))
                        .as("a %s, p %s", parameter, p)
                        .isCloseTo(x / rest, within(1e-8 * x / rest));
                double other = -Math.expm1(Math.log1p(-p) / parameter);
                double odds = other / Math.exp(Math.log1p(-p) / parameter);
                assertThat(Quantiles.betaOdds(1, parameter, p))
                        .as("b %s, p %s", parameter, p)
                        .isCloseTo(odds, within(1e-8 * odds));
            }
        }
    }

    @Test
    void betaOddsGiveTheirProbabilityBack() {
        for (double a : new double[] {1, 2.5, 40}) {
            for (double b : new double[] {0.8, 12, 5e5}) {
                for (double p : PROBABILITIES) {
                    double odds = Quantiles.betaOdds(a, b, p);
                    assertThat(RegularizedBeta.value(odds / (1 + odds), a, b))
                            .as("a %s, b %s, p %s", a, b, p)
                            .isCloseTo(p, within(1e-9));
                }
            }
        }
    }
}
