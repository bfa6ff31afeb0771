package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.sf.geographiclib.Geodesic;
import org.culvert.hotspot.HotspotReport;
import org.junit.jupiter.api.Test;

class RoadMapTest {
    private static final double[][] EASTWARDS = {{150.0, -33.0}, {150.02, -33.0}};
    private static final double[][] NORTHWARDS = {{150.0, -33.0}, {150.0, -32.99}};

    /** Lengths against geodesics on the ellipsoid (Karney's GeographicLib). */
    @Test
    void linesHaveTheirLengthsByTheBarOfTheScale() {
        RoadMap map = RoadMap.of(List.of(stretch(1, EASTWARDS), stretch(2, NORTHWARDS)), null);
        double barMetres = map.scaleWords().endsWith(" km")
                ? 1000 * Double.parseDouble(map.scaleWords().replace(" km", ""))
                : Double.parseDouble(map.scaleWords().replace(" m", ""));
        double pixelsPerMetre = (Double.parseDouble(map.scaleEnd()) - 14) / barMetres;
        for (int i = 0; i < 2; i++) {
            double[][] line = i == 0 ? EASTWARDS : NORTHWARDS;
            double metres = Geodesic.WGS84.Inverse(line[0][1], line[0][0], line[1][1], line[1][0]).s12;
            assertThat(length(map.hotspots().get(i)) / pixelsPerMetre).isCloseTo(metres, within(metres * 0.002));
        }
        assertThat(map.roads()).isEmpty();
        assertThat(map.roadsVersion()).isNull();
    }

    @Test
    void northIsUpAndEastIsRight() {
        RoadMap map = RoadMap.of(List.of(stretch(1, EASTWARDS), stretch(2, NORTHWARDS)), null);
        double[] east = ends(map.hotspots().get(0));
        double[] north = ends(map.hotspots().get(1));
        assertThat(east[2]).isGreaterThan(east[0]);
        assertThat(north[3]).isLessThan(north[1]);
    }

    @Test
    void labelsOfHotspotsInOnePlaceDoNotCoverEachOther() {
        var many = new java.util.ArrayList<HotspotReport.Stretch>();
        for (int rank = 1; rank <= 30; rank++) {
            many.add(stretch(rank, NORTHWARDS));
        }
        List<RoadMap.Label> labels = RoadMap.of(many, null).labels();
        assertThat(labels).hasSize(30);
        for (int i = 0; i < labels.size(); i++) {
            for (int j = 0; j < i; j++) {
                double x = Math.abs(
                        number(labels.get(i).x()) - number(labels.get(j).x()));
                double y = Math.abs(
                        number(labels.get(i).y()) - number(labels.get(j).y()));
                assertThat(x >= 17.8 || y >= 13.8)
                        .as(labels.get(i) + " and " + labels.get(j))
                        .isTrue();
            }
        }
    }

    @Test
    void withoutHotspotsThereIsNoMap() {
        assertThat(RoadMap.of(List.of(), null)).isNull();
    }

    private static double length(String path) {
        double[] ends = ends(path);
        return Math.hypot(ends[2] - ends[0], ends[3] - ends[1]);
    }

    private static double[] ends(String path) {
        Matcher numbers =
                Pattern.compile("M(\\S+) (\\S+)L(?:.*L)?(\\S+) (\\S+)").matcher(path);
        assertThat(numbers.matches()).as(path).isTrue();
        return new double[] {
            number(numbers.group(1)), number(numbers.group(2)), number(numbers.group(3)), number(numbers.group(4))
        };
    }

    private static double number(String text) {
        return Double.parseDouble(text);
    }

    private static HotspotReport.Stretch stretch(int rank, double[][] line) {
        var point = new HotspotReport.Point(line[0][1], line[0][0]);
        return new HotspotReport.Stretch(
                rank,
                "a road",
                null,
                0,
                1000,
                1000,
                5,
                1,
                9,
                1,
                4,
                0.01,
                2,
                point,
                point,
                List.<double[][]>of(line),
                null);
    }
}
