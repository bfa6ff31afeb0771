package org.culvert.exchange.features;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Works on the roads of now; without a shape where these have no place for them. */
public record WorksFeature(
        String type,
        UUID id,
        @Nullable Shape geometry,
        WorksProperties properties,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<WebLink> links)
        implements MapFeature {
    @Override
    public WorksFeature linked(List<WebLink> told) {
        return new WorksFeature(type, id, geometry, properties, told);
    }
}
