package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.hotspot.stats.Checks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EmpiricalBayesTest {
    /**
     * The two worked examples of Hauer, Harwood, Council and Griffith 2002, Transportation Research Record 1784: printed are
     * 4.71 +- 1.19 per kilometre and year from one year, 7.97 +- 1.44 a year and 4.43 per kilometre and year from three.
     */
    @Test
    void workedExamplesOfTheTutorialComeOut() {
        JsonNode checks = Checks.json("eb/hauer2002.json");
        for (String name : List.of("ex1", "ex2")) {
            JsonNode example = checks.get(name);
            double length = 1000 * example.get("L").asDouble();
            int years = example.get("Y").asInt();
            var estimate = EmpiricalBayes.of(
                    years * example.get("mu").asDouble() * length / 1000,
                    EmpiricalBayes.overdispersionFromPhi(example.get("phi").asDouble(), length),
                    example.get("K").asInt(),
                    0.95);
            assertThat(estimate.weight()).isCloseTo(example.get("w").asDouble(), within(1e-9));
            assertThat(estimate.estimate()).isCloseTo(example.get("est").asDouble(), within(1e-8));
            assertThat(estimate.standardError()).isCloseTo(example.get("se").asDouble(), within(1e-8));
            assertThat(estimate.perKilometreYear(length, years))
                    .isCloseTo(example.get("per_km_yr").asDouble(), within(1e-8));
            assertThat(EmpiricalBayes.perKilometreYear(estimate.standardError(), length, years))
                    .isCloseTo(example.get("se_per_km_yr").asDouble(), within(1e-8));
            assertThat(estimate.estimate() / years)
                    .isCloseTo(example.get("per_yr").asDouble(), within(1e-8));
        }
        double mu = 0.0224 * Math.pow(4000, 0.564);
        double k = EmpiricalBayes.overdispersionFromPhi(2.05, 1800);
        EmpiricalBayes one = EmpiricalBayes.of(1.8 * mu, k, 12, 0.95);
        EmpiricalBayes three = EmpiricalBayes.of(3 * 1.8 * mu, k, 27, 0.95);
        assertThat(one.perKilometreYear(1800, 1)).isCloseTo(4.71, within(0.005));
        assertThat(one.standardError() / 1.8).isCloseTo(1.19, within(0.005));
        assertThat(three.estimate() / 3).isCloseTo(7.97, within(0.005));
        assertThat(three.standardError() / 3).isCloseTo(1.44, within(0.005));
        assertThat(three.perKilometreYear(1800, 3)).isCloseTo(4.43, within(0.005));
    }

    /** 400 sites worked through in R from the fit of MASS: every column. */
    @Test
    void estimatesOfFourHundredSitesAreThoseOfR() {
        double k = Checks.json("eb/nb_spf400.json").get("k").asDouble();
        List<EmpiricalBayes.Named> named = new ArrayList<>();
        List<CSVRecord> rows = Checks.csv("eb/nb_spf400.csv");
        for (CSVRecord row : rows) {
            var estimate = EmpiricalBayes.of(Checks.number(row, "mu_hat"), k, Integer.parseInt(row.get("y")), 0.9);
            String id = row.get("id");
            assertThat(estimate.weight()).as(id).isCloseTo(Checks.number(row, "w"), within(1e-9));
            assertThat(estimate.estimate()).as(id).isCloseTo(Checks.number(row, "eb"), within(1e-8));
            assertThat(estimate.variance()).as(id).isCloseTo(Checks.number(row, "eb_var"), within(1e-8));
            assertThat(estimate.excess()).as(id).isCloseTo(Checks.number(row, "excess"), within(1e-8));
            assertThat(estimate.chanceAbove(2 * estimate.predicted()))
                    .as(id)
                    .isCloseTo(Checks.number(row, "p_gt_2mu"), within(1e-8));
            assertThat(estimate.posterior().low()).as(id).isCloseTo(Checks.number(row, "q05"), within(1e-8));
            assertThat(estimate.posterior().high()).as(id).isCloseTo(Checks.number(row, "q95"), within(1e-8));
            named.add(new EmpiricalBayes.Named(id, estimate));
        }
        for (EmpiricalBayes.Ranked ranked : EmpiricalBayes.rank(named)) {
            CSVRecord row = rows.get(Integer.parseInt(ranked.id()) - 1);
            assertThat(ranked.rank()).as(ranked.id()).isEqualTo(Integer.parseInt(row.get("rank_excess")));
        }
    }

    @ParameterizedTest
    @CsvSource({"1e-3, 3, 0.4", "0.5, 0, 1.2", "0.5, 40, 2.5", "2, 7, 9"})
    void posteriorIsAGammaDistributionWithTheEstimatesMoments(double k, int count, double mu) {
        var estimate = EmpiricalBayes.of(mu, k, count, 0.95);
        int steps = 4000;
        double previous = 1;
        double top = estimate.estimate() + 12 * estimate.standardError();
        double bottom = Math.max(0, estimate.estimate() - 12 * estimate.standardError());
        double sum = bottom;
        double squares = bottom * bottom;
        for (int i = 1; i <= steps; i++) {
            double from = bottom + (top - bottom) * (i - 1) / steps;
            double to = bottom + (top - bottom) * i / steps;
            double above = estimate.chanceAbove(to);
            double average = (previous + above) / 2;
            sum += average * (to - from);
            squares += average * (to * to - from * from);
            previous = above;
        }
        assertThat(sum).isCloseTo(estimate.estimate(), within(1e-4 * estimate.estimate()));
        assertThat(squares - sum * sum).isCloseTo(estimate.variance(), within(2e-3 * estimate.variance()));
        assertThat(estimate.chanceAbove(estimate.posterior().low())).isCloseTo(0.975, within(1e-9));
        assertThat(estimate.chanceAbove(estimate.posterior().high())).isCloseTo(0.025, within(1e-9));
        assertThat(estimate.chanceAbovePredicted()).isCloseTo(estimate.chanceAbove(mu), within(1e-12));
    }

    @Test
    void atThePoissonLimitNothingIsInExcess() {
        var estimate = EmpiricalBayes.of(3, 0, 11, 0.95);
        assertThat(estimate.estimate()).isEqualTo(3);
        assertThat(estimate.excess()).isZero();
        assertThat(estimate.chanceAbovePredicted()).isZero();
        assertThat(EmpiricalBayes.of(3, 1e-9, 11, 0.95).estimate()).isCloseTo(3, within(1e-6));
    }

    /** Picking the worst and looking again: the plain count promises a fall where nothing was done, the estimate does not. */
    @Test
    void worstSitesOfOnePeriodAreForecastWithoutBias() {
        long seed = 20261125;
        UniformRandomProvider random = RateScenes.random(seed);
        double counted = 0;
        double estimated = 0;
        double next = 0;
        for (int round = 0; round < 40; round++) {
            List<double[]> sites = new ArrayList<>();
            for (int i = 0; i < 400; i++) {
                double own = RateScenes.gamma(random, 1.5, 0.6);
                int count = RateScenes.poisson(random, own);
                double estimate = EmpiricalBayes.of(1.5, 0.6, count, 0.95).estimate();
                sites.add(new double[] {count, estimate, RateScenes.poisson(random, own)});
            }
            sites.sort((one, other) -> Double.compare(other[0], one[0]));
            for (double[] site : sites.subList(0, 20)) {
                counted += site[0];
                estimated += site[1];
                next += site[2];
            }
        }
        assertThat(next / counted).as("seed " + seed).isLessThan(0.8);
        assertThat(next / estimated).as("seed " + seed).isCloseTo(1, within(0.04));
    }

    @Test
    void yearsShareTheEstimateAsThePredictionDoes() {
        List<EmpiricalBayes.Year> years =
                EmpiricalBayes.byYear(List.of(2021, 2022, 2023), List.of(2.0, 2.5, 3.5), 0.4, 14);
        var whole = EmpiricalBayes.of(8, 0.4, 14, 0.95);
        assertThat(years.stream().mapToDouble(EmpiricalBayes.Year::estimate).sum())
                .isCloseTo(whole.estimate(), within(1e-12));
        assertThat(years.get(2).factor()).isCloseTo(1.75, within(1e-12));
        assertThat(years.get(2).estimate()).isCloseTo(1.75 * years.get(0).estimate(), within(1e-12));
        assertThat(Math.sqrt(years.get(1).variance()) / years.get(1).estimate())
                .isCloseTo(whole.coefficientOfVariation(), within(1e-12));
        EmpiricalBayes.Year then = whole.forecast(2024, 4);
        assertThat(then.estimate()).isCloseTo(whole.estimate() / 2, within(1e-12));
    }

    @Test
    void equalExcessesAreOrderedByNameWhateverTheOrderTheyComeIn() {
        List<EmpiricalBayes.Named> named = new ArrayList<>();
        for (String id : List.of("c", "a", "b")) {
            named.add(new EmpiricalBayes.Named(id, EmpiricalBayes.of(2, 0.5, 4, 0.95)));
        }
        named.add(new EmpiricalBayes.Named("z", EmpiricalBayes.of(2, 0.5, 6, 0.95)));
        List<EmpiricalBayes.Ranked> ranked = EmpiricalBayes.rank(named);
        assertThat(ranked).extracting(EmpiricalBayes.Ranked::id).containsExactly("z", "a", "b", "c");
        Collections.reverse(named);
        assertThat(EmpiricalBayes.rank(named)).isEqualTo(ranked);
    }

    /** Ten where 0.6 is expected: the excess is drawn in to 1.0, and yet there hardly can be none. */
    @Test
    void aQuietSiteFarFromItsLikeIsDrawnInAndItsChanceOfExcessSaysSo() {
        var estimate = EmpiricalBayes.of(0.6, 0.2, 10, 0.95);
        assertThat(estimate.excess()).isCloseTo((1 - 1 / 1.12) * 9.4, within(1e-12));
        assertThat(estimate.chanceAbovePredicted()).isGreaterThan(0.99);
    }

    @Test
    void aPredictionOfNoneIsRefused() {
        assertThatThrownBy(() -> EmpiricalBayes.of(0, 0.5, 1, 0.95)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> EmpiricalBayes.of(1, -0.5, 1, 0.95)).hasMessageContaining("0 or more");
        assertThatThrownBy(() -> EmpiricalBayes.of(1, 0.5, 1, 95)).hasMessageContaining("0.95");
    }
}
