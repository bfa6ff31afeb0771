package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.hotspot.stats.rate.WorksInputs.Renewal;
import org.culvert.hotspot.stats.rate.WorksInputs.UnitCost;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorksCaseTest {
    /** Present value of 1 a year, as in the tables of any textbook of engineering economics. */
    @ParameterizedTest
    @CsvSource({"0.04, 20, 13.5903", "0.07, 25, 11.6536", "0.10, 10, 6.1446", "0.03, 50, 25.7298", "0, 12, 12"})
    void annuitiesAreThoseOfTheTables(double rate, int years, double factor) {
        assertThat(WorksCase.annuity(rate, years)).isCloseTo(factor, within(5.1e-5));
    }

    @Test
    void equalYearlySumsComeToTheClosedForm() {
        for (double rate : new double[] {0.001, 0.035, 0.07, 0.15}) {
            for (int years : new int[] {1, 7, 30}) {
                WorksCase worked = WorksCase.of(inputs(Range.of(6), Range.of(0.5), Range.of(rate), years, List.of()));
                double annuity = (1 - Math.pow(1 + rate, -years)) / rate;
                assertThat(worked.benefits().best()).isCloseTo(6 * 0.5 * 25_000 * annuity, within(1e-6));
                assertThat(worked.costs().best()).isCloseTo(400_000 + 9_000 * annuity, within(1e-6));
                assertThat(worked.net().best())
                        .isCloseTo(worked.benefits().best() - worked.costs().best(), within(1e-6));
                assertThat(worked.ratio().best())
                        .isCloseTo(worked.benefits().best() / worked.costs().best(), within(1e-12));
                assertThat(worked.ratio().low()).isEqualTo(worked.ratio().high());
                assertThat(worked.sensitivities()).isEmpty();
            }
        }
    }

    /** A sum that grows by g a year: the closed form of a growing annuity. */
    @Test
    void collisionsThatGrowComeToTheClosedFormOfAGrowingAnnuity() {
        var inputs = new WorksInputs(
                "AUD",
                2026,
                Range.of(4),
                0.02,
                Range.of(0.8),
                costs(Range.of(10_000)),
                Range.of(1),
                Range.of(0),
                List.of(),
                Range.of(0.05),
                20);
        double closed = 4 * 0.8 * 10_000 * (1 - Math.pow(1.02 / 1.05, 20)) / (0.05 - 0.02);
        assertThat(WorksCase.of(inputs).benefits().best()).isCloseTo(closed, within(1e-6));
    }

    @Test
    void aRenewalIsDiscountedToItsYear() {
        var plain = WorksCase.of(inputs(Range.of(6), Range.of(0.5), Range.of(0.04), 30, List.of()));
        var renewed = WorksCase.of(
                inputs(Range.of(6), Range.of(0.5), Range.of(0.04), 30, List.of(new Renewal(15, Range.of(50_000)))));
        assertThat(renewed.costs().best() - plain.costs().best()).isCloseTo(50_000 / Math.pow(1.04, 15), within(1e-6));
    }

    @Test
    void atTheBreakEvenShareBenefitsEqualCosts() {
        var worked = WorksCase.of(inputs(Range.of(6), Range.of(0.5), Range.of(0.04), 25, List.of()));
        var even = WorksCase.of(inputs(Range.of(6), Range.of(worked.breakEvenShare()), Range.of(0.04), 25, List.of()));
        assertThat(even.ratio().best()).isCloseTo(1, within(1e-12));
    }

    /** No choice of figures within their ranges leads outside the range of an outcome, and the ends are reached. */
    @Test
    void rangesHoldWhateverIsChosenWithin() {
        long seed = 99;
        UniformRandomProvider random = RateScenes.random(seed);
        WorksInputs wide = wide();
        WorksCase worked = WorksCase.of(wide);
        double least = Double.MAX_VALUE;
        for (int round = 0; round < 300; round++) {
            WorksCase chosen = WorksCase.of(new WorksInputs(
                    "AUD",
                    2026,
                    chosen(wide.collisionsPerYear(), random),
                    wide.yearlyChange(),
                    chosen(wide.shareAvoided(), random),
                    costs(chosen(wide.unitCosts().get(0).perCollision(), random)),
                    chosen(wide.building(), random),
                    chosen(wide.upkeepPerYear(), random),
                    List.of(new Renewal(10, chosen(wide.renewals().get(0).cost(), random))),
                    chosen(wide.discountRate(), random),
                    wide.lifeYears()));
            assertThat(chosen.ratio().best())
                    .as("seed %d, round %d", seed, round)
                    .isBetween(worked.ratio().low(), worked.ratio().high());
            assertThat(chosen.net().best())
                    .isBetween(worked.net().low(), worked.net().high());
            assertThat(chosen.costs().best())
                    .isBetween(worked.costs().low(), worked.costs().high());
            least = Math.min(least, chosen.ratio().best());
        }
        assertThat(worked.ratio().low()).as("a share that may be below 0").isNegative();
        assertThat(least).isLessThan(worked.ratio().best());
        assertThat(worked.ratio().low())
                .isLessThan(worked.ratio().best())
                .isLessThan(worked.ratio().high());
    }

    @Test
    void oneFigureWithARangeMakesTheRangeOfTheRatio() {
        WorksCase rate = WorksCase.of(inputs(Range.of(6), Range.of(0.5), new Range(0.03, 0.05, 0.07), 25, List.of()));
        WorksCase low = WorksCase.of(inputs(Range.of(6), Range.of(0.5), Range.of(0.07), 25, List.of()));
        WorksCase high = WorksCase.of(inputs(Range.of(6), Range.of(0.5), Range.of(0.03), 25, List.of()));
        assertThat(rate.ratio().low()).isEqualTo(low.ratio().best());
        assertThat(rate.ratio().high()).isEqualTo(high.ratio().best());
        assertThat(rate.sensitivities())
                .containsExactly(new WorksCase.Sensitivity(
                        "discount rate", high.ratio().best(), low.ratio().best()));
    }

    @Test
    void sensitivitiesNameEachFigureThatHasARange() {
        WorksCase worked = WorksCase.of(wide());
        assertThat(worked.sensitivities())
                .extracting(WorksCase.Sensitivity::figure)
                .containsExactly(
                        "collisions a year",
                        "share avoided",
                        "damage and injury",
                        "building",
                        "upkeep a year",
                        "renewal in year 10",
                        "discount rate");
        WorksCase.Sensitivity building = worked.sensitivities().get(3);
        assertThat(building.atLow()).isGreaterThan(building.atHigh());
        WorksCase.Sensitivity collisions = worked.sensitivities().get(0);
        assertThat(collisions.atLow() / collisions.atHigh()).isCloseTo(3 / 9.0, within(1e-12));
    }

    @Test
    void nonsenseIsRefused() {
        assertThatThrownBy(() -> new Range(2, 1, 3)).hasMessageContaining("low by best to high");
        assertThatThrownBy(() -> inputs(Range.of(6), new Range(0.5, 0.8, 1.2), Range.of(0.04), 20, List.of()))
                .hasMessageContaining("at most 1");
        assertThatThrownBy(() -> inputs(Range.of(6), Range.of(0.5), Range.of(4), 20, List.of()))
                .hasMessageContaining("0.04");
        assertThatThrownBy(() ->
                        inputs(Range.of(6), Range.of(0.5), Range.of(0.04), 20, List.of(new Renewal(21, Range.of(5)))))
                .hasMessageContaining("years 1 to 20");
    }

    private static WorksInputs wide() {
        return new WorksInputs(
                "AUD",
                2026,
                new Range(3, 6, 9),
                0.01,
                new Range(-0.1, 0.53, 0.94),
                costs(new Range(8_000, 20_000, 60_000)),
                new Range(200_000, 300_000, 700_000),
                new Range(1_000, 4_000, 9_000),
                List.of(new Renewal(10, new Range(0, 20_000, 50_000))),
                new Range(0.03, 0.05, 0.07),
                20);
    }

    private static Range chosen(Range range, UniformRandomProvider random) {
        return Range.of(range.low() + (range.high() - range.low()) * random.nextDouble());
    }

    private static List<UnitCost> costs(Range perCollision) {
        return List.of(new UnitCost("damage and injury", perCollision, "made up for this test"));
    }

    private static WorksInputs inputs(Range collisions, Range share, Range rate, int years, List<Renewal> renewals) {
        return new WorksInputs(
                "AUD",
                2026,
                collisions,
                0,
                share,
                costs(Range.of(25_000)),
                Range.of(400_000),
                Range.of(9_000),
                renewals,
                rate,
                years);
    }
}
