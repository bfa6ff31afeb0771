package org.culvert.hotspot.stats.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.rng.simple.RandomSource;
import org.assertj.core.data.Percentage;
import org.culvert.hotspot.stats.Checks;
import org.junit.jupiter.api.Test;

class CircularTest {
    static CircularSample turtles() {
        return CircularSample.ofDegrees(
                Checks.numbers(Checks.json("circular/data.json").get("fisherB3")));
    }

    /** The samples of two_species.json have days on a circle of 365.25. */
    static CircularSample species(String name) {
        return CircularSample.ofRadians(Arrays.stream(
                        Checks.numbers(Checks.json("circular/two_species.json").get(name + "_day")))
                .map(day -> 2 * Math.PI * day / 365.25)
                .toArray());
    }

    /** Source: 76 turtles of Stephens (1969), Fisher (1993) B.3, and three made samples, all by R's circular 0.4-95. */
    @Test
    void summariesAreThoseOfThePublishedTurtlesAndOfR() {
        agrees(turtles(), Checks.json("circular/summary.json").get(0));
        for (JsonNode stats : Checks.json("circular/two_species.json").get("stats")) {
            agrees(species(stats.get("name").asText()), stats);
        }
    }

    private static void agrees(CircularSample sample, JsonNode expected) {
        CircularSummary summary = CircularSummary.of(sample);
        assertThat(summary.count()).isEqualTo(expected.get("n").asInt());
        assertThat(Math.toDegrees(summary.meanDirectionRadians()))
                .isCloseTo(expected.get("mean_dir_deg").asDouble(), within(1e-9));
        assertThat(summary.resultantLength()).isCloseTo(expected.get("Rbar").asDouble(), within(1e-11));
        assertThat(summary.circularStandardDeviationRadians())
                .isCloseTo(expected.get("circ_sd_rad").asDouble(), within(1e-10));
        // R prints Fisher's approximation of kappa; the summary has the maximum of the likelihood itself.
        double approximate = VonMises.approximateKappa(summary.resultantLength());
        assertThat(approximate).isCloseTo(expected.get("kappa_mle").asDouble(), within(1e-9));
        assertThat(VonMises.corrected(approximate, summary.count()))
                .isCloseTo(expected.get("kappa_bias_corrected").asDouble(), within(1e-9));
        assertThat(summary.kappa()).isCloseTo(approximate, Percentage.withPercentage(1));
        assertThat(VonMises.a1(summary.kappa())).isCloseTo(summary.resultantLength(), within(1e-12));
        assertThat(summary.secondMomentLength())
                .isCloseTo(expected.get("second_moment_R2").asDouble(), within(1e-11));
        assertThat(Math.toDegrees(summary.secondMomentDirectionRadians()))
                .isCloseTo(expected.get("second_moment_dir_deg").asDouble(), within(1e-8));
    }

    /** Source: A1(kappa) by R's Bessel functions. */
    @Test
    void ratioOfBesselFunctionsAndItsInverse() {
        for (CSVRecord row : Checks.csv("circular/A1.csv")) {
            double kappa = Checks.number(row, "kappa");
            assertThat(VonMises.a1(kappa)).as("A1(%s)", kappa).isCloseTo(Checks.number(row, "A1"), within(1e-14));
            assertThat(VonMises.kappa(VonMises.a1(kappa))).isCloseTo(kappa, within(1e-9 * Math.max(1, kappa)));
        }
        for (double kappa = 1e-3; kappa < 1e6; kappa *= 1.7) {
            assertThat(VonMises.kappa(VonMises.a1(kappa))).as("kappa %s", kappa).isCloseTo(kappa, within(1e-4 * kappa));
        }
        assertThat(VonMises.a1(9_999.99)).isCloseTo(VonMises.a1(10_000.01), within(1e-9));
        assertThat(VonMises.kappa(1)).isInfinite();
        assertThat(VonMises.kappa(0)).isZero();
    }

    /** Source: monthly.json, by R. */
    @Test
    void monthsAreCorrectedForTheirWidth() {
        JsonNode expected = Checks.json("circular/monthly.json");
        int[] counts = Arrays.stream(Checks.numbers(expected.get("monthly")))
                .mapToInt(count -> (int) count)
                .toArray();
        CircularSummary summary = CircularSummary.ofGroups(counts);
        assertThat(summary.count()).isEqualTo(119);
        assertThat(Math.toDegrees(summary.meanDirectionRadians()))
                .isCloseTo(expected.get("mean_deg").asDouble(), within(1e-9));
        assertThat(summary.resultantLength())
                .isCloseTo(expected.get("Rbar_corrected").asDouble(), within(1e-12));
        assertThat(CircularSummary.groupCorrection(Math.PI / 6, 1))
                .isCloseTo(expected.get("corr_factor").asDouble(), within(1e-12));
    }

    /** No source: the definition. */
    @Test
    void datesAreTheMiddlesOfDaysInTheLengthOfTheirOwnYear() {
        assertThat(CircularSample.directionOf(LocalDate.of(2024, 12, 31)))
                .isCloseTo(2 * Math.PI * 365.5 / 366, within(1e-14));
        assertThat(CircularSample.directionOf(LocalDate.of(2023, 1, 1))).isCloseTo(Math.PI / 365, within(1e-14));
        for (int year : new int[] {2023, 2024}) {
            LocalDate first = LocalDate.ofYearDay(year, 1);
            for (int day = 0; day < first.lengthOfYear(); day++) {
                LocalDate date = first.plusDays(day);
                assertThat(CircularSample.dateAt(CircularSample.directionOf(date), year))
                        .isEqualTo(date);
            }
        }
        CircularSummary newYear = CircularSummary.of(
                CircularSample.ofDates(List.of(LocalDate.of(2023, 12, 31), LocalDate.of(2024, 1, 1))));
        assertThat(Math.cos(newYear.meanDirectionRadians())).isGreaterThan(0.999999);
        assertThat(newYear.resultantLength()).isGreaterThan(0.999);
        assertThat(CircularSample.hourAt(
                        CircularSample.ofHours(new double[] {18.5}).ascending(0)))
                .isCloseTo(18.5, within(1e-12));
    }

    /** No source: properties. */
    @Test
    void turningTheCircleTurnsTheMeanAndNothingElse() {
        var random = RandomSource.XO_SHI_RO_256_PP.create(11L);
        for (int trial = 0; trial < 50; trial++) {
            double[] angles = new double[6 + random.nextInt(60)];
            Arrays.setAll(angles, i -> Math.PI + (random.nextDouble() - 0.5) * 5);
            double turn = random.nextDouble() * 20 - 10;
            CircularSample sample = CircularSample.ofRadians(angles);
            CircularSample turned = CircularSample.ofRadians(
                    Arrays.stream(angles).map(angle -> angle + turn).toArray());
            CircularSummary before = CircularSummary.of(sample);
            CircularSummary after = CircularSummary.of(turned);
            assertThat(after.resultantLength())
                    .as("trial %s", trial)
                    .isCloseTo(before.resultantLength(), within(1e-12));
            assertThat(Math.cos(after.meanDirectionRadians() - before.meanDirectionRadians() - turn))
                    .isCloseTo(1, within(1e-9));
            assertThat(Uniformity.rayleigh(turned).p())
                    .isCloseTo(Uniformity.rayleigh(sample).p(), within(1e-9));
            assertThat(Uniformity.kuiper(turned).statistic())
                    .isCloseTo(Uniformity.kuiper(sample).statistic(), within(1e-9));
            assertThat(Uniformity.watson(turned).statistic())
                    .isCloseTo(Uniformity.watson(sample).statistic(), within(1e-9));
            assertThat(Uniformity.raoSpacing(turned).statistic())
                    .isCloseTo(Uniformity.raoSpacing(sample).statistic(), within(1e-9));
        }
    }

    /** Seeded: the interval of the mean of 40 directions covers the true one in 95 % of 1,500 samples (standard error 0.6 %). */
    @Test
    void intervalOfTheMeanDirectionCoversIt() {
        var random = RandomSource.XO_SHI_RO_256_PP.create(14L);
        int covered = 0;
        for (int trial = 0; trial < 1500; trial++) {
            double[] angles = new double[40];
            Arrays.setAll(angles, i -> 6.2 + 2.2 * (random.nextDouble() + random.nextDouble() - 1));
            CircularSummary summary = CircularSummary.of(CircularSample.ofRadians(angles));
            double off = Math.IEEEremainder(summary.meanDirectionRadians() - 6.2, 2 * Math.PI);
            covered += Math.abs(off) <= summary.meanDirection95HalfWidthRadians() ? 1 : 0;
        }
        assertThat(covered / 1500.0).as("seed 14").isBetween(0.93, 0.97);
        assertThat(CircularSummary.of(CircularSample.ofDegrees(new double[] {1, 2, 3}))
                        .meanDirection95HalfWidthRadians())
                .isNaN();
        // R's standard error of the turtles is that of a von Mises distribution, which they are not: about as wide.
        assertThat(CircularSummary.of(turtles()).meanDirection95HalfWidthRadians() / 1.96)
                .isCloseTo(
                        Checks.json("circular/summary.json")
                                .get(0)
                                .get("se_mu_rad")
                                .asDouble(),
                        within(0.05));
    }

    @Test
    void whatIsNoDirectionIsRefused() {
        assertThatThrownBy(() -> CircularSample.ofRadians(new double[] {Double.NaN}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("finite");
        assertThatThrownBy(() -> CircularSample.ofHours(new double[] {24.5})).hasMessageContaining("between 0 and 24");
        assertThatThrownBy(() -> CircularSummary.of(CircularSample.ofRadians(new double[0])))
                .hasMessageContaining("at least one");
        assertThatThrownBy(() -> CircularSummary.ofGroups(new int[12])).hasMessageContaining("at least one");
    }
}
