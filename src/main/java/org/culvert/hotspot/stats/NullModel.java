package org.culvert.hotspot.stats;

import org.apache.commons.rng.UniformRandomProvider;

/** A kind of chance made ready for one set of events: what it draws, and what it expects. */
interface NullModel {
    /** Draws one set of events as rows of {@link Responses}, one an event. */
    void draw(UniformRandomProvider random, int[] rows);

    /** How many events a set has. */
    int events();

    /** Which share of all there are a set draws without replacement, 0 where there is no end of them. */
    double shareDrawn();

    /** Variance that a rough background adds to the density, as a multiple of the square of its mean. */
    default double backgroundVariance() {
        return 0;
    }

    /** Mean and variance of the sum of the rows at every piece, and the number of events recorded in it that is expected. */
    Moments moments();

    /**
     * By piece.
     *
     * @param mean expected density, events per metre
     * @param variance its variance
     * @param recorded expected number of events recorded in the piece
     */
    record Moments(double[] mean, double[] variance, double[] recorded) {}
}
