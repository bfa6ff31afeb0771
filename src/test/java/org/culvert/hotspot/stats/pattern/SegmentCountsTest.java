package org.culvert.hotspot.stats.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.culvert.hotspot.stats.Checks;
import org.culvert.hotspot.stats.pattern.SegmentCounts.Exposure;
import org.culvert.hotspot.stats.pattern.SegmentCounts.Segment;
import org.junit.jupiter.api.Test;

class SegmentCountsTest {
    private static final double[] ROAD = {20_000};

    /** Events in the middles of 40 segments of 500 m. */
    private static double[] chain() {
        List<Double> metres = new ArrayList<>();
        List<CSVRecord> rows = Checks.csv("gistar/road_chain40.csv");
        for (int i = 0; i < 40; i++) {
            for (int k = 0; k < Checks.number(rows.get(i), "count"); k++) {
                metres.add(500.0 * i + 240 + k);
            }
        }
        return metres.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Source: road_chain40.csv, Poisson tails of R. */
    @Test
    void poissonTailsAreThoseOfR() {
        double[] metres = chain();
        List<CSVRecord> rows = Checks.csv("gistar/road_chain40.csv");
        double expected = metres.length / 40.0;
        var tail = new CountTail(CountTail.Kind.POISSON, metres.length, 0);
        SegmentCounts.Grid grid = SegmentCounts.count(
                        ROAD, new int[metres.length], metres, 500, Exposure.length(), CountTail.Kind.POISSON)
                .whole();
        assertThat(grid.segments()).hasSize(40);
        for (int i = 0; i < 40; i++) {
            Segment segment = grid.segments().get(i);
            assertThat(segment.count()).isEqualTo((int) Checks.number(rows.get(i), "count"));
            assertThat(segment.expected()).isCloseTo(expected, within(1e-12));
            assertThat(tail.chance(segment.count(), expected))
                    .isCloseTo(Checks.number(rows.get(i), "ppois_upper"), within(1e-12));
        }
    }

    /** Source: road_chain40.csv, spdep 1.2-7 for R, neighbours two to each side. */
    @Test
    void segmentsOfAGridHaveGetisAndOrdsStatistic() {
        double[] metres = chain();
        SegmentCounts.Grid grid = SegmentCounts.count(
                        ROAD, new int[metres.length], metres, 500, Exposure.length(), CountTail.Kind.POISSON)
                .whole();
        double[] counts = grid.segments().stream().mapToDouble(Segment::count).toArray();
        double[] star = new LocalG(counts, grid.neighbours(2)).giStar();
        List<CSVRecord> rows = Checks.csv("gistar/road_chain40.csv");
        for (int i = 0; i < 40; i++) {
            assertThat(star[i]).isCloseTo(Checks.number(rows.get(i), "GiStar"), within(1e-9));
        }
        SegmentCounts.Grid twoLines = SegmentCounts.count(
                        new double[] {1000, 1500},
                        new int[] {0},
                        new double[] {1},
                        500,
                        Exposure.length(),
                        CountTail.Kind.POISSON)
                .whole();
        assertThat(twoLines.neighbours(2)).isDeepEqualTo(new int[][] {{1}, {0}, {3, 4}, {2, 4}, {2, 3}});
    }

    /** Source: hotspots of a Poisson test, the smallest counts with P(X >= x) < 0.05, computed in R. */
    @Test
    void asManyOrMoreIsNotMore() {
        double[] lambda = {.25, .5, .8, 1, 1.5, 2, 3, 5};
        int[] least = {2, 3, 3, 4, 5, 6, 7, 10};
        var tail = new CountTail(CountTail.Kind.POISSON, 0, 0);
        for (int i = 0; i < least.length; i++) {
            assertThat(tail.chance(least[i], lambda[i])).isLessThan(0.05);
            assertThat(tail.chance(least[i] - 1, lambda[i])).isGreaterThanOrEqualTo(0.05);
        }
        assertThat(tail.chance(0, 1)).isEqualTo(1);
    }

    /** No source: sums of the probabilities. */
    @Test
    void tailsOfBinomialAndNegativeBinomialAreSums() {
        var binomial = new CountTail(CountTail.Kind.BINOMIAL, 12, 0);
        double sum = 0;
        for (int x = 4; x <= 12; x++) {
            sum += choose(12, x) * Math.pow(0.2, x) * Math.pow(0.8, 12 - x);
        }
        assertThat(binomial.chance(4, 12 * 0.2)).isCloseTo(sum, within(1e-12));
        // Two failures before success: shape 2 is the sum of two geometric counts, (x + 1) q^x p^2.
        double mean = 3;
        double q = mean / (mean + 2);
        double upper = 1;
        for (int x = 0; x < 5; x++) {
            upper -= (x + 1) * Math.pow(q, x) * (1 - q) * (1 - q);
        }
        assertThat(new CountTail(CountTail.Kind.NEGATIVE_BINOMIAL, 0, 0.5).chance(5, mean))
                .isCloseTo(upper, within(1e-12));
        assertThat(new CountTail(CountTail.Kind.NEGATIVE_BINOMIAL, 0, 1e-9).chance(5, mean))
                .isCloseTo(PoissonDistribution.of(mean).survivalProbability(4), within(1e-6));
    }

    private static double choose(int n, int k) {
        double result = 1;
        for (int i = 1; i <= k; i++) {
            result = result * (n - k + i) / i;
        }
        return result;
    }

    /** No source: seeded draws of a known dispersion, and the level of the test without one (standard error 1 %). */
    @Test
    void dispersionIsFoundAndItsTestHoldsItsLevel() {
        var random = Placed.random(17);
        int[] counts = new int[4000];
        double[] expected = new double[4000];
        Arrays.setAll(expected, i -> 0.5 + i % 5);
        int hits = 0;
        for (int i = 0; i < counts.length; i++) {
            // k = 0.5 is shape 2: a gamma of shape 2 is a sum of two exponential draws.
            double gamma = -Math.log(1 - random.nextDouble()) - Math.log(1 - random.nextDouble());
            counts[i] = poisson(expected[i] * gamma / 2, random);
        }
        assertThat(CountTail.dispersion(counts, expected)).as("seed 17").isCloseTo(0.5, within(0.06));
        assertThat(CountTail.overdispersionP(counts, expected)).isLessThan(1e-10);
        for (int trial = 0; trial < 500; trial++) {
            int[] even = new int[80];
            double[] mean = new double[80];
            Arrays.setAll(mean, i -> 0.5 + i % 4);
            Arrays.setAll(even, i -> poisson(mean[i], random));
            hits += CountTail.overdispersionP(even, mean) <= 0.05 ? 1 : 0;
        }
        assertThat(hits).as("seed 17").isBetween(8, 42);
    }

    private static int poisson(double mean, UniformRandomProvider random) {
        int count = 0;
        double product = random.nextDouble();
        while (product > Math.exp(-mean)) {
            product *= random.nextDouble();
            count++;
        }
        return count;
    }

    /** No source: worked by hand. */
    @Test
    void exposureDecidesAndBothCuttingsAreShown() {
        double[] lines = {1000, 700};
        int[] line = {0, 0, 0, 0, 0, 0, 1, 1};
        double[] metres = {240, 242, 245, 255, 258, 260, 100, 700};
        Exposure busyFirstLine = (on, from, to) -> (to - from) * (on == 0 ? 9 : 1);
        SegmentCounts.Result result =
                SegmentCounts.count(lines, line, metres, 500, busyFirstLine, CountTail.Kind.BINOMIAL);
        assertThat(result.whole().segments())
                .extracting(Segment::fromMetres, Segment::toMetres, Segment::count)
                .containsExactly(
                        tuple(0.0, 500.0, 6), tuple(500.0, 1000.0, 0), tuple(0.0, 500.0, 1), tuple(500.0, 700.0, 1));
        assertThat(result.shifted().segments())
                .extracting(Segment::fromMetres, Segment::toMetres, Segment::count)
                .containsExactly(
                        tuple(0.0, 250.0, 3),
                        tuple(250.0, 750.0, 3),
                        tuple(750.0, 1000.0, 0),
                        tuple(0.0, 250.0, 1),
                        tuple(250.0, 700.0, 1));
        assertThat(result.whole().segments().get(0).expected()).isCloseTo(8 * 4500 / 9700.0, within(1e-12));
        assertThat(result.whole().offsetMetres()).isZero();
        assertThat(result.shifted().offsetMetres()).isEqualTo(250);
    }

    /** No source: ten at one place on a long road, and one in each of the others. */
    @Test
    void whatBothCuttingsFindIsNamed() {
        double[] metres = new double[50];
        for (int i = 0; i < 40; i++) {
            metres[i] = 500 * i + 10;
        }
        for (int i = 40; i < 50; i++) {
            metres[i] = 7_600 + i;
        }
        SegmentCounts.Result result =
                SegmentCounts.count(ROAD, new int[50], metres, 500, Exposure.length(), CountTail.Kind.POISSON);
        assertThat(result.whole().tail().kind()).isEqualTo(CountTail.Kind.NEGATIVE_BINOMIAL);
        assertThat(result.whole().overdispersionP()).isLessThan(0.05);
        assertThat(result.inBoth(0.05)).containsExactly(new Persistence.Interval(0, 7500, 7750));
    }

    @Test
    void unknownExposureIsLeftOutAndNoExposureWithEventsIsRefused() {
        double[] metres = {100, 600, 650, 1200};
        Exposure unknownSecond = (on, from, to) -> from == 500 ? Double.NaN : to - from;
        SegmentCounts.Grid grid = SegmentCounts.count(
                        new double[] {2000}, new int[4], metres, 500, unknownSecond, CountTail.Kind.BINOMIAL)
                .whole();
        assertThat(grid.segments().get(1).p()).isNaN();
        assertThat(grid.segments().get(1).adjustedP()).isNaN();
        assertThat(grid.segments().get(0).expected()).isCloseTo(2 / 3.0, within(1e-12));
        assertThatThrownBy(() -> SegmentCounts.count(
                        new double[] {2000}, new int[4], metres, 500, (on, from, to) -> 0, CountTail.Kind.POISSON))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("greater than zero where there are events");
        assertThatThrownBy(() -> SegmentCounts.count(
                        new double[] {100},
                        new int[1],
                        new double[] {101},
                        50,
                        Exposure.length(),
                        CountTail.Kind.POISSON))
                .hasMessageContaining("not on its line");
    }
}
