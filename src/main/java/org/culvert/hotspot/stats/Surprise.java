package org.culvert.hotspot.stats;

import java.util.function.DoublePredicate;
import org.apache.commons.numbers.gamma.LogGamma;

/**
 * How surprising a density is where it stands: minus the natural logarithm of its marginal p.
 *
 * <p>A density at a place is a sum of kernel values; under chance its mean is mu and its variance is v. It is taken as a
 * scaled Poisson count: with {@code phi = v / mu} and {@code lambda = mu / phi}, {@code x = f / phi} has equal mean and
 * variance lambda, and {@code p = P(Poisson(lambda) >= x)}, continued to real x by the regularised incomplete gamma
 * function P(x, lambda). So places of unequal exposure can be compared: that is what a maximum of the raw density cannot
 * do. The approximation need not be good; the simulations judge the smallest p by the same yardstick.
 *
 * <p>At or below its mean a density is not surprising at all (0, that is p = 1), nor where chance puts nothing.
 */
final class Surprise {
    private static final double LOG_TWO_PI = Math.log(2 * Math.PI);

    private final double[] mean;
    private final double[] perPhi;
    private final double[] lambda;
    private final double[] logLambda;

    /** What the quick ceiling of {@link #orBetter} has that is the same for every density. */
    private final double[] quickly;

    /**
     * @param backgroundVariance what a rough background adds to the variance, as a multiple of the square of the mean
     */
    Surprise(NullModel.Moments moments, double backgroundVariance) {
        int pieces = moments.mean().length;
        this.mean = new double[pieces];
        this.perPhi = new double[pieces];
        this.lambda = new double[pieces];
        this.logLambda = new double[pieces];
        this.quickly = new double[pieces];
        for (int piece = 0; piece < pieces; piece++) {
            double mu = moments.mean()[piece];
            double v = moments.variance()[piece] + backgroundVariance * mu * mu;
            boolean varies = mu > 0 && v > 1e-10 * mu * mu;
            mean[piece] = varies ? mu : Double.POSITIVE_INFINITY;
            perPhi[piece] = varies ? mu / v : 0;
            lambda[piece] = varies ? mu * mu / v : 0;
            logLambda[piece] = Math.log(lambda[piece]);
            quickly[piece] = 0.5 * (LOG_TWO_PI + logLambda[piece]) + 1 / (12 * lambda[piece]);
        }
    }

    /** The surprise of a density at a piece. */
    double at(int piece, double density) {
        return density <= mean[piece] ? 0 : minusLogTail(density * perPhi[piece], lambda[piece], logLambda[piece]);
    }

    /**
     * The least density at a piece that is at least so surprising, in events per metre; infinite where none is.
     *
     * @param surprise greater than 0
     */
    double densityOf(int piece, double surprise) {
        double reached = Double.isInfinite(surprise) ? surprise : 2 * mean[piece];
        while (!(at(piece, reached) >= surprise)) {
            if (Double.isInfinite(reached)) {
                return reached;
            }
            reached *= 2;
        }
        return least(mean[piece], reached, density -> at(piece, density) >= surprise);
    }

    /** The least number for which something holds, to the last bit, between one for which it does not and one for which it does. */
    static double least(double not, double does, DoublePredicate holds) {
        double below = not;
        double least = does;
        for (double middle = below + (least - below) / 2;
                middle > below && middle < least;
                middle = below + (least - below) / 2) {
            if (holds.test(middle)) {
                least = middle;
            } else {
                below = middle;
            }
        }
        return least;
    }

    /**
     * The larger of {@code best} and the surprise of a density at a piece, mostly without computing the latter: the first term
     * of the series, with Stirling's bound of its factorial, is above it, and so is the same with {@code log(x / lambda) <=
     * x / lambda - 1} and {@code 1 / x <= 1 / lambda}, which takes no logarithm.
     */
    double orBetter(double best, int piece, double density) {
        if (density <= mean[piece]) {
            return best;
        }
        double x = density * perPhi[piece];
        double beyond = (x - lambda[piece]) / lambda[piece];
        if ((x - lambda[piece] + 0.5) * beyond + quickly[piece] <= best) {
            return best;
        }
        double ceiling = lambda[piece]
                + x * (Math.log(x) - logLambda[piece] - 1)
                + 0.5 * (LOG_TWO_PI + Math.log(x))
                + 1 / (12 * x);
        if (ceiling <= best) {
            return best;
        }
        return Math.max(best, minusLogTail(x, lambda[piece], logLambda[piece]));
    }

    /**
     * {@code -log P(x, lambda)} for x > lambda > 0, by the series {@code P(x, l) = l^x e^-l / Gamma(x + 1) (1 + l/(x+1) +
     * l^2/((x+1)(x+2)) + ...)} (Abramowitz and Stegun 1964, 6.5.29), so that it does not underflow.
     */
    static double minusLogTail(double x, double lambda, double logLambda) {
        double term = 1;
        double sum = 1;
        for (int k = 1; term > 1e-16 * sum; k++) {
            term *= lambda / (x + k);
            sum += term;
        }
        return lambda - x * logLambda + LogGamma.value(x + 1) - Math.log(sum);
    }
}
