package org.culvert.road.network;

import java.util.Arrays;
import java.util.List;

/**
 * Decides where lines meet.
 *
 * <p>Lines meet at a vertex that they share at the same level; a mere crossing is no meeting. The level of a line (a bridge
 * is above ground, a tunnel below, unless the source says more) holds for its interior vertices and, where it goes on at the
 * same level, for its ends. At an end where nothing else at that level goes on, the line comes down (or up): it joins what
 * is there at the nearest level; from the ground, only where that ends there too. Where others at its level are there, it
 * joins another level only by way of the same road ending at both.
 */
final class Noding {
    private final List<int[]> lines;
    private final int[] levels;
    private final int[] roads;
    private final int[][] nodes;
    private int nodeCount;
    private int joined;

    /**
     * @param lines vertex numbers of each line, no two in a row equal
     * @param levels effective level of each line
     * @param roads a number for each line's road, equal for lines of one road
     */
    Noding(List<int[]> lines, int[] levels, int[] roads, int vertexCount) {
        this.lines = lines;
        this.levels = levels;
        this.roads = roads;
        this.nodes = new int[lines.size()][];
        int[] first = new int[vertexCount + 1];
        int total = 0;
        for (int[] line : lines) {
            for (int vertex : line) {
                first[vertex + 1]++;
                total++;
            }
        }
        for (int vertex = 0; vertex < vertexCount; vertex++) {
            first[vertex + 1] += first[vertex];
        }
        int[] lineAt = new int[total];
        int[] placeAt = new int[total];
        int[] next = first.clone();
        for (int line = 0; line < lines.size(); line++) {
            int[] vertices = lines.get(line);
            nodes[line] = new int[vertices.length];
            Arrays.fill(nodes[line], -1);
            for (int place = 0; place < vertices.length; place++) {
                int slot = next[vertices[place]]++;
                lineAt[slot] = line;
                placeAt[slot] = place;
            }
        }
        for (int vertex = 0; vertex < vertexCount; vertex++) {
            meet(
                    Arrays.copyOfRange(lineAt, first[vertex], first[vertex + 1]),
                    Arrays.copyOfRange(placeAt, first[vertex], first[vertex + 1]));
        }
    }

    int nodeCount() {
        return nodeCount;
    }

    /** Number of nodes at which two or more ends or passing lines meet. */
    int joinedCount() {
        return joined;
    }

    /** The node at each vertex of a line, or -1 where the line only passes. */
    int[] nodesOf(int line) {
        return nodes[line];
    }

    private void meet(int[] atLine, int[] atPlace) {
        int count = atLine.length;
        if (count == 1) {
            if (isEnd(atLine[0], atPlace[0])) {
                nodes[atLine[0]][atPlace[0]] = nodeCount++;
            }
            return;
        }
        int[] group = new int[count];
        for (int i = 0; i < count; i++) {
            group[i] = i;
            for (int j = 0; j < i; j++) {
                if (levels[atLine[i]] == levels[atLine[j]]) {
                    group[i] = group[j];
                    break;
                }
            }
        }
        joinLevels(atLine, atPlace, group);
        int[] nodeOfGroup = new int[count];
        Arrays.fill(nodeOfGroup, -1);
        for (int i = 0; i < count; i++) {
            int size = 0;
            for (int j = 0; j < count; j++) {
                if (group[j] == group[i]) {
                    size++;
                }
            }
            if (size == 1 && !isEnd(atLine[i], atPlace[i])) {
                continue;
            }
            if (nodeOfGroup[group[i]] < 0) {
                nodeOfGroup[group[i]] = nodeCount++;
                if (size > 1) {
                    joined++;
                }
            }
            nodes[atLine[i]][atPlace[i]] = nodeOfGroup[group[i]];
        }
    }

    private void joinLevels(int[] atLine, int[] atPlace, int[] group) {
        int count = atLine.length;
        int[] levelGroup = group.clone();
        for (int i = 0; i < count; i++) {
            if (!isEnd(atLine[i], atPlace[i])) {
                continue;
            }
            int companions = 0;
            for (int j = 0; j < count; j++) {
                if (levelGroup[j] == levelGroup[i]) {
                    companions++;
                }
            }
            if (companions == 1) {
                int nearest = nearestLevel(i, atLine, atPlace);
                if (nearest >= 0) {
                    merge(group, i, nearest);
                }
            }
            for (int j = 0; j < count; j++) {
                boolean sameRoad = roads[atLine[j]] == roads[atLine[i]];
                if (sameRoad && levels[atLine[i]] != levels[atLine[j]] && isEnd(atLine[j], atPlace[j])) {
                    merge(group, i, j);
                }
            }
        }
    }

    /** From the ground a lone end goes up or down only to another end, never to what passes over or under it. */
    private int nearestLevel(int i, int[] atLine, int[] atPlace) {
        int best = -1;
        int level = levels[atLine[i]];
        for (int j = 0; j < atLine.length; j++) {
            int other = levels[atLine[j]];
            if (other == level || (level == 0 && !isEnd(atLine[j], atPlace[j]))) {
                continue;
            }
            if (best < 0) {
                best = j;
                continue;
            }
            int here = Math.abs(other - level);
            int there = Math.abs(levels[atLine[best]] - level);
            if (here < there || (here == there && Math.abs(other) < Math.abs(levels[atLine[best]]))) {
                best = j;
            }
        }
        return best;
    }

    private static void merge(int[] group, int i, int j) {
        int from = group[i];
        int to = group[j];
        for (int k = 0; k < group.length; k++) {
            if (group[k] == from) {
                group[k] = to;
            }
        }
    }

    private boolean isEnd(int line, int place) {
        return place == 0 || place == lines.get(line).length - 1;
    }
}
