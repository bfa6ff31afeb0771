package org.culvert.exchange.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Takes the text of a table apart into rows and cells as RFC 4180 has them, with any separator and any line end (CRLF, LF, CR),
 * one row after the other, so that a file of any length needs the memory of its longest row.
 *
 * <p>What the RFC does not have is read so that no row swallows those behind it: a quote within a cell that does not begin with
 * one is a letter like others; and so is one at the beginning of a cell that never closes, or that closes in a later line before
 * something that is no separator. Such a row says {@link #isQuoteBroken()}.
 *
 * <p>A first line {@code sep=;} names the separator, is no row and is not counted.
 */
public final class TextRows {
    /** The text, in pieces. */
    @FunctionalInterface
    public interface Source {
        /** Fills an array from an index on, with at least one character; -1 at the end. */
        int read(char[] into, int from, int length);
    }

    /** A cell longer than that began with a quote that never closes. */
    public static final int LONGEST_QUOTED = 1 << 17;

    private static final int BEGINNING = 1 << 16;

    private final Source source;
    private final int columns;
    private char separator;
    private char[] text = new char[BEGINNING];
    private int end;
    private boolean ended;
    private boolean begun;

    /** Where in {@link #text} the row begins; what is in it is told from there, since the text may be moved. */
    private int start;

    private long number;
    private Row row = new Row(List.of(), 0, 0, false, false);
    private String original = "";

    /**
     * A row that was taken apart.
     *
     * @param stop where its text ends
     * @param next where the next one begins
     */
    private record Row(List<String> cells, int stop, int next, boolean spansLines, boolean quoteBroken) {}

    /** @param columns how many cells a row has, or 0 where that is not known yet */
    public TextRows(Source source, char separator, int columns) {
        this.source = source;
        this.separator = separator;
        this.columns = columns;
    }

    /** Goes to the next row; false at the end of the text. */
    public boolean next() {
        if (!begun) {
            begun = true;
            if (!read()) {
                return false;
            }
            if (!named()) {
                return true;
            }
            number = 0;
        }
        return read();
    }

    /** The number of the row, from 1; rows that are empty count too. */
    public long number() {
        return number;
    }

    /** Text of the row, without its line end. */
    public String original() {
        return original;
    }

    public List<String> cells() {
        return row.cells();
    }

    /** Whether a quote was taken for a letter, because it does not close. */
    public boolean isQuoteBroken() {
        return row.quoteBroken();
    }

    /** Whether all cells are blank. */
    public boolean isEmpty() {
        for (String cell : row.cells()) {
            if (!Missing.strip(cell).isEmpty()) {
                return false;
            }
        }
        return true;
    }

    public char separator() {
        return separator;
    }

    /** A line of Excel's own, which other programs leave in. */
    private boolean named() {
        String line = original.length() == 7 && original.startsWith("\"") ? original.substring(1, 6) : original;
        if (line.length() == 5 && line.regionMatches(true, 0, "sep=", 0, 4)) {
            separator = line.charAt(4);
            return true;
        }
        return false;
    }

    private boolean read() {
        start += row.next();
        row = new Row(List.of(), 0, 0, false, false);
        if (!has(0)) {
            return false;
        }
        Row whole = apart(true);
        if (whole == null) {
            row = Objects.requireNonNull(apart(false));
        } else if (whole.spansLines() && columns > 0 && whole.cells().size() != columns) {
            Row line = Objects.requireNonNull(apart(false));
            row = line.cells().size() == columns ? line : whole;
        } else {
            row = whole;
        }
        original = new String(text, start, row.stop());
        number++;
        return true;
    }

    /**
     * Takes the row apart that begins at {@link #start}.
     *
     * @param overLines whether a quoted cell may go on in the next line; null is answered where one then does not close
     */
    private @Nullable Row apart(boolean overLines) {
        List<String> cells = new ArrayList<>(columns == 0 ? 16 : columns);
        boolean spans = false;
        boolean broken = false;
        int at = 0;
        while (true) {
            int from = at;
            int behind = -1;
            if (has(at) && text[start + at] == '"') {
                int close = closing(at, overLines);
                behind = close < 0 ? -1 : behind(close);
                boolean lines = close < 0 || hasLineEnd(at, close);
                if (behind >= 0) {
                    cells.add(unquoted(at + 1, close));
                    spans |= lines;
                    at = behind;
                } else if (overLines && lines) {
                    return null;
                } else {
                    broken = true;
                }
            }
            if (behind < 0) {
                at = cellEnd(at);
                cells.add(new String(text, start + from, at - from));
            }
            if (!has(at)) {
                return new Row(cells, at, at, spans, broken);
            }
            char sign = text[start + at];
            if (sign != separator) {
                int next = sign == '\r' && has(at + 1) && text[start + at + 1] == '\n' ? at + 2 : at + 1;
                return new Row(cells, at, next, spans, broken);
            }
            at++;
        }
    }

    /** Where the quote that opens at an index closes, or -1. */
    private int closing(int open, boolean overLines) {
        int at = open + 1;
        while (has(at) && at - open < LONGEST_QUOTED) {
            char sign = text[start + at];
            if (sign == '"') {
                if (!has(at + 1) || text[start + at + 1] != '"') {
                    return at;
                }
                at++;
            } else if (!overLines && (sign == '\n' || sign == '\r')) {
                return -1;
            }
            at++;
        }
        return -1;
    }

    /** Where a quoted cell ends whose quote closes there: blanks may follow; -1 where anything else does. */
    private int behind(int close) {
        int at = close + 1;
        while (has(at) && text[start + at] == ' ' && separator != ' ') {
            at++;
        }
        return !has(at) || isEnd(text[start + at]) ? at : -1;
    }

    private int cellEnd(int from) {
        int at = from;
        while (true) {
            char[] letters = text;
            int last = end - start;
            int base = start;
            while (at < last && !isEnd(letters[base + at])) {
                at++;
            }
            if (at < last || !has(at)) {
                return at;
            }
        }
    }

    private boolean isEnd(char sign) {
        return sign == separator || sign == '\n' || sign == '\r';
    }

    private boolean hasLineEnd(int from, int to) {
        for (int at = from; at < to; at++) {
            char sign = text[start + at];
            if (sign == '\n' || sign == '\r') {
                return true;
            }
        }
        return false;
    }

    private String unquoted(int from, int to) {
        String cell = new String(text, start + from, to - from);
        return cell.indexOf('"') < 0 ? cell : cell.replace("\"\"", "\"");
    }

    /** Whether the row's text goes on at an index; reads on where it must. */
    private boolean has(int index) {
        while (start + index >= end) {
            if (ended) {
                return false;
            }
            if (start > 0) {
                System.arraycopy(text, start, text, 0, end - start);
                end -= start;
                start = 0;
            }
            if (end == text.length) {
                text = Arrays.copyOf(text, text.length * 2);
            }
            int more = source.read(text, end, text.length - end);
            if (more < 0) {
                ended = true;
            } else {
                end += more;
            }
        }
        return true;
    }
}
