package org.culvert.road;

import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What is known of a piece of road, whichever version of the network it belongs to. */
public interface RoadFacts {
    Optional<LinkFacts> findLink(UUID roadLinkId);

    /**
     * @param speedLimitKmh posted limit, or null where not known: then it counts as high
     * @param aadt annual average daily traffic in vehicles, or null where not known
     */
    record LinkFacts(
            UUID roadLinkId,
            String roadName,
            @Nullable String roadClass,
            @Nullable Double speedLimitKmh,
            @Nullable Double aadt,
            @Nullable String owner) {}
}
