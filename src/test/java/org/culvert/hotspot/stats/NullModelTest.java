package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

/** Moments that are computed are compared with moments of simulated sets. */
class NullModelTest {
    private static final int SETS = 20_000;
    private static final RoadKernel KERNEL = new RoadKernel.Epanechnikov(300);

    private final RoadGraph graph = Networks.grid(4, 400);
    private final Pieces pieces = new Pieces(graph, 50);
    private final Chainage chainage = Networks.gridChainage(4, graph);

    @Test
    void momentsOfRedrawnPlacesAreThoseOfTheirSimulations() {
        List<RoadEvent> events = mixedEvents(25);
        Responses responses = responses(events, true);
        int[] stratum = new int[pieces.count()];
        Arrays.setAll(stratum, piece -> pieces.linkOf(piece) % 3 == 0 ? 1 : 0);
        compare(new RedrawnPlaces(responses, events, stratum), responses, events.size());
    }

    @Test
    void momentsOfPlacesBySurveysAreThoseOfTheirSimulations() {
        List<RoadEvent> events = mixedEvents(25);
        Responses responses = responses(events, true);
        double[] metres = new double[pieces.count()];
        Arrays.setAll(metres, piece -> pieces.linkOf(piece) % 4 == 0 ? 0 : pieces.length(piece) * (piece % 5));
        compare(RedrawnPlaces.bySurveys(responses, events, metres), responses, events.size());
    }

    @Test
    void momentsOfShuffledReportsAreThoseOfTheirSimulations() {
        List<RoadEvent> reports = mixedEvents(60);
        Responses responses = responses(reports, false);
        compare(new ShuffledReports(responses, Responses.inOrder(reports), 20), responses, 20);
    }

    @Test
    void aSimulatedReportIsDrawnOnlyOnce() {
        List<RoadEvent> reports = new ArrayList<>();
        for (int link = 0; link < 12; link++) {
            reports.add(new RoadEvent(link, 210, Recording.EXACT));
        }
        Responses responses = responses(reports, false);
        var model = new ShuffledReports(responses, reports, 12);
        int[] rows = new int[12];
        for (int set = 0; set < 50; set++) {
            model.draw(MonteCarlo.generator(5, set), rows);
            assertThat(Arrays.stream(rows).distinct().count()).isEqualTo(12);
        }
        assertThatThrownBy(() -> new ShuffledReports(responses, reports, 13))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void redrawnEventsKeepTheirStratumAndTheirRounding() {
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            events.add(new RoadEvent(0, 200, new Recording(400, 0)));
        }
        Responses responses = responses(events, true);
        int[] stratum = new int[pieces.count()];
        Arrays.setAll(stratum, piece -> pieces.linkOf(piece));
        int[] rows = new int[40];
        new RedrawnPlaces(responses, events, stratum).draw(MonteCarlo.generator(1, 1), rows);
        assertThat(Arrays.stream(rows).boxed()).allSatisfy(row -> {
            double recorded = chainage.at(pieces.linkOf(row), pieces.centre(row));
            assertThat(Math.abs(recorded / 400 - Math.rint(recorded / 400)) * 400)
                    .isLessThanOrEqualTo(25.001);
            assertThat(chainage.road(pieces.linkOf(row))).isZero();
        });
    }

    @Test
    void spreadEventsKeepTheirMassAndReachFurther() {
        var exact = new RoadEvent(1, 200, Recording.EXACT);
        var spread = new RoadEvent(1, 200, new Recording(0, 400));
        Responses responses = responses(List.of(exact, spread), true);
        KernelRows rows = responses.rowsOf(responses.row(spread));
        int piece = responses.pieceOf(responses.row(spread));
        assertThat(rows.mass(piece, pieces)).isCloseTo(1, within(1e-6));
        double[] near = new double[pieces.count()];
        double[] far = new double[pieces.count()];
        responses.addTo(responses.row(exact), near, new int[pieces.count()], 0);
        responses.addTo(responses.row(spread), far, new int[pieces.count()], 0);
        assertThat(far[pieces.at(1, 200)]).isLessThan(near[pieces.at(1, 200)]);
        assertThat(near[pieces.at(2, 300)]).isZero();
        assertThat(far[pieces.at(2, 300)]).isPositive();
    }

    private Responses responses(List<RoadEvent> events, boolean everywhere) {
        return Responses.build(
                pieces,
                chainage,
                new Twins(pieces, Carriageways.NONE),
                KernelRows.of(KERNEL),
                50,
                events,
                everywhere,
                2);
    }

    private List<RoadEvent> mixedEvents(int count) {
        var random = Networks.random(99);
        Recording[] recordings = {Recording.EXACT, new Recording(400, 0), new Recording(100, 150)};
        List<RoadEvent> events = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            events.add(new RoadEvent(
                    random.nextInt(graph.linkCount()), 400 * random.nextDouble(), recordings[random.nextInt(3)]));
        }
        return Responses.inOrder(events);
    }

    private void compare(NullModel model, Responses responses, int events) {
        double[] sum = new double[pieces.count()];
        double[] squares = new double[pieces.count()];
        double[] recorded = new double[pieces.count()];
        int[] rows = new int[events];
        int[] touched = new int[pieces.count()];
        for (int set = 0; set < SETS; set++) {
            model.draw(MonteCarlo.generator(42, set), rows);
            double[] field = new double[pieces.count()];
            for (int row : rows) {
                responses.addTo(row, field, touched, 0);
                recorded[responses.pieceOf(row)]++;
            }
            for (int piece = 0; piece < field.length; piece++) {
                sum[piece] += field[piece];
                squares[piece] += field[piece] * field[piece];
            }
        }
        NullModel.Moments moments = model.moments();
        double greatestVariance = Arrays.stream(moments.variance()).max().orElseThrow();
        for (int piece = 0; piece < pieces.count(); piece++) {
            double mean = sum[piece] / SETS;
            double variance = squares[piece] / SETS - mean * mean;
            double noise = Math.sqrt(moments.variance()[piece] / SETS);
            assertThat(mean).as("mean at %d", piece).isCloseTo(moments.mean()[piece], within(5 * noise + 1e-12));
            assertThat(variance)
                    .as("variance at %d", piece)
                    .isCloseTo(
                            moments.variance()[piece],
                            within(0.06 * moments.variance()[piece] + 0.003 * greatestVariance));
            assertThat(recorded[piece] / SETS)
                    .as("recorded at %d", piece)
                    .isCloseTo(moments.recorded()[piece], within(5 * Math.sqrt(moments.recorded()[piece] / SETS)));
        }
        assertThat(Arrays.stream(moments.recorded()).sum()).isCloseTo(events, within(1e-9));
    }
}
