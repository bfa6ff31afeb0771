package org.culvert.exchange.records;

import java.time.LocalDate;
import java.util.UUID;
import java.util.function.Consumer;
import org.culvert.exchange.reading.FileSigns;
import org.culvert.exchange.reading.ReadRow;

/** The rows of a file, read as somebody decided, one after the other and never all at once. */
public interface RecordRows {
    /**
     * Reads all rows of a file that are not empty, in their order.
     *
     * @param latest a day after which nothing in the file lies
     * @return what the whole file shows
     * @throws org.culvert.platform.ConflictException if its octets are no longer kept
     */
    FileSigns read(UUID readingId, LocalDate latest, Consumer<ReadRow> taker);

    /** How the rows of the file are written, so that some of them can be sent again. */
    RowForm form(UUID readingId);

    /**
     * How the rows of a file are written.
     *
     * @param heading the row of headings as in the file; names of the columns where it has none
     * @param separator between the cells
     * @param columns how many columns the heading has
     */
    record RowForm(String heading, char separator, int columns) {}
}
