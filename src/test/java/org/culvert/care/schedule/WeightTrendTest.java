package org.culvert.care.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class WeightTrendTest {
    private static final Instant MORNING = Instant.parse("2025-03-01T08:00:00Z");

    private static Weighing after(double days, double grams) {
        return new Weighing(MORNING.plusSeconds(Math.round(days * 86_400)), grams);
    }

    /**
     * The worked example of P. K. Sen, J. Am. Stat. Assoc. 63 (1968), doi:10.1080/01621459.1968.10480934: slope 4, interval from
     * 3.71 to 4.38 at 93 %, as SciPy's test of theilslopes quotes it; the line through the median of what is left over meets 0
     * at 6 there.
     */
    @Test
    void sensOwnExample() {
        double[] at = {1, 2, 3, 4, 10, 12, 18};
        double[] grams = {9, 15, 19, 20, 45, 55, 78};

        WeightTrend trend = WeightTrend.of(at, grams, 0.93);

        assertThat(trend.gramsPerDay()).isEqualTo(4);
        assertThat(trend.lowGramsPerDay()).isCloseTo(3.71, within(0.005));
        assertThat(trend.highGramsPerDay()).isCloseTo(4.38, within(0.005));
        assertThat(trend.firstFittedGrams()).isEqualTo(6 + 4 * 1);
    }

    /** Of the 5040 orders in which seven weighings can fall by chance alone, the 95 % interval holds 0 in at least 95 %. */
    @Test
    void theIntervalHoldsWhatItPromises() {
        List<List<Integer>> orders = new ArrayList<>();
        permute(new ArrayList<>(List.of(0, 1, 2, 3, 4, 5, 6)), 0, orders);
        double[] at = {0, 1, 2, 3, 4, 5, 6};

        long holding = orders.stream()
                .map(order -> WeightTrend.of(
                        at, order.stream().mapToDouble(Integer::doubleValue).toArray(), 0.95))
                .filter(trend -> trend.lowGramsPerDay() <= 0 && trend.highGramsPerDay() >= 0)
                .count();

        assertThat(orders).hasSize(5040);
        assertThat(holding / 5040.0).isBetween(0.95, 0.985);
    }

    private static void permute(List<Integer> values, int from, List<List<Integer>> into) {
        if (from == values.size()) {
            into.add(List.copyOf(values));
        }
        for (int i = from; i < values.size(); i++) {
            Collections.swap(values, from, i);
            permute(values, from + 1, into);
            Collections.swap(values, from, i);
        }
    }

    /** The median by its definition: as many slopes above as below. */
    @Test
    void asManySlopesLieAboveAsBelow() {
        long seed = 20261129;
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        for (int i = 0; i < 500; i++) {
            int n = 3 + random.nextInt(10);
            double[] at = new double[n];
            double[] grams = new double[n];
            for (int j = 0; j < n; j++) {
                at[j] = random.nextInt(8) + (j == 0 ? 10 : 0);
                grams[j] = Math.round(random.nextDouble(300, 600));
            }
            double slope = WeightTrend.of(at, grams, 0.95).gramsPerDay();
            int above = 0;
            int below = 0;
            for (int a = 0; a < n; a++) {
                for (int b = 0; b < n; b++) {
                    if (at[a] < at[b]) {
                        double run = at[b] - at[a];
                        double rise = grams[b] - grams[a] - slope * run;
                        above += rise > 1e-9 * run ? 1 : 0;
                        below += rise < -1e-9 * run ? 1 : 0;
                    }
                }
            }
            int level = pairs(at) - above - below;
            assertThat(Math.abs(above - below)).as("seed %d case %d", seed, i).isLessThanOrEqualTo(level);
        }
    }

    private static int pairs(double[] at) {
        int pairs = 0;
        for (int a = 0; a < at.length; a++) {
            for (int b = a + 1; b < at.length; b++) {
                pairs += at[a] != at[b] ? 1 : 0;
            }
        }
        return pairs;
    }

    @Test
    void oneSlipOfTheScalesDoesNotMoveIt() {
        List<Weighing> weighings = List.of(after(0, 500), after(1, 502), after(2, 50), after(3, 506), after(4, 508));

        WeightTrend trend = WeightTrend.of(weighings, ZoneOffset.UTC, 0.95).orElseThrow();

        assertThat(trend.gramsPerDay()).isCloseTo(2, within(1e-9));
        assertThat(trend.fallsFasterThan(1)).isFalse();
    }

    @Test
    void threeEntriesOnThreeLocalDaysAreTheFewest() {
        ZoneId sydney = ZoneId.of("Australia/Sydney");
        assertThat(WeightTrend.of(List.of(after(0, 500), after(7, 300)), sydney, 0.95))
                .isEmpty();
        assertThat(WeightTrend.of(List.of(after(0, 500), after(0.1, 400), after(7, 300)), sydney, 0.95))
                .isEmpty();
        assertThat(WeightTrend.of(List.of(after(0, 500), after(1, 500), after(2, 500)), sydney, 0.95))
                .isPresent();
        // 08:00 and 14:00 in UTC are one day there and two in Sydney
        List<Weighing> night = List.of(after(0, 500), after(0.25, 400), after(2, 300));
        assertThat(WeightTrend.of(night, ZoneOffset.UTC, 0.95)).isEmpty();
        assertThat(WeightTrend.of(night, sydney, 0.95)).isPresent();
    }

    @Test
    void aFallIsCountedInPerCentOfTheFirstFittedWeight() {
        WeightTrend trend = WeightTrend.of(List.of(after(0, 500), after(7, 475), after(14, 450)), ZoneOffset.UTC, 0.95)
                .orElseThrow();

        assertThat(trend.firstFittedGrams()).isCloseTo(500, within(1e-9));
        assertThat(trend.percentPerWeek()).isCloseTo(-5, within(1e-9));
        assertThat(trend.lowGramsPerDay())
                .as("three weighings bear no interval of 95 %")
                .isNull();
        assertThat(trend.fallsFasterThan(4.9)).isTrue();
        assertThat(trend.fallsFasterThan(5.1)).isFalse();
    }
}
