package org.culvert.hotspot.stats;

import java.util.ArrayDeque;
import org.culvert.road.network.RoadGraph;

/**
 * The exact kernel on a network, by following every path from an event to a place.
 *
 * <p>A path through nodes of degree n carries the value of the kernel at its length times one factor a node:
 * <ul>
 *   <li>{@link Rule#EQUAL_SPLIT_DISCONTINUOUS}: {@code 1 / (n - 1)} into each arm but the one it came by. Never
 *       negative; jumps at nodes. Okabe, Satoh and Sugihara (2009), A kernel density estimation method for networks,
 *       International Journal of Geographical Information Science 23(1), 7-32.
 *   <li>{@link Rule#EQUAL_SPLIT_CONTINUOUS}: {@code 2 / n} into each other arm and {@code 2 / n - 1} back into its own.
 *       Continuous; with the Gaussian it is the heat kernel of the network: McSwiggan, Baddeley and Nair (2017), Kernel
 *       density estimation on a linear network, Scandinavian Journal of Statistics 44, 324-345.
 * </ul>
 *
 * <p>At a dead end a path turns back with its whole value, so that an event's mass is one wherever it lies; with
 * {@link DeadEnd#SWALLOW}, the form first published for the discontinuous rule, it ends there.
 *
 * <p>The number of paths grows with the power of the number of nodes within reach: this class is the yardstick for tests
 * and for single places. {@link KernelRows} is for whole networks. Immutable and safe for use by several threads.
 */
public final class NetworkKernel {
    /** What a path carries across a node. */
    public enum Rule {
        EQUAL_SPLIT_DISCONTINUOUS,
        EQUAL_SPLIT_CONTINUOUS
    }

    /** What a path does at a dead end. */
    public enum DeadEnd {
        REFLECT,
        SWALLOW
    }

    private record Step(int leavingEnd, double distance, double weight) {}

    private final RoadGraph graph;
    private final RoadKernel kernel;
    private final Rule rule;
    private final DeadEnd deadEnd;

    public NetworkKernel(RoadGraph graph, RoadKernel kernel, Rule rule, DeadEnd deadEnd) {
        this.graph = graph;
        this.kernel = kernel;
        this.rule = rule;
        this.deadEnd = deadEnd;
    }

    /** A kernel that reflects at dead ends. */
    public NetworkKernel(RoadGraph graph, RoadKernel kernel, Rule rule) {
        this(graph, kernel, rule, DeadEnd.REFLECT);
    }

    /**
     * The density per metre, at each target, of one event.
     *
     * @param link the event's link
     * @param metres its distance from the link's from-node
     * @param targetLinks links of the targets
     * @param targetMetres distances of the targets from their links' from-nodes
     */
    public double[] densityOf(int link, double metres, int[] targetLinks, double[] targetMetres) {
        double[] density = new double[targetLinks.length];
        for (int i = 0; i < targetLinks.length; i++) {
            if (targetLinks[i] == link) {
                density[i] = kernel.density(Math.abs(targetMetres[i] - metres));
            }
        }
        var steps = new ArrayDeque<Step>();
        arrive(2 * link, metres, 1, steps);
        arrive(2 * link + 1, graph.length(link) - metres, 1, steps);
        while (!steps.isEmpty()) {
            Step step = steps.pop();
            int along = step.leavingEnd >> 1;
            boolean forwards = (step.leavingEnd & 1) == 0;
            for (int i = 0; i < targetLinks.length; i++) {
                if (targetLinks[i] == along) {
                    double into = forwards ? targetMetres[i] : graph.length(along) - targetMetres[i];
                    density[i] += step.weight * kernel.density(step.distance + into);
                }
            }
            arrive(step.leavingEnd ^ 1, step.distance + graph.length(along), step.weight, steps);
        }
        return density;
    }

    private void arrive(int end, double distance, double weight, ArrayDeque<Step> steps) {
        if (distance >= kernel.reachMetres()) {
            return;
        }
        int node = graph.nodeOfEnd(end);
        int degree = graph.degree(node);
        if (degree == 1) {
            if (deadEnd == DeadEnd.REFLECT || rule == Rule.EQUAL_SPLIT_CONTINUOUS) {
                steps.push(new Step(end, distance, weight));
            }
            return;
        }
        double onward = rule == Rule.EQUAL_SPLIT_CONTINUOUS ? 2.0 / degree : 1.0 / (degree - 1);
        double back = rule == Rule.EQUAL_SPLIT_CONTINUOUS ? 2.0 / degree - 1 : 0;
        for (int k = graph.firstEnd(node); k < graph.firstEnd(node + 1); k++) {
            int leaving = graph.endAt(k);
            double share = leaving == end ? back : onward;
            if (share != 0) {
                steps.push(new Step(leaving, distance, weight * share));
            }
        }
    }
}
