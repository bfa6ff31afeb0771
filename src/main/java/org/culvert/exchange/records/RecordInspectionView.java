package org.culvert.exchange.records;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.culvert.exchange.reading.Separator;
import org.jspecify.annotations.Nullable;

/**
 * What was found when a file was looked through, and what is proposed.
 *
 * @param encoding in which it is read
 * @param encodingIsSure whether its octets tell that
 * @param headingRow number of the row of headings, from 1; 0 where there is none
 * @param titles what stands above the headings
 * @param rows below the headings, without empty ones
 * @param emptyRows rows of which all cells are blank: they are left out
 * @param shorterRows rows of fewer cells than there are headings
 * @param longerRows rows of more
 * @param brokenQuotes rows in which a quote does not close
 * @param proposals which column may hold what
 * @param questions what has to be decided, or can be
 * @param words of columns whose words have to mean something
 * @param former a reading of a file with the same headings, which may do again
 */
public record RecordInspectionView(
        String encoding,
        boolean encodingIsSure,
        Separator separator,
        long headingRow,
        List<String> titles,
        long rows,
        long emptyRows,
        long shorterRows,
        long longerRows,
        long brokenQuotes,
        List<RecordColumn> columns,
        List<RecordProposal> proposals,
        List<RecordQuestion> questions,
        List<RecordWord> words,
        @Nullable RecordFormerReading former) {
    /**
     * A column.
     *
     * @param index from 0
     * @param heading as in the file, or a number where it has none
     * @param told cells that say something
     * @param missing cells that do not
     * @param shareOfDays of the cells that say something, those that can be a day
     * @param examples some cells
     */
    public record RecordColumn(
            int index,
            String heading,
            long told,
            long missing,
            double shareOfDays,
            double shareOfNumbers,
            List<String> examples) {}

    /**
     * What a column may hold.
     *
     * @param because in words, for whoever decides
     */
    public record RecordProposal(String field, int column, String because) {}

    /** One answer to a question. */
    public record RecordChoice(String value, String words) {}

    /**
     * What only somebody who knows the file can say.
     *
     * @param key name of the setting of a reading
     * @param evidence of the whole file
     * @param needed whether there is no reading without an answer
     * @param proposed what is likely
     */
    public record RecordQuestion(
            String key,
            String question,
            List<RecordChoice> choices,
            String evidence,
            boolean needed,
            @Nullable String proposed) {}

    /**
     * A word that has to mean something.
     *
     * @param field what its column holds
     * @param rows how many cells have it
     * @param meaning what it is taken for, if nothing is decided; null where that is nothing
     * @param perhaps what it may be, by identifier
     */
    public record RecordWord(
            String field, String word, int rows, @Nullable String meaning, Map<String, String> perhaps) {}

    /** A reading of a file with the same headings. */
    public record RecordFormerReading(
            UUID readingId, @Nullable String name, RecordReadingSettings settings) {}
}
