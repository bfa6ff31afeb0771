package org.culvert.hotspot.stats;

import org.apache.commons.statistics.distribution.GammaDistribution;

/**
 * The exact interval for the mean of a Poisson count.
 *
 * <p>Garwood, F. (1936), Fiducial limits for the Poisson distribution, Biometrika 28, 437-442: the quantiles of gamma
 * distributions of shape k and k + 1 (half of chi-square quantiles on 2k and 2k + 2 degrees of freedom). Conservative.
 *
 * @param low lower end, 0 for a count of 0
 * @param high upper end
 */
public record CountInterval(double low, double high) {
    /**
     * @param count zero or more
     * @param level coverage, such as 0.95
     */
    public static CountInterval of(int count, double level) {
        double tail = (1 - level) / 2;
        double low = count == 0 ? 0 : GammaDistribution.of(count, 1).inverseCumulativeProbability(tail);
        return new CountInterval(low, GammaDistribution.of(count + 1.0, 1).inverseSurvivalProbability(tail));
    }
}
