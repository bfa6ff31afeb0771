package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

/** The envelope says the same as the p-values: that is what makes it a global one (doi:10.1111/rssb.12172). */
class EnvelopeTest {
    private static final double ALPHA = 0.05;

    private final RoadGraph graph = Networks.grid(4, 730);
    private final Chainage chainage = Networks.gridChainage(4, graph);

    private List<RoadEvent> events(UniformRandomProvider random, int scattered, int planted) {
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 0; i < scattered; i++) {
            Recording recording =
                    i % 3 == 0 ? new Recording(1000, 0) : i % 3 == 1 ? new Recording(0, 120) : Recording.EXACT;
            events.add(new RoadEvent(random.nextInt(graph.linkCount()), 730 * random.nextDouble(), recording));
        }
        for (int i = 0; i < planted; i++) {
            events.add(new RoadEvent(5, 300 + 20 * i, Recording.EXACT));
        }
        return events;
    }

    private Findings search(List<RoadEvent> events, Chance chance, RoadKernel kernel, long seed) {
        return new HotspotSearch(graph, chainage, new Settings(kernel, 25, 99, seed, ALPHA, 1))
                .search(events, chance, 2, done -> {});
    }

    /** How many pieces are significant, after looking at each. */
    private static int agrees(Findings findings) {
        int significant = 0;
        for (int piece = 0; piece < findings.pieces().count(); piece++) {
            assertThat(findings.density(piece) >= findings.envelope(piece))
                    .as("piece %s: %s against %s", piece, findings.density(piece), findings.envelope(piece))
                    .isEqualTo(findings.adjustedP(piece) <= ALPHA);
            significant += findings.adjustedP(piece) <= ALPHA ? 1 : 0;
        }
        return significant;
    }

    @Test
    void aPieceIsSignificantExactlyWhereItsDensityReachesTheEnvelope() {
        for (RoadKernel kernel : List.of(new RoadKernel.Epanechnikov(150), new RoadKernel.Gaussian(80))) {
            int significant = 0;
            for (int set = 0; set < 6; set++) {
                var random = MonteCarlo.generator(5, set);
                List<RoadEvent> reports = events(random, 120, set);
                List<RoadEvent> group = reports.subList(80, reports.size());
                for (Chance chance : List.of(
                        new Chance.PerKilometre(),
                        new Chance.Patchy(new Chance.PerKilometre(), 1000),
                        new Chance.PerAllReports(reports))) {
                    significant += agrees(search(group, chance, kernel, set));
                }
            }
            assertThat(significant).as("significant pieces of " + kernel).isPositive();
        }
    }

    /**
     * Three of ten reports at five places: there are so few ways to draw them that the greatest surprise of the critical
     * simulation is often that of the observed set itself, which then is not significant.
     */
    @Test
    void whereSimulationsTieWithWhatWasObservedItIsTheSame() {
        int ties = 0;
        for (int seed = 0; seed < 40; seed++) {
            List<RoadEvent> reports = new ArrayList<>();
            for (int i = 0; i < 10; i++) {
                reports.add(new RoadEvent(5 + i / 2, 100 + 7 * (i % 2), Recording.EXACT));
            }
            Findings findings = search(
                    List.of(reports.get(0), reports.get(1), reports.get(4)),
                    new Chance.PerAllReports(reports),
                    new RoadKernel.Epanechnikov(150),
                    seed);
            agrees(findings);
            for (int piece = 0; piece < findings.pieces().count(); piece++) {
                double density = findings.density(piece);
                double envelope = findings.envelope(piece);
                ties += density < envelope && density > envelope * (1 - 1e-6) ? 1 : 0;
            }
        }
        assertThat(ties).as("pieces that tie").isPositive();
    }

    /** Of 99 surprises 1 to 99, four are above 95: with the observed one that is 5 in 100. */
    @Test
    void theCriticalSurpriseLeavesAlphaAbove() {
        RoadGraph road = Networks.oneRoad(1, 1000);
        var settings = new Settings(new RoadKernel.Epanechnikov(150), 25, 99, 1, ALPHA, 1);
        Findings none = new HotspotSearch(road, Networks.oneChainage(road), settings)
                .search(List.of(), new Chance.PerKilometre(), 1, done -> {});
        assertThat(none.envelope(3)).as("chance puts nothing anywhere").isInfinite();
        double[] greatest = new double[99];
        Arrays.setAll(greatest, i -> i + 1.0);
        MonteCarlo simulated = MonteCarlo.ofGreatest(greatest);
        double critical = simulated.critical(ALPHA);
        assertThat(critical).isCloseTo(95, within(1e-6));
        assertThat(simulated.adjustedP(critical)).isLessThanOrEqualTo(ALPHA);
        assertThat(simulated.adjustedP(Math.nextDown(critical))).isGreaterThan(ALPHA);
        assertThat(simulated.critical(0.005))
                .as("one in a hundred is the least there can be")
                .isInfinite();
    }

    /** A mean of 2.5 with the variance of a Poisson count: the density of surprise -log P(7 or more) is 7 (Apache Commons). */
    @Test
    void aSurpriseIsTurnedBackIntoItsDensity() {
        var surprise = new Surprise(
                new NullModel.Moments(new double[] {2.5, 0}, new double[] {2.5, 0}, new double[] {0, 0}), 0);
        double wanted = -Math.log(PoissonDistribution.of(2.5).survivalProbability(6));
        assertThat(surprise.densityOf(0, wanted)).isCloseTo(7, within(1e-9));
        assertThat(surprise.densityOf(0, 1e-9)).as("just above the mean").isEqualTo(Math.nextUp(2.5));
        assertThat(surprise.densityOf(1, wanted)).isInfinite();
        assertThat(surprise.densityOf(0, Double.POSITIVE_INFINITY)).isInfinite();
    }
}
