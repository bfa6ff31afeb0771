package org.culvert.care.growth.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.culvert.care.growth.curve.GrowthCurve.Rising;
import org.culvert.care.growth.curve.GrowthCurve.Row;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;

/** All figures are invented. */
class GrowthCurveTest {
    private static final GeometryFactory SHAPES = new GeometryFactory();

    private static List<Row> rows(double... agesAndValues) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < agesAndValues.length; i += 2) {
            rows.add(new Row(agesAndValues[i], agesAndValues[i + 1]));
        }
        return rows;
    }

    /** Against where JTS lets a straight line cut the same line of rows. */
    @Test
    void liesOnTheLineBetweenTwoRows() {
        var random = new Random(20261129);
        for (int round = 0; round < 100; round++) {
            List<Row> rows = new ArrayList<>();
            double age = random.nextInt(5);
            double value = 1 + random.nextInt(50);
            int n = 2 + random.nextInt(8);
            for (int i = 0; i < n; i++) {
                rows.add(new Row(age, value));
                age += 1 + random.nextInt(40);
                value += 0.5 + random.nextInt(90);
            }
            GrowthCurve curve = GrowthCurve.of(rows);
            LineString line = SHAPES.createLineString(rows.stream()
                    .map(row -> new Coordinate(row.ageDays(), row.value()))
                    .toArray(Coordinate[]::new));
            Row first = rows.get(0);
            Row last = rows.get(n - 1);
            double at = first.ageDays() + random.nextDouble() * (last.ageDays() - first.ageDays());
            Geometry up = line.intersection(SHAPES.createLineString(
                    new Coordinate[] {new Coordinate(at, -1), new Coordinate(at, last.value() + 1)}));
            assertThat(curve.valueAt(at).orElseThrow()).isCloseTo(up.getCoordinate().y, within(1e-6));
            double of = first.value() + random.nextDouble() * (last.value() - first.value());
            Geometry across = line.intersection(SHAPES.createLineString(
                    new Coordinate[] {new Coordinate(-1, of), new Coordinate(last.ageDays() + 1, of)}));
            assertThat(curve.ageAt(of).orElseThrow()).isCloseTo(across.getCoordinate().x, within(1e-6));
        }
    }

    @Test
    void saysNothingOutsideOfItsRows() {
        GrowthCurve curve = GrowthCurve.of(rows(10, 100, 20, 200));
        assertThat(curve.valueAt(10)).hasValue(100);
        assertThat(curve.valueAt(20)).hasValue(200);
        assertThat(curve.valueAt(9.99)).isEmpty();
        assertThat(curve.valueAt(20.01)).isEmpty();
        assertThat(curve.ageAt(99)).isEmpty();
        assertThat(curve.ageAt(201)).isEmpty();
    }

    @Test
    void namesEachRowThatIsWrong() {
        assertThat(GrowthCurve.faults(rows(0, 5, 0, 6, -1, 7, 9, 0, 8, 9), Rising.strictly))
                .extracting(GrowthCurve.Fault::row, GrowthCurve.Fault::field)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(1, "ageDays"),
                        org.assertj.core.groups.Tuple.tuple(2, "ageDays"),
                        org.assertj.core.groups.Tuple.tuple(3, "value"),
                        org.assertj.core.groups.Tuple.tuple(4, "ageDays"));
        List<Row> flat = rows(0, 5, 1, 5, 2, 4);
        assertThat(GrowthCurve.faults(flat, Rising.strictly))
                .extracting(GrowthCurve.Fault::row)
                .containsExactly(1, 2);
        assertThat(GrowthCurve.faults(flat, Rising.notFall))
                .extracting(GrowthCurve.Fault::row)
                .containsExactly(2);
        assertThat(GrowthCurve.faults(flat, Rising.no)).isEmpty();
        assertThat(GrowthCurve.faults(rows(Double.NaN, Double.NaN), Rising.no)).hasSize(2);
    }

    @Test
    void aValueOfTwoAgesTellsNone() {
        GrowthCurve chick = GrowthCurve.of(rows(0, 10, 20, 50, 30, 40));
        assertThat(chick.valueAt(25)).hasValue(45);
        assertThatThrownBy(() -> chick.ageAt(45)).isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> GrowthCurve.of(rows(0, 10))).isInstanceOf(IllegalArgumentException.class);
    }
}
