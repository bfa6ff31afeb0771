package org.culvert.hotspot.stats.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.csv.CSVRecord;
import org.culvert.hotspot.stats.Checks;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

class NetworkKTest {
    /** Source: linearK.csv, by spatstat.linnet 3.0-6, both corrections, at radii without ties. */
    @Test
    void functionIsThatOfSpatstat() {
        List<CSVRecord> rows = Checks.csv("net_small/linearK.csv");
        double[] radii = Checks.column(rows, "r");
        PlacedEvents events = Placed.small();
        double[] none = NetworkK.of(events, radii, NetworkK.Correction.NONE, 2);
        double[] ang = NetworkK.of(events, radii, NetworkK.Correction.ANG, 2);
        for (int i = 0; i < radii.length; i++) {
            assertThat(none[i])
                    .as("r %s", radii[i])
                    .isCloseTo(Checks.number(rows.get(i), "K_net_uncorrected"), within(1e-6));
            assertThat(ang[i]).as("r %s", radii[i]).isCloseTo(Checks.number(rows.get(i), "K_ang"), within(1e-6));
        }
    }

    /** Source: countends_at_pairdist.csv, by spatstat.linnet 3.0-6. */
    @Test
    void pointsAtADistanceAreCountedAsSpatstatDoes() {
        PlacedEvents events = Placed.small();
        double[][] expected = Checks.matrix("net_small/countends_at_pairdist.csv");
        double[][] metres = Placed.distances(events);
        for (int a = 0; a < events.count(); a++) {
            for (int b = 0; b < events.count(); b++) {
                assertThat(NetworkK.pointsAt(events, a, metres[a][b]))
                        .as("from %s to %s", events.given(a) + 1, events.given(b) + 1)
                        .isEqualTo((int) expected[events.given(a)][events.given(b)]);
            }
        }
    }

    /** No source: points of the network at a distance, by cutting every link into centimetres. */
    @Test
    void pointsAtADistanceAreThoseWhereItIsCrossed() {
        for (int trial = 0; trial < 60; trial++) {
            var random = Placed.random(trial);
            RoadGraph graph = Placed.anyNetwork(random);
            PlacedEvents events = Placed.anyEvents(graph, 1, random);
            double away = random.nextDouble() * 500;
            int crossed = 0;
            for (int link = 0; link < graph.linkCount(); link++) {
                int steps = 4000;
                int[] links = new int[steps + 1];
                double[] metres = new double[steps + 1];
                Arrays.fill(links, link);
                double length = graph.length(link);
                Arrays.setAll(metres, i -> Math.min(length, length * i / steps));
                PlacedEvents ladder = PlacedEvents.of(graph, links, metres);
                double[] distance = new double[steps + 1];
                var reach = new Reach(ladder);
                reach.search(events.link(0), events.metres(0), Double.POSITIVE_INFINITY);
                for (int i = 0; i < reach.count(); i++) {
                    distance[reach.event(i)] = reach.metres(i);
                }
                for (int i = 0; i < steps; i++) {
                    crossed += (distance[i] <= away) != (distance[i + 1] <= away) ? 1 : 0;
                }
            }
            assertThat(NetworkK.pointsAt(events, 0, away))
                    .as("trial %s, at %s m", trial, away)
                    .isEqualTo(crossed);
        }
    }

    /** Source: Ang, Baddeley and Nair (2012): by even chance the corrected K is r on any network. */
    @Test
    void correctedFunctionIsTheRadiusByEvenChance() {
        var random = Placed.random(5);
        RoadGraph graph = Checks.smallNetwork();
        double[] radii = {100, 400, 900};
        double[] mean = new double[3];
        for (int trial = 0; trial < 400; trial++) {
            double[] lengths = new double[graph.linkCount()];
            Arrays.setAll(lengths, graph::length);
            int[] link = new int[20];
            double[] metres = new double[20];
            for (int i = 0; i < 20; i++) {
                double at = random.nextDouble() * graph.totalLength();
                while (at >= lengths[link[i]]) {
                    at -= lengths[link[i]++];
                }
                metres[i] = at;
            }
            double[] k = NetworkK.of(PlacedEvents.of(graph, link, metres), radii, NetworkK.Correction.ANG);
            for (int i = 0; i < 3; i++) {
                mean[i] += k[i] / 400;
            }
        }
        for (int i = 0; i < 3; i++) {
            assertThat(mean[i] / radii[i]).as("r %s, seed 5", radii[i]).isCloseTo(1, within(0.06));
        }
    }

    /** No source: seeded; of 300 even sets with 39 simulations each, 5 % have p of at most 0.05 (standard error 1.3 %). */
    @Test
    void testsHoldTheirLevelWithEqualAndUnequalExposure() {
        RoadGraph graph = Checks.smallNetwork();
        double[] radii = {50, 150, 300, 600};
        double[] unequal = new double[graph.linkCount()];
        Arrays.setAll(unequal, link -> link % 3 == 0 ? 10 : 1);
        double[] even = new double[graph.linkCount()];
        Arrays.fill(even, 1);
        int[] hits = new int[3];
        for (int trial = 0; trial < 300; trial++) {
            PlacedEvents events = drawn(graph, unequal, 25, trial);
            KEnvelope matched = KEnvelope.of(events, radii, NetworkK.Correction.NONE, unequal, 39, 1000 + trial, 1);
            hits[0] += matched.madP() <= 0.05 ? 1 : 0;
            hits[1] += matched.dclfP() <= 0.05 ? 1 : 0;
            if (trial < 60) {
                hits[2] += KEnvelope.of(events, radii, NetworkK.Correction.NONE, even, 39, trial, 1)
                                        .madP()
                                <= 0.05
                        ? 1
                        : 0;
            }
        }
        assertThat(hits[0]).as("MAD of 300").isBetween(4, 27);
        assertThat(hits[1]).as("DCLF of 300").isBetween(4, 27);
        assertThat(hits[2])
                .as("what unequal exposure does to an even chance, of 60")
                .isGreaterThan(9);
    }

    private static PlacedEvents drawn(RoadGraph graph, double[] weight, int count, long seed) {
        var random = Placed.random(seed);
        double total = 0;
        for (int link = 0; link < weight.length; link++) {
            total += weight[link] * graph.length(link);
        }
        int[] on = new int[count];
        double[] metres = new double[count];
        for (int i = 0; i < count; i++) {
            double at = random.nextDouble() * total;
            while (at >= weight[on[i]] * graph.length(on[i])) {
                at -= weight[on[i]] * graph.length(on[i]);
                on[i]++;
            }
            metres[i] = Math.min(graph.length(on[i]), at / weight[on[i]]);
        }
        return PlacedEvents.of(graph, on, metres);
    }

    /** No source: pairs of events, and the invariant of the room. */
    @Test
    void pairsAreFoundAndThreadsChangeNothing() {
        var random = Placed.random(12);
        RoadGraph graph = Checks.smallNetwork();
        PlacedEvents even = Placed.anyEvents(graph, 20, random);
        int[] link = new int[40];
        double[] metres = new double[40];
        for (int i = 0; i < 40; i++) {
            link[i] = even.link(i / 2);
            metres[i] = Math.min(graph.length(link[i]), even.metres(i / 2) + 5 * (i % 2));
        }
        PlacedEvents pairs = PlacedEvents.of(graph, link, metres);
        double[] radii = {10, 20, 40};
        double[] ones = new double[graph.linkCount()];
        Arrays.fill(ones, 1);
        KEnvelope one = KEnvelope.of(pairs, radii, NetworkK.Correction.ANG, ones, 99, 3, 1);
        assertThat(one.madP()).isEqualTo(0.01);
        assertThat(one.dclfP()).isEqualTo(0.01);
        assertThat(one.madAbove()).isTrue();
        assertThat(KEnvelope.of(pairs, radii, NetworkK.Correction.ANG, ones, 99, 3, 4))
                .isEqualTo(one);
        assertThat(KEnvelope.of(
                        Placed.reordered(pairs, Placed.shuffled(40, random)),
                        radii,
                        NetworkK.Correction.ANG,
                        ones,
                        99,
                        3,
                        2))
                .isEqualTo(one);
        assertThat(NetworkK.of(pairs, radii, NetworkK.Correction.ANG, 3))
                .isEqualTo(NetworkK.of(pairs, radii, NetworkK.Correction.ANG, 1));
        assertThatThrownBy(() -> NetworkK.of(pairs, new double[] {5, 5}, NetworkK.Correction.NONE, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("ascend");
    }
}
