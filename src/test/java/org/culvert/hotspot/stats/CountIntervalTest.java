package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CountIntervalTest {
    /** Garwood's table of 1936, from memory. */
    @ParameterizedTest
    @CsvSource({"0, 0, 3.689", "1, 0.0253, 5.572", "5, 1.623, 11.668", "10, 4.795, 18.390"})
    void intervalsArePublishedOnes(int count, double low, double high) {
        assertThat(CountInterval.of(count, 0.95).low()).isCloseTo(low, within(5e-4));
        assertThat(CountInterval.of(count, 0.95).high()).isCloseTo(high, within(5e-4));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7, 40, 300})
    void eitherEndLeavesATailOfATwoAndAHalfPerCent(int count) {
        CountInterval interval = CountInterval.of(count, 0.95);
        assertThat(PoissonDistribution.of(interval.low()).survivalProbability(count - 1))
                .isCloseTo(0.025, within(1e-9));
        assertThat(PoissonDistribution.of(interval.high()).cumulativeProbability(count))
                .isCloseTo(0.025, within(1e-9));
    }
}
