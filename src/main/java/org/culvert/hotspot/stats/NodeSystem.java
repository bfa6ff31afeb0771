package org.culvert.hotspot.stats;

import org.culvert.road.network.RoadGraph;

/**
 * The linear system of {@link HeatTransform} over the nodes: complex, symmetric, sparse, the sum at each node of what its
 * links ask; factored once as {@code L D L'} and solved for as many right-hand sides as are wanted.
 *
 * <p>No pivots are looked for: turned by some angle the system has a positive definite real part, since the transforms are
 * taken off the negative real axis, and such a system is factored stably in any symmetric order (Higham 1998, Factorizing
 * complex symmetric matrices with positive definite real and imaginary parts, Mathematics of Computation 67, 1591-1599).
 * Columns by Davis (2006), Direct Methods for Sparse Linear Systems, chapter 4.
 *
 * <p>What joins two nodes falls by {@code exp(-|kappa| distance)}, so on a large network most of what elimination could fill is
 * nothing: entries of the factor under {@link #NOTHING} are left out, and the work grows as the network does, not faster. They
 * are as good as nothing in the solution: the diagonal outweighs its row by some {@code (kappa l)^2 / 2}, a thousandth where
 * all links are a twentieth of sigma. Immutable; a {@link Solver} serves one thread.
 */
final class NodeSystem {
    /** An entry of L, whose diagonal is one, that is left out. */
    static final double NOTHING = 1e-13;

    /** Right-hand sides that are solved for at once. */
    static final int SETS = 4;

    private static final int PER_PLACE = 2 * SETS;

    private final EliminationOrder order;

    /** By place: index of the first entry below the diagonal of its column. */
    private final int[] start;

    private int[] row;
    private double[] lowerRe;
    private double[] lowerIm;

    /** One over the diagonal D. */
    private final double[] pivotRe;

    private final double[] pivotIm;

    private NodeSystem(Builder asked, double nothing) {
        this.order = asked.order;
        this.start = new int[order.nodes() + 1];
        this.row = new int[order.nodes()];
        this.lowerRe = new double[row.length];
        this.lowerIm = new double[row.length];
        this.pivotRe = new double[order.nodes()];
        this.pivotIm = new double[order.nodes()];
        factor(asked, nothing);
    }

    /** Collects what the links ask. */
    static final class Builder {
        private final RoadGraph graph;
        private final EliminationOrder order;
        private final Complex[] diagonal;
        private final Complex[] between;

        Builder(RoadGraph graph, EliminationOrder order) {
            this.graph = graph;
            this.order = order;
            this.diagonal = new Complex[graph.nodeCount()];
            this.between = new Complex[graph.linkCount()];
            java.util.Arrays.fill(diagonal, new Complex(0, 0));
        }

        /** A link that asks {@code coth a - perSinh b} at one of its ends and the mirror image at the other. */
        void add(int link, Complex coth, Complex perSinh) {
            int from = graph.from(link);
            int to = graph.to(link);
            diagonal[from] = diagonal[from].plus(coth);
            diagonal[to] = diagonal[to].plus(coth);
            if (from == to) {
                diagonal[from] = diagonal[from].minus(perSinh.times(2));
            }
            between[link] = perSinh;
        }

        NodeSystem build() {
            return build(NOTHING);
        }

        /** @param nothing entries of the factor smaller than this are left out */
        NodeSystem build(double nothing) {
            return new NodeSystem(this, nothing);
        }
    }

    /** Column after column, each less what the columns before it that reach its row leave there. */
    private void factor(Builder asked, double nothing) {
        int nodes = order.nodes();
        double[] workRe = new double[nodes];
        double[] workIm = new double[nodes];
        int[] nodeAt = new int[nodes];
        for (int node = 0; node < nodes; node++) {
            nodeAt[order.placeOf(node)] = node;
        }
        // Columns waiting for a row, as lists through the columns; each stands at its entry of that row
        int[] firstWaiting = new int[nodes];
        int[] nextWaiting = new int[nodes];
        int[] standsAt = new int[nodes];
        java.util.Arrays.fill(firstWaiting, -1);
        for (int place = 0; place < nodes; place++) {
            gather(asked, nodeAt[place], place, workRe, workIm);
            for (int column = firstWaiting[place]; column >= 0; ) {
                int following = nextWaiting[column];
                int at = standsAt[column];
                // L_place,column D_column
                double size = pivotRe[column] * pivotRe[column] + pivotIm[column] * pivotIm[column];
                double dRe = pivotRe[column] / size;
                double dIm = -pivotIm[column] / size;
                double re = lowerRe[at] * dRe - lowerIm[at] * dIm;
                double im = lowerRe[at] * dIm + lowerIm[at] * dRe;
                for (int k = at; k < start[column + 1]; k++) {
                    workRe[row[k]] -= lowerRe[k] * re - lowerIm[k] * im;
                    workIm[row[k]] -= lowerRe[k] * im + lowerIm[k] * re;
                }
                wait(column, at + 1, firstWaiting, nextWaiting, standsAt);
                column = following;
            }
            Complex pivot = new Complex(workRe[place], workIm[place]).reciprocal();
            pivotRe[place] = pivot.re();
            pivotIm[place] = pivot.im();
            workRe[place] = 0;
            workIm[place] = 0;
            keep(place, pivot, nothing, workRe, workIm);
            wait(place, start[place], firstWaiting, nextWaiting, standsAt);
        }
        row = java.util.Arrays.copyOf(row, start[nodes]);
        lowerRe = java.util.Arrays.copyOf(lowerRe, start[nodes]);
        lowerIm = java.util.Arrays.copyOf(lowerIm, start[nodes]);
    }

    /** Turns what has been summed for a column into entries of L, and leaves the sums at zero. */
    private void keep(int place, Complex pivot, double nothing, double[] workRe, double[] workIm) {
        int from = order.starts()[place];
        int to = order.starts()[place + 1];
        int at = start[place];
        reserve(at + to - from);
        for (int k = from; k < to; k++) {
            int touched = order.rows()[k];
            double re = workRe[touched] * pivot.re() - workIm[touched] * pivot.im();
            double im = workRe[touched] * pivot.im() + workIm[touched] * pivot.re();
            workRe[touched] = 0;
            workIm[touched] = 0;
            if (re * re + im * im >= nothing * nothing) {
                row[at] = touched;
                lowerRe[at] = re;
                lowerIm[at] = im;
                at++;
            }
        }
        start[place + 1] = at;
    }

    private void reserve(int entries) {
        if (entries > row.length) {
            int length = Math.max(entries, 2 * row.length);
            row = java.util.Arrays.copyOf(row, length);
            lowerRe = java.util.Arrays.copyOf(lowerRe, length);
            lowerIm = java.util.Arrays.copyOf(lowerIm, length);
        }
    }

    private void wait(int column, int at, int[] firstWaiting, int[] nextWaiting, int[] standsAt) {
        if (at < start[column + 1]) {
            standsAt[column] = at;
            nextWaiting[column] = firstWaiting[row[at]];
            firstWaiting[row[at]] = column;
        }
    }

    private void gather(Builder asked, int node, int place, double[] workRe, double[] workIm) {
        RoadGraph graph = asked.graph;
        workRe[place] = asked.diagonal[node].isZero() ? 1 : asked.diagonal[node].re();
        workIm[place] = asked.diagonal[node].im();
        for (int k = graph.firstEnd(node); k < graph.firstEnd(node + 1); k++) {
            int end = graph.endAt(k);
            int other = order.placeOf(graph.nodeOfEnd(end ^ 1));
            if (other > place) {
                workRe[other] -= asked.between[end >> 1].re();
                workIm[other] -= asked.between[end >> 1].im();
            }
        }
    }

    /** How many entries the factor has below its diagonal. */
    int entries() {
        return row.length;
    }

    Solver newSolver() {
        return new Solver();
    }

    /**
     * Solves for some right-hand sides at once: the factor is longer than what a processor keeps near, and is gone through
     * once for all of them.
     */
    final class Solver {
        /** By place, right-hand side and part: real, imaginary. */
        private final double[] value = new double[Math.multiplyExact(PER_PLACE, pivotRe.length)];

        private Solver() {}

        /** Begins with nothing sent. */
        void clear() {
            java.util.Arrays.fill(value, 0);
        }

        /** Adds to the first right-hand side of a node. */
        void send(int node, Complex amount) {
            int at = at(node);
            value[at] += amount.re();
            value[at + 1] += amount.im();
        }

        /** The first solution at a node. */
        Complex value(int node) {
            int at = at(node);
            return new Complex(value[at], value[at + 1]);
        }

        /** Where the {@link #PER_PLACE} numbers of a node begin in {@link #values}. */
        int at(int node) {
            return PER_PLACE * order.placeOf(node);
        }

        /** Before {@link #solve} what is sent, after it the solution; real and imaginary part of set after set. */
        double[] values() {
            return value;
        }

        void solve() {
            // The four sets are written out: so they stay in registers
            double[] v = value;
            for (int place = 0; place < pivotRe.length; place++) {
                int own = PER_PLACE * place;
                double re0 = v[own];
                double im0 = v[own + 1];
                double re1 = v[own + 2];
                double im1 = v[own + 3];
                double re2 = v[own + 4];
                double im2 = v[own + 5];
                double re3 = v[own + 6];
                double im3 = v[own + 7];
                for (int k = start[place]; k < start[place + 1]; k++) {
                    double re = lowerRe[k];
                    double im = lowerIm[k];
                    int at = PER_PLACE * row[k];
                    v[at] -= re * re0 - im * im0;
                    v[at + 1] -= re * im0 + im * re0;
                    v[at + 2] -= re * re1 - im * im1;
                    v[at + 3] -= re * im1 + im * re1;
                    v[at + 4] -= re * re2 - im * im2;
                    v[at + 5] -= re * im2 + im * re2;
                    v[at + 6] -= re * re3 - im * im3;
                    v[at + 7] -= re * im3 + im * re3;
                }
            }
            for (int place = pivotRe.length - 1; place >= 0; place--) {
                int own = PER_PLACE * place;
                double re = pivotRe[place];
                double im = pivotIm[place];
                double re0 = v[own] * re - v[own + 1] * im;
                double im0 = v[own] * im + v[own + 1] * re;
                double re1 = v[own + 2] * re - v[own + 3] * im;
                double im1 = v[own + 2] * im + v[own + 3] * re;
                double re2 = v[own + 4] * re - v[own + 5] * im;
                double im2 = v[own + 4] * im + v[own + 5] * re;
                double re3 = v[own + 6] * re - v[own + 7] * im;
                double im3 = v[own + 6] * im + v[own + 7] * re;
                for (int k = start[place]; k < start[place + 1]; k++) {
                    re = lowerRe[k];
                    im = lowerIm[k];
                    int at = PER_PLACE * row[k];
                    re0 -= re * v[at] - im * v[at + 1];
                    im0 -= re * v[at + 1] + im * v[at];
                    re1 -= re * v[at + 2] - im * v[at + 3];
                    im1 -= re * v[at + 3] + im * v[at + 2];
                    re2 -= re * v[at + 4] - im * v[at + 5];
                    im2 -= re * v[at + 5] + im * v[at + 4];
                    re3 -= re * v[at + 6] - im * v[at + 7];
                    im3 -= re * v[at + 7] + im * v[at + 6];
                }
                v[own] = re0;
                v[own + 1] = im0;
                v[own + 2] = re1;
                v[own + 3] = im1;
                v[own + 4] = re2;
                v[own + 5] = im2;
                v[own + 6] = re3;
                v[own + 7] = im3;
            }
        }
    }

    /**
     * The entries of the inverse between nodes that are eliminated into each other, neighbours among them: Takahashi, Fagan
     * and Chin (1973), Formation of a sparse bus impedance matrix and its application to short circuit study; Erisman and
     * Tinney (1975), On computing certain elements of the inverse of a sparse matrix, Communications of the ACM 18, 177-179.
     * Where an entry of the factor was left out, that of the inverse is too.
     */
    Inverse inverse() {
        return new Inverse();
    }

    /** Some entries of the inverse. */
    final class Inverse {
        private final double[] belowRe = new double[row.length];
        private final double[] belowIm = new double[row.length];
        private final double[] diagonalRe = new double[pivotRe.length];
        private final double[] diagonalIm = new double[pivotRe.length];

        private Inverse() {
            double[] sumRe = new double[pivotRe.length];
            double[] sumIm = new double[pivotRe.length];
            int[] entryOf = new int[pivotRe.length];
            java.util.Arrays.fill(entryOf, -1);
            for (int place = pivotRe.length - 1; place >= 0; place--) {
                int from = start[place];
                int to = start[place + 1];
                for (int k = from; k < to; k++) {
                    entryOf[row[k]] = k;
                }
                for (int k = from; k < to; k++) {
                    int column = row[k];
                    subtract(k, column, diagonalRe[column], diagonalIm[column], sumRe, sumIm);
                    for (int below = start[column]; below < start[column + 1]; below++) {
                        int touched = entryOf[row[below]];
                        if (touched >= 0) {
                            subtract(k, row[below], belowRe[below], belowIm[below], sumRe, sumIm);
                            subtract(touched, column, belowRe[below], belowIm[below], sumRe, sumIm);
                        }
                    }
                }
                double re = pivotRe[place];
                double im = pivotIm[place];
                for (int k = from; k < to; k++) {
                    belowRe[k] = sumRe[row[k]];
                    belowIm[k] = sumIm[row[k]];
                    re -= lowerRe[k] * belowRe[k] - lowerIm[k] * belowIm[k];
                    im -= lowerRe[k] * belowIm[k] + lowerIm[k] * belowRe[k];
                    sumRe[row[k]] = 0;
                    sumIm[row[k]] = 0;
                    entryOf[row[k]] = -1;
                }
                diagonalRe[place] = re;
                diagonalIm[place] = im;
            }
        }

        /** Takes an entry of L times an entry of the inverse from a sum. */
        private void subtract(int lower, int at, double re, double im, double[] sumRe, double[] sumIm) {
            sumRe[at] -= lowerRe[lower] * re - lowerIm[lower] * im;
            sumIm[at] -= lowerRe[lower] * im + lowerIm[lower] * re;
        }

        /**
         * The entry between a node and itself or one that a link joins to it; nothing if the link's length lets nothing through,
         * though a shorter way may.
         */
        Complex entry(int node, int other) {
            int one = Math.min(order.placeOf(node), order.placeOf(other));
            int two = Math.max(order.placeOf(node), order.placeOf(other));
            if (one == two) {
                return new Complex(diagonalRe[one], diagonalIm[one]);
            }
            int at = java.util.Arrays.binarySearch(row, start[one], start[one + 1], two);
            if (at < 0) {
                return new Complex(0, 0);
            }
            return new Complex(belowRe[at], belowIm[at]);
        }
    }
}
