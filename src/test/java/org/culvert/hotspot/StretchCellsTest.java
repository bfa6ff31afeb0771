package org.culvert.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Grids of A. D. Chapman, Current Best Practices for Generalizing Sensitive Species Occurrence Data, GBIF 2020. */
class StretchCellsTest {
    private static HotspotReport.Stretch stretch(double from, double to, double[]... line) {
        var first = new HotspotReport.Point(line[0][1], line[0][0]);
        var last = new HotspotReport.Point(line[line.length - 1][1], line[line.length - 1][0]);
        return new HotspotReport.Stretch(
                1,
                "Mill Road",
                "Upper Shire",
                from,
                to,
                to - from,
                9,
                4,
                17,
                2,
                7,
                0.01,
                3.25,
                first,
                last,
                List.of(new double[][][] {line}),
                List.of(new HotspotReport.Along(from, to, 9, 2, 6.0, true)));
    }

    @Test
    void stretchesOfTheSameCellsAreTheSameAfterwards() {
        var one = StretchCells.generalise(
                stretch(2300, 2700, new double[] {150.0311, -30.5012}, new double[] {150.0352, -30.5017}), 0.01);
        var other = StretchCells.generalise(
                stretch(2900, 3100, new double[] {150.0381, -30.5061}, new double[] {150.0399, -30.5099}), 0.01);
        assertThat(other.from()).isEqualTo(one.from()).isEqualTo(one.to());
        assertThat(one.alongTheRoad()).as("a curve would tell the place").isNull();
        assertThat(other.fromChainageMetres())
                .isEqualTo(one.fromChainageMetres())
                .isEqualTo(2222);
        assertThat(other.toChainageMetres()).isEqualTo(one.toChainageMetres()).isEqualTo(3333);
        assertThat(other.lines().get(0)).isDeepEqualTo(one.lines().get(0));
    }

    @Test
    void theBoxAndTheChainagesHoldTheStretchAndLieOnTheGrid() {
        long seed = 20261125;
        Random random = new Random(seed);
        for (double grid : new double[] {1, 0.1, 0.01, 0.001}) {
            for (int i = 0; i < 200; i++) {
                double[][] line = new double[2 + random.nextInt(5)][];
                for (int j = 0; j < line.length; j++) {
                    line[j] = new double[] {150 + random.nextDouble(), -31 + random.nextDouble()};
                }
                double from = random.nextInt(90000);
                double to = from + 1 + random.nextInt(3000);
                var told = StretchCells.generalise(stretch(from, to, line), grid);
                String about = "seed " + seed + ", grid " + grid + ", round " + i;
                assertThat(told.fromChainageMetres()).as(about).isLessThanOrEqualTo(from);
                assertThat(told.toChainageMetres()).as(about).isGreaterThanOrEqualTo(to);
                assertThat(told.toChainageMetres() - told.fromChainageMetres())
                        .as(about)
                        .isGreaterThanOrEqualTo(grid * 111_000);
                double[][] box = told.lines().get(0);
                for (double[] point : line) {
                    assertThat(point[0]).as(about).isBetween(box[0][0] - 1e-6, box[2][0] + 1e-6);
                    assertThat(point[1]).as(about).isBetween(box[0][1] - 1e-6, box[2][1] + 1e-6);
                }
                for (double[] corner : box) {
                    assertThat(corner[0] / grid).as(about).isCloseTo(Math.rint(corner[0] / grid), within(1e-3));
                    assertThat(corner[1] / grid).as(about).isCloseTo(Math.rint(corner[1] / grid), within(1e-3));
                }
            }
        }
    }
}
