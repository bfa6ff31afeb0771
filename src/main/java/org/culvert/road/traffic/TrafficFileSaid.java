package org.culvert.road.traffic;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What somebody says of a file of counts.
 *
 * @param attributes which attribute holds what, by the parameters of columns such as {@code yearAttribute}
 * @param year of all counts
 * @param measure name of a {@link TrafficMeasure}
 * @param kind name of a {@link TrafficCountKind}
 * @param directions name of a {@link TrafficDirections}
 * @param heavyVehicleUnit {@code percent} or {@code share}
 * @param refusedRows {@code leaveOut} or {@code stop}
 */
public record TrafficFileSaid(
        Map<String, String> attributes,
        @Nullable Integer year,
        @Nullable String measure,
        @Nullable String kind,
        @Nullable String directions,
        @Nullable String heavyVehicleUnit,
        @Nullable String source,
        @Nullable Double uncertaintyMetres,
        @Nullable String refusedRows) {}
