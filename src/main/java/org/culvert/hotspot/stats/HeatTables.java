package org.culvert.hotspot.stats;

import java.util.Arrays;
import org.culvert.road.network.RoadGraph;

/**
 * A {@link HeatField} for many sets of events at the centres of their pieces, with all that does not depend on them in tables.
 *
 * <p>In the transform at one z, an event at x on a link of length l sends {@code S(x) = 2 sinh(kappa (l - x)) / sinh(kappa l)}
 * to the link's from-node and {@code S(l - x)} to its to-node, and what lies at the nodes comes back to a piece by the same two
 * (the kernel is symmetric). Their sum U and difference V are the same, up to the sign, at both pieces of a pair that lie alike
 * from either end. So a transform costs two complex products for each pair, once the nodes are solved for; it is taken for
 * {@link NodeSystem#SETS} sets at once, and all transforms together. What an event gives its own link without the nodes hangs
 * on the number of pieces between and is real, summed over the transforms: one table by that number.
 *
 * <p>With s the sum of U over a link's events and d that of V, signed, the node values a and b and the waves of {@link
 * HeatTransform}, a pair's densities are the real parts of even plus and minus odd:
 *
 * <pre>
 * even = U wave (2 kappa (a + b) - (1 + exp(-kappa l)) s) / 8,    odd = V wave (2 kappa (a - b) - (1 - exp(-kappa l)) d) / 8.
 * </pre>
 *
 * Immutable; a {@link Worker} serves one thread.
 */
final class HeatTables {
    /** Sets of events that a worker smooths at once. */
    static final int SETS = NodeSystem.SETS;

    /** Real and imaginary parts of all transforms. */
    private static final int PARTS = 2 * HeatField.TRANSFORMS;

    /** Of U and of V. */
    private static final int PER_PAIR = 2 * PARTS;

    /** Of the factors of nodes, of s and of d. */
    private static final int PER_LINK = 3 * PARTS;

    private final Pieces pieces;
    private final RoadGraph graph;
    private final NodeSystem[] systems = new NodeSystem[HeatField.TRANSFORMS];

    /** By link: its first pair. */
    private final int[] firstPair;

    private final double[] pairs;
    private final double[] links;

    /** By first piece of a link plus the number of pieces between. */
    private final double[] between;

    HeatTables(Pieces pieces, HeatTransform[] transforms, int threads) {
        this.pieces = pieces;
        this.graph = pieces.graph();
        this.firstPair = new int[graph.linkCount() + 1];
        for (int link = 0; link < graph.linkCount(); link++) {
            firstPair[link + 1] = firstPair[link] + (pieces.first(link + 1) - pieces.first(link) + 1) / 2;
        }
        this.pairs = new double[Math.multiplyExact(PER_PAIR, firstPair[graph.linkCount()])];
        this.links = new double[Math.multiplyExact(PER_LINK, graph.linkCount())];
        this.between = new double[pieces.count()];
        Arrays.setAll(systems, k -> transforms[k].nodes());
        Parallel.forEach(graph.linkCount(), threads, () -> link -> {
            for (int k = 0; k < transforms.length; k++) {
                fill(link, k, transforms[k].ofLink(link));
            }
        });
    }

    private void fill(int link, int k, HeatTransform.OfLink of) {
        int count = pieces.first(link + 1) - pieces.first(link);
        int at = PER_LINK * link + 2 * k;
        set(links, at, of.wave().times(of.kappa()).times(0.25));
        set(links, at + PARTS, of.wave().times(Complex.ONE.plus(of.whole())).times(0.125));
        set(
                links,
                at + 2 * PARTS,
                of.wave().times(Complex.ONE.minus(of.whole())).times(0.125));
        // exp(-kappa x) at the centres, with x from the from-node
        var falling = new Complex[count];
        falling[0] = of.half();
        for (int i = 1; i < count; i++) {
            falling[i] = falling[i - 1].times(of.step());
        }
        Complex scale = of.perWhole().times(2);
        for (int i = 0; i < (count + 1) / 2; i++) {
            Complex one = falling[i];
            Complex other = falling[count - 1 - i];
            int pair = PER_PAIR * (firstPair[link] + i) + 2 * k;
            set(
                    pairs,
                    pair,
                    one.plus(other).times(Complex.ONE.minus(of.whole())).times(scale));
            set(
                    pairs,
                    pair + PARTS,
                    one.minus(other).times(Complex.ONE.plus(of.whole())).times(scale));
        }
        int first = pieces.first(link);
        between[first] += of.own().times(Complex.ONE.minus(of.half()).times(2)).re();
        Complex wave = of.wave();
        for (int i = 1; i < count; i++) {
            wave = wave.times(of.step());
            between[first + i] += wave.re();
        }
    }

    private static void set(double[] in, int at, Complex value) {
        in[at] = value.re();
        in[at + 1] = value.im();
    }

    /** Smooths sets of events, some at once. */
    Worker newWorker() {
        return new Worker();
    }

    /** What one thread needs. */
    final class Worker {
        private final NodeSystem.Solver[] solvers = new NodeSystem.Solver[systems.length];

        /** Of the link that is looked at, by part and set: s, d, and even and odd without U and V. */
        private final double[] s = new double[SETS * PARTS];

        private final double[] d = new double[SETS * PARTS];
        private final double[] even = new double[SETS * PARTS];
        private final double[] odd = new double[SETS * PARTS];

        private Worker() {
            Arrays.setAll(solvers, k -> systems[k].newSolver());
        }

        /**
         * @param count by set, {@link #SETS} of them: events, or shares of them, at the centre of each piece
         * @param density by set; overwritten: events per metre, by piece
         */
        void smooth(double[][] count, double[][] density) {
            for (NodeSystem.Solver solver : solvers) {
                solver.clear();
            }
            for (int link = 0; link < graph.linkCount(); link++) {
                if (gather(link, count)) {
                    send(link);
                }
            }
            for (NodeSystem.Solver solver : solvers) {
                solver.solve();
            }
            for (int link = 0; link < graph.linkCount(); link++) {
                boolean any = gather(link, count);
                fromNodes(link, any);
                lay(link, density);
                if (any) {
                    for (int set = 0; set < SETS; set++) {
                        addOwn(link, count[set], density[set]);
                    }
                }
                for (double[] of : density) {
                    for (int piece = pieces.first(link); piece < pieces.first(link + 1); piece++) {
                        of[piece] = Math.max(0, of[piece]);
                    }
                }
            }
        }

        /** Sums s and d over the events of a link, if it has any. */
        private boolean gather(int link, double[][] count) {
            int first = pieces.first(link);
            int last = pieces.first(link + 1) - 1;
            boolean any = false;
            for (int set = 0; set < SETS; set++) {
                double[] of = count[set];
                for (int piece = first; piece <= last; piece++) {
                    if (of[piece] != 0) {
                        if (!any) {
                            Arrays.fill(s, 0);
                            Arrays.fill(d, 0);
                            any = true;
                        }
                        boolean near = piece - first <= last - piece;
                        int pair = PER_PAIR * (firstPair[link] + (near ? piece - first : last - piece));
                        double signed = near ? of[piece] : -of[piece];
                        for (int part = 0; part < PARTS; part++) {
                            s[SETS * part + set] += of[piece] * pairs[pair + part];
                            d[SETS * part + set] += signed * pairs[pair + PARTS + part];
                        }
                    }
                }
            }
            return any;
        }

        private void send(int link) {
            for (int k = 0; k < solvers.length; k++) {
                double[] sent = solvers[k].values();
                int from = solvers[k].at(graph.from(link));
                int to = solvers[k].at(graph.to(link));
                for (int part = 0; part < 2; part++) {
                    for (int set = 0; set < SETS; set++) {
                        int i = SETS * (2 * k + part) + set;
                        sent[from + 2 * set + part] += 0.5 * (s[i] + d[i]);
                        sent[to + 2 * set + part] += 0.5 * (s[i] - d[i]);
                    }
                }
            }
        }

        /** Even and odd without U and V; the imaginary parts with the sign that they take in the real part of a product. */
        private void fromNodes(int link, boolean any) {
            for (int k = 0; k < solvers.length; k++) {
                double[] value = solvers[k].values();
                int from = solvers[k].at(graph.from(link));
                int to = solvers[k].at(graph.to(link));
                int at = PER_LINK * link + 2 * k;
                double nodeRe = links[at];
                double nodeIm = links[at + 1];
                for (int set = 0; set < SETS; set++) {
                    double sumRe = value[from + 2 * set] + value[to + 2 * set];
                    double sumIm = value[from + 2 * set + 1] + value[to + 2 * set + 1];
                    double lessRe = value[from + 2 * set] - value[to + 2 * set];
                    double lessIm = value[from + 2 * set + 1] - value[to + 2 * set + 1];
                    int re = SETS * 2 * k + set;
                    even[re] = nodeRe * sumRe - nodeIm * sumIm;
                    even[re + SETS] = -(nodeRe * sumIm + nodeIm * sumRe);
                    odd[re] = nodeRe * lessRe - nodeIm * lessIm;
                    odd[re + SETS] = -(nodeRe * lessIm + nodeIm * lessRe);
                }
                if (any) {
                    takeOwn(k, at + PARTS, s, even);
                    takeOwn(k, at + 2 * PARTS, d, odd);
                }
            }
        }

        private void takeOwn(int k, int at, double[] of, double[] from) {
            for (int set = 0; set < SETS; set++) {
                int re = SETS * 2 * k + set;
                from[re] -= links[at] * of[re] - links[at + 1] * of[re + SETS];
                from[re + SETS] += links[at] * of[re + SETS] + links[at + 1] * of[re];
            }
        }

        private void lay(int link, double[][] density) {
            int first = pieces.first(link);
            int last = pieces.first(link + 1) - 1;
            double[] density0 = density[0];
            double[] density1 = density[1];
            double[] density2 = density[2];
            double[] density3 = density[3];
            for (int i = 0; first + i <= last - i; i++) {
                int pair = PER_PAIR * (firstPair[link] + i);
                double even0 = 0;
                double even1 = 0;
                double even2 = 0;
                double even3 = 0;
                double odd0 = 0;
                double odd1 = 0;
                double odd2 = 0;
                double odd3 = 0;
                for (int part = 0; part < PARTS; part++) {
                    double u = pairs[pair + part];
                    double v = pairs[pair + PARTS + part];
                    int at = SETS * part;
                    even0 += u * even[at];
                    even1 += u * even[at + 1];
                    even2 += u * even[at + 2];
                    even3 += u * even[at + 3];
                    odd0 += v * odd[at];
                    odd1 += v * odd[at + 1];
                    odd2 += v * odd[at + 2];
                    odd3 += v * odd[at + 3];
                }
                density0[first + i] = even0 + odd0;
                density1[first + i] = even1 + odd1;
                density2[first + i] = even2 + odd2;
                density3[first + i] = even3 + odd3;
                density0[last - i] = even0 - odd0;
                density1[last - i] = even1 - odd1;
                density2[last - i] = even2 - odd2;
                density3[last - i] = even3 - odd3;
            }
        }

        private void addOwn(int link, double[] count, double[] density) {
            int first = pieces.first(link);
            int beyond = pieces.first(link + 1);
            for (int event = first; event < beyond; event++) {
                if (count[event] != 0) {
                    for (int piece = first; piece < beyond; piece++) {
                        density[piece] += count[event] * between[first + Math.abs(piece - event)];
                    }
                }
            }
        }
    }
}
