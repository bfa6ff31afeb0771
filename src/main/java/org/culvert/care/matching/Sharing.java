package org.culvert.care.matching;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jgrapht.Graph;
import org.jgrapht.alg.flow.mincost.CapacityScalingMinimumCostFlow;
import org.jgrapht.alg.flow.mincost.MinimumCostFlowProblem;
import org.jgrapht.alg.interfaces.MinimumCostFlowAlgorithm;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;
import org.jspecify.annotations.Nullable;

/**
 * Shares out many animals among carers: as many as can be placed, and among the ways to do so one of the least burden.
 *
 * <p>A minimum cost flow from the animals over the places of a carer for their group and the places of the carer to the end
 * (R. K. Ahuja, T. L. Magnanti, J. B. Orlin, Network Flows, 1993, chapter 10). Groups that are not kept together are no matter
 * of a flow: where a flow puts two such with one carer, it is solved again without the one and without the other, and the
 * better is taken (branch and bound). So it is with animals that are not parted: where a flow parts them, it is solved again
 * with all of them at one of the carers, and with none of them there. A carer's places are counted only as far as those who
 * could come can fill them: two who are not parted fill two of three.
 */
public final class Sharing {
    /** Flows solved at the most; beyond that the best found so far is told, and that it may not be the best. */
    private static final int MOST_FLOWS = 400;

    /** Costs are whole numbers to the solver: hundredths of a kilometre. */
    private static final double PER_UNIT = 100;

    private static final int NONE = -1;

    /**
     * @param group index of the animal's group
     * @param burden in kilometres by carer; infinite where that carer may not take it
     */
    public record Beast(int group, double[] burden) {}

    /**
     * @param places free for all groups together, none or more
     * @param placesByGroup free by group, none or more
     */
    public record Home(int places, int[] placesByGroup) {}

    /** Two groups that one carer does not keep at once. */
    public record Apart(int one, int other) {}

    /**
     * Animals that are not parted: all of them go to one carer, or none of them to anybody.
     *
     * @param animals their indices; none of them in another such group
     */
    public record Together(List<Integer> animals) {
        public Together {
            animals = List.copyOf(animals);
        }
    }

    /**
     * @param carerByAnimal index of the carer, or -1
     * @param burden of all in kilometres
     * @param isBest whether it is known that there is no better
     */
    public record Shared(int[] carerByAnimal, double burden, boolean isBest) {
        public int placed() {
            return (int)
                    Arrays.stream(carerByAnimal).filter(carer -> carer != NONE).count();
        }
    }

    private final List<Beast> animals;
    private final List<Home> carers;
    private final List<Apart> apart;
    private final List<Together> families;

    private Sharing(List<Beast> animals, List<Home> carers, List<Apart> apart, List<Together> families) {
        this.animals = animals;
        this.carers = carers;
        this.apart = apart;
        this.families = families;
        Set<Integer> met = new HashSet<>();
        for (Together family : families) {
            for (int animal : family.animals()) {
                if (!met.add(animal)) {
                    throw new IllegalArgumentException("animal " + animal + " is in two families");
                }
            }
        }
    }

    /** Shares out animals among carers. */
    public static Shared share(List<Beast> animals, List<Home> carers, List<Apart> apart) {
        return share(animals, carers, apart, List.of());
    }

    /**
     * Shares out animals among carers.
     *
     * @throws IllegalArgumentException when an animal is in two of those that are not parted
     */
    public static Shared share(List<Beast> animals, List<Home> carers, List<Apart> apart, List<Together> together) {
        return new Sharing(animals, carers, apart, together).solve();
    }

    private Shared solve() {
        Deque<Set<PlacesLeft.Settled>> open = new ArrayDeque<>();
        Set<Set<PlacesLeft.Settled>> seen = new HashSet<>();
        open.push(Set.of());
        Shared best = null;
        int flows = 0;
        while (!open.isEmpty()) {
            Set<PlacesLeft.Settled> settled = open.pop();
            if (!seen.add(settled)) {
                continue;
            }
            if (++flows > MOST_FLOWS) {
                break;
            }
            int[] carerByAnimal = flow(settled);
            if (carerByAnimal == null) {
                continue;
            }
            var found = new Shared(carerByAnimal, burden(carerByAnimal), true);
            if (best != null && !isBetter(found, best)) {
                continue;
            }
            PlacesLeft.WithFamily parted = findParted(carerByAnimal);
            Conflict conflict = parted == null ? findConflict(carerByAnimal) : null;
            if (parted != null) {
                open.push(with(settled, new PlacesLeft.WithoutFamily(parted.carer(), parted.family())));
                open.push(with(settled, parted));
            } else if (conflict != null) {
                open.push(with(settled, new PlacesLeft.WithoutGroup(conflict.carer, conflict.apart.other())));
                open.push(with(settled, new PlacesLeft.WithoutGroup(conflict.carer, conflict.apart.one())));
            } else {
                best = found;
            }
        }
        boolean isWhole = open.isEmpty() && flows <= MOST_FLOWS;
        if (best == null) {
            int[] nobody = new int[animals.size()];
            Arrays.fill(nobody, NONE);
            return new Shared(nobody, 0, isWhole);
        }
        return new Shared(best.carerByAnimal, best.burden, isWhole);
    }

    private static Set<PlacesLeft.Settled> with(Set<PlacesLeft.Settled> some, PlacesLeft.Settled more) {
        Set<PlacesLeft.Settled> all = new HashSet<>(some);
        all.add(more);
        return all;
    }

    /** A family that is parted, with the carer who has most of it. */
    private PlacesLeft.@Nullable WithFamily findParted(int[] carerByAnimal) {
        for (int f = 0; f < families.size(); f++) {
            Map<Integer, Integer> countByCarer = new LinkedHashMap<>();
            for (int animal : families.get(f).animals()) {
                countByCarer.merge(carerByAnimal[animal], 1, Integer::sum);
            }
            if (countByCarer.size() > 1) {
                countByCarer.remove(NONE);
                int most = countByCarer.entrySet().stream()
                        .max(Map.Entry.comparingByValue())
                        .orElseThrow()
                        .getKey();
                return new PlacesLeft.WithFamily(most, f);
            }
        }
        return null;
    }

    private static boolean isBetter(Shared one, Shared other) {
        return one.placed() != other.placed()
                ? one.placed() > other.placed()
                : one.burden() < other.burden() - 0.5 / PER_UNIT;
    }

    private double burden(int[] carerByAnimal) {
        double sum = 0;
        for (int i = 0; i < carerByAnimal.length; i++) {
            if (carerByAnimal[i] != NONE) {
                sum += animals.get(i).burden()[carerByAnimal[i]];
            }
        }
        return sum;
    }

    private record Conflict(int carer, Apart apart) {}

    private @Nullable Conflict findConflict(int[] carerByAnimal) {
        Map<Integer, Set<Integer>> groupsByCarer = new LinkedHashMap<>();
        for (int i = 0; i < carerByAnimal.length; i++) {
            if (carerByAnimal[i] != NONE) {
                groupsByCarer
                        .computeIfAbsent(carerByAnimal[i], carer -> new HashSet<>())
                        .add(animals.get(i).group());
            }
        }
        for (Map.Entry<Integer, Set<Integer>> one : groupsByCarer.entrySet()) {
            for (Apart pair : apart) {
                if (one.getValue().contains(pair.one()) && one.getValue().contains(pair.other())) {
                    return new Conflict(one.getKey(), pair);
                }
            }
        }
        return null;
    }

    /**
     * The best flow, or null where what is settled contradicts itself. Nodes: 0 the end, then the animals, then the carers,
     * then a node by carer and group.
     */
    private int @Nullable [] flow(Set<PlacesLeft.Settled> settled) {
        int n = animals.size();
        int m = carers.size();
        var left = new PlacesLeft(animals, carers, apart, families, settled);
        if (!left.isPossible()) {
            return null;
        }
        Graph<Integer, DefaultWeightedEdge> graph = new SimpleDirectedWeightedGraph<>(DefaultWeightedEdge.class);
        Map<DefaultWeightedEdge, Integer> capacities = new HashMap<>();
        Map<DefaultWeightedEdge, Integer> carerByEdge = new HashMap<>();
        graph.addVertex(0);
        for (int i = 0; i < n; i++) {
            graph.addVertex(1 + i);
        }
        for (int j = 0; j < m; j++) {
            graph.addVertex(1 + n + j);
            edge(graph, capacities, 1 + n + j, 0, left.places(j), 0);
        }
        double worst = 1;
        for (Beast animal : animals) {
            worst += Arrays.stream(animal.burden())
                    .filter(Double::isFinite)
                    .max()
                    .orElse(0);
        }
        for (int i = 0; i < n; i++) {
            Beast animal = animals.get(i);
            // Dearer than all burdens together, so that nobody is left for the sake of a shorter way
            edge(graph, capacities, 1 + i, 0, 1, Math.rint(worst * PER_UNIT));
            for (int j = 0; j < m; j++) {
                if (left.mayHave(j, i)) {
                    int node = 1 + n + m + j * groups() + animal.group();
                    if (graph.addVertex(node)) {
                        edge(graph, capacities, node, 1 + n + j, left.places(j, animal.group()), 0);
                    }
                    DefaultWeightedEdge edge =
                            edge(graph, capacities, 1 + i, node, 1, Math.rint(animal.burden()[j] * PER_UNIT));
                    carerByEdge.put(edge, j);
                }
            }
        }
        var problem = new MinimumCostFlowProblem.MinimumCostFlowProblemImpl<Integer, DefaultWeightedEdge>(
                graph, node -> node == 0 ? -n : node <= n ? 1 : 0, capacities::get, edge -> 0);
        MinimumCostFlowAlgorithm.MinimumCostFlow<DefaultWeightedEdge> flow =
                new CapacityScalingMinimumCostFlow<Integer, DefaultWeightedEdge>().getMinimumCostFlow(problem);
        int[] carerByAnimal = left.settledCarers();
        carerByEdge.forEach((edge, carer) -> {
            if (flow.getFlow(edge) > 0.5) {
                carerByAnimal[graph.getEdgeSource(edge) - 1] = carer;
            }
        });
        return carerByAnimal;
    }

    private int groups() {
        return 1 + animals.stream().mapToInt(Beast::group).max().orElse(0);
    }

    private static DefaultWeightedEdge edge(
            Graph<Integer, DefaultWeightedEdge> graph,
            Map<DefaultWeightedEdge, Integer> capacities,
            int from,
            int to,
            int capacity,
            double cost) {
        DefaultWeightedEdge edge = graph.addEdge(from, to);
        graph.setEdgeWeight(edge, cost);
        capacities.put(edge, capacity);
        return edge;
    }
}
