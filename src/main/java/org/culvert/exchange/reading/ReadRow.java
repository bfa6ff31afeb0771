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
 * @param day on which it was, or the first of the days on one of which it was
 * @param lastDay the last of these; null where it is one day
 * @param year where no day is told
 * @param time hour in the region's zone
 * @param chainageMetres from where the road's chainage begins
 * @param chainagePrecisionMetres step in which it is told
 * @param direction {@code north}, {@code east}, {@code south}, {@code west}, their four halves ({@code northEast}),
 *     {@code both}, {@code ramp}, or {@code increasing} and {@code decreasing} chainage
 * @param uncertaintyMetres as the row tells it, or as was decided for the file
 * @param animalWords as in the cell of scientific names, or of whatever names the file has one column of, without blanks at its
 *     ends
 * @param animal key that was decided for these words, {@link ReadingSettings#UNDECIDED} where that was decided, or null
 * @param commonWords as in the cell of common names, where these have a column of their own
 * @param commonAnimal what was decided for these
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
        @Nullable LocalDate lastDay,
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
        @Nullable String commonWords,
        @Nullable String commonAnimal,
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

    /** The words of its animal, both where it has two names. */
    public @Nullable String allAnimalWords() {
        if (animalWords == null || commonWords == null || animalWords.equalsIgnoreCase(commonWords)) {
            return animalWords == null ? commonWords : animalWords;
        }
        return animalWords + "; " + commonWords;
    }

    /** Whether it tells of an animal that is no wildlife. */
    public boolean isDomestic() {
        return findings.stream().anyMatch(finding -> finding.kind() == Finding.Kind.domestic);
    }

    /** A row of which nothing is known yet but its number and its text. */
    static Parts parts(long number, String original) {
        return new Parts(number, original);
    }

    /** What a row tells, part by part; what is never told stays null, and the number of animals 1. */
    static final class Parts {
        private final long number;
        private final String original;
        private @Nullable String identifier;
        private @Nullable LocalDate day;
        private @Nullable LocalDate lastDay;
        private @Nullable LocalTime time;
        private @Nullable Integer year;
        private @Nullable Spot spot;
        private @Nullable String road;
        private @Nullable Double chainageMetres;
        private @Nullable Double chainagePrecisionMetres;
        private @Nullable String direction;
        private @Nullable String crossingRoad;
        private @Nullable String locality;
        private @Nullable Double uncertaintyMetres;
        private @Nullable String animalWords;
        private @Nullable String animal;
        private @Nullable String commonWords;
        private @Nullable String commonAnimal;
        private int individualCount = 1;
        private @Nullable String vitality;
        private @Nullable String lifeStage;
        private @Nullable String sex;
        private @Nullable String cause;
        private @Nullable String remarks;

        private Parts(long number, String original) {
            this.number = number;
            this.original = original;
        }

        Parts identifier(@Nullable String told) {
            identifier = told;
            return this;
        }

        Parts when(DayCells.When told) {
            day = told.day();
            lastDay = told.lastDay();
            time = told.time();
            year = told.year();
            return this;
        }

        Parts spot(@Nullable Spot told, @Nullable Double metres) {
            spot = told;
            uncertaintyMetres = metres;
            return this;
        }

        Parts where(RoadCells.Where told) {
            road = told.road();
            chainageMetres = told.chainageMetres();
            chainagePrecisionMetres = told.precisionMetres();
            direction = told.direction();
            crossingRoad = told.crossingRoad();
            locality = told.locality();
            return this;
        }

        Parts animal(@Nullable String words, @Nullable String decided) {
            animalWords = words;
            animal = decided;
            return this;
        }

        Parts common(@Nullable String words, @Nullable String decided) {
            commonWords = words;
            commonAnimal = decided;
            return this;
        }

        Parts individuals(
                int count, @Nullable String toldVitality, @Nullable String toldLifeStage, @Nullable String toldSex) {
            individualCount = count;
            vitality = toldVitality;
            lifeStage = toldLifeStage;
            sex = toldSex;
            return this;
        }

        Parts cause(@Nullable String told) {
            cause = told;
            return this;
        }

        Parts remarks(@Nullable String told) {
            remarks = told;
            return this;
        }

        ReadRow row(List<Finding> findings) {
            return new ReadRow(
                    number,
                    original,
                    identifier,
                    day,
                    lastDay,
                    time,
                    year,
                    spot,
                    road,
                    chainageMetres,
                    chainagePrecisionMetres,
                    direction,
                    crossingRoad,
                    locality,
                    uncertaintyMetres,
                    animalWords,
                    animal,
                    commonWords,
                    commonAnimal,
                    individualCount,
                    vitality,
                    lifeStage,
                    sex,
                    cause,
                    remarks,
                    findings);
        }
    }
}
