package org.culvert.road.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Sketches in metres around 30.5 south, 150 east; the numbers are plain geometry. */
class CarriagewayPairsTest {
    private static final double LATITUDE = -30.5;
    private static final double METRES_EAST = 111_320 * Math.cos(Math.toRadians(LATITUDE));

    private static RoadLine line(String name, Boolean oneWay, double... metres) {
        double[] degrees = new double[metres.length];
        for (int i = 0; i < metres.length; i += 2) {
            degrees[i] = 150 + metres[i] / METRES_EAST;
            degrees[i + 1] = LATITUDE + metres[i + 1] / 111_320;
        }
        return new RoadLine(
                name,
                new RoadAttributes(name, null, null, null, null, null, null, 0, Structure.NONE, oneWay, null),
                null,
                degrees);
    }

    /*
     *   A1  ---->---->  (0,0) to (2000,0), in two lines
     *   A1  <---------  30 m north of it
     */
    @Test
    void twoLinesBesideEachOtherAreNamedByWhereTheyGo() {
        assertThat(CarriagewayPairs.tell(List.of(
                        line("A1", true, 0, 0, 900, 0),
                        line("A1", true, 2000, 30, 0, 30),
                        line("A1", true, 900, 0, 2000, 0))))
                .containsExactly("eastbound", "westbound", "eastbound");
        assertThat(CarriagewayPairs.tell(List.of(line("A1", true, 0, 0, 0, 900), line("A1", true, -40, 900, -40, 0))))
                .containsExactly("northbound", "southbound");
    }

    @Test
    void whatIsNotBesideOrNotOppositeOrOfAnotherRoadIsNoCarriageway() {
        List<RoadLine> lines = List.of(
                // both the same way
                line("High Street", true, 0, 0, 900, 0),
                line("High Street", true, 0, 30, 900, 30),
                // of two roads
                line("First Street", true, 0, 5000, 900, 5000),
                line("Second Street", true, 900, 5030, 0, 5030),
                // too far apart
                line("Long Street", true, 0, 9000, 900, 9000),
                line("Long Street", true, 900, 9200, 0, 9200),
                // travelled both ways
                line("Mill Road", false, 0, 12_000, 900, 12_000),
                line("Mill Road", null, 900, 12_030, 0, 12_030),
                // a ring
                line("Ring", true, 0, 20_000, 40, 20_000, 40, 20_040, 0, 20_040, 0, 20_000),
                // without name and number
                line(null, true, 0, 30_000, 900, 30_000),
                line(null, true, 900, 30_030, 0, 30_030));
        assertThat(CarriagewayPairs.tell(lines)).hasSize(lines.size()).containsOnlyNulls();
    }

    /** A quarter of a circle of 2 km: each carriageway is one road whatever it bends, and keeps to the axis of the whole. */
    @Test
    void aBendIsOneCarriageway() {
        List<RoadLine> lines = new ArrayList<>();
        for (int i = 0; i < 18; i++) {
            lines.add(arc(2000, 5 * i, 5 * i + 5));
            lines.add(arc(2025, 5 * i + 5, 5 * i));
        }
        // Straight on to the north, so that the whole goes more north than east
        lines.add(line("M2", true, -2000, 0, -2000, -1500));
        lines.add(line("M2", true, -2025, -1500, -2025, 0));
        List<String> told = List.of(CarriagewayPairs.tell(lines));
        for (int i = 0; i < lines.size(); i++) {
            assertThat(told.get(i)).as("line %s", i).isEqualTo(i % 2 == 0 ? "southbound" : "northbound");
        }
    }

    /** Around the origin, from degrees to degrees, counted from the east against the clock, mirrored to begin in the north. */
    private static RoadLine arc(double radius, double from, double to) {
        double[] metres = new double[12];
        for (int i = 0; i < 6; i++) {
            double angle = Math.toRadians(90 + from + (to - from) * i / 5);
            metres[2 * i] = radius * Math.cos(angle);
            metres[2 * i + 1] = radius * Math.sin(angle);
        }
        return line("M2", true, metres);
    }

    /** A road that is divided for a part only: the single part stays as it is. */
    @Test
    void onlyTheDividedPartIsDivided() {
        assertThat(CarriagewayPairs.tell(List.of(
                        line("A3", false, -3000, 0, 0, 0),
                        line("A3", true, 0, 0, 900, 0),
                        line("A3", true, 900, 25, 0, 25, 0, 0),
                        line("A3", false, 900, 0, 3000, 0))))
                .containsExactly(null, "eastbound", "westbound", null);
    }

    @Test
    void theOrderOfLinesChangesNothing() {
        List<RoadLine> lines = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            lines.add(line("A4", true, 100 * i, 0, 100 * i + 100, 0));
            lines.add(line("A4", true, 100 * i + 100, 40, 100 * i, 40));
        }
        for (int seed = 1; seed <= 20; seed++) {
            List<RoadLine> shuffled = new ArrayList<>(lines);
            Collections.shuffle(shuffled, new Random(seed));
            String[] told = CarriagewayPairs.tell(shuffled);
            for (int i = 0; i < told.length; i++) {
                boolean east = shuffled.get(i).vertices()[0] < shuffled.get(i).vertices()[2];
                assertThat(told[i]).as("seed %s", seed).isEqualTo(east ? "eastbound" : "westbound");
            }
        }
    }
}
