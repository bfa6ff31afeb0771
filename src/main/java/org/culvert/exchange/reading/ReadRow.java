package org.culvert.exchange.reading;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A row as its cells say it; nothing has been looked up.
 *
 * @param number line of the table as a spreadsheet counts it: the first line of the file is 1
 * @param original text of the row as in the file, without the line end
 * @param identifier what the file calls the record
 * @param year where no day is told
 * @param time hour in the region's zone
 * @param chainageMetres from where the road's chainage begins
 * @param chainagePrecisionMetres step in which it is told
 * @param direction {@code north}, {@code east}, {@code south}, {@code west}, their four halves ({@code northEast}),
 *     {@code both}, {@code ramp}, or {@code increasing} and {@code decreasing} chainage
 * @param uncertaintyMetres as the row tells it, or as was decided for the file
 * @param animalWords as in the cell, without blanks at its ends
 * @param animal key that was decided for these words, {@link ReadingSettings#UNDECIDED} where that was decided, or null
 * @param individualCount 1 where the row tells none
 * @param vitality {@code alive}, {@code dead}, or null
 * @param lifeStage as in the cell
 * @param sex {@code female}, {@code male}, or null
 * @param cause key of a cause, as decided for the word of the cell or for the file
 */
public record ReadRow(
        long number,
        String original,
        @Nullable String identifier,
        @Nullable LocalDate day,
        @Nullable LocalTime time,
        @Nullable Integer year,
        @Nullable Spot spot,
        @Nullable String road,
        @Nullable Double chainageMetres,
        @Nullable Double chainagePrecisionMetres,
        @Nullable String direction,
        @Nullable String crossingRoad,
        @Nullable String locality,
        @Nullable Double uncertaintyMetres,
        @Nullable String animalWords,
        @Nullable String animal,
        int individualCount,
        @Nullable String vitality,
        @Nullable String lifeStage,
        @Nullable String sex,
        @Nullable String cause,
        @Nullable String remarks,
        List<Finding> findings) {
    /** The heaviest of its findings; null where there is none. */
    public Finding.@Nullable Weight heaviest() {
        return findings.stream()
                .map(Finding::weight)
                .max(java.util.Comparator.naturalOrder())
                .orElse(null);
    }

    /** Whether it tells of an animal that is no wildlife. */
    public boolean isDomestic() {
        return findings.stream().anyMatch(finding -> finding.kind() == Finding.Kind.domestic);
    }
}
