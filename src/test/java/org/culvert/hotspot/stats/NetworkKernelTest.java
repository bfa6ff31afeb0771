package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVRecord;
import org.culvert.hotspot.stats.NetworkKernel.DeadEnd;
import org.culvert.hotspot.stats.NetworkKernel.Rule;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NetworkKernelTest {
    private static final double SIGMA = 100;
    private static final RoadKernel EPANECHNIKOV = new RoadKernel.Epanechnikov(SIGMA * Math.sqrt(5));
    private static final RoadKernel GAUSSIAN = new RoadKernel.Gaussian(SIGMA);

    /**
     * Against R 4.2.2, spatstat.linnet 3.0-6, densityEqualSplit at its own points on a network of 9 nodes. Its
     * discontinuous rule lets paths end at dead ends. Its heat column is by finite differences, and differs from its own
     * continuous Gaussian column, which is the same thing exactly, by up to 4.0e-3 beside nodes.
     */
    @ParameterizedTest
    @CsvSource({
        "esd_epan, EQUAL_SPLIT_DISCONTINUOUS, true, 1e-6",
        "esc_epan, EQUAL_SPLIT_CONTINUOUS, true, 1e-6",
        "esd_gauss, EQUAL_SPLIT_DISCONTINUOUS, false, 1e-6",
        "esc_gauss, EQUAL_SPLIT_CONTINUOUS, false, 1e-6",
        "heat, EQUAL_SPLIT_CONTINUOUS, false, 5e-3"
    })
    void densityAtTheEventsMeetsTheReference(String column, Rule rule, boolean epanechnikov, double relative) {
        RoadGraph graph = Checks.smallNetwork();
        var kernel = new NetworkKernel(graph, epanechnikov ? EPANECHNIKOV : GAUSSIAN, rule, DeadEnd.SWALLOW);
        int[] links = eventLinks();
        double[] density = sum(kernel, graph, links, eventMetres(graph));
        double[] wanted = Checks.column(Checks.csv("net_small/kde_at_points_sigma100.csv"), column);
        assertThat(density).hasSameSizeAs(wanted);
        double peak = java.util.Arrays.stream(wanted).max().orElseThrow();
        for (int i = 0; i < wanted.length; i++) {
            if (!column.equals("heat") || wanted[i] > 1e-3 * peak) {
                assertThat(density[i]).as("event %d", i + 1).isCloseTo(wanted[i], within(relative * wanted[i]));
            }
        }
    }

    /** Against spatstat's heat equation by finite differences (steps of 1 m), off by half a step near nodes and ends. */
    @Test
    void continuousGaussianMeetsTheHeatEquation() {
        RoadGraph graph = Checks.smallNetwork();
        List<CSVRecord> grid = Checks.csv("net_small/kde_heat_grid_sigma100.csv");
        int[] links = grid.stream()
                .mapToInt(row -> Integer.parseInt(row.get("seg")) - 1)
                .toArray();
        double[] metres = new double[links.length];
        for (int i = 0; i < links.length; i++) {
            metres[i] = Checks.number(grid.get(i), "tp") * graph.length(links[i]);
        }
        var kernel = new NetworkKernel(graph, GAUSSIAN, Rule.EQUAL_SPLIT_CONTINUOUS);
        double[] density = sum(kernel, graph, links, metres);
        double peak = java.util.Arrays.stream(density).max().orElseThrow();
        int near = 0;
        for (int i = 0; i < links.length; i++) {
            double wanted = Checks.number(grid.get(i), "heat");
            if (wanted > 0.05 * peak) {
                near++;
                assertThat(density[i]).as("place %d", i).isCloseTo(wanted, within(5e-3 * peak));
            } else if (wanted > 1e-3 * peak) {
                assertThat(density[i]).as("place %d", i).isCloseTo(wanted, within(2e-2 * wanted));
            }
        }
        assertThat(near).isGreaterThan(20);
    }

    /** Closed form on stars of 1 to 5 arms: phi(y - a) + (2/n - 1) phi(y + a) on the arm, (2/n) phi(y + a) beyond. */
    @Test
    void continuousGaussianOnAStarMeetsTheClosedForm() {
        List<CSVRecord> rows = Checks.csv("analytic/heat_star.csv");
        assertThat(rows).hasSizeGreaterThan(50);
        for (CSVRecord row : rows) {
            int arms = Integer.parseInt(row.get("n"));
            double sigma = Checks.number(row, "sigma");
            double[] length = new double[arms];
            java.util.Arrays.fill(length, 1e5);
            var graph = new RoadGraph(
                    arms + 1, new int[arms], IntStream.rangeClosed(1, arms).toArray(), length);
            var kernel = new NetworkKernel(graph, new RoadKernel.Gaussian(sigma), Rule.EQUAL_SPLIT_CONTINUOUS);
            int arm = row.get("arm").equals("same") ? 0 : 1;
            double density = kernel.densityOf(
                            0, Checks.number(row, "a"), new int[] {arm}, new double[] {Checks.number(row, "y")})[0];
            assertThat(density).as(row.toString()).isCloseTo(Checks.number(row, "k"), within(1e-12));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyEventHasAMassOfOneWhereverItLies(long seed) {
        var random = Networks.random(seed);
        RoadGraph graph = Networks.anyNetwork(random);
        int link = random.nextInt(graph.linkCount());
        double metres = random.nextDouble() * graph.length(link);
        for (Rule rule : Rule.values()) {
            var kernel = new NetworkKernel(graph, new RoadKernel.Epanechnikov(180), rule);
            double mass = 0;
            for (int on = 0; on < graph.linkCount(); on++) {
                int steps = 4000;
                int[] links = new int[steps];
                java.util.Arrays.fill(links, on);
                double step = graph.length(on) / steps;
                double[] places = IntStream.range(0, steps)
                        .mapToDouble(i -> (i + 0.5) * step)
                        .toArray();
                mass += step
                        * java.util.Arrays.stream(kernel.densityOf(link, metres, links, places))
                                .sum();
            }
            assertThat(mass).as("seed %d, %s", seed, rule).isCloseTo(1, within(1e-4));
        }
    }

    private static double[] sum(NetworkKernel kernel, RoadGraph graph, int[] links, double[] metres) {
        double[] density = new double[links.length];
        int[] events = eventLinks();
        double[] at = eventMetres(graph);
        for (int event = 0; event < events.length; event++) {
            double[] one = kernel.densityOf(events[event], at[event], links, metres);
            for (int i = 0; i < density.length; i++) {
                density[i] += one[i];
            }
        }
        return density;
    }

    private static int[] eventLinks() {
        return Checks.csv("net_small/points.csv").stream()
                .mapToInt(row -> Integer.parseInt(row.get("seg")) - 1)
                .toArray();
    }

    private static double[] eventMetres(RoadGraph graph) {
        return Checks.csv("net_small/points.csv").stream()
                .mapToDouble(row -> Checks.number(row, "tp") * graph.length(Integer.parseInt(row.get("seg")) - 1))
                .toArray();
    }
}
