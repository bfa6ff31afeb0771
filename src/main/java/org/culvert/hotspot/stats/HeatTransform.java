package org.culvert.hotspot.stats;

import org.culvert.road.network.RoadGraph;

/**
 * The Laplace transform of the heat kernel of a network at one z, for events in pieces.
 *
 * <p>On a link of length l the transform u solves {@code u'' = kappa^2 u - 2 (events)}, {@code kappa^2 = 2 z}. It is the sum of
 * {@code exp(-kappa |x - y|) / kappa} over the link's own events y and of a wave from either end, {@code A exp(-kappa x) + B
 * exp(-kappa (l - x))}. A and B follow from the values a, b at the link's nodes; those follow from the slopes summing to zero
 * at every node:
 *
 * <pre>
 * sum over links at v of (a_v kappa coth(kappa l) - a_other kappa / sinh(kappa l))
 *     = sum over links at v of 2 (S_v - exp(-kappa l) S_other) / (1 - exp(-2 kappa l)),
 * </pre>
 *
 * with {@code S_v} the sum over the link's events of {@code exp(-kappa distance to v)}. Everything is written with
 * exponentials that fall, so that nothing overflows on long links. Immutable; a {@link Worker} serves one thread.
 */
final class HeatTransform {
    private final Pieces pieces;
    private final RoadGraph graph;
    private final Complex kappa;
    private final Complex weight;
    private final NodeSystem nodes;

    private final Along along;

    /**
     * What is the same for all pieces of a link, since they are equally long; by link.
     *
     * @param step exp(-kappa p), over one piece of length p
     * @param half exp(-kappa p / 2)
     * @param whole exp(-kappa l)
     * @param perWhole 1 / (1 - exp(-2 kappa l))
     * @param wave what a wave of size one at a piece's centre adds to the piece's mean density
     * @param own what an event adds to the mean of its own piece, before the share that leaves it is taken off
     */
    private record Along(
            Complex.Row step,
            Complex.Row half,
            Complex.Row whole,
            Complex.Row perWhole,
            Complex.Row wave,
            Complex.Row own) {
        static Along ofLinks(int links) {
            return new Along(
                    new Complex.Row(links),
                    new Complex.Row(links),
                    new Complex.Row(links),
                    new Complex.Row(links),
                    new Complex.Row(links),
                    new Complex.Row(links));
        }
    }

    HeatTransform(Pieces pieces, EliminationOrder order, BromwichContour contour, int k) {
        this.pieces = pieces;
        this.graph = pieces.graph();
        this.kappa = new Complex(2 * contour.re(k), 2 * contour.im(k)).root();
        this.weight = new Complex(2 * contour.weightRe(k), 2 * contour.weightIm(k));
        this.along = Along.ofLinks(graph.linkCount());
        var system = new NodeSystem.Builder(graph, order);
        for (int link = 0; link < graph.linkCount(); link++) {
            double length = graph.length(link);
            double piece = pieces.length(pieces.first(link));
            Complex half = kappa.times(-piece / 2).exp();
            Complex whole = kappa.times(-length).exp();
            Complex perWhole = Complex.ONE.minus(whole.times(whole)).reciprocal();
            Complex overPiece = kappa.times(piece).reciprocal();
            // sinh(kappa p / 2) / (kappa p / 2)
            Complex mean = half.reciprocal().minus(half).times(overPiece);
            along.step.set(link, half.times(half));
            along.half.set(link, half);
            along.whole.set(link, whole);
            along.perWhole.set(link, perWhole);
            along.wave.set(link, weight.times(mean).times(kappa.reciprocal()));
            along.own.set(link, weight.times(overPiece).times(kappa.reciprocal()));
            Complex coth = kappa.times(Complex.ONE.plus(whole.times(whole))).times(perWhole);
            Complex perSinh = kappa.times(whole).times(perWhole).times(2);
            system.add(link, coth, perSinh);
        }
        this.nodes = system.build();
    }

    /** Events by piece: how many, and the sums of what they send to either side as if from the piece's centre. */
    static final class Sources {
        private final double[] count;
        private final double[] forwardRe;
        private final double[] forwardIm;
        private final double[] backwardRe;
        private final double[] backwardIm;

        /** Events at the centres of their pieces. */
        Sources(double[] count) {
            this.count = count;
            this.forwardRe = count;
            this.backwardRe = count;
            this.forwardIm = new double[count.length];
            this.backwardIm = forwardIm;
        }

        /**
         * Events anywhere in their pieces.
         *
         * @param offset how far each is from its piece's centre, along the link
         */
        Sources(double[] count, HeatTransform transform, int[] pieceOf, double[] offset) {
            this.count = count;
            this.forwardRe = new double[count.length];
            this.forwardIm = new double[count.length];
            this.backwardRe = new double[count.length];
            this.backwardIm = new double[count.length];
            double re = transform.kappa.re();
            double im = transform.kappa.im();
            for (int event = 0; event < pieceOf.length; event++) {
                int piece = pieceOf[event];
                double size = Math.exp(re * offset[event]);
                double cos = Math.cos(im * offset[event]);
                double sin = Math.sin(im * offset[event]);
                forwardRe[piece] += size * cos;
                forwardIm[piece] += size * sin;
                backwardRe[piece] += cos / size;
                backwardIm[piece] -= sin / size;
            }
        }
    }

    Worker newWorker() {
        return new Worker();
    }

    /** The system that gives the values at the nodes. */
    NodeSystem nodes() {
        return nodes;
    }

    /** What is the same for all pieces of a link. */
    OfLink ofLink(int link) {
        return new OfLink(
                kappa,
                along.step.get(link),
                along.half.get(link),
                along.whole.get(link),
                along.perWhole.get(link),
                along.wave.get(link),
                along.own.get(link));
    }

    /** Of one link, what {@link Along} holds of all. */
    record OfLink(
            Complex kappa, Complex step, Complex half, Complex whole, Complex perWhole, Complex wave, Complex own) {}

    /** Adds the weighted real part of the transform, from the centre of every piece to itself. */
    void addReturns(double[] density) {
        NodeSystem.Inverse inverse = nodes.inverse();
        Complex scale = weight.times(kappa.reciprocal());
        for (int link = 0; link < graph.linkCount(); link++) {
            Complex whole = along.whole.get(link);
            Complex perWhole = along.perWhole.get(link);
            int from = graph.from(link);
            int to = graph.to(link);
            Complex fromFrom = inverse.entry(from, from);
            Complex fromTo = inverse.entry(from, to);
            Complex toTo = inverse.entry(to, to);
            for (int piece = pieces.first(link); piece < pieces.first(link + 1); piece++) {
                Complex left = kappa.times(-pieces.centre(piece)).exp();
                Complex right =
                        kappa.times(pieces.centre(piece) - graph.length(link)).exp();
                Complex sentLeft = left.minus(whole.times(right)).times(perWhole.times(2));
                Complex sentRight = right.minus(whole.times(left)).times(perWhole.times(2));
                Complex atFrom = kappa.times(fromFrom.times(sentLeft).plus(fromTo.times(sentRight)))
                        .minus(left);
                Complex atTo = kappa.times(fromTo.times(sentLeft).plus(toTo.times(sentRight)))
                        .minus(right);
                Complex out = atFrom.minus(whole.times(atTo)).times(perWhole);
                Complex back = atTo.minus(whole.times(atFrom)).times(perWhole);
                Complex all = Complex.ONE.plus(out.times(left)).plus(back.times(right));
                density[piece] += scale.re() * all.re() - scale.im() * all.im();
            }
        }
    }

    /** What one thread needs. */
    final class Worker {
        private final NodeSystem.Solver solver = nodes.newSolver();
        private final double[] leftRe = new double[graph.linkCount()];
        private final double[] leftIm = new double[graph.linkCount()];
        private final double[] rightRe = new double[graph.linkCount()];
        private final double[] rightIm = new double[graph.linkCount()];
        private double[] waveRe = new double[64];
        private double[] waveIm = new double[64];

        private Worker() {}

        /** Adds the weighted real part of the transform to the mean density of every piece. */
        void addTo(double[] density, Sources sources) {
            solver.clear();
            for (int link = 0; link < graph.linkCount(); link++) {
                gather(link, sources);
            }
            solver.solve();
            for (int link = 0; link < graph.linkCount(); link++) {
                lay(link, sources, density);
            }
        }

        /** What the events of a link send to its two ends, and what that means to the nodes. */
        private void gather(int link, Sources sources) {
            int first = pieces.first(link);
            int last = pieces.first(link + 1) - 1;
            double stepRe = along.step.re(link);
            double stepIm = along.step.im(link);
            double toRe = 0;
            double toIm = 0;
            for (int piece = first; piece <= last; piece++) {
                double re = toRe * stepRe - toIm * stepIm + sources.forwardRe[piece];
                toIm = toRe * stepIm + toIm * stepRe + sources.forwardIm[piece];
                toRe = re;
            }
            double fromRe = 0;
            double fromIm = 0;
            for (int piece = last; piece >= first; piece--) {
                double re = fromRe * stepRe - fromIm * stepIm + sources.backwardRe[piece];
                fromIm = fromRe * stepIm + fromIm * stepRe + sources.backwardIm[piece];
                fromRe = re;
            }
            Complex half = along.half.get(link);
            Complex atFrom = new Complex(fromRe, fromIm).times(half);
            Complex atTo = new Complex(toRe, toIm).times(half);
            leftRe[link] = atFrom.re();
            leftIm[link] = atFrom.im();
            rightRe[link] = atTo.re();
            rightIm[link] = atTo.im();
            if (atFrom.isZero() && atTo.isZero()) {
                return;
            }
            Complex whole = along.whole.get(link);
            Complex twice = along.perWhole.get(link).times(2);
            solver.send(graph.from(link), atFrom.minus(whole.times(atTo)).times(twice));
            solver.send(graph.to(link), atTo.minus(whole.times(atFrom)).times(twice));
        }

        /** Lays the waves of a link's events and of its nodes over its pieces. */
        private void lay(int link, Sources sources, double[] density) {
            int first = pieces.first(link);
            int count = pieces.first(link + 1) - first;
            Complex whole = along.whole.get(link);
            Complex half = along.half.get(link);
            Complex perWhole = along.perWhole.get(link);
            Complex wave = along.wave.get(link);
            Complex own = along.own.get(link);
            // kappa times the value at a node, less what the link's own events give it there
            Complex atFrom = kappa.times(solver.value(graph.from(link))).minus(new Complex(leftRe[link], leftIm[link]));
            Complex atTo = kappa.times(solver.value(graph.to(link))).minus(new Complex(rightRe[link], rightIm[link]));
            Complex out = atFrom.minus(whole.times(atTo)).times(perWhole).times(half);
            Complex back = atTo.minus(whole.times(atFrom)).times(perWhole).times(half);
            reserve(count);
            double stepRe = along.step.re(link);
            double stepIm = along.step.im(link);
            double re = out.re();
            double im = out.im();
            for (int i = 0; i < count; i++) {
                waveRe[i] = re;
                waveIm[i] = im;
                double withRe = re + sources.forwardRe[first + i];
                double withIm = im + sources.forwardIm[first + i];
                re = withRe * stepRe - withIm * stepIm;
                im = withRe * stepIm + withIm * stepRe;
            }
            re = back.re();
            im = back.im();
            for (int i = count - 1; i >= 0; i--) {
                int piece = first + i;
                double allRe = waveRe[i] + re;
                double allIm = waveIm[i] + im;
                double sum = wave.re() * allRe - wave.im() * allIm;
                if (sources.count[piece] != 0) {
                    double sentRe = sources.forwardRe[piece] + sources.backwardRe[piece];
                    double sentIm = sources.forwardIm[piece] + sources.backwardIm[piece];
                    double staysRe = 2 * sources.count[piece] - (half.re() * sentRe - half.im() * sentIm);
                    double staysIm = -(half.re() * sentIm + half.im() * sentRe);
                    sum += own.re() * staysRe - own.im() * staysIm;
                }
                density[piece] += sum;
                double withRe = re + sources.backwardRe[piece];
                double withIm = im + sources.backwardIm[piece];
                re = withRe * stepRe - withIm * stepIm;
                im = withRe * stepIm + withIm * stepRe;
            }
        }

        private void reserve(int count) {
            if (count > waveRe.length) {
                waveRe = new double[2 * count];
                waveIm = new double[2 * count];
            }
        }
    }
}
