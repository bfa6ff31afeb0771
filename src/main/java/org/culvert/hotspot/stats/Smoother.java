package org.culvert.hotspot.stats;

import java.util.Collection;

/** Turns sets of events, as rows of {@link Responses}, into the density at every piece. Safe for several threads. */
interface Smoother {
    /**
     * The heat kernel for a Gaussian, sparse rows for a kernel that ends at its reach.
     *
     * @param events what will be looked up: how their places were recorded, and if {@code everywhere} is false where
     */
    static Smoother of(
            RoadKernel kernel,
            Pieces pieces,
            Chainage chainage,
            Twins twins,
            double pieceMetres,
            Collection<RoadEvent> events,
            boolean everywhere,
            int threads) {
        if (kernel instanceof RoadKernel.Gaussian gaussian) {
            Responses shares = Responses.build(
                    pieces, chainage, twins, KernelRows::unsmoothed, pieceMetres, events, everywhere, threads);
            return new HeatSmoother(shares, gaussian.sdMetres(), threads);
        }
        return new CompactSmoother(Responses.build(
                pieces, chainage, twins, KernelRows.of(kernel), pieceMetres, events, everywhere, threads));
    }

    /** The rows that events are looked up in. */
    Responses responses();

    /** What a kind of chance gives the density at every piece, on these rows. */
    NullModel.Moments moments(NullModel chance);

    /** How many sets a brush may smooth at once, and does so sooner than one by one. */
    int atOnce();

    /** One for one thread. */
    Brush newBrush();

    /** The density of sets of events, {@link Smoother#atOnce} at a time. A set's density does not depend on those beside it. */
    interface Brush {
        /** Smooths one set or a few; those before are forgotten. */
        void smooth(int[]... sets);

        /** The density of a set by piece, in events per metre; overwritten when the next are smoothed. */
        double[] density(int set);

        /** How many pieces the density of a set may be other than zero at. */
        int touchedCount(int set);

        /** The pieces: the first {@link #touchedCount} of these. */
        int[] touched(int set);
    }
}
