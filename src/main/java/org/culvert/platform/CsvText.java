package org.culvert.platform;

import java.io.IOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;

/** Writes tables as RFC 4180 has them: commas, CRLF, a header. */
public final class CsvText {
    private CsvText() {}

    /**
     * A printer of a table.
     *
     * @param header names of the columns, written at once
     * @throws IOException if it cannot be written
     */
    public static CSVPrinter printer(Appendable out, List<String> header) throws IOException {
        return new CSVPrinter(
                out,
                CSVFormat.RFC4180
                        .builder()
                        .setHeader(header.toArray(String[]::new))
                        .get());
    }

    /**
     * Keeps programs that open tables from taking words for a formula: where they begin like one they get an apostrophe.
     * Numbers stay as they are.
     */
    public static @Nullable Object harmless(@Nullable Object cell) {
        return cell instanceof String text && !text.isEmpty() && "=+-@\t\r".indexOf(text.charAt(0)) >= 0
                ? "'" + text
                : cell;
    }
}
