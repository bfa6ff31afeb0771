package org.culvert.exchange.features;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An incident that stands by itself, for those who attend incidents. */
public record IncidentFeature(
        String type,
        UUID id,
        @Nullable Shape geometry,
        IncidentProperties properties,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<WebLink> links)
        implements MapFeature {
    @Override
    public IncidentFeature linked(List<WebLink> told) {
        return new IncidentFeature(type, id, geometry, properties, told);
    }
}
