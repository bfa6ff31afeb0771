package org.culvert.hotspot.stats;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Smooths by the heat kernel, which reaches everywhere: the rows say how an event is shared among pieces, and a {@link
 * HeatField} does the rest.
 *
 * <p>With n events of chances p, the mean density is {@code n K p} exactly. Its variance is {@code n (K^2 p - (K p)^2)}, with
 * the kernel squared. Where chance is uniform {@code K^2 p} is p times the return density of {@code sigma sqrt(2)}; where it is
 * not, p is averaged around the place by the kernel of {@code sigma / sqrt(2)}, as the squared kernel does on a straight road.
 * The simulations judge by the same variance, so what is not quite right in it costs power and no truth.
 */
final class HeatSmoother implements Smoother {
    /**
     * Below this share of one event's peak the narrower kernel, and with it the variance, is hardly more than its error. Such
     * places, some three sigma from wherever chance puts an event, are no surprise whatever happens.
     */
    private static final double NOTHING = 100 * HeatField.ERROR;

    private static final int[] NONE = {};

    private final Responses shares;
    private final HeatTables field;
    private final HeatField narrower;
    private final double[] returns;
    private final double nothing;
    private final int threads;

    HeatSmoother(Responses shares, double sigmaMetres, int threads) {
        this.shares = shares;
        Pieces pieces = shares.pieces();
        EliminationOrder order = EliminationOrder.of(pieces.graph());
        this.returns = new HeatField(pieces, order, sigmaMetres * Math.sqrt(2)).returns(threads);
        this.field = new HeatField(pieces, order, sigmaMetres).keep(threads);
        this.narrower = new HeatField(pieces, order, sigmaMetres / Math.sqrt(2));
        this.threads = threads;
        this.nothing = NOTHING * new RoadKernel.Gaussian(sigmaMetres / Math.sqrt(2)).density(0);
    }

    @Override
    public Responses responses() {
        return shares;
    }

    @Override
    public NullModel.Moments moments(NullModel chance) {
        NullModel.Moments counts = chance.moments();
        int pieces = counts.mean().length;
        var counted = new double[HeatTables.SETS][pieces];
        counted[0] = counts.mean();
        var smoothed = new double[HeatTables.SETS][pieces];
        field.newWorker().smooth(counted, smoothed);
        double[] mean = smoothed[0];
        double[] nearby = narrower.smooth(counts.mean(), threads);
        double[] variance = new double[pieces];
        for (int piece = 0; piece < pieces; piece++) {
            if (nearby[piece] < nothing) {
                mean[piece] = 0;
            } else {
                double spread = nearby[piece] * returns[piece] - mean[piece] * mean[piece] / chance.events();
                variance[piece] = Math.max(0, (1 - chance.shareDrawn()) * spread);
            }
        }
        return new NullModel.Moments(mean, variance, counts.recorded());
    }

    @Override
    public int atOnce() {
        return HeatTables.SETS;
    }

    @Override
    public Brush newBrush() {
        return new Heating();
    }

    private final class Heating implements Brush {
        private final HeatTables.Worker worker = field.newWorker();
        private final double[][] counts =
                new double[HeatTables.SETS][shares.pieces().count()];
        private final double[][] density =
                new double[HeatTables.SETS][shares.pieces().count()];
        private final int[] met = new int[shares.pieces().count()];
        private final int[] everywhere = IntStream.range(0, met.length).toArray();

        @Override
        public void smooth(int[]... sets) {
            for (int set = 0; set < counts.length; set++) {
                Arrays.fill(counts[set], 0);
                int count = 0;
                for (int row : set < sets.length ? sets[set] : NONE) {
                    count = shares.addTo(row, counts[set], met, count);
                }
            }
            worker.smooth(counts, density);
        }

        @Override
        public double[] density(int set) {
            return density[set];
        }

        @Override
        public int touchedCount(int set) {
            return everywhere.length;
        }

        @Override
        public int[] touched(int set) {
            return everywhere;
        }
    }
}
