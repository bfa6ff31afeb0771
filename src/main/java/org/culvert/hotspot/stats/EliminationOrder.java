package org.culvert.hotspot.stats;

import java.util.Arrays;
import java.util.PriorityQueue;
import org.culvert.road.network.RoadGraph;

/**
 * In which order to eliminate the nodes of a network from a linear system over them, and what each elimination fills.
 *
 * <p>Approximate minimum degree on a quotient graph: Amestoy, Davis and Duff (1996), An approximate minimum degree ordering
 * algorithm, SIAM Journal on Matrix Analysis and Applications 17, 886-905; without its supervariables. Nodes of the same
 * degree go by their number, so the order is the same every time. Road networks have small separators: the fill is a few
 * dozen entries a node. Immutable.
 */
final class EliminationOrder {
    /** Place in the order of each node. */
    private final int[] placeOf;

    /** By place: the later places that the elimination touches, ascending. */
    private final int[][] touches;

    private EliminationOrder(int[] placeOf, int[][] touches) {
        this.placeOf = placeOf;
        this.touches = touches;
    }

    int placeOf(int node) {
        return placeOf[node];
    }

    /** The rows below the diagonal of a column of the factor, ascending; not to be changed. */
    int[] touches(int place) {
        return touches[place];
    }

    int nodes() {
        return placeOf.length;
    }

    static EliminationOrder of(RoadGraph graph) {
        return new Elimination(graph).run();
    }

    private static final class Elimination {
        private final int nodes;

        /** Neighbours that share no element with a node. */
        private final IntList[] plain;

        /** Eliminated nodes that stand for the clique of what they touched. */
        private final IntList[] elements;

        private final int[][] clique;
        private final int[] degree;
        private final int[] placeOf;
        private final int[] mark;
        private final int[] beyond;
        private final int[] beyondAt;
        private final PriorityQueue<Long> next = new PriorityQueue<>();
        private int stamp;

        Elimination(RoadGraph graph) {
            nodes = graph.nodeCount();
            plain = new IntList[nodes];
            elements = new IntList[nodes];
            clique = new int[nodes][];
            degree = new int[nodes];
            placeOf = new int[nodes];
            mark = new int[nodes];
            beyond = new int[nodes];
            beyondAt = new int[nodes];
            Arrays.fill(placeOf, -1);
            for (int node = 0; node < nodes; node++) {
                plain[node] = new IntList();
                elements[node] = new IntList();
                stamp++;
                mark[node] = stamp;
                for (int k = graph.firstEnd(node); k < graph.firstEnd(node + 1); k++) {
                    int other = graph.nodeOfEnd(graph.endAt(k) ^ 1);
                    if (mark[other] != stamp) {
                        mark[other] = stamp;
                        plain[node].add(other);
                    }
                }
                degree[node] = plain[node].size;
                queue(node);
            }
        }

        private void queue(int node) {
            next.add(((long) degree[node] << 32) | node);
        }

        EliminationOrder run() {
            int[] nodeAt = new int[nodes];
            for (int place = 0; place < nodes; ) {
                long least = next.remove();
                int node = (int) least;
                if (placeOf[node] >= 0 || degree[node] != (int) (least >> 32)) {
                    continue;
                }
                placeOf[node] = place;
                nodeAt[place++] = node;
                eliminate(node);
            }
            int[][] touches = new int[nodes][];
            for (int place = 0; place < nodes; place++) {
                int[] touched = clique[nodeAt[place]];
                int[] places = new int[touched.length];
                for (int i = 0; i < touched.length; i++) {
                    places[i] = placeOf[touched[i]];
                }
                Arrays.sort(places);
                touches[place] = places;
            }
            return new EliminationOrder(placeOf, touches);
        }

        private void eliminate(int node) {
            var touched = new IntList();
            stamp++;
            mark[node] = stamp;
            gather(plain[node].items, plain[node].size, touched);
            for (int i = 0; i < elements[node].size; i++) {
                int element = elements[node].items[i];
                gather(clique[element], clique[element].length, touched);
            }
            clique[node] = touched.toArray();
            // How much of each element met lies beyond what was touched; it holds no eliminated node, else it were
            // absorbed
            for (int other : clique[node]) {
                IntList met = elements[other];
                for (int i = 0; i < met.size; i++) {
                    int element = met.items[i];
                    if (beyondAt[element] != stamp) {
                        beyondAt[element] = stamp;
                        beyond[element] = clique[element].length;
                    }
                    beyond[element]--;
                }
            }
            for (int other : clique[node]) {
                update(other, node);
            }
            plain[node] = new IntList();
            elements[node] = new IntList();
        }

        private void gather(int[] from, int count, IntList touched) {
            for (int i = 0; i < count; i++) {
                int other = from[i];
                if (mark[other] != stamp && placeOf[other] < 0) {
                    mark[other] = stamp;
                    touched.add(other);
                }
            }
        }

        private void update(int other, int eliminated) {
            IntList met = elements[other];
            int left = 0;
            int reach = 0;
            for (int i = 0; i < met.size; i++) {
                int element = met.items[i];
                // An element wholly within the new one says nothing more
                if (beyond[element] > 0) {
                    met.items[left++] = element;
                    reach += beyond[element];
                }
            }
            met.size = left;
            met.add(eliminated);
            IntList near = plain[other];
            left = 0;
            for (int i = 0; i < near.size; i++) {
                if (mark[near.items[i]] != stamp) {
                    near.items[left++] = near.items[i];
                }
            }
            near.size = left;
            degree[other] = left + clique[eliminated].length - 1 + reach;
            queue(other);
        }
    }

    /** Numbers in a row. */
    private static final class IntList {
        private int[] items = new int[4];
        private int size;

        void add(int item) {
            if (size == items.length) {
                items = Arrays.copyOf(items, 2 * size);
            }
            items[size++] = item;
        }

        int[] toArray() {
            return Arrays.copyOf(items, size);
        }
    }
}
