package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.PoissonSampler;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

/**
 * A road of 12 km, looked at ten times as a whole and ninety times more from 3.01 to 5.29 km. Bounds of counts are those
 * that a right engine leaves once in a thousand times on either side.
 *
 * <pre>
 *   0         3.01      5.29                    12 km
 *   |----10----|---100---|----------10-----------|     surveys
 * </pre>
 */
class SurveyEffortTest {
    private static final int SETS = 400;
    private static final double ALPHA = 0.05;
    private static final int WHOLE = 10;
    private static final int OFTEN = 90;
    private static final double OFTEN_FROM = 3010;
    private static final double OFTEN_TO = 5290;
    private static final double ROAD_METRES = 12_000;
    private static final RoadKernel COMPACT = new RoadKernel.Epanechnikov(150);
    private static final Recording KILOMETRE = new Recording(1000, 0);

    private final RoadGraph road = Networks.oneRoad(12, 1000);
    private final Chainage chainage = Networks.oneChainage(road);
    private final Chance.PerSurveyEffort effort = effort();

    private static Chance.PerSurveyEffort effort() {
        List<List<RoadSpan>> passes = new ArrayList<>();
        for (int i = 0; i < WHOLE; i++) {
            passes.add(spans(0, ROAD_METRES));
        }
        for (int i = 0; i < OFTEN; i++) {
            passes.add(spans(OFTEN_FROM, OFTEN_TO));
        }
        return new Chance.PerSurveyEffort(passes, 0);
    }

    private static List<RoadSpan> spans(double from, double to) {
        List<RoadSpan> spans = new ArrayList<>();
        for (int link = 0; link < 12; link++) {
            double start = Math.max(from, 1000.0 * link) - 1000.0 * link;
            double end = Math.min(to, 1000.0 * (link + 1)) - 1000.0 * link;
            if (start < end) {
                spans.add(new RoadSpan(link, start, end));
            }
        }
        return spans;
    }

    @Test
    void everyPieceWeighsTheMetresThatSurveysWentOverInIt() {
        var pieces = new Pieces(road, 25);
        double[] metres = effort.metresIn(pieces);
        // Piece 120 is cut by 3010 m: 25 m ten times, and 15 m of it ninety times more
        assertThat(metres[119]).isCloseTo(250, within(1e-9));
        assertThat(metres[120]).isCloseTo(250 + 90 * 15, within(1e-9));
        assertThat(metres[121]).isCloseTo(2500, within(1e-9));
        assertThat(metres[211]).isCloseTo(250 + 90 * 15, within(1e-9));
        assertThat(metres[212]).isCloseTo(250, within(1e-9));
        assertThat(Arrays.stream(metres).sum())
                .isCloseTo(10 * 12_000 + 90 * 2280, within(1e-6))
                .isCloseTo(effort.surveyedMetres(), within(1e-6));
        assertThat(effort.clause()).contains("(100 surveys, 325 km)");
    }

    /** Pearson's chi-square of 100,000 draws in the parts of the road against shares by hand, on eleven degrees of freedom. */
    @Test
    void drawnPlacesFollowTheSurveys() {
        List<RoadEvent> events = repeated(new RoadEvent(0, 500, Recording.EXACT), 100);
        Responses responses = responses(events);
        var model = RedrawnPlaces.bySurveys(responses, events, effort.metresIn(responses.pieces()));
        long[] counted = new long[12];
        int[] rows = new int[100];
        for (int set = 0; set < 1000; set++) {
            model.draw(MonteCarlo.generator(8, set), rows);
            for (int row : rows) {
                counted[responses.pieces().linkOf(responses.pieceOf(row))]++;
            }
        }
        // Kilometre 3 was looked at ten times, and its last 990 m ninety times more; kilometre 5 its first 290 m
        double[] passMetres = new double[12];
        Arrays.fill(passMetres, 10_000);
        passMetres[3] += 90 * 990;
        passMetres[4] += 90 * 1000;
        passMetres[5] += 90 * 290;
        double all = Arrays.stream(passMetres).sum();
        double statistic = 0;
        for (int kilometre = 0; kilometre < 12; kilometre++) {
            double expected = 100_000 * passMetres[kilometre] / all;
            statistic += (counted[kilometre] - expected) * (counted[kilometre] - expected) / expected;
        }
        assertThat(ChiSquaredDistribution.of(11).survivalProbability(statistic)).isGreaterThan(0.001);
    }

    @Test
    void nothingIsDrawnOrRecordedWhereNobodyLooked() {
        var seldom = new Chance.PerSurveyEffort(List.of(spans(2900, 4100)), 0);
        List<RoadEvent> events = new ArrayList<>(repeated(new RoadEvent(3, 0, KILOMETRE), 50));
        events.addAll(repeated(new RoadEvent(3, 400, Recording.EXACT), 50));
        Responses responses = responses(events);
        var model = RedrawnPlaces.bySurveys(responses, events, seldom.metresIn(responses.pieces()));
        int[] rows = new int[100];
        int atThree = 0;
        int rounded = 0;
        for (int set = 0; set < 200; set++) {
            model.draw(MonteCarlo.generator(9, set), rows);
            for (int i = 0; i < rows.length; i++) {
                int piece = responses.pieceOf(rows[i]);
                double at = chainage.at(
                        responses.pieces().linkOf(piece), responses.pieces().centre(piece));
                assertThat(at).isBetween(2900.0, 4100.0);
                if (Math.abs(at - 3000) < 13) {
                    atThree++;
                }
                rounded++;
            }
        }
        // Of the rounded half 600 m of 1200 m round to 3 km; of the others 25 m of 1200 m lie in the piece that begins
        // there
        double share = 0.5 * (600.0 / 1200 + 50.0 / 1200);
        var count = BinomialDistribution.of(rounded, share);
        assertThat(atThree)
                .isBetween(count.inverseCumulativeProbability(0.001), count.inverseSurvivalProbability(0.001));
        NullModel.Moments moments = model.moments();
        for (int piece = 0; piece < responses.pieces().count(); piece++) {
            double at = chainage.at(
                    responses.pieces().linkOf(piece), responses.pieces().centre(piece));
            if (at < 2900 || at > 4100) {
                assertThat(moments.recorded()[piece]).isZero();
            }
        }
        assertThat(Arrays.stream(moments.recorded()).sum()).isCloseTo(100, within(1e-9));
    }

    /** From 3.1 to 3.4 km every place is rounded to 3 km, where nobody looked; it is drawn where people did. */
    @Test
    void aStepThatLeavesNoSurveyedGroundDrawsBySurveysAlone() {
        var narrow = new Chance.PerSurveyEffort(List.of(spans(3100, 3400)), 0);
        List<RoadEvent> events = repeated(new RoadEvent(3, 200, KILOMETRE), 10);
        Responses responses = responses(events);
        var model = RedrawnPlaces.bySurveys(responses, events, narrow.metresIn(responses.pieces()));
        int[] rows = new int[10];
        model.draw(MonteCarlo.generator(1, 1), rows);
        assertThat(Arrays.stream(rows).map(responses::pieceOf)).containsOnly(120);
    }

    /** Also where three of ten places are told to the whole kilometre alone, and by the heat kernel. */
    @Test
    void unevenSurveysKeepTheLevelWhereTheyAreKnownAndBreakItWhereTheyAreNot() {
        keepsTheLevel(COMPACT, 0);
        keepsTheLevel(COMPACT, 0.3);
        keepsTheLevel(new RoadKernel.Gaussian(150), 0.3);
        for (double rounding : new double[] {0, 0.3}) {
            assertThat(falseAlarms(new Chance.PerKilometre(), COMPACT, rounding) / (double) SETS)
                    .isGreaterThan(0.5);
        }
    }

    private void keepsTheLevel(RoadKernel kernel, double rounding) {
        var count = BinomialDistribution.of(SETS, ALPHA);
        assertThat(falseAlarms(effort, kernel, rounding))
                .as("false alarms of %d sets at a level of %s, %s, %s rounded", SETS, ALPHA, kernel, rounding)
                .isBetween(count.inverseCumulativeProbability(0.001), count.inverseSurvivalProbability(0.001));
    }

    /** Six more on 100 m of the seldom surveyed road, where thirty lie by chance on that and the other. */
    @Test
    void aClusterOnSeldomSurveyedGroundIsFound() {
        int found = 0;
        int sets = 100;
        for (int set = 0; set < sets; set++) {
            UniformRandomProvider random = MonteCarlo.generator(55, set);
            List<RoadEvent> events = found(random, 0);
            for (int i = 0; i < 6; i++) {
                events.add(at(9050 + 100 * random.nextDouble(), Recording.EXACT));
            }
            Findings findings = search(COMPACT, set).search(events, effort, 2, done -> {});
            found += findings.hotspotsOn(link -> link == 9).isEmpty() ? 0 : 1;
        }
        assertThat(found).isGreaterThanOrEqualTo(90);
    }

    @Test
    void noSurveyIsNoKindOfChance() {
        assertThatThrownBy(() -> new Chance.PerSurveyEffort(List.of(), 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new RoadSpan(0, 5, 5)).isInstanceOf(IllegalArgumentException.class);
        assertThat(new Chance.PerSurveyEffort(List.of(spans(0, 500)), 2)
                        .uncontrolled()
                        .toString())
                .contains("no place for, and that count as none: 2");
        assertThat(effort.claimsErrorRate()).isFalse();
    }

    private int falseAlarms(Chance chance, RoadKernel kernel, double rounding) {
        int alarms = 0;
        for (int set = 0; set < SETS; set++) {
            List<RoadEvent> events = found(MonteCarlo.generator(4321, set), rounding);
            Findings findings = search(kernel, set).search(events, chance, 2, done -> {});
            alarms += findings.smallestP() <= ALPHA ? 1 : 0;
        }
        return alarms;
    }

    private HotspotSearch search(RoadKernel kernel, int seed) {
        return new HotspotSearch(road, chainage, new Settings(kernel, 25, 99, seed, ALPHA, 1));
    }

    /**
     * Animals are struck alike on every kilometre and day, some 1.2 a day on the whole road; of those of a day the survey of
     * the day finds what lies, and is told to lie, on its ground.
     */
    private List<RoadEvent> found(UniformRandomProvider random, double rounding) {
        var struck = PoissonSampler.of(random, 1.2);
        List<RoadEvent> events = new ArrayList<>();
        for (int day = 0; day < WHOLE + OFTEN; day++) {
            double from = day < WHOLE ? 0 : OFTEN_FROM;
            double to = day < WHOLE ? ROAD_METRES : OFTEN_TO;
            for (int i = struck.sample(); i > 0; i--) {
                double chainage = ROAD_METRES * random.nextDouble();
                boolean rounds = random.nextDouble() < rounding;
                double told = rounds ? Math.rint(chainage / 1000) * 1000 : chainage;
                if (chainage >= from && chainage <= to && told >= from && told <= to) {
                    events.add(at(told, rounds ? KILOMETRE : Recording.EXACT));
                }
            }
        }
        return events;
    }

    private static RoadEvent at(double chainage, Recording recording) {
        int link = (int) Math.min(11, Math.floor(chainage / 1000));
        return new RoadEvent(link, chainage - 1000.0 * link, recording);
    }

    private static List<RoadEvent> repeated(RoadEvent event, int times) {
        return java.util.Collections.nCopies(times, event);
    }

    private Responses responses(List<RoadEvent> events) {
        var pieces = new Pieces(road, 25);
        return Responses.build(
                pieces, chainage, new Twins(pieces, Carriageways.NONE), KernelRows.of(COMPACT), 25, events, true, 2);
    }
}
