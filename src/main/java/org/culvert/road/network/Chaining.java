package org.culvert.road.network;

import java.util.Arrays;

/**
 * Chainage at the start of each line.
 *
 * <p>Where the source gives a start measure it stands. A line without one goes on from the line of the same road whose head
 * it starts at, if exactly one ends and exactly one starts there; else it starts from 0. A ring without any measure starts
 * from 0 at its first line in the order of the source. Lines digitised against each other are not turned round: each starts
 * from 0, and the road then has the same chainage in several places, which the finding by chainage shows.
 */
final class Chaining {
    private Chaining() {}

    /**
     * @param startMeasures start measure of each line, NaN where there is none
     * @param roads number of each line's road
     * @param firstNodes node at the start of each line
     * @param lastNodes node at the end of each line
     * @param lengths metres of each line
     */
    static double[] starts(double[] startMeasures, int[] roads, int[] firstNodes, int[] lastNodes, double[] lengths) {
        int count = roads.length;
        int[] after = new int[count];
        boolean[] followed = new boolean[count];
        Arrays.fill(after, -1);
        findSuccessors(roads, firstNodes, lastNodes, after, followed);
        double[] starts = startMeasures.clone();
        for (int line = 0; line < count; line++) {
            if (!Double.isNaN(startMeasures[line])) {
                walk(line, starts, after, lengths);
            } else if (!followed[line]) {
                starts[line] = 0;
                walk(line, starts, after, lengths);
            }
        }
        for (int line = 0; line < count; line++) {
            if (Double.isNaN(starts[line])) {
                starts[line] = 0;
                walk(line, starts, after, lengths);
            }
        }
        return starts;
    }

    private static void walk(int first, double[] starts, int[] after, double[] lengths) {
        int line = first;
        while (after[line] >= 0 && Double.isNaN(starts[after[line]])) {
            starts[after[line]] = starts[line] + lengths[line];
            line = after[line];
        }
    }

    private static void findSuccessors(
            int[] roads, int[] firstNodes, int[] lastNodes, int[] after, boolean[] followed) {
        int count = roads.length;
        Integer[] byStart = order(count, roads, firstNodes);
        Integer[] byEnd = order(count, roads, lastNodes);
        int e = 0;
        for (int s = 0; s < count; ) {
            int road = roads[byStart[s]];
            int node = firstNodes[byStart[s]];
            int starting = 0;
            while (s + starting < count
                    && roads[byStart[s + starting]] == road
                    && firstNodes[byStart[s + starting]] == node) {
                starting++;
            }
            while (e < count && compare(roads[byEnd[e]], lastNodes[byEnd[e]], road, node) < 0) {
                e++;
            }
            int ending = 0;
            while (e + ending < count && roads[byEnd[e + ending]] == road && lastNodes[byEnd[e + ending]] == node) {
                ending++;
            }
            if (starting == 1 && ending == 1 && !byStart[s].equals(byEnd[e])) {
                after[byEnd[e]] = byStart[s];
                followed[byStart[s]] = true;
            }
            s += starting;
        }
    }

    private static Integer[] order(int count, int[] roads, int[] nodes) {
        Integer[] order = new Integer[count];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> compare(roads[a], nodes[a], roads[b], nodes[b]));
        return order;
    }

    private static int compare(int road1, int node1, int road2, int node2) {
        return road1 != road2 ? Integer.compare(road1, road2) : Integer.compare(node1, node2);
    }
}
