package org.culvert.hotspot.stats.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.hotspot.stats.season.SeasonShape.Decision;
import org.junit.jupiter.api.Test;

class SeasonShapeTest {
    /**
     * Source: Stephens (1969) and Fisher (1993) describe the 76 turtles as going one way with a minority the opposite way, so
     * about 64 and 244 degrees.
     */
    @Test
    void turtlesHaveTwoOppositePeaks() {
        SeasonShape shape = SeasonShape.of(CircularTest.turtles(), 0.05, 499, 1);
        assertThat(shape.decision()).as(shape.because()).isEqualTo(Decision.TWO_PEAKS);
        assertThat(Math.toDegrees(shape.peaksRadians().get(0))).isCloseTo(64, within(10.0));
        assertThat(Math.toDegrees(shape.peaksRadians().get(1))).isCloseTo(244, within(10.0));
    }

    /** Source: the samples of two_species.json were drawn with one peak (A, B) and with none (U). */
    @Test
    void seasonsOfTheTwoSpeciesHaveOnePeakAndTheThirdTellsNone() {
        SeasonShape a = SeasonShape.of(CircularTest.species("A"), 0.05, 499, 1);
        assertThat(a.decision()).as(a.because()).isEqualTo(Decision.ONE_PEAK);
        assertThat(Math.toDegrees(a.peaksRadians().get(0))).isCloseTo(110.7, within(0.1));
        assertThat(SeasonShape.of(CircularTest.species("B"), 0.05, 499, 1).decision())
                .isEqualTo(Decision.ONE_PEAK);
        SeasonShape none = SeasonShape.of(CircularTest.species("U"), 0.05, 499, 1);
        assertThat(none.decision()).isEqualTo(Decision.NONE_TOLD);
        assertThat(none.because()).contains("not to say that there is none");
        assertThat(none.peaksRadians()).isEmpty();
    }

    /** No source: seeded samples; 40 of each kind. */
    @Test
    void ruleErrsAsSeldomAsItSays() {
        var random = RandomSource.XO_SHI_RO_256_PP.create(21L);
        int seasonFromNothing = 0;
        int twoFromOne = 0;
        int twoFromPeakAndBackground = 0;
        int twoFound = 0;
        for (int trial = 0; trial < 40; trial++) {
            if (SeasonShape.of(UniformityTest.uniform(random, 40), 0.05, 99, trial)
                            .decision()
                    != Decision.NONE_TOLD) {
                seasonFromNothing++;
            }
            if (decided(random, new double[] {2}, 0, trial) == Decision.TWO_PEAKS) {
                twoFromOne++;
            }
            if (decided(random, new double[] {4}, 0.5, trial) == Decision.TWO_PEAKS) {
                twoFromPeakAndBackground++;
            }
            if (decided(random, new double[] {1, 1 + Math.PI * 0.9}, 0, trial) == Decision.TWO_PEAKS) {
                twoFound++;
            }
        }
        assertThat(seasonFromNothing).as("seed 21").isLessThan(7);
        assertThat(twoFromOne).as("seed 21").isLessThan(6);
        assertThat(twoFromPeakAndBackground).as("seed 21").isLessThan(6);
        assertThat(twoFound).as("seed 21").isGreaterThan(32);
    }

    /** Sixty directions around some peaks, with a share of them from anywhere. */
    private static Decision decided(UniformRandomProvider random, double[] peaks, double background, int seed) {
        double[] angles = new double[60];
        Arrays.setAll(
                angles,
                i -> random.nextDouble() < background
                        ? random.nextDouble() * 2 * Math.PI
                        : peaks[i % peaks.length]
                                + 0.5 * (random.nextDouble() + random.nextDouble() + random.nextDouble() - 1.5));
        return SeasonShape.of(CircularSample.ofRadians(angles), 0.05, 99, seed).decision();
    }

    /** No source: the invariant of the room. */
    @Test
    void orderOfTheEventsChangesNothing() {
        var random = RandomSource.XO_SHI_RO_256_PP.create(8L);
        double[] angles = new double[50];
        Arrays.setAll(angles, i -> random.nextDouble() * 3);
        double[] backwards = new double[50];
        Arrays.setAll(backwards, i -> angles[49 - i]);
        assertThat(SeasonShape.of(CircularSample.ofRadians(backwards), 0.05, 99, 3))
                .isEqualTo(SeasonShape.of(CircularSample.ofRadians(angles), 0.05, 99, 3));
    }
}
