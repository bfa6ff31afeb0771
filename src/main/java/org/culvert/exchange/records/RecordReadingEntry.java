package org.culvert.exchange.records;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Map;
import org.culvert.exchange.reading.Dates;
import org.culvert.exchange.reading.Headings;
import org.culvert.exchange.reading.Numbers;
import org.culvert.exchange.reading.ReadingSettings;
import org.culvert.exchange.reading.Separator;
import org.jspecify.annotations.Nullable;

/**
 * How a file is to be read. What is left out is as the file tells it, as far as it does; what it does not tell is asked.
 *
 * @param name under which it is proposed for files with the same headings
 * @param encoding {@code UTF-8}, {@code windows-1252} and so on
 * @param headingRow number of the row of headings, from 1; 0 where there is none
 * @param columns index of the column, from 0, by what it holds: {@code day}, {@code decimalLatitude} and so on
 * @param dayOrder order of day, month and year
 * @param serialDays numbers in a column of days are days as spreadsheets keep them
 * @param midnightIsNoHour 00:00 stands where no hour is known
 * @param axesSwapped latitude stands under the heading of longitude
 * @param latitudesWithoutSign degrees of latitude without a sign are south: the file lacks its minus signs
 * @param longitudesWithoutSign degrees of longitude without a sign are west
 * @param asAbove fields whose empty cells mean the cell above
 * @param epsg grid of eastings and northings
 * @param uncertaintyMetres of coordinates whose row tells none
 * @param cause key of the cause of rows that tell none
 * @param animals by the words of a cell: {@code taxon:} or {@code group:} with an identifier, {@code domestic} or
 *     {@code undecided}
 * @param vitalities by word: {@code alive}, {@code dead} or {@code unknown}
 * @param directions by word: {@code north} and so on
 * @param causes by word: the key of a cause
 */
public record RecordReadingEntry(
        @Nullable @Size(max = 200) String name,
        @Nullable @Size(max = 40) String encoding,
        @Nullable Separator separator,
        @Nullable @Min(0) @Max(40) Long headingRow,
        @NotNull @Size(max = 40) Map<String, Integer> columns,
        Dates.@Nullable Order dayOrder,
        Numbers.@Nullable Mark decimalMark,
        @Nullable Boolean serialDays,
        @Nullable Boolean midnightIsNoHour,
        @Nullable Boolean axesSwapped,
        @Nullable Boolean latitudesWithoutSign,
        @Nullable Boolean longitudesWithoutSign,
        @Nullable @Size(max = 40) List<Headings.@NotNull Field> asAbove,
        @Nullable Integer epsg,
        @Nullable @Max(100_000) Double uncertaintyMetres,
        ReadingSettings.@Nullable ChainageUnit chainageUnit,
        @Nullable @Size(max = 100) String cause,
        @Nullable @Size(max = 5000) Map<String, String> animals,
        @Nullable @Size(max = 5000) Map<String, String> vitalities,
        @Nullable @Size(max = 5000) Map<String, String> directions,
        @Nullable @Size(max = 5000) Map<String, String> causes) {}
