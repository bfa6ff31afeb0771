package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.culvert.hotspot.stats.NetworkKernel.Rule;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class KernelRowsTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void everyRowHasAMassOfOne(long seed) {
        RoadGraph graph = Networks.anyNetwork(Networks.random(seed));
        var pieces = new Pieces(graph, 30);
        KernelRows rows = KernelRows.build(pieces, new RoadKernel.Epanechnikov(300), Networks.all(pieces.count()), 2);
        for (int piece = 0; piece < pieces.count(); piece++) {
            assertThat(rows.mass(piece, pieces))
                    .as("seed %d, piece %d", seed, piece)
                    .isCloseTo(1, within(1e-6));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14, 15})
    void rowsAreTheExactKernelAveragedOverEachPiece(long seed) {
        RoadGraph graph = Networks.anyNetwork(Networks.random(seed));
        var pieces = new Pieces(graph, 40);
        var kernel = new RoadKernel.Epanechnikov(220);
        KernelRows rows = KernelRows.build(pieces, kernel, Networks.all(pieces.count()), 1);
        var exact = new NetworkKernel(graph, kernel, Rule.EQUAL_SPLIT_DISCONTINUOUS);
        int source = pieces.count() / 2;
        double[] row = new double[pieces.count()];
        rows.addTo(source, row, new int[pieces.count()], 0);
        double peak = kernel.density(0);
        for (int piece = 0; piece < pieces.count(); piece++) {
            int steps = 400;
            int[] links = new int[steps];
            Arrays.fill(links, pieces.linkOf(piece));
            double start = pieces.start(piece);
            double step = pieces.length(piece) / steps;
            double[] places = IntStream.range(0, steps)
                    .mapToDouble(i -> start + (i + 0.5) * step)
                    .toArray();
            double mean = Arrays.stream(exact.densityOf(pieces.linkOf(source), pieces.centre(source), links, places))
                    .average()
                    .orElseThrow();
            assertThat(row[piece]).as("seed %d, piece %d", seed, piece).isCloseTo(mean, within(5e-3 * peak));
        }
    }

    /** Where nothing is merged the rows are exact: a road, and a star. */
    @Test
    void onAStarTheRowsAreExact() {
        var graph = new RoadGraph(4, new int[] {0, 0, 0}, new int[] {1, 2, 3}, new double[] {500, 500, 500});
        var pieces = new Pieces(graph, 50);
        var kernel = new RoadKernel.Epanechnikov(200);
        KernelRows rows = KernelRows.build(pieces, kernel, Networks.all(pieces.count()), 1);
        double[] row = new double[pieces.count()];
        rows.addTo(pieces.at(0, 75), row, new int[pieces.count()], 0);
        // from 75 m on one arm, a piece of another arm between 0 and 50 m gets half of what lies 75 to 125 m away
        double wanted = 0.5 * (kernel.massWithin(125) - kernel.massWithin(75)) / 50;
        assertThat(row[pieces.at(1, 25)]).isCloseTo(wanted, within(1e-7 * wanted + 1e-10));
        assertThat(row[pieces.at(2, 25)]).isEqualTo(row[pieces.at(1, 25)]);
    }

    @Test
    void theRowsDoNotDependOnTheNumberOfThreads() {
        RoadGraph graph = Networks.grid(6, 130);
        var pieces = new Pieces(graph, 25);
        var kernel = new RoadKernel.Epanechnikov(400);
        KernelRows one = KernelRows.build(pieces, kernel, Networks.all(pieces.count()), 1);
        KernelRows four = KernelRows.build(pieces, kernel, Networks.all(pieces.count()), 4);
        assertThat(four.entries()).isEqualTo(one.entries());
        for (int entry = 0; entry < one.entries(); entry++) {
            assertThat(four.piece(entry)).isEqualTo(one.piece(entry));
            assertThat(four.value(entry)).isEqualTo(one.value(entry));
        }
    }

    /** A street grid of 20 m links with a reach of 500 m has more paths than could ever be followed one by one. */
    @Test
    void aDenseStreetGridIsDoneAndKeepsItsMass() {
        RoadGraph graph = Networks.grid(12, 20);
        var pieces = new Pieces(graph, 20);
        KernelRows rows = KernelRows.build(pieces, new RoadKernel.Epanechnikov(500), Networks.all(pieces.count()), 2);
        for (int piece = 0; piece < pieces.count(); piece++) {
            assertThat(rows.mass(piece, pieces)).isCloseTo(1, within(1e-6));
        }
    }
}
