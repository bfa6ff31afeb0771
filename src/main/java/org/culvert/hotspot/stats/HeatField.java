package org.culvert.hotspot.stats;

/**
 * The density that events give to every piece of a network under the heat kernel, the equal-split continuous Gaussian, with
 * all paths of whatever length in it.
 *
 * <p>The heat kernel of a network solves {@code df/dt = (1/2) d2f/dx2} on the links, with f continuous and the outward slopes
 * summing to zero at every node, at {@code t = sigma^2}: McSwiggan, Baddeley and Nair (2017), Kernel density estimation on a
 * linear network, Scandinavian Journal of Statistics 44, 324-345. Its Laplace transform is known in closed form along each
 * link once its values at the nodes are: waves {@code exp(-kappa x)}, {@code kappa = sqrt(2 z)}, that leave the events and the
 * nodes both ways. So the transform at one z costs one sparse linear system over the nodes and a pass along every link, and no
 * grid comes into it. {@link BromwichContour} says at which few z it is wanted, and how they add up.
 *
 * <p>Densities are means over pieces, exactly integrated, in events per metre; an event keeps its own place within its piece.
 * A mass of one an event is kept to the error of the contour, {@link #ERROR} of an event's peak; below that, tails are noise
 * and may come out as zero. A transform is large on a large network and made where it is needed; {@link #keep} keeps all, for
 * many sets of events. Immutable.
 */
final class HeatField {
    /** Greatest error of the density that one event gives, in parts of the peak {@code 1 / (sigma sqrt(2 pi))}. */
    static final double ERROR = 1e-6;

    static final int TRANSFORMS = 7;

    private final Pieces pieces;
    private final EliminationOrder order;
    private final BromwichContour contour;

    /**
     * @param order an order of the nodes of the pieces' network
     * @param sigmaMetres standard deviation of the kernel, greater than zero
     * @throws IllegalArgumentException if it is not
     */
    HeatField(Pieces pieces, EliminationOrder order, double sigmaMetres) {
        if (!(sigmaMetres > 0) || Double.isInfinite(sigmaMetres)) {
            throw new IllegalArgumentException("a kernel needs a sigma greater than zero, not " + sigmaMetres);
        }
        this.pieces = pieces;
        this.order = order;
        this.contour = new BromwichContour(TRANSFORMS, sigmaMetres * sigmaMetres);
    }

    private HeatTransform transform(int k) {
        return new HeatTransform(pieces, order, contour, k);
    }

    /**
     * The density of events at their exact places.
     *
     * @param links link of each event
     * @param metres its distance from the link's from-node
     * @param threads how many threads to use; the result does not depend on it
     * @return events per metre, by piece
     */
    double[] density(int[] links, double[] metres, int threads) {
        double[] count = new double[pieces.count()];
        int[] pieceOf = new int[links.length];
        double[] offset = new double[links.length];
        for (int event = 0; event < links.length; event++) {
            int piece = pieces.at(links[event], metres[event]);
            pieceOf[event] = piece;
            offset[event] = metres[event] - pieces.centre(piece);
            count[piece]++;
        }
        return sum(
                threads,
                (transform, part) -> transform
                        .newWorker()
                        .addTo(part, new HeatTransform.Sources(count, transform, pieceOf, offset)));
    }

    /**
     * The density of one set of events.
     *
     * @param count events, or shares of them, at the centre of each piece
     * @param threads how many threads to use; the result does not depend on it
     * @return events per metre, by piece
     */
    double[] smooth(double[] count, int threads) {
        var sources = new HeatTransform.Sources(count);
        return sum(threads, (transform, part) -> transform.newWorker().addTo(part, sources));
    }

    /**
     * The density that an event at the centre of each piece gives to its own place. It is also the integral over the network
     * of the square of the kernel of {@code sigma / sqrt(2)} around that place (Chapman and Kolmogorov).
     */
    double[] returns(int threads) {
        return sum(threads, HeatTransform::addReturns);
    }

    private interface Part {
        void add(HeatTransform transform, double[] density);
    }

    private double[] sum(int threads, Part part) {
        double[][] parts = new double[TRANSFORMS][pieces.count()];
        Parallel.forEach(TRANSFORMS, threads, () -> k -> part.add(transform(k), parts[k]));
        double[] density = new double[pieces.count()];
        for (double[] one : parts) {
            for (int piece = 0; piece < density.length; piece++) {
                density[piece] += one[piece];
            }
        }
        return notBelowZero(density);
    }

    /**
     * Keeps what is the same for every set of events.
     *
     * @param threads how many threads to use; the result does not depend on it
     */
    HeatTables keep(int threads) {
        var transforms = new HeatTransform[TRANSFORMS];
        Parallel.forEach(TRANSFORMS, threads, () -> k -> transforms[k] = transform(k));
        return new HeatTables(pieces, transforms, threads);
    }

    private static double[] notBelowZero(double[] density) {
        for (int piece = 0; piece < density.length; piece++) {
            density[piece] = Math.max(0, density[piece]);
        }
        return density;
    }
}
