package org.culvert.hotspot.stats;

/**
 * A part of a link, both ends included.
 *
 * @param fromMetres from the link's from-node
 * @param toMetres greater than {@code fromMetres}
 */
public record RoadSpan(int link, double fromMetres, double toMetres) {
    public RoadSpan {
        if (!(fromMetres < toMetres)) {
            throw new IllegalArgumentException(
                    "a span goes from metres to more metres, not from " + fromMetres + " to " + toMetres);
        }
    }

    public double lengthMetres() {
        return toMetres - fromMetres;
    }
}
