package org.culvert.road;

import java.util.UUID;
import org.culvert.road.network.RoadNetwork;

/** Places on a network that no database knows. */
public final class PlacesForBenchmark {
    private PlacesForBenchmark() {}

    /** As they are opened for many places, with identifiers of links that are made up, and without a region. */
    public static PlacesOnRoads on(RoadNetwork network) {
        UUID[] links = new UUID[network.linkCount()];
        for (int link = 0; link < links.length; link++) {
            links[link] = new UUID(1, link);
        }
        return new PlacesOnRoads(new CurrentRoads(new UUID(0, 1), 1, network, links, links), null);
    }
}
