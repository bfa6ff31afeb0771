package org.culvert.road.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.geo.CheckFiles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NetworkDistancesTest {
    private static final double FAR = 1e9;

    /** Source: spatstat.linnet 3.0-6, all pairs of 16 points on a small network; see checks/net_small. */
    @Test
    void distancesAlongTheNetworkAgreeWithSpatstat() {
        RoadNetwork network = small();
        List<LinkPoint> points = points(network);
        List<CSVRecord> rows = CheckFiles.rowsWithoutNames("net_small/pairdist.csv");
        NetworkDistances distances = NetworkDistances.inMetres(network.graph());
        assertThat(points).hasSize(16);
        for (int i = 0; i < 16; i++) {
            for (int j = 0; j < 16; j++) {
                double expected = Double.parseDouble(rows.get(i).get(j));
                assertThat(distances.between(points.get(i), points.get(j), FAR))
                        .as("%d to %d", i + 1, j + 1)
                        .isCloseTo(expected, within(1e-6));
            }
        }
    }

    /** Source: spatstat.linnet 3.0-6, nearest neighbours. */
    @Test
    void nearestNeighboursAgreeWithSpatstat() {
        RoadNetwork network = small();
        List<LinkPoint> points = points(network);
        NetworkDistances distances = NetworkDistances.inMetres(network.graph());
        for (CSVRecord row : CheckFiles.rows("net_small/nndist.csv")) {
            int from = Integer.parseInt(row.get("id")) - 1;
            distances.searchFrom(points.get(from), FAR);
            int nearest = -1;
            double least = FAR;
            for (int to = 0; to < points.size(); to++) {
                double metres = distances.costOf(points.get(from), points.get(to));
                if (to != from && metres < least - 1e-9) {
                    least = metres;
                    nearest = to;
                }
            }
            assertThat(least).isCloseTo(Double.parseDouble(row.get("nndist")), within(1e-6));
            double theirs = distances.costOf(points.get(from), points.get(Integer.parseInt(row.get("nnwhich")) - 1));
            assertThat(theirs).as("nearest is %d", nearest + 1).isCloseTo(least, within(1e-6));
        }
    }

    @Test
    void aLimitStopsTheSearch() {
        RoadNetwork network = small();
        NetworkDistances distances = NetworkDistances.inMetres(network.graph());
        List<LinkPoint> points = points(network);
        assertThat(distances.between(points.get(0), points.get(3), 1962)).isInfinite();
        assertThat(distances.between(points.get(0), points.get(3), 1963)).isFinite();
        distances.searchFrom(points.get(0), 950);
        assertThat(distances.reachedCount()).isEqualTo(2);
        assertThat(distances.costOf(distances.reachedNode(0))).isEqualTo(100);
        assertThat(distances.costOf(distances.reachedNode(1))).isEqualTo(900);
    }

    @Test
    void timesFollowLimitsAndClasses() {
        RoadNetwork network = Sketch.of()
                .line(RoadAttributes.named("Fast").withSpeedLimitKmh(100), "LINESTRING(0 0, 8500 0)")
                .line(RoadAttributes.named("Slow").withRoadClass("residential"), "LINESTRING(8500 0, 9500 0)")
                .network();
        double seconds = NetworkDistances.inSeconds(network).between(new LinkPoint(0, 0), new LinkPoint(1, 1000), FAR);
        assertThat(seconds).isCloseTo(8500 / (85 / 3.6) + 1000 / (35 / 3.6), within(1e-9));
        assertThat(TravelSpeeds.kmh(RoadAttributes.UNKNOWN)).isPositive();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void distancesAreSymmetricAndKeepTheTriangleInequality(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        RoadNetwork network = LinearReferenceTest.synthetic();
        NetworkDistances distances = NetworkDistances.inMetres(network.graph());
        for (int i = 0; i < 10; i++) {
            LinkPoint a = anywhere(network, random);
            LinkPoint b = anywhere(network, random);
            LinkPoint c = anywhere(network, random);
            double ab = distances.between(a, b, FAR);
            assertThat(distances.between(b, a, FAR)).as("seed %d", seed).isCloseTo(ab, within(1e-6));
            assertThat(distances.between(a, c, FAR) + distances.between(c, b, FAR))
                    .as("seed %d", seed)
                    .isGreaterThanOrEqualTo(ab - 1e-6);
            double[] from = network.pointAt(a.link(), a.metres());
            double[] to = network.pointAt(b.link(), b.metres());
            assertThat(ab).isGreaterThanOrEqualTo(Math.hypot(from[0] - to[0], from[1] - to[1]) - 1e-6);
        }
    }

    private static LinkPoint anywhere(RoadNetwork network, UniformRandomProvider random) {
        int link = random.nextInt(network.linkCount());
        return new LinkPoint(link, random.nextDouble() * network.graph().length(link));
    }

    static RoadNetwork small() {
        List<double[]> vertices = new ArrayList<>();
        for (CSVRecord row : CheckFiles.rows("net_small/vertices.csv")) {
            vertices.add(new double[] {Double.parseDouble(row.get("x")), Double.parseDouble(row.get("y"))});
        }
        NetworkBuilder builder = NetworkBuilder.planar();
        for (CSVRecord row : CheckFiles.rows("net_small/segments.csv")) {
            double[] from = vertices.get(Integer.parseInt(row.get("from")) - 1);
            double[] to = vertices.get(Integer.parseInt(row.get("to")) - 1);
            double[] course = {from[0], from[1], to[0], to[1]};
            builder.add(new RoadLine("segment " + row.get("id"), RoadAttributes.UNKNOWN, null, course));
        }
        return builder.build().network();
    }

    private static List<LinkPoint> points(RoadNetwork network) {
        List<LinkPoint> points = new ArrayList<>();
        for (CSVRecord row : CheckFiles.rows("net_small/points.csv")) {
            int link = Integer.parseInt(row.get("seg")) - 1;
            points.add(new LinkPoint(
                    link, Double.parseDouble(row.get("tp")) * network.graph().length(link)));
        }
        return points;
    }
}
