package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVRecord;
import org.culvert.hotspot.stats.NetworkKernel.DeadEnd;
import org.culvert.hotspot.stats.NetworkKernel.Rule;
import org.junit.jupiter.api.Test;

/**
 * One road of 12 km with 34 events, Epanechnikov with a half-width of 150 m, every 10 m: values made in R 4.2.2 by its
 * own code for {@code f(s)} and {@code f(s) + f(-s) + f(2L - s)}, and Monte Carlo thresholds of 999 simulations, with
 * their range over seeds.
 */
class OneRoadTest {
    private static final double LENGTH = 12_000;
    private static final int STEPS = 1201;
    private static final RoadKernel KERNEL = new RoadKernel.Epanechnikov(150);

    @Test
    void densityMeetsTheReferencePlainAndReflected() {
        List<CSVRecord> wanted = Checks.csv("kde1d/density.csv");
        assertThat(wanted).hasSize(STEPS);
        double[] events = events();
        double[] plain = density(events, DeadEnd.SWALLOW);
        double[] reflected = density(events, DeadEnd.REFLECT);
        for (int i = 0; i < STEPS; i++) {
            assertThat(plain[i]).isCloseTo(Checks.number(wanted.get(i), "f_plain"), within(1e-10));
            assertThat(reflected[i]).isCloseTo(Checks.number(wanted.get(i), "f_reflected"), within(1e-10));
        }
    }

    /** Ten times the reference's number of simulations, since its range over seeds is all that we know of its noise. */
    @Test
    void simulatedThresholdsLieWithinTheReferencesRange() {
        int simulations = 9990;
        float[] pooled = new float[simulations * STEPS];
        double[] greatest = new double[simulations];
        for (int simulation = 0; simulation < simulations; simulation++) {
            var random = MonteCarlo.generator(2024, simulation);
            double[] events = IntStream.range(0, 34)
                    .mapToDouble(i -> LENGTH * random.nextDouble())
                    .toArray();
            double[] density = density(events, DeadEnd.REFLECT);
            for (int i = 0; i < STEPS; i++) {
                pooled[simulation * STEPS + i] = (float) density[i];
            }
            greatest[simulation] = Arrays.stream(density).max().orElseThrow();
        }
        Arrays.sort(pooled);
        Arrays.sort(greatest);
        assertThat(pooled[(int) (0.95 * pooled.length)]).isBetween(0.000274f, 0.000278f);
        assertThat(greatest[(int) (0.95 * greatest.length)]).isBetween(0.00057, 0.00062);
    }

    /** The stretches above the reference's own family-wise threshold, 0.0005940163393. */
    @Test
    void stretchesAboveTheThresholdAreTheReferences() {
        double[] density = density(events(), DeadEnd.REFLECT);
        List<List<Integer>> stretches = new ArrayList<>();
        for (int i = 0; i < STEPS; i++) {
            if (density[i] > 0.0005940163393) {
                if (stretches.isEmpty() || density[i - 1] <= 0.0005940163393) {
                    stretches.add(new ArrayList<>());
                }
                stretches.get(stretches.size() - 1).add(10 * i);
            }
        }
        assertThat(stretches.stream().map(stretch -> stretch.get(0))).containsExactly(1170, 5030, 9960);
        assertThat(stretches.stream().map(stretch -> stretch.get(stretch.size() - 1)))
                .containsExactly(1340, 5160, 10090);
        assertThat(density[126]).isCloseTo(0.00095794117647, within(1e-12));
    }

    private static double[] events() {
        return Checks.column(Checks.csv("kde1d/points.csv"), "chainage_m");
    }

    /** Normalised to one, as the reference has it. */
    private static double[] density(double[] events, DeadEnd deadEnd) {
        var kernel = new NetworkKernel(Networks.oneRoad(1, LENGTH), KERNEL, Rule.EQUAL_SPLIT_DISCONTINUOUS, deadEnd);
        double[] density = new double[STEPS];
        for (double event : events) {
            int first = (int) Math.max(0, Math.floor((event - 150) / 10));
            int last = (int) Math.min(STEPS - 1, Math.ceil((event + 150) / 10));
            int[] near = IntStream.rangeClosed(first, last).toArray();
            double[] at = Arrays.stream(near).mapToDouble(i -> 10.0 * i).toArray();
            double[] one = kernel.densityOf(0, event, new int[near.length], at);
            for (int i = 0; i < near.length; i++) {
                density[near[i]] += one[i] / events.length;
            }
        }
        return density;
    }
}
