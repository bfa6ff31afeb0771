package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.culvert.hotspot.stats.NetworkKernel.Rule;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HeatFieldTest {
    /**
     * The closed form on stars of 1 to 5 arms, phi(y - a) + (2/n - 1) phi(y + a) on the arm and (2/n) phi(y + a) beyond (heat
     * equation with a source and its image), averaged over each piece by the normal distribution of commons-statistics.
     */
    @Test
    void onAStarItMeetsTheClosedForm() {
        int compared = 0;
        for (CSVRecord row : Checks.csv("analytic/heat_star.csv")) {
            int arms = Integer.parseInt(row.get("n"));
            double sigma = Checks.number(row, "sigma");
            double a = Checks.number(row, "a");
            double[] length = new double[arms];
            Arrays.fill(length, 20 * sigma + a);
            var graph = new RoadGraph(
                    arms + 1, new int[arms], IntStream.rangeClosed(1, arms).toArray(), length);
            var pieces = new Pieces(graph, sigma / 3);
            double[] density = field(pieces, sigma).density(new int[] {0}, new double[] {a}, 1);
            double within = 2 * HeatField.ERROR / (sigma * Math.sqrt(2 * Math.PI));
            for (int arm = 0; arm < arms; arm++) {
                for (int piece = pieces.first(arm); piece < pieces.first(arm + 1); piece++) {
                    double from = pieces.start(piece);
                    double to = pieces.end(piece);
                    double image = normal(from + a, to + a, sigma);
                    double wanted =
                            arm == 0 ? normal(from - a, to - a, sigma) + (2.0 / arms - 1) * image : 2.0 / arms * image;
                    assertThat(density[piece])
                            .as("%s, arm %d, piece %d", row, arm, piece)
                            .isCloseTo(wanted / (to - from), within(within));
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(1000);
    }

    /** Against the sum over all paths, on networks with loops, parallel links and dead ends. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void itIsTheSumOverAllPaths(long seed) {
        var random = Networks.random(seed);
        RoadGraph graph = Networks.anyNetwork(random);
        double sigma = 60 + 60 * random.nextDouble();
        var pieces = new Pieces(graph, 25);
        int[] links = new int[3];
        double[] metres = new double[3];
        for (int event = 0; event < 3; event++) {
            links[event] = random.nextInt(graph.linkCount());
            metres[event] = random.nextDouble() * graph.length(links[event]);
        }
        double[] density = field(pieces, sigma).density(links, metres, 2);
        var paths = new NetworkKernel(graph, new RoadKernel.Gaussian(sigma), Rule.EQUAL_SPLIT_CONTINUOUS);
        int points = 40;
        int[] at = new int[points];
        double[] places = new double[points];
        for (int piece = 0; piece < pieces.count(); piece += 7) {
            Arrays.fill(at, pieces.linkOf(piece));
            double step = pieces.length(piece) / points;
            for (int i = 0; i < points; i++) {
                places[i] = pieces.start(piece) + (i + 0.5) * step;
            }
            double wanted = 0;
            for (int event = 0; event < 3; event++) {
                wanted += Arrays.stream(paths.densityOf(links[event], metres[event], at, places))
                                .sum()
                        / points;
            }
            // The midpoint rule of the reference is off by (step / sigma)^2 / 24 of the peak at most, about 5e-6
            assertThat(density[piece]).as("seed %d, piece %d", seed, piece).isCloseTo(wanted, within(2e-5 / sigma));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void everyEventHasAMassOfOneWhateverThePieces(long seed) {
        var random = Networks.random(seed);
        RoadGraph graph = Networks.anyNetwork(random);
        for (double piece : new double[] {10, 90, 1000}) {
            var pieces = new Pieces(graph, piece);
            for (double sigma : new double[] {20, 200, 2000}) {
                int link = random.nextInt(graph.linkCount());
                double[] density = field(pieces, sigma)
                        .density(new int[] {link}, new double[] {random.nextDouble() * graph.length(link)}, 1);
                double mass = IntStream.range(0, density.length)
                        .mapToDouble(i -> density[i] * pieces.length(i))
                        .sum();
                assertThat(mass).as("seed %d, %s, %s", seed, piece, sigma).isCloseTo(1, within(1e-4));
            }
        }
    }

    @Test
    void itComesOutTheSameOnAnyNumberOfThreads() {
        var random = Networks.random(1);
        RoadGraph graph = Networks.grid(12, 130);
        var field = field(new Pieces(graph, 50), 300);
        int[] links = random.ints(200, 0, graph.linkCount()).toArray();
        double[] metres = random.doubles(200, 0, 130).toArray();
        assertThat(field.density(links, metres, 1)).isEqualTo(field.density(links, metres, 3));
    }

    /** On networks with loops, double links and dead ends, pieces of odd and even number on a link. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void tablesSmoothSetsOfEventsAtTheCentresOfTheirPieces(long seed) {
        var random = Networks.random(seed);
        RoadGraph graph = Networks.anyNetwork(random);
        var pieces = new Pieces(graph, 20 + 60 * random.nextDouble());
        var field = field(pieces, 30 + 200 * random.nextDouble());
        double[][] count = new double[HeatTables.SETS][pieces.count()];
        double[][] smooth = new double[HeatTables.SETS][pieces.count()];
        HeatTables.Worker worker = field.keep(2).newWorker();
        for (int set = 0; set < count.length; set++) {
            Arrays.fill(smooth[set], 7);
            for (int event = 0; event < 3 * set; event++) {
                count[set][random.nextInt(pieces.count())]++;
            }
        }
        worker.smooth(count, smooth);
        for (int set = 0; set < count.length; set++) {
            double[] of = count[set];
            int[] at = IntStream.range(0, of.length)
                    .flatMap(piece -> IntStream.range(0, (int) of[piece]).map(i -> piece))
                    .toArray();
            double[] wanted = field.density(
                    Arrays.stream(at).map(pieces::linkOf).toArray(),
                    Arrays.stream(at).mapToDouble(pieces::centre).toArray(),
                    1);
            for (int piece = 0; piece < wanted.length; piece++) {
                assertThat(smooth[set][piece]).isCloseTo(wanted[piece], within(1e-12));
            }
        }
        double[][] beside = new double[HeatTables.SETS][];
        double[][] again = new double[HeatTables.SETS][pieces.count()];
        Arrays.setAll(beside, set -> count[(set + 1) % HeatTables.SETS]);
        worker.smooth(beside, again);
        for (int set = 0; set < HeatTables.SETS; set++) {
            assertThat(again[set]).isEqualTo(smooth[(set + 1) % HeatTables.SETS]);
        }
    }

    /**
     * Leaving out what is nothing from the factors takes nothing from the solution, on links of a hundredth of sigma, of many
     * sigma, and of both; of a large network it takes most of the factor.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.3, 1, 8, -1})
    void whatIsNothingMayBeLeftOut(double linkPerSigma) {
        var random = Networks.random(9);
        int across = 40;
        RoadGraph grid = Networks.grid(across, 1);
        double[] lengths = IntStream.range(0, grid.linkCount())
                .mapToDouble(link -> linkPerSigma > 0 ? linkPerSigma : Math.pow(10, 3 * random.nextDouble() - 2))
                .toArray();
        var graph = new RoadGraph(
                grid.nodeCount(),
                IntStream.range(0, grid.linkCount()).map(grid::from).toArray(),
                IntStream.range(0, grid.linkCount()).map(grid::to).toArray(),
                lengths);
        EliminationOrder order = EliminationOrder.of(graph);
        var contour = new BromwichContour(HeatField.TRANSFORMS, 1);
        for (int k : new int[] {0, HeatField.TRANSFORMS - 1}) {
            Complex kappa = new Complex(2 * contour.re(k), 2 * contour.im(k)).root();
            var asked = new NodeSystem.Builder(graph, order);
            for (int link = 0; link < graph.linkCount(); link++) {
                Complex whole = kappa.times(-lengths[link]).exp();
                Complex perWhole = Complex.ONE.minus(whole.times(whole)).reciprocal();
                asked.add(
                        link,
                        kappa.times(Complex.ONE.plus(whole.times(whole))).times(perWhole),
                        kappa.times(whole).times(perWhole).times(2));
            }
            NodeSystem all = asked.build(0);
            NodeSystem most = asked.build();
            if (linkPerSigma == 8) {
                assertThat(most.entries()).isLessThan(all.entries() / 2);
            }
            for (int node : new int[] {0, across * across / 2, 777}) {
                NodeSystem.Solver wanted = all.newSolver();
                wanted.send(node, Complex.ONE);
                wanted.solve();
                NodeSystem.Solver got = most.newSolver();
                got.send(node, Complex.ONE);
                got.solve();
                double peak = size(wanted.value(node));
                NodeSystem.Inverse inverse = most.inverse();
                assertThat(size(inverse.entry(node, node).minus(wanted.value(node))))
                        .isLessThan(1e-9 * peak);
                for (int other = 0; other < graph.nodeCount(); other++) {
                    assertThat(size(got.value(other).minus(wanted.value(other))))
                            .isLessThan(1e-9 * peak);
                }
            }
        }
    }

    private static double size(Complex of) {
        return Math.hypot(of.re(), of.im());
    }

    /** By the sum over all paths, and by the integral of the square of the kernel of sigma / sqrt 2. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void whatReturnsIsTheKernelAtItsOwnEvent(long seed) {
        var random = Networks.random(seed);
        RoadGraph graph = Networks.anyNetwork(random);
        double sigma = 80;
        var pieces = new Pieces(graph, 40);
        double[] returns = field(pieces, sigma).returns(2);
        var paths = new NetworkKernel(graph, new RoadKernel.Gaussian(sigma), Rule.EQUAL_SPLIT_CONTINUOUS);
        var fine = new Pieces(graph, 2);
        var narrower = field(fine, sigma / Math.sqrt(2));
        for (int piece = 0; piece < pieces.count(); piece += 5) {
            int[] link = {pieces.linkOf(piece)};
            double[] centre = {pieces.centre(piece)};
            double wanted = paths.densityOf(link[0], centre[0], link, centre)[0];
            assertThat(returns[piece]).as("seed %d, piece %d", seed, piece).isCloseTo(wanted, within(1e-6 / sigma));
            double[] kernel = narrower.density(link, centre, 1);
            double square = IntStream.range(0, kernel.length)
                    .mapToDouble(i -> kernel[i] * kernel[i] * fine.length(i))
                    .sum();
            assertThat(returns[piece]).as("seed %d, piece %d", seed, piece).isCloseTo(square, within(2e-3 * square));
        }
    }

    private static HeatField field(Pieces pieces, double sigma) {
        return new HeatField(pieces, EliminationOrder.of(pieces.graph()), sigma);
    }

    private static double normal(double from, double to, double sigma) {
        return NormalDistribution.of(0, sigma).probability(from, to);
    }
}
