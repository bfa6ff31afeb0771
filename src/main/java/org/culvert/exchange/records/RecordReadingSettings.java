package org.culvert.exchange.records;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.culvert.exchange.reading.Dates;
import org.culvert.exchange.reading.Headings;
import org.culvert.exchange.reading.Numbers;
import org.culvert.exchange.reading.ReadingSettings;
import org.culvert.exchange.reading.Separator;
import org.jspecify.annotations.Nullable;

/**
 * All that was decided of a file: how its text is taken apart, and how its cells are read.
 *
 * @param encoding name of a character set, as IANA registers it
 * @param headingRow number of the row of headings, from 1; 0 where there is none
 * @param columns index of the column, from 0, that holds a field
 * @param dayOrder order of day, month and year where figures alone do not tell
 * @param serialDays numbers in a column of days are days as spreadsheets keep them, counted from 1900 on
 * @param midnightIsNoHour 00:00 stands where no hour is known
 * @param axesSwapped latitude stands under the heading of longitude
 * @param latitudesWithoutSign degrees of latitude without a sign are south
 * @param longitudesWithoutSign degrees of longitude without a sign are west
 * @param asAbove fields whose empty cells mean the cell above
 * @param epsg grid of eastings and northings
 * @param uncertaintyMetres of coordinates whose row tells none
 * @param chainageUnit of chainages without a unit
 * @param cause key of the cause of rows that tell none
 * @param animals by the words of a cell in small letters: {@code taxon:} or {@code group:} with an identifier,
 *     {@code domestic} or {@code undecided}
 * @param vitalities by word: {@code alive}, {@code dead} or {@code unknown}
 * @param directions by word: {@code north}, {@code northEast} and so on, {@code both}, {@code ramp}, {@code increasing} or
 *     {@code decreasing}
 * @param causes by word: the key of a cause
 */
public record RecordReadingSettings(
        String encoding,
        Separator separator,
        long headingRow,
        Map<Headings.Field, Integer> columns,
        Dates.@Nullable Order dayOrder,
        Numbers.Mark decimalMark,
        boolean serialDays,
        boolean midnightIsNoHour,
        boolean axesSwapped,
        boolean latitudesWithoutSign,
        boolean longitudesWithoutSign,
        @Nullable List<Headings.Field> asAbove,
        @Nullable Integer epsg,
        @Nullable Double uncertaintyMetres,
        ReadingSettings.ChainageUnit chainageUnit,
        @Nullable String cause,
        Map<String, String> animals,
        Map<String, String> vitalities,
        Map<String, String> directions,
        Map<String, String> causes) {
    ReadingSettings ofCells() {
        return ReadingSettings.of(new EnumMap<>(columns))
                .dayOrder(dayOrder)
                .decimalMark(decimalMark)
                .serialDays(serialDays)
                .midnightIsNoHour(midnightIsNoHour)
                .axesSwapped(axesSwapped)
                .withoutSign(latitudesWithoutSign, longitudesWithoutSign)
                .asAbove(asAbove == null ? Set.of() : Set.copyOf(asAbove))
                .epsg(epsg)
                .uncertaintyMetres(uncertaintyMetres)
                .chainageUnit(chainageUnit)
                .cause(cause)
                .animals(animals)
                .vitalities(vitalities)
                .directions(directions)
                .causes(causes)
                .settings();
    }

    RecordFileText.Form ofText() {
        return new RecordFileText.Form(encoding, separator, headingRow);
    }
}
