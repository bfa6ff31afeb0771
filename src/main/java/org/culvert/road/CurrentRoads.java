package org.culvert.road;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalInt;
import java.util.UUID;
import org.culvert.road.network.RoadNetwork;

/**
 * A network version in memory, with the identifiers under which the database knows its links. Immutable.
 */
public final class CurrentRoads {
    private final UUID networkId;
    private final int number;
    private final RoadNetwork network;
    private final UUID[] linkIds;
    private final UUID[] lastingIds;
    private final Map<UUID, Integer> linkById;
    private final Map<UUID, Integer> linkByLastingId;

    /**
     * @param linkIds identifiers of its links
     * @param lastingIds identifiers under which links of older versions were the same as these; of a new link its own
     */
    CurrentRoads(UUID networkId, int number, RoadNetwork network, UUID[] linkIds, UUID[] lastingIds) {
        this.networkId = networkId;
        this.number = number;
        this.network = network;
        this.linkIds = linkIds.clone();
        this.lastingIds = lastingIds.clone();
        this.linkById = new HashMap<>(2 * linkIds.length);
        this.linkByLastingId = new HashMap<>(2 * linkIds.length);
        for (int link = 0; link < linkIds.length; link++) {
            linkById.put(linkIds[link], link);
            linkByLastingId.put(lastingIds[link], link);
        }
    }

    public UUID networkId() {
        return networkId;
    }

    /** The version's number: 1 for the first import. */
    public int number() {
        return number;
    }

    public RoadNetwork network() {
        return network;
    }

    /** The identifier of a link by its number in the network. */
    public UUID linkId(int link) {
        return linkIds[link];
    }

    /** The number of a link in this network by its identifier; empty for a link of another version. */
    public OptionalInt findLink(UUID linkId) {
        Integer link = linkById.get(linkId);
        return link == null ? OptionalInt.empty() : OptionalInt.of(link);
    }

    /** The identifier that a link keeps from version to version as long as its course does not change. */
    public UUID lastingId(int link) {
        return lastingIds[link];
    }

    /** The number of a link in this network by its lasting identifier; empty where its course is no more. */
    public OptionalInt findLasting(UUID lastingId) {
        Integer link = linkByLastingId.get(lastingId);
        return link == null ? OptionalInt.empty() : OptionalInt.of(link);
    }
}
