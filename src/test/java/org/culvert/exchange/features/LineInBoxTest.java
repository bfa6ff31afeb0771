package org.culvert.exchange.features;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.geo.Bounds;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;

/** Against the JTS Topology Suite on coordinates of a grid, so that lines touch corners and run along edges often. */
class LineInBoxTest {
    private static final GeometryFactory JTS = new GeometryFactory();

    @Test
    void aLineMeetsABoxWhereJtsSaysSo() {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(7L);
        int met = 0;
        for (int i = 0; i < 20_000; i++) {
            double[][] line = new double[2 + random.nextInt(3)][];
            Coordinate[] same = new Coordinate[line.length];
            for (int j = 0; j < line.length; j++) {
                line[j] = new double[] {random.nextInt(8), random.nextInt(8)};
                same[j] = new Coordinate(line[j][0], line[j][1]);
            }
            int west = random.nextInt(7);
            int south = random.nextInt(7);
            int east = west + random.nextInt(3);
            int north = south + random.nextInt(3);
            boolean expected =
                    JTS.createLineString(same).intersects(JTS.toGeometry(new Envelope(west, east, south, north)));
            assertThat(LineInBox.meet(line, new Bounds(south, west, north, east)))
                    .as("%s in %d..%d, %d..%d", JTS.createLineString(same), west, east, south, north)
                    .isEqualTo(expected);
            met += expected ? 1 : 0;
        }
        assertThat(met).isBetween(5_000, 15_000);
    }

    @Test
    void aBoxMayCrossTheAntimeridian() {
        var box = new Bounds(-10, 170, 10, -170);
        assertThat(LineInBox.meet(new double[][] {{175, 0}, {176, 0}}, box)).isTrue();
        assertThat(LineInBox.meet(new double[][] {{-175, 0}, {-176, 0}}, box)).isTrue();
        assertThat(LineInBox.meet(new double[][] {{0, 0}, {1, 0}}, box)).isFalse();
    }
}
