package org.culvert.exchange.features;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** What is known of an incident; of its times one is an instant and the others are numbers, since programs filter by any. */
public record IncidentProperties(
        int number,
        String cause,
        boolean collision,
        Instant reportedAt,
        @Nullable Integer happenedYear,
        @Nullable Integer happenedDayOfYear,
        @Nullable Integer happenedHour,
        @Nullable String taxonGroups,
        @Nullable Double coordinateUncertaintyInMeters,
        @Nullable String roadName,
        @Nullable Double chainageMetres,
        @Nullable String side) {}
