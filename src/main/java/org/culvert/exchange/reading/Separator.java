package org.culvert.exchange.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What stands between the cells of a table in text (RFC 4180 has the comma; people have others). Told from how many cells each
 * row would have: the right one gives the same number, and more than one, in nearly all rows.
 */
public enum Separator {
    comma(','),
    semicolon(';'),
    tab('\t'),
    bar('|');

    private final char sign;

    Separator(char sign) {
        this.sign = sign;
    }

    public char sign() {
        return sign;
    }

    /**
     * How well a separator fits.
     *
     * @param cells how many cells most rows have
     * @param share of the rows that have so many
     */
    public record Fit(Separator separator, int cells, double share) {}

    /**
     * How well each fits the beginning of a text, the best first. None fits a table of one column: all then have one cell.
     *
     * @param isWhole whether the text goes on to the end of the file, so that its last row counts
     */
    public static List<Fit> fits(String beginning, boolean isWhole) {
        List<Fit> fits = new ArrayList<>();
        for (Separator one : values()) {
            fits.add(one.fit(beginning, isWhole));
        }
        fits.sort(Comparator.<Fit>comparingDouble(fit -> fit.cells() > 1 ? -fit.share() : 1)
                .thenComparingInt(fit -> -fit.cells())
                .thenComparing(Fit::separator));
        return fits;
    }

    private Fit fit(String text, boolean isWhole) {
        Map<Integer, Integer> rowsByCells = new HashMap<>();
        var row = new Row();
        int rows = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean ends = c == '\n' || c == '\r';
            if (!row.quoted && ends) {
                rows += row.isBlank() ? 0 : 1;
                row.countIn(rowsByCells);
                row = new Row();
            } else {
                row.take(c);
            }
        }
        if (isWhole) {
            rows += row.isBlank() ? 0 : 1;
            row.countIn(rowsByCells);
        }
        if (rows == 0 || rowsByCells.isEmpty()) {
            return new Fit(this, 1, 0);
        }
        Map.Entry<Integer, Integer> most = rowsByCells.entrySet().stream()
                .max(Map.Entry.<Integer, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .orElseThrow();
        return new Fit(this, most.getKey(), most.getValue() / (double) rows);
    }

    /** What a row is if this separates its cells. A quote within a cell that does not begin with one speaks against that. */
    private final class Row {
        private int cells = 1;
        private boolean any;
        private boolean atStart = true;
        private boolean quoted;
        private boolean closed;
        private boolean wrong;

        void take(char c) {
            if (quoted) {
                if (c == '"') {
                    quoted = false;
                    closed = true;
                }
                return;
            }
            any |= !Character.isWhitespace(c) || c == sign;
            if (c == '"') {
                wrong |= !atStart && !closed;
                quoted = true;
            } else if (c == sign) {
                cells++;
                atStart = true;
                closed = false;
                return;
            } else {
                wrong |= closed && !Character.isWhitespace(c);
            }
            closed = false;
            atStart = false;
        }

        boolean isBlank() {
            return !any;
        }

        void countIn(Map<Integer, Integer> rowsByCells) {
            if (any && !wrong) {
                rowsByCells.merge(cells, 1, Integer::sum);
            }
        }
    }
}
