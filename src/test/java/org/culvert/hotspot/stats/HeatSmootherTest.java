package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

/** On a grid of 5 x 5 nodes, 400 m apart, so that it has corners, crossings and sides. */
class HeatSmootherTest {
    private static final int SETS = 3000;
    private static final double SIGMA = 120;

    private final RoadGraph graph = Networks.grid(5, 400);
    private final Chainage chainage = Networks.gridChainage(5, graph);
    private final Pieces pieces = new Pieces(graph, 50);

    private Smoother smoother(List<RoadEvent> events) {
        Responses shares = Responses.build(
                pieces, chainage, new Twins(pieces, Carriageways.NONE), KernelRows::unsmoothed, 50, events, true, 1);
        return new HeatSmoother(shares, SIGMA, 1);
    }

    private List<RoadEvent> events(int count, boolean spread) {
        var random = Networks.random(5);
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Recording recording = spread && i % 3 == 0 ? new Recording(100, 200) : Recording.EXACT;
            events.add(new RoadEvent(random.nextInt(graph.linkCount()), 400 * random.nextDouble(), recording));
        }
        return Responses.inOrder(events);
    }

    /** For exact places, uniform by length, mean and variance are those of many simulated sets, at dead ends too. */
    @Test
    void meanAndVarianceAreThoseOfManySets() {
        List<RoadEvent> events = events(30, false);
        Smoother smoother = smoother(events);
        compare(smoother, new RedrawnPlaces(smoother.responses(), events, new int[pieces.count()]), 0.12);
    }

    /** Of unlike reports the variance is an estimate: within a factor, the mean as exact. */
    @Test
    void ofShuffledReportsTheMeanIsExact() {
        List<RoadEvent> reports = events(90, true);
        Smoother smoother = smoother(reports);
        compare(smoother, new ShuffledReports(smoother.responses(), reports, 30), 0.6);
    }

    private void compare(Smoother smoother, NullModel model, double relative) {
        double[] sum = new double[pieces.count()];
        double[] squares = new double[pieces.count()];
        int[] rows = new int[model.events()];
        Smoother.Brush brush = smoother.newBrush();
        for (int set = 0; set < SETS; set++) {
            model.draw(MonteCarlo.generator(42, set), rows);
            brush.smooth(rows);
            for (int piece = 0; piece < sum.length; piece++) {
                double density = brush.density(0)[piece];
                sum[piece] += density;
                squares[piece] += density * density;
            }
        }
        NullModel.Moments moments = smoother.moments(model);
        double greatest = Arrays.stream(moments.variance()).max().orElseThrow();
        for (int piece = 0; piece < sum.length; piece++) {
            double mean = sum[piece] / SETS;
            double variance = squares[piece] / SETS - mean * mean;
            double noise = Math.sqrt(variance / SETS);
            assertThat(mean).as("mean at %d", piece).isCloseTo(moments.mean()[piece], within(5 * noise));
            assertThat(moments.variance()[piece])
                    .as("variance at %d", piece)
                    .isCloseTo(variance, within(relative * variance + 0.05 * greatest));
        }
    }

    @Test
    void aPlantedClusterIsFoundOnAnyNumberOfThreads() {
        List<RoadEvent> events = new ArrayList<>(events(40, true));
        for (int i = 0; i < 9; i++) {
            events.add(new RoadEvent(7, 150 + 10 * i, Recording.EXACT));
        }
        var settings = new Settings(new RoadKernel.Gaussian(SIGMA), 50, 199, 1, 0.05, 3);
        var search = new HotspotSearch(graph, chainage, settings);
        Findings findings = search.search(events, new Chance.PerKilometre(), 2, done -> {});
        assertThat(findings.hotspots()).hasSize(1);
        assertThat(findings.hotspots().get(0).spans().get(0).link()).isEqualTo(7);
        Findings alone = search.search(events, new Chance.PerKilometre(), 1, done -> {});
        for (int piece = 0; piece < pieces.count(); piece++) {
            assertThat(alone.density(piece)).isEqualTo(findings.density(piece));
            assertThat(alone.adjustedP(piece)).isEqualTo(findings.adjustedP(piece));
        }
    }

    /** Reports of an event's own kind alone leave places that chance cannot reach: they are no surprise, whatever the noise. */
    @Test
    void whereChancePutsNothingNothingIsASurprise() {
        var two = new RoadGraph(4, new int[] {0, 2}, new int[] {1, 3}, new double[] {2000, 2000});
        Chainage own = Networks.ownChainage(two);
        List<RoadEvent> reports = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            reports.add(new RoadEvent(0, 50.0 * i, Recording.EXACT));
        }
        var settings = new Settings(new RoadKernel.Gaussian(SIGMA), 50, 99, 1, 0.05, 1);
        Findings findings = new HotspotSearch(two, own, settings)
                .search(reports.subList(0, 20), new Chance.PerAllReports(reports), 1, done -> {});
        Pieces cut = findings.pieces();
        for (int piece = cut.first(1); piece < cut.first(2); piece++) {
            assertThat(findings.adjustedP(piece)).isEqualTo(1);
        }
        assertThat(findings.smallestP()).isLessThan(1);
    }

    /**
     * Few reports on much road: between them all is tail, where the kernel's own error is as large as what it says. A stretch on
     * which nearly all reports are of the group is found all the same.
     */
    @Test
    void farFromAnyReportNothingIsJudged() {
        RoadGraph road = Networks.oneRoad(200, 1000);
        var random = Networks.random(3);
        List<RoadEvent> reports = new ArrayList<>();
        List<RoadEvent> group = new ArrayList<>();
        for (int i = 0; i < 90; i++) {
            reports.add(new RoadEvent(random.nextInt(200), 1000 * random.nextDouble(), Recording.EXACT));
            if (i % 5 == 0) {
                group.add(reports.get(i));
            }
        }
        for (int i = 0; i < 12; i++) {
            reports.add(new RoadEvent(77, 300 + 20 * i, Recording.EXACT));
            group.add(reports.get(reports.size() - 1));
        }
        var settings = new Settings(new RoadKernel.Gaussian(250), 50, 199, 1, 0.05, 3);
        List<Hotspot> hotspots = new HotspotSearch(road, Networks.oneChainage(road), settings)
                .search(group, new Chance.PerAllReports(reports), 1, done -> {})
                .hotspots();
        assertThat(hotspots).hasSize(1);
        assertThat(hotspots.get(0).incidents()).isGreaterThanOrEqualTo(12);
    }
}
