package org.culvert.exchange.reading;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How somebody decided that the cells of a table are to be read.
 *
 * @param columns index of the column that holds a field
 * @param dayOrder null where no column of days can be read in two ways
 * @param serialDays numbers in a column of days are days as spreadsheets keep them, counted from 1900 on
 * @param midnightIsNoHour 00:00 stands where no hour is known
 * @param axesSwapped latitude stands under the heading of longitude, for the whole file
 * @param epsg of eastings and northings
 * @param uncertaintyMetres of coordinates whose row tells none
 * @param chainageUnit of numbers without a unit
 * @param cause key of the cause of rows that tell none
 * @param animals by the words of a cell, as {@link #wordKey} gives them: the key of a taxon or a group
 *     ({@code taxon:…}, {@code group:…}), {@link #DOMESTIC} or {@link #UNDECIDED}
 * @param vitalities by word: {@code alive}, {@code dead} or {@code unknown}
 * @param directions by word, as in {@link ReadRow#direction}
 * @param causes by word: the key of a cause
 */
public record ReadingSettings(
        Map<Headings.Field, Integer> columns,
        Dates.@Nullable Order dayOrder,
        Numbers.Mark decimalMark,
        boolean serialDays,
        boolean midnightIsNoHour,
        boolean axesSwapped,
        @Nullable Integer epsg,
        @Nullable Double uncertaintyMetres,
        ChainageUnit chainageUnit,
        @Nullable String cause,
        Map<String, String> animals,
        Map<String, String> vitalities,
        Map<String, String> directions,
        Map<String, String> causes) {
    public static final String DOMESTIC = "domestic";
    public static final String UNDECIDED = "undecided";

    /** What a chainage counts where no unit stands beside it. */
    public enum ChainageUnit {
        kilometres(1000),
        metres(1),
        /** International mile of 1,609.344 m (from memory). */
        miles(1609.344);

        private final double inMetres;

        ChainageUnit(double inMetres) {
            this.inMetres = inMetres;
        }

        public double inMetres() {
            return inMetres;
        }
    }

    /** Under which a word of a cell is decided: without blanks at its ends, in small letters. */
    public static String wordKey(String cell) {
        return Missing.strip(cell).toLowerCase(java.util.Locale.ROOT);
    }
}
