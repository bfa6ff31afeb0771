package org.culvert.web.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class DrawingTest {
    /** SVG 1.1, 8.3.8: the sweep flag says that the angle grows, which with y downwards is by the clock. */
    @Test
    void anArcLiesOnItsCircleOnTheSideThatTheSweepFlagSays() {
        for (int sweep = 0; sweep <= 1; sweep++) {
            List<double[]> points = points(Drawing.path("M10 0A10 10 0 0 " + sweep + " 0 10"));
            double middleX = sweep == 1 ? 0 : 10;
            double middleY = sweep == 1 ? 0 : 10;
            assertThat(points).hasSizeGreaterThan(20);
            assertThat(points.get(points.size() - 1)).containsExactly(0, 10);
            for (double[] point : points) {
                assertThat(Math.hypot(point[0] - middleX, point[1] - middleY)).isCloseTo(10, within(1e-9));
                assertThat(point[0]).isBetween(-1e-9, 10 + 1e-9);
                assertThat(point[1]).isBetween(-1e-9, 10 + 1e-9);
            }
        }
    }

    @Test
    void aPathGoesThroughItsPointsAndCloses() {
        Path2D path = Drawing.path("M1.5 2L30,4L-5 6.25Z");
        assertThat(points(path)).containsExactly(new double[] {1.5, 2}, new double[] {30, 4}, new double[] {-5, 6.25});
        PathIterator last = path.getPathIterator(null);
        int segment = -1;
        for (; !last.isDone(); last.next()) {
            segment = last.currentSegment(new double[6]);
        }
        assertThat(segment).isEqualTo(PathIterator.SEG_CLOSE);
    }

    @Test
    void whatItDoesNotKnowIsNotPassedOverInSilence() {
        assertThatThrownBy(() -> Drawing.path("M0 0Q1 1 2 2")).isInstanceOf(RuntimeException.class);
    }

    private static List<double[]> points(Path2D path) {
        List<double[]> points = new ArrayList<>();
        for (PathIterator i = path.getPathIterator(null); !i.isDone(); i.next()) {
            double[] at = new double[6];
            if (i.currentSegment(at) != PathIterator.SEG_CLOSE) {
                points.add(new double[] {at[0], at[1]});
            }
        }
        return points;
    }
}
