package org.culvert.exchange.reading;

import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How somebody decided that the cells of a table are to be read.
 *
 * @param columns index of the column that holds a field
 * @param dayOrder null where no column of days can be read in two ways
 * @param serialDays numbers in a column of days are days as spreadsheets keep them, counted from 1900 on
 * @param midnightIsNoHour 00:00 stands where no hour is known
 * @param axesSwapped latitude stands under the heading of longitude, for the whole file
 * @param latitudesWithoutSign degrees of latitude without a sign are south: the file lacks its minus signs
 * @param longitudesWithoutSign degrees of longitude without a sign are west
 * @param asAbove fields whose empty cells mean the cell above, as merged cells of a sheet become when it is saved as text
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
        boolean latitudesWithoutSign,
        boolean longitudesWithoutSign,
        Set<Headings.Field> asAbove,
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

    /** What is decided of a file whose columns are known, and nothing else yet: a point before decimals, and kilometres. */
    public static Parts of(Map<Headings.Field, Integer> columns) {
        return new Parts(columns);
    }

    /** Decisions on a file, one by one. */
    public static final class Parts {
        private final Map<Headings.Field, Integer> columns;
        private Dates.@Nullable Order dayOrder;
        private Numbers.Mark decimalMark = Numbers.Mark.point;
        private boolean serialDays;
        private boolean midnightIsNoHour;
        private boolean axesSwapped;
        private boolean latitudesWithoutSign;
        private boolean longitudesWithoutSign;
        private Set<Headings.Field> asAbove = Set.of();
        private @Nullable Integer epsg;
        private @Nullable Double uncertaintyMetres;
        private ChainageUnit chainageUnit = ChainageUnit.kilometres;
        private @Nullable String cause;
        private Map<String, String> animals = Map.of();
        private Map<String, String> vitalities = Map.of();
        private Map<String, String> directions = Map.of();
        private Map<String, String> causes = Map.of();

        private Parts(Map<Headings.Field, Integer> columns) {
            this.columns = columns;
        }

        public Parts dayOrder(Dates.@Nullable Order order) {
            dayOrder = order;
            return this;
        }

        public Parts decimalMark(Numbers.Mark mark) {
            decimalMark = mark;
            return this;
        }

        public Parts serialDays(boolean areDays) {
            serialDays = areDays;
            return this;
        }

        public Parts midnightIsNoHour(boolean isNone) {
            midnightIsNoHour = isNone;
            return this;
        }

        public Parts axesSwapped(boolean swapped) {
            axesSwapped = swapped;
            return this;
        }

        public Parts withoutSign(boolean latitudes, boolean longitudes) {
            latitudesWithoutSign = latitudes;
            longitudesWithoutSign = longitudes;
            return this;
        }

        public Parts asAbove(Set<Headings.Field> fields) {
            asAbove = fields;
            return this;
        }

        public Parts epsg(@Nullable Integer code) {
            epsg = code;
            return this;
        }

        public Parts uncertaintyMetres(@Nullable Double metres) {
            uncertaintyMetres = metres;
            return this;
        }

        public Parts chainageUnit(ChainageUnit unit) {
            chainageUnit = unit;
            return this;
        }

        public Parts cause(@Nullable String key) {
            cause = key;
            return this;
        }

        public Parts animals(Map<String, String> byWords) {
            animals = byWords;
            return this;
        }

        public Parts vitalities(Map<String, String> byWords) {
            vitalities = byWords;
            return this;
        }

        public Parts directions(Map<String, String> byWords) {
            directions = byWords;
            return this;
        }

        public Parts causes(Map<String, String> byWords) {
            causes = byWords;
            return this;
        }

        public ReadingSettings settings() {
            return new ReadingSettings(
                    columns,
                    dayOrder,
                    decimalMark,
                    serialDays,
                    midnightIsNoHour,
                    axesSwapped,
                    latitudesWithoutSign,
                    longitudesWithoutSign,
                    asAbove,
                    epsg,
                    uncertaintyMetres,
                    chainageUnit,
                    cause,
                    animals,
                    vitalities,
                    directions,
                    causes);
        }
    }

    /** Under which a word of a cell is decided: without blanks at its ends, in small letters. */
    public static String wordKey(String cell) {
        return Missing.strip(cell).toLowerCase(java.util.Locale.ROOT);
    }
}
