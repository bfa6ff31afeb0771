package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.culvert.hotspot.stats.Checks;
import org.culvert.hotspot.stats.rate.NegativeBinomialFit.Outcome;
import org.junit.jupiter.api.Test;

class NegativeBinomialFitTest {
    private static final List<String> CONSTANT = List.of("constant");
    private static final List<String> CONSTANT_AND_X = List.of("constant", "x");

    /** A fit by {@code glm.nb} of R's MASS: coefficients at 1e-6, theta at 1e-4. */
    @Test
    void fitIsThatOfMass() {
        JsonNode mass = Checks.json("eb/nb_spf400.json");
        NegativeBinomialFit fit = spf400(true);
        assertThat(fit.outcome()).isEqualTo(Outcome.CONVERGED);
        assertThat(fit.coefficients().get(0))
                .isCloseTo(mass.at("/coef/(Intercept)").asDouble(), within(1e-6));
        assertThat(fit.coefficients().get(1))
                .isCloseTo(mass.at("/coef").get("log(A)").asDouble(), within(1e-6));
        assertThat(fit.standardErrors().get(0))
                .isCloseTo(mass.at("/se/(Intercept)").asDouble(), within(1e-5));
        assertThat(fit.standardErrors().get(1))
                .isCloseTo(mass.at("/se").get("log(A)").asDouble(), within(1e-6));
        assertThat(fit.theta()).isCloseTo(mass.get("theta").asDouble(), within(1e-4));
        assertThat(fit.overdispersion()).isCloseTo(mass.get("k").asDouble(), within(1e-4));
        assertThat(fit.thetaStandardError()).isCloseTo(mass.get("se_theta").asDouble(), within(1e-4));
        assertThat(fit.logLikelihood()).isCloseTo(mass.get("loglik").asDouble(), within(1e-7));
        assertThat(fit.akaike()).isCloseTo(mass.get("AIC").asDouble(), within(1e-6));
    }

    /** By MASS, too: length and years alone. */
    @Test
    void fitWithoutTrafficIsThatOfMass() {
        JsonNode mass = Checks.json("eb/nb_null400.json");
        NegativeBinomialFit fit = spf400(false);
        assertThat(fit.coefficients().get(0)).isCloseTo(mass.get("coef").asDouble(), within(1e-6));
        assertThat(fit.theta()).isCloseTo(mass.get("theta").asDouble(), within(1e-4));
        assertThat(fit.logLikelihood()).isCloseTo(mass.get("loglik").asDouble(), within(1e-7));
    }

    /** The likelihood by its definition, with gamma functions; nothing near the fit may be more likely. */
    @Test
    void nothingNearTheFitIsMoreLikely() {
        for (long seed = 1; seed <= 20; seed++) {
            UniformRandomProvider random = RateScenes.random(seed);
            int rows = 60;
            double[][] covariates = new double[rows][];
            double[] logExposure = new double[rows];
            double[] shares = new double[rows];
            int[] counts = new int[rows];
            for (int i = 0; i < rows; i++) {
                covariates[i] = new double[] {1, 2 * random.nextDouble()};
                shares[i] = seed % 2 == 0 ? 1 : 0.2 + random.nextDouble();
                logExposure[i] = random.nextDouble();
                double mean = Math.exp(logExposure[i] + 0.5 + 0.4 * covariates[i][1]);
                counts[i] = RateScenes.poisson(random, RateScenes.gamma(random, mean, 0.8 / shares[i]));
            }
            var fit = NegativeBinomialFit.of(CONSTANT_AND_X, covariates, logExposure, counts, shares);
            assertThat(fit.outcome()).as("seed " + seed).isEqualTo(Outcome.CONVERGED);
            double[] at = {fit.coefficients().get(0), fit.coefficients().get(1), fit.theta()};
            double best = logLikelihood(at, covariates, logExposure, counts, shares);
            assertThat(fit.logLikelihood()).as("seed " + seed).isCloseTo(best, within(1e-8));
            for (int parameter = 0; parameter < 3; parameter++) {
                for (double move : new double[] {-1e-3, 1e-3}) {
                    double[] near = at.clone();
                    near[parameter] += move * Math.max(1, Math.abs(near[parameter]));
                    assertThat(logLikelihood(near, covariates, logExposure, counts, shares))
                            .as("seed %d, parameter %d", seed, parameter)
                            .isLessThan(best);
                }
            }
        }
    }

    @Test
    void countsThatScatterLessThanPoissonComeToThePoissonLimit() {
        double[][] covariates = new double[40][];
        double[] logExposure = new double[40];
        int[] counts = new int[40];
        for (int i = 0; i < 40; i++) {
            covariates[i] = new double[] {1, i % 2};
            counts[i] = i % 2 == 0 ? 3 : 6;
        }
        var fit = NegativeBinomialFit.of(CONSTANT_AND_X, covariates, logExposure, counts);
        assertThat(fit.outcome()).isEqualTo(Outcome.POISSON_LIMIT);
        assertThat(fit.overdispersion()).isZero();
        assertThat(fit.theta()).isInfinite();
        assertThat(fit.coefficients().get(0)).isCloseTo(Math.log(3), within(1e-10));
        assertThat(fit.coefficients().get(1)).isCloseTo(Math.log(2), within(1e-10));
        assertThat(fit.logLikelihood()).isEqualTo(fit.poissonLogLikelihood());
        assertThat(fit.remark()).contains("do not scatter more");
    }

    /** The Poisson model's coefficients of R's glm are the limit's for the same data. */
    @Test
    void poissonStartIsThatOfR() {
        JsonNode poisson = Checks.json("eb/nb_spf400.json").at("/null_poisson/coef");
        List<Site> sites = RateScenes.spf400();
        double constant = poisson.get("(Intercept)").asDouble();
        double slope = poisson.get("log(A)").asDouble();
        double likelihood = 0;
        for (Site site : sites) {
            double mean = site.kilometreYears() * Math.exp(constant + slope * Math.log(site.aadt()));
            likelihood += site.incidents() * Math.log(mean) - mean - LogGamma.value(site.incidents() + 1.0);
        }
        assertThat(spf400(true).poissonLogLikelihood()).isCloseTo(likelihood, within(1e-8));
    }

    @Test
    void countsAllZeroHaveNoEstimatesAndSayWhy() {
        var fit = NegativeBinomialFit.of(CONSTANT, ones(9), new double[9], new int[9]);
        assertThat(fit.outcome()).isEqualTo(Outcome.NO_EVENTS);
        assertThat(fit.theta()).isNaN();
        assertThatThrownBy(fit::overdispersion).hasMessageContaining("zero");
    }

    @Test
    void tooFewCountsHaveNoEstimates() {
        var fit = NegativeBinomialFit.of(CONSTANT, ones(1), new double[1], new int[] {4});
        assertThat(fit.outcome()).isEqualTo(Outcome.TOO_FEW_COUNTS);
    }

    @Test
    void aColumnThatFollowsFromOthersIsNamed() {
        double[][] covariates = new double[30][];
        int[] counts = new int[30];
        for (int i = 0; i < 30; i++) {
            covariates[i] = new double[] {1, i % 2, 1 - i % 2};
            counts[i] = i % 7;
        }
        var fit = NegativeBinomialFit.of(List.of("constant", "odd", "even"), covariates, new double[30], counts);
        assertThat(fit.outcome()).isEqualTo(Outcome.DEPENDENT_COLUMNS);
        assertThat(fit.remark()).contains("'even'");
    }

    @Test
    void aLevelWithoutAnyEventRunsOffAndIsNamed() {
        double[][] covariates = new double[40][];
        int[] counts = new int[40];
        for (int i = 0; i < 40; i++) {
            covariates[i] = new double[] {1, i % 4 == 0 ? 1 : 0};
            counts[i] = i % 4 == 0 ? 0 : i % 9;
        }
        var fit = NegativeBinomialFit.of(CONSTANT_AND_X, covariates, new double[40], counts);
        assertThat(fit.outcome()).isEqualTo(Outcome.NOT_CONVERGED);
        assertThat(fit.remark()).contains("'x'");
        assertThat(fit.coefficients()).isEmpty();
    }

    /** Few events on many sites, as small networks have them: there are sound figures, or a reason why there are none. */
    @Test
    void sparseCountsGiveSoundFiguresOrAReason() {
        int converged = 0;
        for (long seed = 1; seed <= 200; seed++) {
            UniformRandomProvider random = RateScenes.random(seed);
            int rows = 20 + random.nextInt(60);
            double[][] covariates = new double[rows][];
            int[] counts = new int[rows];
            double spread = random.nextInt(3) * 2;
            for (int i = 0; i < rows; i++) {
                covariates[i] = new double[] {1, random.nextDouble(), random.nextInt(4) == 0 ? 1 : 0};
                counts[i] = RateScenes.poisson(random, RateScenes.gamma(random, 0.2, spread));
            }
            var fit = NegativeBinomialFit.of(List.of("constant", "x", "y"), covariates, new double[rows], counts);
            assertThat(fit.remark()).as("seed " + seed).isNotBlank();
            if (fit.outcome().hasEstimates()) {
                converged++;
                assertThat(fit.coefficients()).as("seed " + seed).allMatch(Double::isFinite);
                assertThat(fit.standardErrors()).as("seed " + seed).allMatch(error -> error > 0 && error < 1e3);
                assertThat(fit.logLikelihood())
                        .as("seed " + seed)
                        .isGreaterThanOrEqualTo(fit.poissonLogLikelihood() - 1e-9);
            }
        }
        assertThat(converged).isBetween(120, 199);
    }

    @Test
    void oneSiteWithAllEventsIsOverdispersedBeyondMeasureAndStillFitted() {
        int[] counts = new int[50];
        counts[17] = 500;
        var fit = NegativeBinomialFit.of(CONSTANT, ones(50), new double[50], counts);
        assertThat(fit.outcome()).isEqualTo(Outcome.CONVERGED);
        assertThat(fit.coefficients().get(0)).isCloseTo(Math.log(10), within(1e-8));
        assertThat(fit.overdispersion()).isGreaterThan(20);
    }

    @Test
    void orderOfTheSitesChangesNothing() {
        List<Site> sites = new ArrayList<>(RateScenes.spf400());
        NegativeBinomialFit one = fit(sites, true);
        Collections.reverse(sites);
        NegativeBinomialFit other = fit(sites, true);
        assertThat(other.coefficients().get(1)).isCloseTo(one.coefficients().get(1), within(1e-10));
        assertThat(other.theta()).isCloseTo(one.theta(), within(1e-9));
        assertThat(fit(sites, true)).isEqualTo(other);
    }

    @Test
    void moreExposureMovesTheConstantAlone() {
        List<Site> sites = RateScenes.spf400();
        List<Site> doubled = sites.stream()
                .map(site -> new Site(
                        site.id(), 2 * site.lengthMetres(), site.years(), site.aadt(), "x", site.incidents(), false))
                .toList();
        NegativeBinomialFit one = fit(sites, true);
        NegativeBinomialFit two = fit(doubled, true);
        assertThat(two.coefficients().get(0)).isCloseTo(one.coefficients().get(0) - Math.log(2), within(1e-8));
        assertThat(two.theta()).isCloseTo(one.theta(), within(1e-8));
    }

    /** Estimates of many made-up sets scatter about the truth as their standard errors say. */
    @Test
    void estimatesScatterAsTheirStandardErrorsSay() {
        int sets = 200;
        int inside = 0;
        double mean = 0;
        for (long seed = 1; seed <= sets; seed++) {
            List<Site> sites = RateScenes.sites(seed, 150, 0.5);
            NegativeBinomialFit fit = fit(sites, true);
            assertThat(fit.outcome().hasEstimates()).as("seed " + seed).isTrue();
            double error = fit.standardErrors().get(1);
            mean += fit.coefficients().get(1) / sets;
            inside += Math.abs(fit.coefficients().get(1) - 0.7)
                            < error * NormalDistribution.of(0, 1).inverseCumulativeProbability(0.975)
                    ? 1
                    : 0;
        }
        assertThat(mean).isCloseTo(0.7, within(0.03));
        assertThat(inside).isBetween(178, 199);
    }

    @Test
    void whatIsNotFiniteIsRefused() {
        double[][] covariates = {{1}, {Double.NaN}};
        assertThatThrownBy(() -> NegativeBinomialFit.of(CONSTANT, covariates, new double[2], new int[2]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("row 1");
        assertThatThrownBy(() -> NegativeBinomialFit.of(CONSTANT, ones(2), new double[2], new int[] {1, -1}))
                .hasMessageContaining("negative");
    }

    private static double[][] ones(int rows) {
        double[][] ones = new double[rows][];
        Arrays.setAll(ones, row -> new double[] {1});
        return ones;
    }

    private static NegativeBinomialFit spf400(boolean traffic) {
        return fit(RateScenes.spf400(), traffic);
    }

    private static NegativeBinomialFit fit(List<Site> sites, boolean traffic) {
        double[][] covariates = sites.stream()
                .map(site -> traffic ? new double[] {1, Math.log(site.aadt())} : new double[] {1})
                .toArray(double[][]::new);
        return NegativeBinomialFit.of(
                traffic ? List.of("constant", "log AADT") : CONSTANT,
                covariates,
                sites.stream()
                        .mapToDouble(site -> Math.log(site.kilometreYears()))
                        .toArray(),
                sites.stream().mapToInt(Site::incidents).toArray());
    }

    private static double logLikelihood(
            double[] at, double[][] covariates, double[] logExposure, int[] counts, double[] shares) {
        double sum = 0;
        for (int i = 0; i < counts.length; i++) {
            double theta = at[2] * shares[i];
            double mean = Math.exp(logExposure[i] + at[0] + at[1] * covariates[i][1]);
            sum += LogGamma.value(theta + counts[i])
                    - LogGamma.value(theta)
                    - LogGamma.value(counts[i] + 1.0)
                    + theta * Math.log(theta / (theta + mean))
                    + counts[i] * Math.log(mean / (theta + mean));
        }
        return sum;
    }
}
