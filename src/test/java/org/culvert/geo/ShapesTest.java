package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
}
