package org.culvert.road.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SnapTest {
    /*
     *  y = 20  ----------- High Street
     *  y =  0  ----------- Low Street
     */
    private static RoadNetwork parallelStreets() {
        return Sketch.of()
                .road("Low Street", "LINESTRING(0 0, 1000 0)")
                .road("High Street", "LINESTRING(0 20, 1000 20)")
                .network();
    }

    @ParameterizedTest
    @CsvSource({"2, false", "5, true", "10, true", "15, true", "18, false"})
    void twoRoadsAreEquallyLikelyByTheWrittenRule(double y, boolean ambiguous) {
        Snap snap = parallelStreets().snap(500, y, 10, SnapHints.NONE);
        assertThat(snap.ambiguous()).isEqualTo(ambiguous);
        assertThat(snap.radiusMetres()).isEqualTo(30);
        assertThat(snap.candidates()).hasSize(2);
        assertThat(snap.candidates().stream().mapToDouble(SnapCandidate::weight).sum())
                .isCloseTo(1, within(1e-12));
    }

    @Test
    void aNameDecides() {
        Snap snap = parallelStreets().snap(500, 5, 30, new SnapHints("high st", null));
        assertThat(snap.ambiguous()).isFalse();
        assertThat(snap.best().orElseThrow().road()).isEqualTo(1);
        assertThat(snap.nameFound()).isTrue();
    }

    @Test
    void aNameThatIsNowhereNearIsSaidAndDecidesNothing() {
        Snap snap = parallelStreets().snap(500, 5, 30, new SnapHints("Mill Road", null));
        assertThat(snap.nameFound()).isFalse();
        assertThat(snap.ambiguous()).isTrue();
        assertThat(snap.candidates()).hasSize(2);
    }

    @Test
    void aDirectionDecidesBetweenCarriageways() {
        RoadNetwork network = Sketch.of()
                .line(RoadAttributes.named("M1").withCarriageway("northbound"), "LINESTRING(0 0, 0 1000)")
                .line(RoadAttributes.named("M1").withCarriageway("southbound"), "LINESTRING(15 1000, 15 0)")
                .network();
        assertThat(network.snap(7, 500, 30, SnapHints.NONE).ambiguous()).isTrue();
        for (String south : List.of("southbound", "SB", "South", "180", "southwards")) {
            Snap snap = network.snap(6, 500, 30, new SnapHints(null, south));
            assertThat(snap.ambiguous()).as(south).isFalse();
            assertThat(snap.best().orElseThrow().road()).as(south).isEqualTo(1);
            assertThat(snap.directionUsed()).isTrue();
        }
        assertThat(network.snap(6, 500, 30, new SnapHints(null, "home")).directionUsed())
                .isFalse();
    }

    @Test
    void aDirectionDecidesBetweenCrossingRoads() {
        RoadNetwork network = Sketch.of()
                .road("East Road", "LINESTRING(-500 0, 0 0, 500 0)")
                .road("North Road", "LINESTRING(0 -500, 0 0, 0 500)")
                .network();
        assertThat(network.snap(3, 4, 30, SnapHints.NONE).ambiguous()).isTrue();
        Snap snap = network.snap(3, 4, 30, new SnapHints(null, "westbound"));
        assertThat(snap.ambiguous()).isFalse();
        assertThat(network.road(snap.best().orElseThrow().road()).label()).isEqualTo("East Road");
    }

    @Test
    void aRoadThatOnlyGoesOnIsNoRival() {
        RoadNetwork network = Sketch.of()
                .unnamed("LINESTRING(0 0, 500 0)")
                .unnamed("LINESTRING(500 0, 1000 0)")
                .network();
        Snap snap = network.snap(495, 3, 30, SnapHints.NONE);
        assertThat(snap.candidates()).hasSize(2);
        assertThat(snap.ambiguous()).isFalse();
    }

    @Test
    void nothingWithinTheRadiusShowsTheNearestBeyond() {
        Snap snap = parallelStreets().snap(500, -400, 25, SnapHints.NONE);
        assertThat(snap.best()).isEmpty();
        SnapCandidate beyond = java.util.Objects.requireNonNull(snap.nearestBeyond());
        assertThat(beyond.offsetMetres()).isEqualTo(400);
        assertThat(parallelStreets().snap(500, -400_000, 25, SnapHints.NONE).nearestBeyond())
                .isNull();
    }

    @ParameterizedTest
    @CsvSource({"100, 5, LEFT", "100, -5, RIGHT", "100, 0, ON", "-3, 1, LEFT", "205, -1, RIGHT"})
    void sideIsSeenAlongIncreasingChainage(double x, double y, Side side) {
        RoadNetwork network =
                Sketch.of().road("Mill Road", "LINESTRING(0 0, 200 0)").network();
        assertThat(network.nearest(x, y).side()).isEqualTo(side);
    }

    /*
     *  At the outside of a bend the nearest point is the vertex, and both segments alone may be wrong.
     */
    @Test
    void sideOutsideASharpBendIsThatOfTheWholeRoad() {
        RoadNetwork network =
                Sketch.of().road("Hairpin", "LINESTRING(0 0, 100 0, 0 10)").network();
        assertThat(network.nearest(110, 8).side()).isEqualTo(Side.RIGHT);
        assertThat(network.nearest(110, -8).side()).isEqualTo(Side.RIGHT);
        assertThat(network.nearest(50, 2).side()).isEqualTo(Side.LEFT);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void snappingIsIdempotentAndStaysOnTheLink(long seed) {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
        RoadNetwork network = randomNetwork(random, false);
        for (int i = 0; i < 50; i++) {
            SnapCandidate once = network.nearest(random.nextDouble(-100, 1100), random.nextDouble(-100, 1100));
            SnapCandidate twice = network.nearest(once.x(), once.y());
            double length = network.graph().length(once.link());
            assertThat(once.metres()).as("seed %d", seed).isBetween(0.0, length);
            assertThat(once.chainageMetres())
                    .isBetween(network.fromChainage(once.link()), network.toChainage(once.link()));
            assertThat(twice.offsetMetres()).as("seed %d", seed).isLessThan(1e-9);
            assertThat(twice.side()).isEqualTo(Side.ON);
            double[] again = network.pointAt(twice.link(), twice.metres());
            assertThat(Math.hypot(again[0] - once.x(), again[1] - once.y()))
                    .as("seed %d", seed)
                    .isLessThan(1e-6);
            boolean atNode = once.metres() < 1e-6 || once.metres() > length - 1e-6;
            if (!atNode && twice.link() == once.link()) {
                assertThat(twice.metres()).as("seed %d", seed).isCloseTo(once.metres(), within(1e-6));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aRoadTurnedRoundMirrorsSideAndChainage(long seed) {
        RoadNetwork network = randomNetwork(RandomSource.XO_RO_SHI_RO_128_PP.create(seed), false);
        RoadNetwork turned = randomNetwork(RandomSource.XO_RO_SHI_RO_128_PP.create(seed), true);
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(seed + 100);
        for (int i = 0; i < 50; i++) {
            double x = random.nextDouble(0, 1000);
            double y = random.nextDouble(0, 1000);
            SnapCandidate one = network.nearest(x, y);
            SnapCandidate other = turned.nearest(x, y);
            assertThat(other.offsetMetres()).as("seed %d", seed).isCloseTo(one.offsetMetres(), within(1e-9));
            if (other.link() == one.link()) {
                double length = network.graph().length(one.link());
                boolean sameSpot = Math.abs(length - other.metres() - one.metres()) < 1e-6;
                if (sameSpot) {
                    assertThat(other.side()).as("seed %d", seed).isNotEqualTo(one.side());
                }
            }
        }
    }

    @Test
    void onEarthOffsetsAndMeasuresAreGeodesic() {
        RoadNetwork network = NetworkBuilder.geographic()
                .add(new RoadLine("line 1", RoadAttributes.named("Meridian Road"), null, new double[] {
                    151.0, -33.0, 151.0, -33.01, 151.0, -33.02
                }))
                .build()
                .network();
        Position beside = Geodesy.WGS84.direct(new Position(-33.005, 151.0), 90, 12);
        SnapCandidate best = network.snap(beside, 5, SnapHints.NONE).best().orElseThrow();
        double along = Geodesy.metresBetween(new Position(-33.0, 151.0), new Position(-33.005, 151.0));
        assertThat(best.offsetMetres()).isCloseTo(12, within(1e-4));
        assertThat(best.chainageMetres()).isCloseTo(along, within(1e-3));
        assertThat(best.side()).isEqualTo(Side.LEFT);
        Position on = network.positionAt(best.link(), best.metres());
        assertThat(network.snap(on, 5, SnapHints.NONE).best().orElseThrow().offsetMetres())
                .isLessThan(1e-6);
        assertThat(network.snap(new Position(51, 7), 5, SnapHints.NONE).best()).isEmpty();
    }

    /** Forty wiggly lines, each on its own strip so that they never meet; the other way round if wanted. */
    private static RoadNetwork randomNetwork(UniformRandomProvider random, boolean turned) {
        NetworkBuilder builder = NetworkBuilder.planar();
        for (int line = 0; line < 40; line++) {
            List<double[]> points = new ArrayList<>();
            int count = random.nextInt(2, 9);
            for (int i = 0; i < count; i++) {
                points.add(new double[] {1000.0 * i / (count - 1), 25 * line + random.nextDouble(0, 24)});
            }
            double[] course = new double[2 * count];
            for (int i = 0; i < count; i++) {
                double[] point = points.get(turned ? count - 1 - i : i);
                course[2 * i] = point[0];
                course[2 * i + 1] = point[1];
            }
            builder.add(new RoadLine("line " + line, RoadAttributes.UNKNOWN, null, course));
        }
        return builder.build().network();
    }
}
