package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.numbers.gamma.RegularizedGamma;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;

class SurpriseTest {
    /** Apache Commons Numbers' incomplete gamma function, an independent implementation. */
    @Test
    void theTailIsTheIncompleteGammaFunction() {
        var random = Networks.random(7);
        for (int i = 0; i < 2000; i++) {
            double lambda = Math.exp(-6 + 12 * random.nextDouble());
            double x = lambda + Math.exp(-3 + 6 * random.nextDouble());
            double wanted = -Math.log(RegularizedGamma.P.value(x, lambda));
            if (Double.isFinite(wanted)) {
                assertThat(Surprise.minusLogTail(x, lambda, Math.log(lambda)))
                        .as("x %s, lambda %s", x, lambda)
                        .isCloseTo(wanted, within(1e-9 * Math.max(1, wanted)));
            }
        }
    }

    @Test
    void atWholeNumbersItIsThePoissonTail() {
        double tail = PoissonDistribution.of(2.5).survivalProbability(6);
        assertThat(Math.exp(-Surprise.minusLogTail(7, 2.5, Math.log(2.5)))).isCloseTo(tail, within(1e-12));
    }

    @Test
    void aTailTooSmallForADoubleIsStillFinite() {
        assertThat(Surprise.minusLogTail(500, 0.01, Math.log(0.01))).isBetween(1000.0, 10_000.0);
    }

    @Test
    void screeningNeverMissesTheGreatest() {
        var random = Networks.random(8);
        int pieces = 500;
        var moments = new NullModel.Moments(new double[pieces], new double[pieces], new double[pieces]);
        double[] field = new double[pieces];
        for (int piece = 0; piece < pieces; piece++) {
            moments.mean()[piece] = Math.exp(-6 + 6 * random.nextDouble());
            moments.variance()[piece] = moments.mean()[piece] * Math.exp(-3 + 4 * random.nextDouble());
            field[piece] = moments.mean()[piece] * 4 * random.nextDouble();
        }
        var surprise = new Surprise(moments, 0);
        double screened = 0;
        double plain = 0;
        for (int piece = 0; piece < pieces; piece++) {
            screened = surprise.orBetter(screened, piece, field[piece]);
            plain = Math.max(plain, surprise.at(piece, field[piece]));
        }
        assertThat(screened).isEqualTo(plain).isGreaterThan(0);
    }

    @Test
    void whereChancePutsNothingNothingIsSurprising() {
        var surprise =
                new Surprise(new NullModel.Moments(new double[] {0, 1}, new double[] {0, 0}, new double[] {0, 0}), 0);
        assertThat(surprise.at(0, 5)).isZero();
        assertThat(surprise.at(1, 5)).isZero();
    }
}
