package org.culvert.web.records;

import java.util.List;
import org.culvert.exchange.records.RecordFileView;
import org.culvert.exchange.records.RecordInspectionView;
import org.culvert.exchange.records.RecordInspectionView.RecordColumn;
import org.culvert.exchange.records.RecordStandings.RecordFileStanding;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/**
 * A file, and how it is to be read.
 *
 * @param reading what there is to decide; null where nothing is any more
 */
public record RecordFilePage(
        RecordFileView file,
        RecordFileStanding standing,
        @Nullable Reading reading) {
    /**
     * What there is to decide.
     *
     * @param isDecided whether it is shown as somebody decided it
     * @param seen how its text is taken apart
     * @param words those that mean nothing by themselves
     * @param understood those that do
     * @param errors all that is wrong, wherever it stands
     */
    public record Reading(
            RecordInspectionView found,
            boolean isDecided,
            String name,
            String seen,
            String uncertaintyMetres,
            List<Choice> encodings,
            List<Choice> separators,
            String headingRow,
            List<List<String>> firstRows,
            List<Column> columns,
            int moreColumns,
            List<Question> questions,
            List<Word> words,
            List<Word> understood,
            int moreWords,
            List<String> kinds,
            Problems problems,
            List<FieldError> errors) {}

    /** One of several that can be chosen. */
    public record Choice(String value, String words, boolean chosen) {}

    /** @param because why that is proposed; empty where nothing is */
    public record Column(RecordColumn column, List<Choice> choices, String because, List<FieldError> problems) {}

    /**
     * What only somebody who knows the file can say.
     *
     * @param free whether it is typed
     * @param blank whether it can be left open
     */
    public record Question(
            String key,
            String words,
            String evidence,
            boolean needed,
            boolean free,
            boolean blank,
            String answer,
            List<Choice> choices,
            List<FieldError> problems) {}

    /**
     * A word that has to mean something.
     *
     * @param sent as the form sends it back
     * @param meaning what it is taken for, in words; empty where that is nothing
     * @param choices what it can mean; words of animals have the register besides
     */
    public record Word(
            String sent,
            String word,
            String field,
            int rows,
            String meaning,
            boolean ofAnimals,
            List<Choice> choices,
            String other,
            List<FieldError> problems) {}

    /** What is wrong with a field, beside it. */
    public record Problems(
            List<FieldError> encoding,
            List<FieldError> separator,
            List<FieldError> headingRow,
            List<FieldError> columns,
            List<FieldError> uncertaintyMetres,
            List<FieldError> name) {}
}
