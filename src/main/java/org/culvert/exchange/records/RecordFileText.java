package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.culvert.exchange.reading.Axes;
import org.culvert.exchange.reading.Encoding;
import org.culvert.exchange.reading.Separator;
import org.culvert.exchange.reading.TableInspection;
import org.culvert.exchange.reading.TableStart;
import org.culvert.exchange.reading.TextRows;
import org.jspecify.annotations.Nullable;

/** The text of files, row by row. */
@ApplicationScoped
class RecordFileText {
    private static final int BEGINNING = 1 << 16;

    /** How the text of a file is taken apart. */
    record Form(String encoding, Separator separator, long headingRow) {}

    /**
     * A file that was looked through.
     *
     * @param heading row of headings as in the file
     */
    record Inspected(Form form, TableStart start, String heading, TableInspection table) {}

    private final RecordFileParts parts;

    RecordFileText(RecordFileParts parts) {
        this.parts = parts;
    }

    /**
     * Looks through a file.
     *
     * @param separator null: as it tells
     * @param headingRow null: as it tells
     * @param region or null where none is known yet
     */
    Inspected inspect(
            UUID contentId,
            String encoding,
            @Nullable Separator separator,
            @Nullable Long headingRow,
            LocalDate latest,
            Axes.@Nullable Box region) {
        String beginning = beginning(contentId, encoding);
        boolean isWhole = beginning.length() < BEGINNING;
        TableStart start = separator == null
                ? TableStart.of(beginning, isWhole, latest)
                : TableStart.with(beginning, separator, latest);
        if (headingRow != null && headingRow != start.headingRow()) {
            start = TableStart.at(beginning, start, headingRow);
        }
        var form = new Form(encoding, start.separator(), start.headingRow());
        var table = new TableInspection(start.headings(), latest, region);
        String heading = "";
        try (Rows rows = open(contentId, form, start.headings().size())) {
            while (rows.text().next()) {
                if (rows.text().number() > form.headingRow()) {
                    table.take(rows.text().cells(), rows.text().isQuoteBroken());
                } else if (rows.text().number() == form.headingRow()) {
                    heading = rows.text().original();
                }
            }
        }
        return new Inspected(form, start, heading, table);
    }

    /** The rows of a file from its first on; to be closed. */
    Rows open(UUID contentId, Form form, int columns) {
        Reader reader = decoded(contentId, form.encoding());
        return new Rows(reader, new TextRows(source(reader), form.separator().sign(), columns));
    }

    /** Rows of a file that is open. */
    record Rows(Reader reader, TextRows text) implements AutoCloseable {
        @Override
        public void close() {
            try {
                reader.close();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /** Names of the columns as the inspection gave them, and what stands above them. */
    TableStart start(UUID contentId, Form form, LocalDate latest) {
        String beginning = beginning(contentId, form.encoding());
        TableStart start = TableStart.with(beginning, form.separator(), latest);
        return start.headingRow() == form.headingRow() ? start : TableStart.at(beginning, start, form.headingRow());
    }

    private String beginning(UUID contentId, String encoding) {
        char[] letters = new char[BEGINNING];
        int end = 0;
        try (Reader reader = decoded(contentId, encoding)) {
            while (end < letters.length) {
                int more = reader.read(letters, end, letters.length - end);
                if (more < 0) {
                    break;
                }
                end += more;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new String(letters, 0, end);
    }

    /** What is not of the encoding becomes U+FFFD, and is told of each row. */
    private Reader decoded(UUID contentId, String encoding) {
        Charset charset = Charset.forName(encoding);
        InputStream octets = parts.open(contentId);
        var reader = new InputStreamReader(
                octets,
                charset.newDecoder()
                        .onMalformedInput(CodingErrorAction.REPLACE)
                        .onUnmappableCharacter(CodingErrorAction.REPLACE));
        return new WithoutMark(reader);
    }

    private static TextRows.Source source(Reader reader) {
        return (into, from, length) -> {
            try {
                return reader.read(into, from, length);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        };
    }

    /** Encodings that a reading may name. */
    static List<String> encodings() {
        return List.of(
                "UTF-8", Encoding.WINDOWS_1252.name(), "UTF-16LE", "UTF-16BE", "ISO-8859-15", "IBM850", "x-MacRoman");
    }

    /** Leaves out the byte order mark, which is no text. */
    private static final class WithoutMark extends java.io.FilterReader {
        private boolean begun;

        WithoutMark(Reader text) {
            super(text);
        }

        @Override
        public int read(char[] into, int from, int length) throws IOException {
            int some = in.read(into, from, length);
            if (begun || some < 1) {
                return some;
            }
            begun = true;
            if (into[from] != '\ufeff') {
                return some;
            }
            System.arraycopy(into, from + 1, into, from, some - 1);
            return some > 1 ? some - 1 : in.read(into, from, length);
        }

        @Override
        public int read() throws IOException {
            char[] one = new char[1];
            return read(one, 0, 1) < 0 ? -1 : one[0];
        }
    }
}
