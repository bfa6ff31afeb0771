package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.LineString;

class ShapesTest {
    @Test
    void longitudeIsX() {
        assertThat(Shapes.point(new Position(-33.8688, 151.2093)).getX()).isEqualTo(151.2093);
        assertThat(Shapes.position(Shapes.point(new Position(-33.8688, 151.2093))))
                .isEqualTo(new Position(-33.8688, 151.2093));
    }

    @Test
    void linesComeBackFromWellKnownBinaryToTheLastBit() {
        double[] course = {151.1, -33.1, 151.2, -33.2, 151.30000000000001, -33.3};
        LineString back = (LineString) Shapes.fromWkb(Shapes.wkb(Shapes.line(course)));
        assertThat(Shapes.longitudeLatitude(back)).isEqualTo(course);
        assertThatThrownBy(() -> Shapes.fromWkb(new byte[] {1, 2, 3})).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void boundsMayCrossTheAntimeridian() {
        Bounds fiji = new Bounds(-20, 176, -15, -178);
        assertThat(fiji.contains(new Position(-17, 179))).isTrue();
        assertThat(fiji.contains(new Position(-17, -179))).isTrue();
        assertThat(fiji.contains(new Position(-17, 0))).isFalse();
        assertThat(fiji.centre()).isEqualTo(new Position(-17.5, 179));
        assertThat(fiji.grownBy(3)).isEqualTo(new Bounds(-23, 173, -12, -175));
    }

    /** Against geodesics of Karney's algorithm ({@link Geodesy}), which is itself held against his test set. */
    @Test
    void aBoxAroundACircleHoldsItAndLittleMore() {
        for (Position centre : List.of(
                new Position(0, 0),
                new Position(-30.5, 150.05),
                new Position(60, -5),
                new Position(-17, 179.999),
                new Position(89.99, 20))) {
            for (double metres : new double[] {0, 50, 7000, 300_000}) {
                Bounds box = Bounds.around(centre, metres);
                for (int azimuth = 0; azimuth < 360; azimuth += 5) {
                    Position edge = Geodesy.WGS84.direct(centre, azimuth, metres);
                    assertThat(box.contains(edge))
                            .as("%s %s m %s", centre, metres, azimuth)
                            .isTrue();
                }
                assertThat(Geodesy.metresBetween(centre, new Position(box.south(), centre.longitude())))
                        .isLessThanOrEqualTo(metres * 1.011 + 1e-4);
            }
        }
        Bounds wide = Bounds.around(new Position(-30.5, 150.05), 7000);
        assertThat(Geodesy.metresBetween(new Position(-30.5, 150.05), new Position(-30.5, wide.east())))
                .isBetween(7000.0, 7077.0);
        Bounds fiji = Bounds.around(new Position(-17, 179.999), 7000);
        assertThat(fiji.west()).isPositive();
        assertThat(fiji.east()).isNegative();
        assertThat(Bounds.around(new Position(89.99, 20), 7000))
                .isEqualTo(
                        new Bounds(Bounds.around(new Position(89.99, 20), 7000).south(), -180, 90, 180));
        assertThat(Bounds.around(new Position(0, 0), 1e9)).isEqualTo(new Bounds(-90, -180, 90, 180));
        assertThatThrownBy(() -> Bounds.around(new Position(0, 0), Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Bounds.around(new Position(0, 0), -1)).isInstanceOf(IllegalArgumentException.class);
    }
}
