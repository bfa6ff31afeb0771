package org.culvert.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.HotspotReport.Along;
import org.junit.jupiter.api.Test;

class RoadCurveTest {
    private static HotspotReport.Stretch stretch(double from, double to, List<Along> parts) {
        var point = new HotspotReport.Point(0, 0);
        return new HotspotReport.Stretch(
                3,
                "Mill Road",
                null,
                from,
                to,
                to - from,
                8,
                3.45,
                15.8,
                1,
                7,
                0.01,
                4,
                point,
                point,
                List.of(),
                parts);
    }

    /** Ten pieces of 100 m from km 1: two reported on the fifth and sixth, where one is enough. */
    private static List<Along> parts(double gapMetres) {
        List<Along> parts = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            double from = 1000 + 100 * i + (i < 8 ? 0 : gapMetres);
            boolean high = i == 4 || i == 5;
            parts.add(new Along(from, from + 100, high ? 2 : 0.5, 0.25, i == 0 ? null : 1.0, high));
        }
        return parts;
    }

    private static List<double[]> points(String path) {
        List<double[]> points = new ArrayList<>();
        for (String point : path.substring(1).replace("Z", "").split("L")) {
            String[] xy = point.split(" ");
            points.add(new double[] {Double.parseDouble(xy[0]), Double.parseDouble(xy[1])});
        }
        return points;
    }

    @Test
    void theLineIsAboveTheShadingWhereItIsSignificant() {
        RoadCurve curve = RoadCurve.of(List.of(stretch(1400, 1600, parts(0)))).get(0);
        List<double[]> reported = points(curve.reported().get(0));
        List<double[]> shaded = points(curve.shaded().get(0));
        assertThat(reported).hasSize(12);
        for (int i = 0; i < 10; i++) {
            double[] line = reported.get(i + 1);
            double[] edge = shaded.get(i + 2);
            assertThat(edge[0]).isEqualTo(line[0]);
            assertThat(line[1] <= edge[1]).isEqualTo(parts(0).get(i).significant());
        }
        assertThat(shaded.get(2)[1]).as("nothing would be significant there").isEqualTo(RoadCurve.TOP);
        assertThat(reported.get(0)[0]).isEqualTo(RoadCurve.LEFT);
        assertThat(reported.get(11)[0]).isEqualTo(RoadCurve.RIGHT);
        assertThat(Double.parseDouble(curve.stretchX())).isCloseTo(RoadCurve.LEFT + 0.4 * 316, within(0.06));
        assertThat(Double.parseDouble(curve.stretchWidth())).isCloseTo(0.2 * 316, within(0.06));
    }

    @Test
    void itSaysTheSameInFigures() {
        RoadCurve curve = RoadCurve.of(List.of(stretch(1400, 1600, parts(0)))).get(0);
        assertThat(List.of(curve.road(), curve.from(), curve.to())).containsExactly("Mill Road", "1.00", "2.00");
        assertThat(curve.most()).isEqualTo(new RoadCurve.Most("1.45", "2.0", "0.25", "1.0"));
        assertThat(curve.above()).containsExactly(new RoadCurve.Span("1.40", "1.60"));
        assertThat(curve.kilometres()).extracting(Tick::words).containsExactly("1", "1.2", "1.4", "1.6", "1.8", "2");
        assertThat(curve.rates()).extracting(Tick::words).containsExactly("0", "0.5", "1", "1.5", "2");
    }

    @Test
    void aGapInTheRoadIsOneInTheLines() {
        RoadCurve curve = RoadCurve.of(List.of(stretch(1400, 1600, parts(500)))).get(0);
        assertThat(curve.reported()).hasSize(2);
        assertThat(curve.expected()).hasSize(2);
        assertThat(curve.shaded()).hasSize(2);
        assertThat(points(curve.reported().get(1)).get(0)[0])
                .isGreaterThan(points(curve.reported().get(0)).get(9)[0] + 50);
    }

    @Test
    void whatIsNotToldIsNotDrawn() {
        assertThat(RoadCurve.of(List.of(stretch(1400, 1600, null), stretch(0, 1, List.of()))))
                .isEmpty();
    }

    @Test
    void numbersFarAboveWhatWasReportedStayInTheDrawing() {
        List<Along> parts = List.of(new Along(0, 100, 1, 0.1, 1e6, false), new Along(100, 200, 0, 0, null, false));
        RoadCurve curve = RoadCurve.of(List.of(stretch(0, 200, parts))).get(0);
        for (double[] point : points(curve.shaded().get(0))) {
            assertThat(point[1]).isBetween(RoadCurve.TOP, RoadCurve.FOOT);
        }
        assertThat(curve.above()).isEmpty();
    }
}
