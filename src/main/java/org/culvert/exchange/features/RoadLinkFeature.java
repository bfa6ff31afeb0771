package org.culvert.exchange.features;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.UUID;
import org.culvert.road.RoadLinkFeatures;
import org.jspecify.annotations.Nullable;

/** A link of the current network. */
public record RoadLinkFeature(
        String type,
        UUID id,
        @Nullable Shape geometry,
        RoadLinkFeatures.Properties properties,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<WebLink> links)
        implements MapFeature {
    @Override
    public RoadLinkFeature linked(List<WebLink> told) {
        return new RoadLinkFeature(type, id, geometry, properties, told);
    }
}
