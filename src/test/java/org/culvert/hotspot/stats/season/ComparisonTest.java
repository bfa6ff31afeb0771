package org.culvert.hotspot.stats.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.simple.RandomSource;
import org.assertj.core.data.Percentage;
import org.culvert.hotspot.stats.Checks;
import org.junit.jupiter.api.Test;

/** Between species, and against effort. */
class ComparisonTest {
    /** Source: two_species.json; the textbook's W by hand, and R's circular 0.4-95, which prints (N-1)/N of it. */
    @Test
    void uniformScoresAreThoseOfTheTextbook() {
        JsonNode expected = Checks.json("circular/two_species.json");
        Verdict verdict = WatsonWheeler.byChiSquare(List.of(CircularTest.species("A"), CircularTest.species("B")));
        assertThat(verdict.statistic()).isCloseTo(expected.get("W_by_hand").asDouble(), within(1e-9));
        JsonNode ofR = expected.get("watson_wheeler");
        assertThat(verdict.statistic() * 101 / 102).isCloseTo(ofR.get("W").asDouble(), within(1e-9));
        // The p of chi-square on 2 degrees of freedom at R's statistic, carried over to ours.
        assertThat(verdict.p())
                .isCloseTo(
                        ofR.get("p").asDouble() * Math.exp(-verdict.statistic() / 102 / 2),
                        Percentage.withPercentage(1e-6));
    }

    /** No source: properties. */
    @Test
    void tiesAreDecidedByNeitherOrderNorChance() {
        var random = RandomSource.XO_SHI_RO_256_PP.create(3L);
        for (int trial = 0; trial < 100; trial++) {
            double[][] days = new double[3][12];
            for (double[] one : days) {
                Arrays.setAll(one, i -> random.nextInt(12) * 30.0);
            }
            CircularSample a = CircularSample.ofDegrees(days[0]);
            CircularSample b = CircularSample.ofDegrees(days[1]);
            CircularSample c = CircularSample.ofDegrees(days[2]);
            double w = WatsonWheeler.byChiSquare(List.of(a, b, c)).statistic();
            assertThat(WatsonWheeler.byChiSquare(List.of(c, a, b)).statistic())
                    .as("trial %s", trial)
                    .isCloseTo(w, within(1e-10));
        }
        CircularSample same = CircularSample.ofDegrees(new double[] {0, 30, 60, 90, 120, 150, 180, 210, 240, 270});
        assertThat(WatsonWheeler.byPermutation(List.of(same, same), 199, 1).p()).isGreaterThan(0.9);
    }

    /** Seeded: tied days in small samples of one distribution are told apart in 5 % of cases (standard error 0.7 %). */
    @Test
    void permutationsHoldTheirLevelWithTies() {
        var random = RandomSource.XO_SHI_RO_256_PP.create(4L);
        int hits = 0;
        for (int trial = 0; trial < 1000; trial++) {
            double[] a = new double[7];
            double[] b = new double[6];
            Arrays.setAll(a, i -> random.nextInt(10) * 36.0);
            Arrays.setAll(b, i -> random.nextInt(10) * 36.0);
            Verdict verdict = WatsonWheeler.byPermutation(
                    List.of(CircularSample.ofDegrees(a), CircularSample.ofDegrees(b)), 99, trial);
            hits += verdict.p() <= 0.05 ? 1 : 0;
        }
        assertThat(hits).as("seed 4").isBetween(25, 75);
        assertThatThrownBy(() -> WatsonWheeler.byChiSquare(
                        List.of(CircularSample.ofDegrees(new double[9]), CircularSample.ofDegrees(new double[20]))))
                .hasMessageContaining("use permutations");
    }

    /** Source: monthly.json, R's chisq.test of equal months. */
    @Test
    void evenEffortGivesPearsonsChiSquare() {
        JsonNode expected = Checks.json("circular/monthly.json");
        double[] effort = new double[12];
        Arrays.fill(effort, 3);
        AgainstEffort result = AgainstEffort.test(months(expected), effort, 99, 1);
        assertThat(result.verdict().statistic()).isCloseTo(expected.get("chisq").asDouble(), within(1e-11));
        assertThat(result.verdict().p()).isCloseTo(expected.get("chisq_p").asDouble(), within(1e-14));
        assertThat(result.verdict().pBy()).contains("11 degrees");
    }

    private static int[] months(JsonNode monthly) {
        return Arrays.stream(Checks.numbers(monthly.get("monthly")))
                .mapToInt(count -> (int) count)
                .toArray();
    }

    /** No source: the same months, where effort was like the events. */
    @Test
    void seasonOfTheCallersIsNoSeasonOfTheAnimals() {
        int[] events = months(Checks.json("circular/monthly.json"));
        double[] effort =
                Arrays.stream(events).mapToDouble(count -> 10.0 * count + 1).toArray();
        assertThat(AgainstEffort.test(events, effort, 99, 1).verdict().p()).isGreaterThan(0.99);
    }

    /** No source: every one of the 3^4 ways in which 4 events fall in 3 months, counted out. */
    @Test
    void fewEventsGetTheExactChanceByDrawing() {
        double[] effort = {1, 2, 3};
        int[] seen = {3, 1, 0};
        AgainstEffort result = AgainstEffort.test(seen, effort, 99_999, 7);
        double exact = 0;
        for (int way = 0; way < 81; way++) {
            int[] counts = new int[3];
            double chance = 1;
            for (int event = 0, rest = way; event < 4; event++, rest /= 3) {
                counts[rest % 3]++;
                chance *= effort[rest % 3] / 6;
            }
            if (AgainstEffort.test(counts, effort, 1, 1).verdict().statistic()
                    >= result.verdict().statistic() - 1e-9) {
                exact += chance;
            }
        }
        assertThat(result.verdict().p()).isCloseTo(exact, within(0.002));
        assertThat(result.verdict().pBy()).contains("multinomial").contains("seed 7");
    }

    /** No source: unknown is not zero. */
    @Test
    void unknownEffortIsLeftOutAndCounted() {
        double[] effort = {1, Double.NaN, 1, 1};
        AgainstEffort result = AgainstEffort.test(new int[] {20, 7, 22, 18}, effort, 99, 1);
        assertThat(result.partsLeftOut()).isEqualTo(1);
        assertThat(result.eventsLeftOut()).isEqualTo(7);
        assertThat(result.expected().get(0)).isCloseTo(20, within(1e-12));
        assertThat(result.expected().get(1)).isNaN();
        assertThatThrownBy(() -> AgainstEffort.test(new int[] {20, 7}, new double[] {1, 0}, 99, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("NaN where it is unknown");
    }
}
