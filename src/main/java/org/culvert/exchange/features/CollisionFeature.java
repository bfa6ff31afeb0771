package org.culvert.exchange.features;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import org.culvert.exchange.occurrence.OccurrenceView;
import org.culvert.platform.sight.Generalised;
import org.culvert.platform.sight.SelfTold;
import org.jspecify.annotations.Nullable;

/**
 * A kind of animal at a collision, told as exactly as the asker may see its place.
 *
 * @param geometry the place, or the centre of its cell; null where there is none
 * @param occurrence what it is made of; not shown
 */
public record CollisionFeature(
        String type,
        String id,
        @Nullable Shape geometry,
        CollisionProperties properties,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<WebLink> links,
        OccurrenceView occurrence)
        implements MapFeature, Generalised, SelfTold {
    static CollisionFeature of(OccurrenceView occurrence) {
        return new CollisionFeature(
                "Feature",
                occurrence.occurrenceID(),
                Shape.pointOf(occurrence.decimalLongitude(), occurrence.decimalLatitude()),
                CollisionProperties.of(occurrence),
                null,
                occurrence);
    }

    @Override
    public CollisionFeature linked(List<WebLink> told) {
        return new CollisionFeature(type, id, geometry, properties, told, occurrence);
    }

    @Override
    public boolean own() {
        return occurrence.own();
    }

    @Override
    public double strictness() {
        return occurrence.strictness();
    }

    @Override
    public Map<String, Object> generalised(double gridDegrees) {
        Map<String, Object> rough = occurrence.generalised(gridDegrees);
        Shape cell = Shape.pointOf((Double) rough.get("decimalLongitude"), (Double) rough.get("decimalLatitude"));
        return cell == null ? Map.of() : Map.of("geometry", cell);
    }
}
