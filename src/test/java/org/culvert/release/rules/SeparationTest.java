package org.culvert.release.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.junit.jupiter.api.Test;

class SeparationTest {
    @Test
    void aLimitMayBeReachedAndNotPassed() {
        assertThat(new Separation(9_900, 50, 50).atMost(10_000)).isEqualTo(Verdict.pass);
        assertThat(new Separation(9_900, 50, 50.5).atMost(10_000)).isEqualTo(Verdict.cantTell);
        assertThat(new Separation(10_100, 50, 50).atMost(10_000)).isEqualTo(Verdict.cantTell);
        assertThat(new Separation(10_100.5, 50, 50).atMost(10_000)).isEqualTo(Verdict.fail);
        assertThat(new Separation(10_000, 0, 0).atMost(10_000)).isEqualTo(Verdict.pass);
        assertThat(new Separation(0, 6_000, 6_000).atMost(10_000)).isEqualTo(Verdict.cantTell);
    }

    /** The claim of the bounds, tried: no pair of places within the circles may contradict a certain verdict. */
    @Test
    void noPlaceWithinTheCirclesContradictsACertainVerdict() {
        long seed = 20261125;
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        int passes = 0;
        int fails = 0;
        int open = 0;
        for (int i = 0; i < 2_000; i++) {
            Position origin = new Position(random.nextDouble(-44, -10), random.nextDouble(113, 154));
            double originMetres = random.nextDouble(1, 2_000);
            double siteMetres = random.nextDouble(1, 500);
            Position site = Geodesy.WGS84.direct(origin, random.nextDouble(0, 360), random.nextDouble(5_000, 15_000));
            Verdict verdict = new UncertainPosition(origin, originMetres)
                    .to(new UncertainPosition(site, siteMetres))
                    .atMost(10_000);
            passes += verdict == Verdict.pass ? 1 : 0;
            fails += verdict == Verdict.fail ? 1 : 0;
            open += verdict == Verdict.cantTell ? 1 : 0;
            for (int j = 0; j < 20; j++) {
                Position trueOrigin = within(origin, originMetres, random);
                Position trueSite = within(site, siteMetres, random);
                double metres = Geodesy.metresBetween(trueOrigin, trueSite);
                if (verdict == Verdict.pass) {
                    assertThat(metres).as("seed %d case %d", seed, i).isLessThanOrEqualTo(10_000 + 1e-6);
                } else if (verdict == Verdict.fail) {
                    assertThat(metres).as("seed %d case %d", seed, i).isGreaterThan(10_000 - 1e-6);
                }
            }
        }
        assertThat(passes).isGreaterThan(300);
        assertThat(fails).isGreaterThan(300);
        assertThat(open).isGreaterThan(100);
    }

    /** On the line through both centres the bounds are attained, so that can't tell is never said for nothing. */
    @Test
    void whereNobodyCanTellBothAnswersArePossible() {
        Position origin = new Position(-27.5, 153);
        Position site = Geodesy.WGS84.direct(origin, 70, 9_980);
        UncertainPosition from = new UncertainPosition(origin, 30);
        UncertainPosition to = new UncertainPosition(site, 30);
        assertThat(from.to(to).atMost(10_000)).isEqualTo(Verdict.cantTell);
        Position nearer = Geodesy.WGS84.direct(origin, 70, 30);
        Position farther = Geodesy.WGS84.direct(origin, 250, 30);
        assertThat(Geodesy.metresBetween(nearer, site)).isLessThan(10_000);
        assertThat(Geodesy.metresBetween(farther, site)).isGreaterThan(10_000);
    }

    @Test
    void anUncertaintyIsANumberOfMetres() {
        for (double wrong : new double[] {-1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> UncertainPosition.of(-27.5, 153, wrong))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    private static Position within(Position centre, double metres, UniformRandomProvider random) {
        return Geodesy.WGS84.direct(centre, random.nextDouble(0, 360), metres * Math.sqrt(random.nextDouble()));
    }
}
