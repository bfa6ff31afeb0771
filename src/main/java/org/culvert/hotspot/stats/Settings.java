package org.culvert.hotspot.stats;

/**
 * What a search is asked to do.
 *
 * @param kernel Epanechnikov's by the equal-split discontinuous rule, the fast choice, or the Gaussian as the heat kernel
 * @param pieceMetres the longest piece that the network is cut into
 * @param simulations how many sets of events are simulated
 * @param seed of the random generators
 * @param alpha the chance, over the whole network, of naming anything where there is nothing
 * @param minimumIncidents a stretch with fewer incidents is not named
 */
public record Settings(
        RoadKernel kernel, double pieceMetres, int simulations, long seed, double alpha, int minimumIncidents) {
    public Settings {
        if (!(pieceMetres > 0) || pieceMetres > kernel.reachMetres()) {
            throw new IllegalArgumentException(
                    "a piece has a length greater than zero, and not more than the kernel's reach");
        }
        if (simulations < 1 || !(alpha > 0 && alpha < 1) || minimumIncidents < 1) {
            throw new IllegalArgumentException("a search needs simulations, an alpha between 0 and 1, and an incident");
        }
    }

    /** With Epanechnikov's kernel of a half-width. */
    public Settings(
            double reachMetres, double pieceMetres, int simulations, long seed, double alpha, int minimumIncidents) {
        this(new RoadKernel.Epanechnikov(reachMetres), pieceMetres, simulations, seed, alpha, minimumIncidents);
    }
}
