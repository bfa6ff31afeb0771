package org.culvert.exchange.records;

import org.culvert.exchange.reading.Finding;
import org.jspecify.annotations.Nullable;

/**
 * What a row, or the whole file, has that somebody must know of.
 *
 * @param kind one of few, by which reports are filtered
 * @param weight {@code note} is told and nothing more, {@code doubt} wants a decision, {@code refusal} keeps the row out
 * @param column index of the column from 0, where it is of one
 * @param detail what is there
 * @param wanted what would be right
 */
public record RecordFindingView(
        String kind,
        String weight,
        @Nullable Integer column,
        String detail,
        @Nullable String wanted) {
    static RecordFindingView of(Finding finding) {
        return new RecordFindingView(
                finding.kind().name(), finding.weight().name(), finding.column(), finding.detail(), finding.wanted());
    }
}
