package org.culvert.road.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/** Sketches in metres around 30.5 south, 150 east; Hausdorff distances by JTS where they are not plain geometry. */
class LinkMatchingTest {
    private static final double LATITUDE = -30.5;
    private static final double METRES_EAST = 111_320 * Math.cos(Math.toRadians(LATITUDE));

    private static double[] degrees(double... metres) {
        double[] degrees = new double[metres.length];
        for (int i = 0; i < metres.length; i += 2) {
            degrees[i] = 150 + metres[i] / METRES_EAST;
            degrees[i + 1] = LATITUDE + metres[i + 1] / 111_320;
        }
        return degrees;
    }

    private static RoadLine line(String name, double... metres) {
        return new RoadLine(name, RoadAttributes.named(name), null, degrees(metres));
    }

    private static RoadNetwork network(RoadLine... lines) {
        NetworkBuilder builder = NetworkBuilder.geographic();
        for (RoadLine line : lines) {
            builder.add(line);
        }
        return builder.build().network();
    }

    @Test
    void theSameLinesInAnotherOrderAndUnderOtherNamesAreTheSame() {
        RoadNetwork before = network(line("A", 0, 0, 500, 0), line("B", 0, 100, 500, 100), line("C", 500, 0, 500, 100));
        RoadNetwork now = network(line("X", 500, 0, 500, 100), line("Y", 0, 0, 500, 0), line("Z", 0, 100, 500, 100));
        assertThat(LinkMatching.match(before, now)).containsExactly(2, 0, 1);
        assertThat(LinkMatching.match(before, before)).containsExactly(0, 1, 2);
    }

    /** Three metres aside and one more vertex is the same survey; six metres aside is another. */
    @Test
    void withinTheToleranceItIsTheSame() {
        RoadNetwork before = network(line("A", 0, 0, 500, 0));
        assertThat(LinkMatching.match(before, network(line("A", 0, 3, 250, 3.5, 500, 3))))
                .containsExactly(0);
        assertThat(LinkMatching.match(before, network(line("A", 0, 6, 500, 6)))).containsExactly(-1);
        assertThat(LinkMatching.match(before, network(line("A", 0, 0, 250, 8, 500, 0))))
                .containsExactly(-1);
    }

    @Test
    void directionLevelLengthAndEndsMatter() {
        RoadNetwork before = network(line("A", 0, 0, 500, 0));
        assertThat(LinkMatching.match(before, network(line("A", 500, 0, 0, 0)))).containsExactly(-1);
        assertThat(LinkMatching.match(before, network(line("A", 0, 0, 480, 0)))).containsExactly(-1);
        RoadLine bridge =
                new RoadLine("A", RoadAttributes.named("A").atLevel(1, Structure.BRIDGE), null, degrees(0, 0, 500, 0));
        assertThat(LinkMatching.match(before, network(bridge))).containsExactly(-1);
        // There and back on nearly the same way: as near as the straight one, and twice as long
        assertThat(LinkMatching.match(before, network(line("A", 0, 0, 300, 1, 200, 2, 500, 0))))
                .containsExactly(-1);
    }

    /** A junction that is new cuts a link in two, neither of which is the old one. */
    @Test
    void aLinkThatIsCutIsNoMore() {
        RoadNetwork before = network(line("A", 0, 0, 500, 0, 1000, 0));
        RoadNetwork now = network(line("A", 0, 0, 500, 0, 1000, 0), line("B", 500, 0, 500, 300));
        assertThat(now.linkCount()).isEqualTo(3);
        assertThat(LinkMatching.match(before, now)).containsOnly(-1);
    }

    /** Two carriageways four metres apart: each is the nearest one, and none is two. */
    @Test
    void eachLinkIsTheSameAsOneOther() {
        RoadNetwork before = network(line("A", 0, 0, 500, 0), line("B", 0, 4, 500, 4));
        RoadNetwork now = network(line("B", 0, 4.5, 500, 4.5), line("A", 0, 0.5, 500, 0.5));
        assertThat(LinkMatching.match(before, now)).containsExactly(1, 0);
        assertThat(LinkMatching.match(before, network(line("A", 0, 2, 500, 2))))
                .hasSize(1)
                .doesNotContain(-1);
    }

    @Test
    void shakenLinesAreTheSameExactlyWhereTheyAreNear() {
        var geometries = new GeometryFactory();
        int same = 0;
        int other = 0;
        for (int seed = 1; seed <= 300; seed++) {
            var random = new Random(seed);
            double shake = 0.04 * seed;
            List<Double> old = new ArrayList<>();
            List<Double> shaken = new ArrayList<>();
            for (int i = 0; i <= 8; i++) {
                double x = 60 * i;
                double y = 40 * Math.sin(i) + 10 * random.nextDouble();
                boolean end = i == 0 || i == 8;
                old.add(x);
                old.add(y);
                shaken.add(x);
                shaken.add(end ? y : y + shake * (2 * random.nextDouble() - 1));
            }
            double[] one = old.stream().mapToDouble(Double::doubleValue).toArray();
            double[] two = shaken.stream().mapToDouble(Double::doubleValue).toArray();
            RoadNetwork before = network(line("A", one));
            RoadNetwork now = network(line("A", two));
            double apart = DiscreteHausdorffDistance.distance(
                    geometries.createLineString(coordinates(one)), geometries.createLineString(coordinates(two)), 0.01);
            double longer = Math.abs(before.graph().length(0) - now.graph().length(0));
            if (Math.abs(apart - LinkMatching.TOLERANCE_METRES) < 0.1 || longer > 9.9) {
                continue;
            }
            boolean isSame = LinkMatching.match(before, now)[0] == 0;
            assertThat(isSame).as("seed %s, %s m", seed, apart).isEqualTo(apart < LinkMatching.TOLERANCE_METRES);
            same += isSame ? 1 : 0;
            other += isSame ? 0 : 1;
        }
        assertThat(same).isGreaterThan(50);
        assertThat(other).isGreaterThan(50);
    }

    private static Coordinate[] coordinates(double[] line) {
        var coordinates = new Coordinate[line.length / 2];
        for (int i = 0; i < coordinates.length; i++) {
            coordinates[i] = new Coordinate(line[2 * i], line[2 * i + 1]);
        }
        return coordinates;
    }
}
