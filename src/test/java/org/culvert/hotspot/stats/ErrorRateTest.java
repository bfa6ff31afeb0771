package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

/**
 * How often a hotspot is found where there is none, and how often one that is there: over many invented sets with seeds.
 * The bounds are those of a binomial count that a right engine leaves once in a thousand times on either side.
 */
class ErrorRateTest {
    private static final int SETS = 400;
    private static final double ALPHA = 0.05;
    private static final Settings SETTINGS = new Settings(150, 25, 99, 3, ALPHA, 1);
    private static final Chance PER_KILOMETRE = new Chance.PerKilometre();

    private final RoadGraph road = Networks.oneRoad(12, 1000);
    private final Chainage roadChainage = Networks.oneChainage(road);

    private interface EventSource {
        List<RoadEvent> events(UniformRandomProvider random);
    }

    @Test
    void withoutHotspotsOneInTwentySetsHasOne() {
        withinTheLevel(falseAlarms(road, roadChainage, PER_KILOMETRE, random -> uniform(random, 34)));
    }

    @Test
    void onAGridWithUnequalPiecesItIsStillOneInTwenty() {
        for (RoadKernel kernel : List.of(SETTINGS.kernel(), new RoadKernel.Gaussian(150))) {
            RoadGraph grid = Networks.grid(4, 730);
            withinTheLevel(falseAlarms(grid, Networks.gridChainage(4, grid), kernel, PER_KILOMETRE, random -> {
                List<RoadEvent> events = new ArrayList<>();
                for (int i = 0; i < 40; i++) {
                    events.add(new RoadEvent(
                            random.nextInt(grid.linkCount()), 730 * random.nextDouble(), Recording.EXACT));
                }
                return events;
            }));
        }
    }

    /** Thirty per cent of places rounded to whole kilometres: simulated alike, they keep the level. */
    @Test
    void roundedPlacesKeepTheLevelWhenTheSimulationsRoundToo() {
        withinTheLevel(falseAlarms(road, roadChainage, PER_KILOMETRE, random -> rounded(random, true)));
    }

    /** The same places taken as exact: a third of the sets has a false hotspot, as found before the build. */
    @Test
    void roundedPlacesTakenAsExactBreakTheLevel() {
        int alarms = falseAlarms(road, roadChainage, PER_KILOMETRE, random -> rounded(random, false));
        assertThat(alarms / (double) SETS).isBetween(0.2, 0.6);
    }

    @Test
    void randomLabellingKeepsTheLevelWhereReportsCluster() {
        int alarms = 0;
        for (int set = 0; set < SETS; set++) {
            var random = MonteCarlo.generator(31, set);
            List<RoadEvent> reports = uniform(random, 150);
            for (int i = 0; i < 60; i++) {
                reports.add(at(3000 + 400 * random.nextDouble(), Recording.EXACT));
            }
            List<RoadEvent> group = new ArrayList<>();
            for (RoadEvent report : reports) {
                if (random.nextDouble() < 0.2) {
                    group.add(report);
                }
            }
            Findings findings = new HotspotSearch(road, roadChainage, SETTINGS)
                    .search(group, new Chance.PerAllReports(reports), 2, done -> {});
            alarms += findings.smallestP() <= ALPHA ? 1 : 0;
        }
        withinTheLevel(alarms);
    }

    /** Half of the roads ten times as busy, known by their traffic. */
    @Test
    void trafficThatIsKnownKeepsTheLevelWhereKilometresAloneDoNot() {
        double[] aadt = new double[road.linkCount()];
        Arrays.setAll(aadt, link -> link < 6 ? 2000 : 200);
        EventSource busyAndQuiet = random -> busyAndQuiet(random, 34);
        withinTheLevel(
                falseAlarms(road, roadChainage, new Chance.PerTrafficAndClass(new int[12], aadt, 2), busyAndQuiet));
        int alarms = falseAlarms(road, roadChainage, PER_KILOMETRE, busyAndQuiet);
        assertThat(alarms / (double) SETS).isGreaterThan(0.12);
    }

    /**
     * Five events more on 100 m of quiet road, where the kernel's 300 m are expected to hold half an event: the greatest
     * raw density, which is that of the busy half, never shows them; the smallest p nearly always does.
     */
    @Test
    void aClusterOnAQuietRoadIsFoundBesideABusyOne() {
        double[] aadt = new double[road.linkCount()];
        Arrays.setAll(aadt, link -> link < 6 ? 2000 : 200);
        var chance = new Chance.PerTrafficAndClass(new int[12], aadt, 2);
        int sets = 100;
        int found = 0;
        int foundByRawDensity = 0;
        for (int set = 0; set < sets; set++) {
            var random = MonteCarlo.generator(77, set);
            List<RoadEvent> events = busyAndQuiet(random, 110);
            for (int i = 0; i < 5; i++) {
                events.add(at(9050 + 100 * random.nextDouble(), Recording.EXACT));
            }
            Findings findings = new HotspotSearch(road, roadChainage, SETTINGS).search(events, chance, 2, done -> {});
            found += findings.hotspotsOn(link -> link == 9).isEmpty() ? 0 : 1;
            double least = rawThreshold(events, chance);
            Pieces pieces = findings.pieces();
            for (int piece = pieces.at(9, 0); piece <= pieces.at(9, 200); piece++) {
                if (findings.density(piece) > least) {
                    foundByRawDensity++;
                    break;
                }
            }
        }
        assertThat(found).isGreaterThanOrEqualTo(90);
        assertThat(foundByRawDensity).isLessThanOrEqualTo(3);
    }

    /** The 95 % quantile of the greatest raw density anywhere, over 99 simulated sets. */
    private double rawThreshold(List<RoadEvent> events, Chance.PerTrafficAndClass chance) {
        var pieces = new Pieces(road, SETTINGS.pieceMetres());
        Responses responses = Responses.build(
                pieces,
                roadChainage,
                new Twins(pieces, Carriageways.NONE),
                KernelRows.of(new RoadKernel.Epanechnikov(150)),
                SETTINGS.pieceMetres(),
                events,
                true,
                1);
        int[] stratum = new int[pieces.count()];
        Arrays.setAll(stratum, piece -> chance.aadt()[pieces.linkOf(piece)] > 1000 ? 1 : 0);
        var model = new RedrawnPlaces(responses, Responses.inOrder(events), stratum);
        double[] greatest = new double[99];
        int[] rows = new int[events.size()];
        for (int simulation = 0; simulation < greatest.length; simulation++) {
            double[] field = new double[pieces.count()];
            model.draw(MonteCarlo.generator(5, simulation), rows);
            for (int row : rows) {
                responses.addTo(row, field, new int[pieces.count()], 0);
            }
            greatest[simulation] = Arrays.stream(field).max().orElseThrow();
        }
        Arrays.sort(greatest);
        return greatest[94];
    }

    private static int falseAlarms(RoadGraph graph, Chainage chainage, Chance chance, EventSource source) {
        return falseAlarms(graph, chainage, SETTINGS.kernel(), chance, source);
    }

    private static int falseAlarms(
            RoadGraph graph, Chainage chainage, RoadKernel kernel, Chance chance, EventSource source) {
        int alarms = 0;
        for (int set = 0; set < SETS; set++) {
            List<RoadEvent> events = source.events(MonteCarlo.generator(1234, set));
            var settings = new Settings(kernel, SETTINGS.pieceMetres(), SETTINGS.simulations(), set, ALPHA, 1);
            Findings findings = new HotspotSearch(graph, chainage, settings).search(events, chance, 2, done -> {});
            alarms += findings.smallestP() <= ALPHA ? 1 : 0;
        }
        return alarms;
    }

    private static void withinTheLevel(int alarms) {
        var count = BinomialDistribution.of(SETS, ALPHA);
        assertThat(alarms)
                .as("false alarms of %d sets at a level of %s", SETS, ALPHA)
                .isBetween(count.inverseCumulativeProbability(0.001), count.inverseSurvivalProbability(0.001));
    }

    /**
     * Kilometres that differ by gamma multipliers with a coefficient of variation of 0.5, which break the level of chance per
     * kilometre (13 % in the simulations made before the build), keep it to 8 % where the search estimates them.
     */
    @Test
    void aPatchyBackgroundIsTakenUpWhereItIsEstimated() {
        EventSource patchy = random -> patchy(random, 100, 0.5);
        int taken = falseAlarms(road, roadChainage, new Chance.Patchy(PER_KILOMETRE, 1000), patchy);
        int even = falseAlarms(road, roadChainage, PER_KILOMETRE, patchy);
        assertThat(taken)
                .isLessThanOrEqualTo(BinomialDistribution.of(SETS, 0.08).inverseSurvivalProbability(0.001));
        assertThat(even).isGreaterThan(BinomialDistribution.of(SETS, 0.08).inverseSurvivalProbability(0.001));
    }

    private List<RoadEvent> patchy(UniformRandomProvider random, int count, double variation) {
        var gamma = GammaDistribution.of(1 / (variation * variation), variation * variation)
                .createSampler(random);
        double begun = 1000 * random.nextDouble();
        double[] upTo = new double[13];
        double sum = 0;
        for (int patch = 0; patch < 13; patch++) {
            double length = Math.min(12_000, patch * 1000 + begun) - Math.max(0, (patch - 1) * 1000 + begun);
            sum += gamma.sample() * length;
            upTo[patch] = sum;
        }
        List<RoadEvent> events = new ArrayList<>();
        while (events.size() < count) {
            double u = sum * random.nextDouble();
            int patch = 0;
            while (upTo[patch] <= u) {
                patch++;
            }
            double from = Math.max(0, (patch - 1) * 1000 + begun);
            double to = Math.min(12_000, patch * 1000 + begun);
            events.add(at(from + (to - from) * random.nextDouble(), Recording.EXACT));
        }
        return events;
    }

    private List<RoadEvent> uniform(UniformRandomProvider random, int count) {
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            events.add(at(12_000 * random.nextDouble(), Recording.EXACT));
        }
        return events;
    }

    private List<RoadEvent> rounded(UniformRandomProvider random, boolean known) {
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 0; i < 34; i++) {
            double chainage = 12_000 * random.nextDouble();
            boolean rounds = random.nextDouble() < 0.3;
            events.add(at(
                    rounds ? Math.rint(chainage / 1000) * 1000 : chainage,
                    rounds && known ? new Recording(1000, 0) : Recording.EXACT));
        }
        return events;
    }

    private List<RoadEvent> busyAndQuiet(UniformRandomProvider random, int count) {
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double within = 6000 * random.nextDouble();
            events.add(at(random.nextInt(11) < 10 ? within : 6000 + within, Recording.EXACT));
        }
        return events;
    }

    private RoadEvent at(double chainage, Recording recording) {
        int link = (int) Math.min(11, Math.floor(chainage / 1000));
        return new RoadEvent(link, chainage - 1000.0 * link, recording);
    }
}
