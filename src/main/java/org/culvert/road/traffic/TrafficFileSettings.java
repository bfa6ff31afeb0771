package org.culvert.road.traffic;

import java.util.EnumMap;
import java.util.Map;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * How a file of counts is read.
 *
 * @param columns the attribute of each thing that the file has
 * @param year of all counts where no attribute says it
 * @param measure what all figures are an average of
 * @param kind how all were counted where no attribute says it
 * @param directions of all where no attribute says it
 * @param heavyInPercent whether heavy vehicles are in per cent; else in shares of 1
 * @param source who counted
 * @param uncertaintyMetres radius around each position
 * @param leavesOut whether rows that are refused are left out; else nothing is entered
 */
record TrafficFileSettings(
        Map<TrafficColumn, String> columns,
        @Nullable Integer year,
        @Nullable TrafficMeasure measure,
        @Nullable TrafficCountKind kind,
        @Nullable TrafficDirections directions,
        boolean heavyInPercent,
        @Nullable String source,
        double uncertaintyMetres,
        boolean leavesOut) {
    /** Somebody measured where a counter stands, or set it on a map: common practice, no source. */
    private static final double USUAL_UNCERTAINTY_METRES = 25;

    /** @throws InvalidException naming the first thing that cannot be meant */
    static TrafficFileSettings of(TrafficFileSaid said) {
        Double metres = said.uncertaintyMetres();
        if (metres != null && !(metres > 0 && metres <= 1000)) {
            throw InvalidException.of(
                    "uncertaintyMetres", "This is no radius.", "metres, more than 0 and at most 1000");
        }
        String source = said.source();
        if (source != null && (source.isBlank() || source.length() > 2000)) {
            throw InvalidException.of(
                    "source", "This is empty or longer than can be kept.", "a text of at most 2000 characters");
        }
        Integer year = said.year();
        if (year != null && !(year >= 1900 && year <= 2200)) {
            throw InvalidException.of("year", "No such year is meant.", "a calendar year such as 2024");
        }
        Map<TrafficColumn, String> columns = new EnumMap<>(TrafficColumn.class);
        said.attributes().forEach((parameter, attribute) -> {
            if (!attribute.isBlank()) {
                columns.put(TrafficColumn.of(parameter), attribute);
            }
        });
        return new TrafficFileSettings(
                columns,
                year,
                said.measure() == null ? null : TrafficWords.named("measure", TrafficMeasure.class, said.measure()),
                said.kind() == null ? null : TrafficWords.named("kind", TrafficCountKind.class, said.kind()),
                said.directions() == null
                        ? null
                        : TrafficWords.named("directions", TrafficDirections.class, said.directions()),
                isOneOf("heavyVehicleUnit", said.heavyVehicleUnit(), "percent", "share"),
                source == null ? null : source.strip(),
                metres == null ? USUAL_UNCERTAINTY_METRES : metres,
                isOneOf("refusedRows", said.refusedRows(), "leaveOut", "stop"));
    }

    /** Whether the first of two words was said; the second is the usual one. */
    private static boolean isOneOf(String field, @Nullable String said, String first, String usual) {
        if (said == null || said.equals(usual) || said.equals(first)) {
            return first.equals(said);
        }
        throw InvalidException.of(field, "This is none of the values.", first + " or " + usual);
    }

    @Nullable
    String column(TrafficColumn column) {
        return columns.get(column);
    }

    /** The same with other columns. */
    TrafficFileSettings with(Map<TrafficColumn, String> others) {
        return new TrafficFileSettings(
                others, year, measure, kind, directions, heavyInPercent, source, uncertaintyMetres, leavesOut);
    }

    /** @throws InvalidException naming the first parameter without which no row can be read */
    void requireEnough() {
        if (column(TrafficColumn.VEHICLES) == null) {
            throw missing(TrafficColumn.VEHICLES.parameter(), "the attribute that holds vehicles a day");
        }
        if (year == null && column(TrafficColumn.YEAR) == null && column(TrafficColumn.FROM) == null) {
            throw missing(
                    TrafficColumn.YEAR.parameter(),
                    "the attribute that holds the year; or fromAttribute and toAttribute, or year for all");
        }
        if ((column(TrafficColumn.FROM) == null) != (column(TrafficColumn.TO) == null)) {
            throw missing(
                    column(TrafficColumn.FROM) == null ? TrafficColumn.FROM.parameter() : TrafficColumn.TO.parameter(),
                    "both ends of the period, or neither");
        }
        if (measure == null) {
            throw missing(
                    "measure", "annualAverage, or averageOfDaysCounted where nobody made an annual average of it");
        }
        if (kind == null && column(TrafficColumn.KIND) == null) {
            throw missing("kind", "kindAttribute, or continuous, shortTerm or estimated for all");
        }
        if (directions == null && column(TrafficColumn.DIRECTION) == null) {
            throw missing("directions", "directionAttribute, or both or one for all");
        }
        if (source == null) {
            throw missing("source", "who counted, and where it is published");
        }
    }

    private static InvalidException missing(String parameter, String wanted) {
        return InvalidException.of(parameter, "This is missing.", wanted);
    }
}
