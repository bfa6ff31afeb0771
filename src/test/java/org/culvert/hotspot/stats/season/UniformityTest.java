package org.culvert.hotspot.stats.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.function.Function;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.assertj.core.data.Percentage;
import org.culvert.hotspot.stats.Checks;
import org.junit.jupiter.api.Test;

class UniformityTest {
    /** Source: 76 turtles of Stephens (1969), Fisher (1993) B.3, and three made samples, all by R's circular 0.4-95. */
    @Test
    void statisticsAreThoseOfR() {
        agrees(CircularTest.turtles(), Checks.json("circular/summary.json").get(0));
        for (JsonNode stats : Checks.json("circular/two_species.json").get("stats")) {
            agrees(CircularTest.species(stats.get("name").asText()), stats);
        }
    }

    private static void agrees(CircularSample sample, JsonNode expected) {
        Verdict rayleigh = Uniformity.rayleigh(sample);
        assertThat(rayleigh.statistic())
                .isCloseTo(expected.get("rayleigh_z_nR2").asDouble(), within(1e-10));
        if (sample.count() < 50) {
            // R leaves the series out for 50 and more, and uses it beyond where it holds.
            if (rayleigh.pBy().startsWith("series")) {
                assertThat(rayleigh.p()).isCloseTo(expected.get("rayleigh_p").asDouble(), within(1e-10));
            }
        } else {
            assertThat(Math.exp(-rayleigh.statistic()))
                    .isCloseTo(expected.get("rayleigh_p").asDouble(), Percentage.withPercentage(1e-6));
        }
        assertThat(Uniformity.kuiper(sample).statistic())
                .isCloseTo(expected.get("kuiper_V").asDouble(), within(1e-10));
        assertThat(Uniformity.watson(sample).statistic())
                .isCloseTo(expected.get("watson_U2").asDouble(), within(1e-10));
        assertThat(Uniformity.raoSpacing(sample).statistic())
                .isCloseTo(expected.get("rao_spacing_U_deg").asDouble(), within(1e-9));
    }

    /** The sample without a season is small enough for the series in R as well: one p from outside to the last digit. */
    @Test
    void seriesOfRayleighIsThatOfR() {
        Verdict none = Uniformity.rayleigh(CircularTest.species("U"));
        assertThat(none.p()).isCloseTo(0.496422616443, within(1e-11));
        assertThat(none.pBy()).startsWith("series");
    }

    /**
     * Source: P(nR >= x) of a random walk of n unit steps, {@code 1 - x * integral of J1(x t) J0(t)^n dt} (Kluyver 1905), by
     * numerical integration in Python with SciPy 1.17.
     */
    @Test
    void rayleighIsCloseToTheExactDistribution() {
        double[][] exact = {
            {8, 2, 0.1353},
            {8, 4.5, 0.006714},
            {10, 3, 0.04564},
            {10, 6, 0.0009907},
            {20, 4.5, 0.009477},
            {20, 9, 4.259e-05},
            {50, 12, 3.073e-06},
            {76, 9, 9.89e-05}
        };
        for (double[] row : exact) {
            int n = (int) row[0];
            double length = Math.sqrt(row[1] / n);
            // Half the directions on each side of the mean, so that the mean vector has the length wanted.
            double side = Math.acos(length);
            double[] angles = new double[n];
            Arrays.setAll(angles, i -> i % 2 == 0 ? side : -side);
            Verdict verdict = Uniformity.rayleigh(CircularSample.ofRadians(angles));
            assertThat(verdict.statistic()).isCloseTo(row[1], within(1e-9));
            assertThat(verdict.p()).as("n %s z %s", n, row[1]).isCloseTo(row[2], Percentage.withPercentage(10));
        }
    }

    /**
     * Source: upper 5 % and 1 % points of the modified statistics in Stephens (1970): Kuiper 1.747 and 2.001, Watson 0.187 and
     * 0.267 (from memory).
     */
    @Test
    void asymptoticSeriesMeetStephensPercentagePoints() {
        assertThat(pOfKuiper(1.747)).isCloseTo(0.05, within(0.0005));
        assertThat(pOfKuiper(2.001)).isCloseTo(0.01, within(0.0002));
        assertThat(pOfWatson(0.187)).isCloseTo(0.05, within(0.0005));
        assertThat(pOfWatson(0.267)).isCloseTo(0.01, within(0.0005));
    }

    /** p as a function of the statistic, read off a sample that is made to have it. */
    private static double pOfKuiper(double statistic) {
        return pAt(statistic, Uniformity::kuiper);
    }

    private static double pOfWatson(double statistic) {
        return pAt(statistic, Uniformity::watson);
    }

    private static double pAt(double statistic, Function<CircularSample, Verdict> test) {
        // An even circle, pressed together little by little until the statistic is reached.
        double loose = 0;
        double tight = 0.999;
        for (int i = 0; i < 100; i++) {
            double press = (loose + tight) / 2;
            if (test.apply(pressed(press)).statistic() < statistic) {
                loose = press;
            } else {
                tight = press;
            }
        }
        Verdict verdict = test.apply(pressed(tight));
        assertThat(verdict.statistic()).isCloseTo(statistic, within(1e-6));
        return verdict.p();
    }

    private static CircularSample pressed(double press) {
        double[] angles = new double[400];
        Arrays.setAll(angles, i -> {
            double u = (i + 0.5) / 400 * 2 * Math.PI;
            return u + press * Math.sin(u);
        });
        return CircularSample.ofRadians(angles);
    }

    /** No source: a closed form for 3 arcs, the exact mean and variance, and random arcs. */
    @Test
    void distributionOfRaosSpacingIsExact() {
        for (int n : new int[] {4, 5, 10, 37, 100}) {
            assertThat(RaoSpacing.chanceOfMore(1e-9, n)).as("n %s", n).isCloseTo(1, within(1e-6));
            double mean = 0;
            double square = 0;
            int steps = 1500;
            for (int i = 0; i < steps; i++) {
                double s = (i + 0.5) / steps * (1 - 1.0 / n);
                double mass = RaoSpacing.density(s, n) / steps * (1 - 1.0 / n);
                mean += s * mass;
                square += s * s * mass;
            }
            assertThat(mean).as("n %s", n).isCloseTo(RaoSpacing.mean(n), within(1e-4));
            assertThat(square - mean * mean).as("n %s", n).isCloseTo(RaoSpacing.variance(n), within(1e-4));
        }
        var random = RandomSource.XO_SHI_RO_256_PP.create(5L);
        for (int n : new int[] {6, 30, 150}) {
            int more = 0;
            double at = RaoSpacing.mean(n) + 1.3 * Math.sqrt(RaoSpacing.variance(n));
            for (int trial = 0; trial < 20_000; trial++) {
                if (RaoSpacing.excess(uniform(random, n)) > at) {
                    more++;
                }
            }
            assertThat(more / 20_000.0)
                    .as("n %s, seed 5", n)
                    .isCloseTo(RaoSpacing.chanceOfMore(at, n), within(n > RaoSpacing.EXACT_TO ? 0.015 : 0.009));
        }
    }

    /**
     * Source: critical values at 5 % and 1 % in Russell and Levitin (1995), An expanded table of probability values for Rao's
     * spacing test (from memory; simulated there, so to 0.2 degrees).
     */
    @Test
    void criticalValuesOfRaosSpacingAreThosePublished() {
        double[][] published = {{4, 186.5, 221.0}, {5, 183.4, 212.0}, {6, 180.65, 206.8}};
        for (double[] row : published) {
            int n = (int) row[0];
            assertThat(RaoSpacing.chanceOfMore((row[1] - 0.2) / 360, n)).isGreaterThan(0.05);
            assertThat(RaoSpacing.chanceOfMore((row[1] + 0.2) / 360, n)).isLessThan(0.05);
            assertThat(RaoSpacing.chanceOfMore((row[2] - 0.2) / 360, n)).isGreaterThan(0.01);
            assertThat(RaoSpacing.chanceOfMore((row[2] + 0.2) / 360, n)).isLessThan(0.01);
        }
        assertThat(RaoSpacing.chanceOfMore(171.98 / 360, 10)).isCloseTo(0.05, within(0.0005));
    }

    /** Seeded: of 2,000 samples without a season, 5 % are called one (standard error 0.5 %). */
    @Test
    void nothingIsFoundMoreOftenThanItShould() {
        var random = RandomSource.XO_SHI_RO_256_PP.create(6L);
        for (int n : new int[] {8, 40}) {
            int[] hits = new int[4];
            for (int trial = 0; trial < 2000; trial++) {
                CircularSample sample = uniform(random, n);
                hits[0] += Uniformity.rayleigh(sample).p() <= 0.05 ? 1 : 0;
                hits[1] += Uniformity.kuiper(sample).p() <= 0.05 ? 1 : 0;
                hits[2] += Uniformity.watson(sample).p() <= 0.05 ? 1 : 0;
                hits[3] += Uniformity.raoSpacing(sample).p() <= 0.05 ? 1 : 0;
            }
            for (int hit : hits) {
                assertThat(hit / 2000.0)
                        .as("n %s, seed 6: %s", n, Arrays.toString(hits))
                        .isBetween(0.03, 0.07);
            }
        }
    }

    /** No source: spring and autumn alike. */
    @Test
    void rayleighIsBlindToTwoOppositePeaksAndTheOthersAreNot() {
        double[] angles = new double[60];
        Arrays.setAll(angles, i -> (i % 2) * Math.PI + 0.01 * (i - 30));
        CircularSample sample = CircularSample.ofRadians(angles);
        assertThat(Uniformity.rayleigh(sample).p()).isGreaterThan(0.5);
        assertThat(Uniformity.rayleigh(sample.doubled()).p()).isLessThan(1e-6);
        assertThat(Uniformity.watson(sample).p()).isLessThan(0.01);
        assertThat(Uniformity.kuiper(sample).p()).isLessThan(0.01);
        assertThat(Uniformity.raoSpacing(sample).p()).isLessThan(0.01);
    }

    @Test
    void tooFewAreRefused() {
        assertThatThrownBy(() -> Uniformity.rayleigh(CircularSample.ofDegrees(new double[] {1, 2, 3, 4})))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("at least 5 directions, there are 4");
    }

    static CircularSample uniform(UniformRandomProvider random, int n) {
        double[] angles = new double[n];
        Arrays.setAll(angles, i -> random.nextDouble() * 2 * Math.PI);
        return CircularSample.ofRadians(angles);
    }
}
