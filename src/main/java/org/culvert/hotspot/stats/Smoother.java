package org.culvert.hotspot.stats;

/** Turns sets of events, as rows of {@link Responses}, into the density at every piece. Safe for several threads. */
interface Smoother {
    /** The rows that events are looked up in. */
    Responses responses();

    /** What a kind of chance gives the density at every piece, on these rows. */
    NullModel.Moments moments(NullModel chance, int threads);

    /** One for one thread. */
    Brush newBrush();

    /** The density of one set of events after another. */
    interface Brush {
        /** Smooths a set; that before it is forgotten. */
        void smooth(int[] rows);

        /** The density by piece, in events per metre; overwritten by the next set. */
        double[] density();

        /** How many pieces the density may be other than zero at. */
        int touchedCount();

        /** The pieces: the first {@link #touchedCount} of these. */
        int[] touched();
    }
}
