package org.culvert.exchange.features;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A hotspot of a group and season of the latest whole annual run.
 *
 * @param id the run and the rank in it, which stay
 * @param geometry the stretch, or the box of cells where a sensitive group is told roughly
 */
public record HotspotFeature(
        String type,
        String id,
        @Nullable Shape geometry,
        HotspotProperties properties,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<WebLink> links)
        implements MapFeature {
    @Override
    public HotspotFeature linked(List<WebLink> told) {
        return new HotspotFeature(type, id, geometry, properties, told);
    }
}
