package org.culvert.hotspot.stats;

import java.util.List;
import java.util.function.IntPredicate;

/**
 * What a search found on the whole network: density and adjusted p at every piece, and the hotspots they make.
 *
 * <p>Immutable.
 */
public final class Findings {
    private final Pieces pieces;
    private final double[] density;
    private final double[] expectedDensity;
    private final double[] adjustedP;
    private final Surprise surprise;
    private final double criticalSurprise;
    private final HotspotNaming naming;

    /** @param criticalSurprise the least surprise that is significant */
    Findings(
            Pieces pieces,
            double[] density,
            double[] expectedDensity,
            double[] adjustedP,
            Surprise surprise,
            double criticalSurprise,
            HotspotNaming naming) {
        this.pieces = pieces;
        this.density = density;
        this.expectedDensity = expectedDensity;
        this.adjustedP = adjustedP;
        this.surprise = surprise;
        this.criticalSurprise = criticalSurprise;
        this.naming = naming;
    }

    public Pieces pieces() {
        return pieces;
    }

    /** Density at a piece, in events per metre. */
    public double density(int piece) {
        return density[piece];
    }

    /** Density that the kind of chance expects at a piece, in events per metre. */
    public double expectedDensity(int piece) {
        return expectedDensity[piece];
    }

    /** The p-value of a piece, adjusted for all pieces of the network. */
    public double adjustedP(int piece) {
        return adjustedP[piece];
    }

    /**
     * The global envelope at a piece, in events per metre: the density that would just be significant there at the error rate
     * of the whole network. So {@code adjustedP(piece) <= alpha} exactly where {@code density(piece) >= envelope(piece)}.
     * Infinite where no density would be, such as where chance puts nothing. Computed when asked for.
     */
    public double envelope(int piece) {
        return surprise.densityOf(piece, criticalSurprise);
    }

    /** The smallest adjusted p anywhere: whether there is anything at all. */
    public double smallestP() {
        double smallest = 1;
        for (double p : adjustedP) {
            smallest = Math.min(smallest, p);
        }
        return smallest;
    }

    /** All hotspots of the network, by rank. */
    public List<Hotspot> hotspots() {
        return hotspotsOn(link -> true);
    }

    /**
     * The hotspots on some links only, such as those of one owner. What is significant was settled on the whole network;
     * the stretches are clipped to the links and trimmed again.
     */
    public List<Hotspot> hotspotsOn(IntPredicate links) {
        return naming.name(adjustedP, links);
    }
}
