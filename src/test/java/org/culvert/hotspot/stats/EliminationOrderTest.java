package org.culvert.hotspot.stats;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.TreeSet;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.road.network.RoadGraph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The fill of an order of elimination, against elimination played out on the graph itself, edge by edge. */
class EliminationOrderTest {
    @ParameterizedTest
    @CsvSource({"1, 0", "2, 1", "7, 3", "30, 20", "60, 75", "200, 260", "200, 500", "40, 600"})
    void itTouchesWhatEliminationTouches(int nodes, int links) {
        for (int trial = 0; trial < 20; trial++) {
            RoadGraph graph = random(nodes, links, trial);
            EliminationOrder order = EliminationOrder.of(graph);
            int[] nodeAt = new int[nodes];
            Arrays.fill(nodeAt, -1);
            for (int node = 0; node < nodes; node++) {
                nodeAt[order.placeOf(node)] = node;
            }
            assertThat(nodeAt).as("every place is some node's").doesNotContain(-1);
            boolean[][] joined = new boolean[nodes][nodes];
            for (int link = 0; link < graph.linkCount(); link++) {
                int from = order.placeOf(graph.from(link));
                int to = order.placeOf(graph.to(link));
                joined[from][to] = from != to;
                joined[to][from] = from != to;
            }
            for (int place = 0; place < nodes; place++) {
                TreeSet<Integer> later = new TreeSet<>();
                for (int other = place + 1; other < nodes; other++) {
                    if (joined[place][other]) {
                        later.add(other);
                    }
                }
                int[] touched = Arrays.copyOfRange(order.rows(), order.starts()[place], order.starts()[place + 1]);
                assertThat(Arrays.stream(touched).boxed().toList()).containsExactlyElementsOf(later);
                for (int one : later) {
                    for (int other : later) {
                        joined[one][other] = one != other;
                    }
                }
            }
        }
    }

    /** A chain of towns fills nothing, and a town square with its roads out nothing either. */
    @Test
    void aTreeFillsNothing() {
        int nodes = 500;
        UniformRandomProvider random = MonteCarlo.generator(8, 0);
        int[] from = new int[nodes - 1];
        int[] to = new int[nodes - 1];
        double[] length = new double[nodes - 1];
        for (int link = 0; link < from.length; link++) {
            from[link] = random.nextInt(link + 1);
            to[link] = link + 1;
            length[link] = 1;
        }
        EliminationOrder order = EliminationOrder.of(new RoadGraph(nodes, from, to, length));
        assertThat(order.rows()).as("one link each but the last").hasSize(nodes - 1);
    }

    private static RoadGraph random(int nodes, int links, int trial) {
        UniformRandomProvider random = MonteCarlo.generator(7, trial);
        int[] from = new int[links];
        int[] to = new int[links];
        double[] length = new double[links];
        for (int link = 0; link < links; link++) {
            from[link] = random.nextInt(nodes);
            to[link] = random.nextInt(nodes);
            length[link] = 1 + random.nextDouble();
        }
        return new RoadGraph(nodes, from, to, length);
    }
}
