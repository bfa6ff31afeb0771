package org.culvert.hotspot.stats.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.culvert.hotspot.stats.Checks;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;

class ReachTest {
    /** Source: pairdist.csv, by the R package spatstat.linnet 3.0-6. */
    @Test
    void distancesAreThoseOfSpatstat() {
        PlacedEvents events = Placed.small();
        double[][] expected = Checks.matrix("net_small/pairdist.csv");
        var reach = new Reach(events);
        for (int rank = 0; rank < events.count(); rank++) {
            reach.search(events.link(rank), events.metres(rank), Double.POSITIVE_INFINITY);
            assertThat(reach.count()).isEqualTo(16);
            for (int i = 0; i < reach.count(); i++) {
                assertThat(reach.metres(i))
                        .isCloseTo(expected[events.given(rank)][events.given(reach.event(i))], within(1e-6));
            }
        }
    }

    /** No source: against the search for one pair, on networks with loops, parallel links and dead ends. */
    @Test
    void everyEventWithinTheLimitIsFoundOnceAndNoOther() {
        for (int trial = 0; trial < 150; trial++) {
            var random = Placed.random(trial);
            RoadGraph graph = Placed.anyNetwork(random);
            PlacedEvents events = Placed.anyEvents(graph, 40, random);
            double[][] expected = Placed.distances(events);
            double limit = random.nextDouble() * 500;
            var reach = new Reach(events);
            for (int rank = 0; rank < events.count(); rank++) {
                reach.search(events.link(rank), events.metres(rank), limit);
                double[] found = new double[events.count()];
                Arrays.fill(found, Double.NaN);
                for (int i = 0; i < reach.count(); i++) {
                    assertThat(found[reach.event(i)])
                            .as("twice, trial %s", trial)
                            .isNaN();
                    found[reach.event(i)] = reach.metres(i);
                }
                for (int other = 0; other < found.length; other++) {
                    if (expected[rank][other] <= limit) {
                        assertThat(found[other]).as("trial %s", trial).isCloseTo(expected[rank][other], within(1e-9));
                    } else {
                        assertThat(found[other]).as("trial %s", trial).isNaN();
                    }
                }
            }
        }
    }

    @Test
    void eventsComeInOrderAlongTheLinks() {
        var graph = new RoadGraph(3, new int[] {0, 1}, new int[] {1, 2}, new double[] {100, 50});
        PlacedEvents events =
                PlacedEvents.of(graph, new int[] {1, 0, 0, 0}, new double[] {7, 30.0000002, 30.0000001, 5});
        assertThat(events.asGiven(new int[] {0, 1, 2, 3})).containsExactly(3, 2, 1, 0);
        var longLink = new RoadGraph(2, new int[] {0}, new int[] {1}, new double[] {2e6});
        PlacedEvents far = PlacedEvents.of(longLink, new int[3], new double[] {1_999_999, 3, 1_000_000});
        assertThat(far.asGiven(new int[] {0, 1, 2})).containsExactly(2, 0, 1);
        assertThatThrownBy(() -> PlacedEvents.of(graph, new int[] {0}, new double[] {100.5}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("100.5 m of a link of 100.0 m");
        assertThatThrownBy(() -> PlacedEvents.of(graph, new int[] {2}, new double[] {0}))
                .hasMessageContaining("does not exist");
    }
}
