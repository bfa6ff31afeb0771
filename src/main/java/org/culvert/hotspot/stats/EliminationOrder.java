package org.culvert.hotspot.stats;

import java.util.Arrays;
import org.culvert.road.network.RoadGraph;

/**
 * In which order to eliminate the nodes of a network from a linear system over them, and what each elimination fills.
 *
 * <p>Approximate minimum degree on a quotient graph: Amestoy, Davis and Duff (1996), An approximate minimum degree ordering
 * algorithm, SIAM Journal on Matrix Analysis and Applications 17, 886-905. Of nodes of the same degree, the one whose degree
 * changed last goes first, so the order is the same every time. Road networks have small separators: the fill is a few dozen
 * entries a node. Immutable.
 */
final class EliminationOrder {
    /** Place in the order of each node. */
    private final int[] placeOf;

    /** By place: index in {@link #row} of the first of the later places that the elimination touches. */
    private final int[] start;

    private final int[] row;

    private EliminationOrder(int[] placeOf, int[] start, int[] row) {
        this.placeOf = placeOf;
        this.start = start;
        this.row = row;
    }

    int placeOf(int node) {
        return placeOf[node];
    }

    /** By place, and one more: where the rows of its column begin in {@link #rows}; not to be changed. */
    int[] starts() {
        return start;
    }

    /** The rows below the diagonal of column after column of the factor, ascending in each; not to be changed. */
    int[] rows() {
        return row;
    }

    int nodes() {
        return placeOf.length;
    }

    static EliminationOrder of(RoadGraph graph) {
        return new Elimination(graph).run();
    }

    private static final class Elimination {
        private static final int NOBODY = -1;

        private final int nodes;

        /** Neighbours that share no element with a node. */
        private final IntList[] plain;

        /** Eliminated nodes that stand for the clique of what they touched. */
        private final IntList[] elements;

        /** Of an element: the nodes it touched, of which those that were merged or eliminated since no longer count. */
        private final int[][] clique;

        private final int[] cliqueWeight;

        /** How many nodes one that leads stands for, itself included; none once it is merged into another or eliminated. */
        private final int[] weight;

        /** The nodes that one stands for, as a list that begins with itself. */
        private final int[] nextMember;

        private final int[] lastMember;
        private final int[] mark;
        private final int[] beyond;
        private final int[] beyondAt;
        private final int[] degree;
        private final int[] firstOf;
        private final int[] after;
        private final int[] before;
        private final int[] firstAlike;
        private final int[] nextAlike;
        private final int[] nodeAt;
        private final int[][] touches;
        private int stamp;
        private int placed;
        private int least;

        Elimination(RoadGraph graph) {
            nodes = graph.nodeCount();
            plain = new IntList[nodes];
            elements = new IntList[nodes];
            clique = new int[nodes][];
            cliqueWeight = new int[nodes];
            weight = new int[nodes];
            nextMember = new int[nodes];
            lastMember = new int[nodes];
            mark = new int[nodes];
            beyond = new int[nodes];
            beyondAt = new int[nodes];
            degree = new int[nodes];
            firstOf = new int[nodes];
            after = new int[nodes];
            before = new int[nodes];
            firstAlike = new int[nodes];
            nextAlike = new int[nodes];
            nodeAt = new int[nodes];
            touches = new int[nodes][];
            Arrays.fill(weight, 1);
            Arrays.fill(nextMember, NOBODY);
            Arrays.fill(firstOf, NOBODY);
            Arrays.fill(firstAlike, NOBODY);
            for (int node = 0; node < nodes; node++) {
                lastMember[node] = node;
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
            }
            for (int node = nodes - 1; node >= 0; node--) {
                queue(node, plain[node].size);
            }
        }

        EliminationOrder run() {
            while (placed < nodes) {
                while (firstOf[least] == NOBODY) {
                    least++;
                }
                eliminate(firstOf[least]);
            }
            int[] placeOf = new int[nodes];
            for (int place = 0; place < nodes; place++) {
                placeOf[nodeAt[place]] = place;
            }
            int[] start = new int[nodes + 1];
            for (int place = 0; place < nodes; place++) {
                start[place + 1] = Math.addExact(start[place], touches[place].length);
            }
            int[] row = new int[start[nodes]];
            for (int place = 0; place < nodes; place++) {
                int at = start[place];
                for (int node : touches[place]) {
                    row[at++] = placeOf[node];
                }
                Arrays.sort(row, start[place], at);
            }
            return new EliminationOrder(placeOf, start, row);
        }

        private void queue(int node, int wanted) {
            degree[node] = wanted;
            after[node] = firstOf[wanted];
            before[node] = NOBODY;
            if (after[node] != NOBODY) {
                before[after[node]] = node;
            }
            firstOf[wanted] = node;
            least = Math.min(least, wanted);
        }

        private void unqueue(int node) {
            if (before[node] == NOBODY) {
                firstOf[degree[node]] = after[node];
            } else {
                after[before[node]] = after[node];
            }
            if (after[node] != NOBODY) {
                before[after[node]] = before[node];
            }
        }

        private void eliminate(int node) {
            unqueue(node);
            IntList touched = touchedBy(node);
            int all = 0;
            for (int i = 0; i < touched.size; i++) {
                all += weight[touched.items[i]];
            }
            lookBeyond(touched);
            // Nodes that nothing but this elimination touches go with it; those left that are touched alike are merged
            var going = new IntList();
            var staying = new IntList();
            going.add(node);
            for (int i = 0; i < touched.size; i++) {
                int other = touched.items[i];
                unqueue(other);
                boolean leaves = !update(other, node);
                (leaves ? going : staying).add(other);
                if (leaves) {
                    all -= weight[other];
                }
            }
            place(going, staying);
            merge(staying);
            clique[node] = staying.toArray();
            cliqueWeight[node] = all;
            for (int other : clique[node]) {
                if (weight[other] > 0) {
                    int wanted = all - weight[other];
                    for (int i = 0; i < plain[other].size; i++) {
                        wanted += weight[plain[other].items[i]];
                    }
                    for (int i = 0; i < elements[other].size; i++) {
                        int element = elements[other].items[i];
                        wanted += element == node ? 0 : beyond[element];
                    }
                    queue(other, Math.min(wanted, nodes - placed - weight[other]));
                }
            }
        }

        private IntList touchedBy(int node) {
            var touched = new IntList();
            stamp++;
            mark[node] = stamp;
            gather(plain[node].items, plain[node].size, touched);
            for (int i = 0; i < elements[node].size; i++) {
                int element = elements[node].items[i];
                gather(clique[element], clique[element].length, touched);
                clique[element] = new int[0];
                cliqueWeight[element] = 0;
            }
            return touched;
        }

        private void gather(int[] from, int count, IntList touched) {
            for (int i = 0; i < count; i++) {
                int other = from[i];
                if (mark[other] != stamp && weight[other] > 0) {
                    mark[other] = stamp;
                    touched.add(other);
                }
            }
        }

        /** How much of each element that is met lies beyond what is touched. */
        private void lookBeyond(IntList touched) {
            for (int i = 0; i < touched.size; i++) {
                IntList met = elements[touched.items[i]];
                for (int k = 0; k < met.size; k++) {
                    int element = met.items[k];
                    if (beyondAt[element] != stamp) {
                        beyondAt[element] = stamp;
                        beyond[element] = cliqueWeight[element];
                    }
                    beyond[element] -= weight[touched.items[i]];
                }
            }
        }

        /** Leaves a touched node what says more than the new element does; whether anything does. */
        private boolean update(int other, int eliminated) {
            IntList met = elements[other];
            int left = 0;
            for (int i = 0; i < met.size; i++) {
                // An element that was absorbed, or lies wholly within the new one, says nothing more
                if (beyond[met.items[i]] > 0) {
                    met.items[left++] = met.items[i];
                }
            }
            met.size = left;
            IntList near = plain[other];
            left = 0;
            for (int i = 0; i < near.size; i++) {
                if (mark[near.items[i]] != stamp && weight[near.items[i]] > 0) {
                    near.items[left++] = near.items[i];
                }
            }
            near.size = left;
            if (met.size == 0 && near.size == 0) {
                return false;
            }
            met.add(eliminated);
            return true;
        }

        /** Gives the next places to the nodes that go, and notes what each touches, by node. */
        private void place(IntList going, IntList staying) {
            var order = new IntList();
            for (int i = 0; i < going.size; i++) {
                addMembers(going.items[i], order);
            }
            int gone = order.size;
            for (int i = 0; i < staying.size; i++) {
                addMembers(staying.items[i], order);
            }
            for (int i = 0; i < gone; i++) {
                nodeAt[placed] = order.items[i];
                touches[placed++] = Arrays.copyOfRange(order.items, i + 1, order.size);
            }
            for (int i = 0; i < going.size; i++) {
                weight[going.items[i]] = 0;
                plain[going.items[i]] = new IntList();
                elements[going.items[i]] = new IntList();
            }
        }

        private void addMembers(int node, IntList to) {
            for (int member = node; member != NOBODY; member = nextMember[member]) {
                to.add(member);
            }
        }

        /** Lets one node stand for all that are touched alike. */
        private void merge(IntList staying) {
            for (int i = 0; i < staying.size; i++) {
                int node = staying.items[i];
                int bucket = likeness(node);
                int other = firstAlike[bucket];
                while (other != NOBODY && !alike(node, other)) {
                    other = nextAlike[other];
                }
                if (other == NOBODY) {
                    nextAlike[node] = firstAlike[bucket];
                    firstAlike[bucket] = node;
                } else {
                    weight[other] += weight[node];
                    weight[node] = 0;
                    nextMember[lastMember[other]] = node;
                    lastMember[other] = lastMember[node];
                    plain[node] = new IntList();
                }
            }
            for (int i = 0; i < staying.size; i++) {
                firstAlike[likeness(staying.items[i])] = NOBODY;
            }
        }

        private int likeness(int node) {
            return Math.floorMod(31 * elements[node].sum() + plain[node].sum(), nodes);
        }

        private boolean alike(int node, int other) {
            if (elements[node].size != elements[other].size || plain[node].size != plain[other].size) {
                return false;
            }
            stamp++;
            for (IntList list : new IntList[] {elements[other], plain[other]}) {
                for (int i = 0; i < list.size; i++) {
                    mark[list.items[i]] = stamp;
                }
            }
            for (IntList list : new IntList[] {elements[node], plain[node]}) {
                for (int i = 0; i < list.size; i++) {
                    if (mark[list.items[i]] != stamp) {
                        return false;
                    }
                }
            }
            return true;
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

        int sum() {
            int sum = 0;
            for (int i = 0; i < size; i++) {
                sum += items[i];
            }
            return sum;
        }

        int[] toArray() {
            return Arrays.copyOf(items, size);
        }
    }
}
