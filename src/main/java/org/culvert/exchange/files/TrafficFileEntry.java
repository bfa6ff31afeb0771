package org.culvert.exchange.files;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.util.LinkedHashMap;
import java.util.Map;
import org.culvert.road.traffic.TrafficCountKind;
import org.culvert.road.traffic.TrafficDirections;
import org.culvert.road.traffic.TrafficFileSaid;
import org.culvert.road.traffic.TrafficMeasure;
import org.jspecify.annotations.Nullable;

/**
 * What is told beside a file of traffic counts, as {@link TrafficFileSaid} has it. How much a trial needs, it says itself.
 *
 * @param wanted what is to be done with the file
 */
public record TrafficFileEntry(
        @NotNull Wanted wanted,
        @Nullable @Size(max = 200) String vehiclesPerDayAttribute,
        @Nullable @Size(max = 200) String yearAttribute,
        @Nullable @Size(max = 200) String fromAttribute,
        @Nullable @Size(max = 200) String toAttribute,
        @Nullable @Size(max = 200) String stationAttribute,
        @Nullable @Size(max = 200) String roadAttribute,
        @Nullable @Size(max = 200) String directionAttribute,
        @Nullable @Size(max = 200) String kindAttribute,
        @Nullable @Size(max = 200) String daysCountedAttribute,
        @Nullable @Size(max = 200) String standardErrorAttribute,
        @Nullable @Size(max = 200) String heavyVehicleAttribute,

        @Nullable @Pattern(regexp = "share|percent", message = "must be share or percent")
        String heavyVehicleUnit,

        @Nullable TrafficMeasure measure,
        @Nullable TrafficCountKind kind,
        @Nullable TrafficDirections directions,
        @Nullable @Min(1900) @Max(2200) Integer year,
        @Nullable @Size(max = 2000) String source,
        @Nullable @Positive @DecimalMax("1000") Double uncertaintyMetres,

        @Nullable @Pattern(regexp = "stop|leaveOut", message = "must be stop or leaveOut")
        String refusedRows,

        @Nullable @Size(max = 200) String crs,
        @Nullable @Size(max = 200) String layer) {
    /** What is to be done with a file of counts. */
    public enum Wanted {
        /** To be told of each row what would come of it; nothing is entered. */
        trial,
        entry
    }

    TrafficFileSaid said() {
        Map<String, @Nullable String> named = new LinkedHashMap<>();
        named.put("vehiclesPerDayAttribute", vehiclesPerDayAttribute);
        named.put("yearAttribute", yearAttribute);
        named.put("fromAttribute", fromAttribute);
        named.put("toAttribute", toAttribute);
        named.put("stationAttribute", stationAttribute);
        named.put("roadAttribute", roadAttribute);
        named.put("directionAttribute", directionAttribute);
        named.put("kindAttribute", kindAttribute);
        named.put("daysCountedAttribute", daysCountedAttribute);
        named.put("standardErrorAttribute", standardErrorAttribute);
        named.put("heavyVehicleAttribute", heavyVehicleAttribute);
        Map<String, String> attributes = new LinkedHashMap<>();
        named.forEach((parameter, attribute) -> {
            if (attribute != null) {
                attributes.put(parameter, attribute);
            }
        });
        return new TrafficFileSaid(
                attributes,
                year,
                measure == null ? null : measure.name(),
                kind == null ? null : kind.name(),
                directions == null ? null : directions.name(),
                heavyVehicleUnit,
                source,
                uncertaintyMetres,
                refusedRows);
    }
}
