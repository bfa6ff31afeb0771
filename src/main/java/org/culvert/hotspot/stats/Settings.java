package org.culvert.hotspot.stats;

/**
 * What a search is asked to do.
 *
 * @param reachMetres half-width of the kernel along the roads
 * @param pieceMetres the longest piece that the network is cut into
 * @param simulations how many sets of events are simulated
 * @param seed of the random generators
 * @param alpha the chance, over the whole network, of naming anything where there is nothing
 * @param minimumIncidents a stretch with fewer incidents is not named
 */
public record Settings(
        double reachMetres, double pieceMetres, int simulations, long seed, double alpha, int minimumIncidents) {
    public Settings {
        if (!(reachMetres > 0) || !(pieceMetres > 0) || pieceMetres > reachMetres) {
            throw new IllegalArgumentException(
                    "reach and piece are lengths greater than zero, the piece not the longer");
        }
        if (simulations < 1 || !(alpha > 0 && alpha < 1) || minimumIncidents < 1) {
            throw new IllegalArgumentException("a search needs simulations, an alpha between 0 and 1, and an incident");
        }
    }
}
