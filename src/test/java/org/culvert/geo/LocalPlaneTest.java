package org.culvert.geo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LocalPlaneTest {
    /**
     * UTM is the same projection with scale 0.9996, so differences of its coordinates over 0.9996 are ours. Source: the UTM
     * values of PROJ 9.1.1 in checks/geodesy/projection_checks.txt, zone 18 north.
     */
    @Test
    void coordinatesAreThoseOfUtmAtScaleOne() {
        LocalPlane plane = LocalPlane.around(new Position(0, -75));
        double[] ottawa = plane.forward(new Position(45.4215, -75.6972));
        assertThat(ottawa[0]).isCloseTo((445454.3720 - 500000) / 0.9996, within(0.001));
        assertThat(ottawa[1]).isCloseTo(5030011.8344 / 0.9996, within(0.001));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void inverseUndoesForward(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        Position centre = new Position(random.nextDouble(-70, 70), random.nextDouble(-180, 180));
        LocalPlane plane = LocalPlane.around(centre);
        for (int i = 0; i < 200; i++) {
            Position position =
                    Geodesy.WGS84.direct(centre, random.nextDouble(0, 360), random.nextDouble(0, 1_000_000));
            double[] xy = plane.forward(position);
            Position back = plane.inverse(xy[0], xy[1]);
            assertThat(Geodesy.metresBetween(position, back))
                    .as("seed %d, %s", seed, position)
                    .isLessThan(1e-4);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void shortDistancesNearTheCentreAreThoseOnTheEllipsoid(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        Position centre = new Position(random.nextDouble(-60, 60), random.nextDouble(-180, 180));
        LocalPlane plane = LocalPlane.around(centre);
        for (int i = 0; i < 100; i++) {
            Position one = Geodesy.WGS84.direct(centre, random.nextDouble(0, 360), random.nextDouble(0, 100_000));
            Position other = Geodesy.WGS84.direct(one, random.nextDouble(0, 360), 100);
            double[] a = plane.forward(one);
            double[] b = plane.forward(other);
            assertThat(Math.hypot(a[0] - b[0], a[1] - b[1])).as("seed %d", seed).isCloseTo(100, within(0.0125));
        }
    }

    @Test
    void theAntimeridianIsNoBorder() {
        LocalPlane plane = LocalPlane.around(new Position(-17, 179.9));
        double[] west = plane.forward(new Position(-17, 179.99));
        double[] east = plane.forward(new Position(-17, -179.99));
        assertThat(east[0] - west[0])
                .isCloseTo(Geodesy.metresBetween(new Position(-17, 179.99), new Position(-17, -179.99)), within(0.01));
        assertThat(plane.inverse(east[0], east[1]).longitude()).isCloseTo(-179.99, within(1e-9));
    }

    @Test
    void theOtherSideOfTheEarthIsNotCovered() {
        LocalPlane plane = LocalPlane.around(new Position(52, 7.5));
        assertThat(plane.covers(new Position(-33, 151))).isFalse();
        assertThat(plane.covers(new Position(52, 8))).isTrue();
    }
}
