package org.culvert.hotspot.stats.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.hotspot.stats.rate.BeforeAfter.Study;
import org.culvert.hotspot.stats.rate.TreatedStretch.Part;
import org.junit.jupiter.api.Test;

/**
 * How often intervals hold the true effect, in studies made up from a seed: sites with means of their own, counts before,
 * an effect, counts after.
 *
 * <p>1,500 studies tell a coverage of 0.95 to a standard error of 0.006, 700 to 0.008; the bar is 0.93.
 */
class BeforeAfterCoverageTest {
    private static final long SEED = 20261125;
    private static final double EFFECT = 0.6;
    private static final double OVERDISPERSION = 0.5;

    /** Share of studies whose exact interval, and whose interval of standard errors, holds the effect; and mean widths. */
    private record Coverage(double exact, double byErrors, double exactWidth) {}

    @Test
    void exactIntervalOfOneStretchCoversWhereThatOfStandardErrorsDoesNot() {
        for (double expectedAfter : new double[] {1, 3, 10, 30}) {
            Coverage coverage = coverage(1500, expectedAfter, new double[] {0.6}, null);
            assertThat(coverage.exact()).as("exact, %s expected", expectedAfter).isGreaterThanOrEqualTo(0.93);
            assertThat(coverage.exactWidth())
                    .as("width, %s expected", expectedAfter)
                    .isLessThan(200 * EFFECT);
            if (expectedAfter <= 3) {
                assertThat(coverage.byErrors())
                        .as("+-1.96 SE, %s expected", expectedAfter)
                        .isLessThan(0.93);
            }
        }
    }

    @Test
    void exactIntervalOfSeveralUnlikeStretchesCovers() {
        for (double expectedAfter : new double[] {1, 3, 10, 30}) {
            Coverage coverage = coverage(700, expectedAfter, new double[] {0.3, 0.6, 1.0, 2.0}, null);
            assertThat(coverage.exact()).as("%s expected", expectedAfter).isGreaterThanOrEqualTo(0.93);
        }
    }

    @Test
    void exactIntervalWithComparisonStretchesCovers() {
        for (double expectedAfter : new double[] {1, 3, 10, 30}) {
            Coverage coverage = coverage(700, expectedAfter, new double[] {0.6}, new ComparisonGroup(150, 150, 1, 0));
            assertThat(coverage.exact()).as("%s expected", expectedAfter).isGreaterThanOrEqualTo(0.93);
        }
    }

    /** Stretches that were not picked for their counts, so that comparison stretches alone will do. */
    @Test
    void exactIntervalByComparisonAloneCovers() {
        for (double expectedAfter : new double[] {1, 3, 10, 30}) {
            UniformRandomProvider random = RateScenes.random(SEED);
            Map<List<Integer>, Interval> known = new HashMap<>();
            int held = 0;
            for (int study = 0; study < 700; study++) {
                List<Integer> counts = List.of(
                        RateScenes.poisson(random, expectedAfter / EFFECT / 0.9),
                        RateScenes.poisson(random, expectedAfter),
                        RateScenes.poisson(random, 150),
                        RateScenes.poisson(random, 0.9 * 150));
                held += known.computeIfAbsent(counts, BeforeAfterCoverageTest::byComparison)
                                .contains(EFFECT)
                        ? 1
                        : 0;
            }
            assertThat(held / 700.0).as("%s expected", expectedAfter).isGreaterThanOrEqualTo(0.93);
        }
    }

    /** The worst 20 of 400 are picked and nothing is done: the plain comparison finds works that helped, the other none. */
    @Test
    void stretchesPickedForTheirCountsSeemToImproveUntilThatIsAllowedFor() {
        UniformRandomProvider random = RateScenes.random(SEED);
        List<TreatedStretch> picked = new ArrayList<>();
        for (int region = 0; region < 20; region++) {
            List<TreatedStretch> all = new ArrayList<>();
            for (int i = 0; i < 400; i++) {
                double own = RateScenes.gamma(random, 1.5, 0.6);
                all.add(new TreatedStretch(
                        region + " " + i,
                        Part.INSIDE,
                        RateScenes.poisson(random, own),
                        RateScenes.poisson(random, own),
                        3,
                        3,
                        1.5,
                        1.5,
                        0.6));
            }
            all.sort(Comparator.comparingInt(TreatedStretch::before).reversed());
            picked.addAll(all.subList(0, 20));
        }
        var effect = BeforeAfter.of(new Study(picked, null, List.of(), 0.95)).part(Part.INSIDE);
        assertThat(effect.naive().interval().high()).isLessThan(0.8);
        assertThat(effect.best().theta()).isCloseTo(1, within(0.05));
        assertThat(effect.best().interval().contains(1)).isTrue();
    }

    private static Interval byComparison(List<Integer> counts) {
        var stretch = TreatedStretch.withoutModel("a", Part.INSIDE, counts.get(0), counts.get(1), 5, 5);
        var group = new ComparisonGroup(counts.get(2), counts.get(3), Double.NaN, 0);
        return BeforeAfter.of(new Study(List.of(stretch), group, List.of(), 0.95))
                .part(Part.INSIDE)
                .best()
                .interval();
    }

    private static Coverage coverage(int studies, double expectedAfter, double[] ratios, ComparisonGroup like) {
        UniformRandomProvider random = RateScenes.random(SEED);
        Map<List<Integer>, WorksEffect> known = new HashMap<>();
        int exact = 0;
        int byErrors = 0;
        double width = 0;
        for (int study = 0; study < studies; study++) {
            List<Integer> counts = new ArrayList<>();
            for (double ratio : ratios) {
                double mean = expectedAfter / ratios.length / EFFECT / ratio;
                double own = RateScenes.gamma(random, mean, OVERDISPERSION);
                counts.add(RateScenes.poisson(random, own));
                counts.add(RateScenes.poisson(random, own * ratio * EFFECT));
            }
            if (like != null) {
                counts.add(RateScenes.poisson(random, like.before()));
                counts.add(RateScenes.poisson(random, like.after()));
            }
            WorksEffect effect = known.computeIfAbsent(counts, key -> effect(key, expectedAfter, ratios, like != null));
            exact += effect.interval().contains(EFFECT) ? 1 : 0;
            byErrors += effect.standardErrorInterval().contains(EFFECT) ? 1 : 0;
            width += effect.interval().width() / studies;
        }
        return new Coverage((double) exact / studies, (double) byErrors / studies, width);
    }

    private static WorksEffect effect(List<Integer> counts, double expectedAfter, double[] ratios, boolean compared) {
        List<TreatedStretch> stretches = new ArrayList<>();
        for (int i = 0; i < ratios.length; i++) {
            double mean = expectedAfter / ratios.length / EFFECT / ratios[i];
            stretches.add(new TreatedStretch(
                    "site " + i,
                    Part.INSIDE,
                    counts.get(2 * i),
                    counts.get(2 * i + 1),
                    5,
                    5 * ratios[i],
                    mean,
                    mean * ratios[i],
                    OVERDISPERSION));
        }
        int size = counts.size();
        ComparisonGroup group = compared ? new ComparisonGroup(counts.get(size - 2), counts.get(size - 1), 1, 0) : null;
        return BeforeAfter.of(new Study(stretches, group, List.of(), 0.95))
                .part(Part.INSIDE)
                .best();
    }
}
