package org.culvert.hotspot.stats;

/**
 * One event on the network, as recorded.
 *
 * @param link its link
 * @param metres its distance from the link's from-node
 * @param recording how its place was recorded
 */
public record RoadEvent(int link, double metres, Recording recording) {
    public RoadEvent {
        if (Double.isNaN(metres)) {
            throw new IllegalArgumentException("an event needs a place");
        }
    }
}
