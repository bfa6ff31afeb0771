package org.culvert.road.traffic;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/** All that a count says but its place. */
record TrafficFigures(
        @Nullable String station,
        LocalDate from,
        LocalDate to,
        double vehiclesPerDay,
        TrafficMeasure measure,
        @Nullable Double standardError,
        @Nullable Integer daysCounted,
        TrafficDirections directions,
        @Nullable String direction,
        @Nullable Double heavyVehicleShare,
        TrafficCountKind kind,
        String source,
        @Nullable String words) {
    static final int LONGEST_NAME = 200;
    static final int LONGEST_WORDS = 2000;
    static final double MOST_VEHICLES = 1_000_000;
    static final int MOST_DAYS = 366;
    private static final LocalDate FIRST = LocalDate.of(1900, 1, 1);

    /** @throws InvalidException naming every field that is wrong */
    void check(Clock clock, ZoneId zone) {
        List<FieldError> errors = new ArrayList<>();
        long days = to.toEpochDay() - from.toEpochDay() + 1;
        if (from.isBefore(FIRST)) {
            errors.add(error("from", "No such year is meant.", "a day such as 2024-01-01"));
        }
        if (days < 1) {
            errors.add(error("to", "The period ends before it begins.", "a day on or after from"));
        } else if (days > MOST_DAYS) {
            errors.add(error(
                    "to",
                    "The period is longer than a year.",
                    "at most 366 days; enter each year as a record of its own"));
        }
        LocalDate today = clock.instant().atZone(zone).toLocalDate();
        if (from.isAfter(today)) {
            errors.add(error("from", "This lies in the future.", "a day that has begun: forecasts are no counts"));
        }
        if (!(vehiclesPerDay >= 0 && vehiclesPerDay <= MOST_VEHICLES)) {
            errors.add(error("vehiclesPerDay", "That is no traffic of a road.", "0 to 1,000,000 vehicles a day"));
        }
        if (standardError != null && !(standardError >= 0 && standardError <= MOST_VEHICLES)) {
            errors.add(
                    error("standardError", "That is no standard error.", "vehicles a day, 0 or more, or leave it out"));
        }
        if (daysCounted != null && !(daysCounted >= 1 && daysCounted <= Math.max(1, days))) {
            errors.add(error(
                    "daysCounted",
                    "So many days are not in the period.",
                    "1 to " + Math.max(1, days) + ", or leave it out"));
        }
        if (daysCounted != null && kind == TrafficCountKind.estimated) {
            errors.add(error(
                    "daysCounted", "An estimate counts no days.", "leave it out, or say that traffic was counted"));
        }
        if (direction != null && directions == TrafficDirections.both) {
            errors.add(error(
                    "direction", "Both directions together have no direction.", "leave it out, or say one direction"));
        }
        if (heavyVehicleShare != null && !(heavyVehicleShare >= 0 && heavyVehicleShare <= 1)) {
            errors.add(error("heavyVehicleShare", "That is no share.", "0 to 1: a tenth is 0.1"));
        }
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
    }

    private static FieldError error(String field, String detail, String wanted) {
        return new FieldError(field, detail, wanted, null);
    }
}
