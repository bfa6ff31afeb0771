package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.culvert.hotspot.stats.Checks;
import org.junit.jupiter.api.Test;

class CountTestsTest {
    /** R's ppois, both tails, so that one taken for the other shows. */
    @Test
    void tailIncludesTheCountItself() {
        List<CSVRecord> rows = Checks.csv("eb/poisson_tail.csv");
        assertThat(rows).hasSizeGreaterThan(100);
        for (CSVRecord row : rows) {
            double mean = Checks.number(row, "lambda");
            int count = Integer.parseInt(row.get("x"));
            double tail = Checks.number(row, "p_ge_x");
            double above = Checks.number(row, "p_gt_x");
            assertThat(CountTests.poissonTail(mean, count))
                    .as("%s %s", mean, count)
                    .isCloseTo(tail, within(1e-10 * tail));
            assertThat(CountTests.poissonTail(mean, count + 1))
                    .as("%s %s", mean, count)
                    .isCloseTo(above, within(1e-10 * above));
            assertThat(CountTests.poissonLowerTail(mean, count)).isCloseTo(1 - above, within(1e-12));
        }
    }

    /** By R's qpois: the smallest count with a tail below 5 %, which is one more than a careless reading gives. */
    @Test
    void thresholdsAreTheSmallestSurprisingCounts() {
        for (CSVRecord row : Checks.csv("eb/poisson_thresholds.csv")) {
            double mean = Checks.number(row, "lambda");
            int threshold = CountTests.poissonThreshold(mean, 0.05);
            assertThat(threshold).as("mean " + mean).isEqualTo(Integer.parseInt(row.get("min_x_with_P_ge_x_lt_0.05")));
            assertThat(CountTests.poissonTail(mean, threshold)).isLessThan(0.05);
            assertThat(CountTests.poissonTail(mean, threshold - 1)).isGreaterThanOrEqualTo(0.05);
        }
        assertThat(CountTests.poissonThreshold(0, 0.05)).isEqualTo(1);
        assertThat(CountTests.poissonThreshold(2000, 0.05)).isBetween(2070, 2080);
    }

    /** R's poisson.test on two counts. */
    @Test
    void comparisonOfTwoRatesIsThatOfR() {
        JsonNode checks = Checks.json("eb/poisson_rate_ratio.json");
        for (JsonNode check : checks) {
            var comparison = CountTests.compare(
                    check.at("/x/0").asInt(),
                    check.at("/t/0").asDouble(),
                    check.at("/x/1").asInt(),
                    check.at("/t/1").asDouble(),
                    0.95);
            assertThat(comparison.ratio()).isCloseTo(check.get("rr").asDouble(), within(1e-12));
            assertThat(comparison.interval().low()).isCloseTo(check.at("/ci/0").asDouble(), within(1e-9));
            assertThat(comparison.interval().high()).isCloseTo(check.at("/ci/1").asDouble(), within(1e-9));
            assertThat(comparison.p()).isCloseTo(check.get("p").asDouble(), within(1e-9));
        }
        assertThat(checks).hasSize(2);
    }

    @Test
    void endsOfTheRatiosIntervalLeaveTheirTails() {
        for (int first : new int[] {0, 1, 3, 12}) {
            for (int second : new int[] {0, 1, 5, 40}) {
                Interval interval =
                        CountTests.compare(first, 2, second, 7, 0.95).interval();
                if (first > 0) {
                    assertThat(split(interval.low(), first, second).survivalProbability(first - 1))
                            .isCloseTo(0.025, within(1e-10));
                }
                if (second > 0) {
                    assertThat(split(interval.high(), first, second).cumulativeProbability(first))
                            .isCloseTo(0.025, within(1e-10));
                } else {
                    assertThat(interval.high()).isInfinite();
                }
            }
        }
        assertThat(CountTests.compare(0, 1, 0, 1, 0.95).ratio()).isNaN();
        assertThat(CountTests.compare(0, 1, 0, 1, 0.95).p()).isEqualTo(1);
    }

    @Test
    void overdispersedTailSumsTheDistributionAndComesToThePoissonTail() {
        double mean = 2.4;
        double k = 0.7;
        double term = Math.pow(1 + k * mean, -1 / k);
        double below = 0;
        for (int count = 0; count < 30; count++) {
            assertThat(CountTests.negativeBinomialTail(mean, k, count)).isCloseTo(1 - below, within(1e-12));
            below += term;
            term *= (1 / k + count) / (count + 1) * (k * mean / (1 + k * mean));
        }
        assertThat(CountTests.negativeBinomialTail(mean, 1e-9, 6))
                .isCloseTo(CountTests.poissonTail(mean, 6), within(1e-7));
        assertThat(CountTests.negativeBinomialTail(mean, 0, 6)).isEqualTo(CountTests.poissonTail(mean, 6));
    }

    @Test
    void aShareOfAGivenNumberHasABinomialTail() {
        assertThat(CountTests.binomialTail(34, 1 / 24.0, 0)).isEqualTo(1);
        assertThat(CountTests.binomialTail(10, 0.1, 1)).isCloseTo(1 - Math.pow(0.9, 10), within(1e-12));
        assertThat(CountTests.binomialTail(10, 0.1, 10)).isCloseTo(1e-10, within(1e-20));
    }

    @Test
    void nonsenseIsRefused() {
        assertThatThrownBy(() -> CountTests.poissonTail(-1, 2)).hasMessageContaining("0 or more");
        assertThatThrownBy(() -> CountTests.poissonTail(1, -2)).hasMessageContaining("0 or more");
        assertThatThrownBy(() -> CountTests.compare(1, 0, 2, 1, 0.95)).hasMessageContaining("above 0");
    }

    private static BinomialDistribution split(double ratio, int first, int second) {
        return BinomialDistribution.of(first + second, ratio * 2 / (ratio * 2 + 7));
    }
}
