package org.culvert.exchange.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The cells of one row by what they hold, and what is found in them. */
final class RowCells {
    private static final Headings.Field[] FIELDS = Headings.Field.values();

    private final int[] columns = new int[FIELDS.length];
    private final @Nullable String[] above = new @Nullable String[FIELDS.length];
    private final boolean[] filled = new boolean[FIELDS.length];
    private List<String> cells = List.of();
    private @Nullable List<Finding> findings;

    RowCells(Map<Headings.Field, Integer> columnsByField) {
        for (Headings.Field field : FIELDS) {
            columns[field.ordinal()] = columnsByField.getOrDefault(field, -1);
        }
    }

    void turnTo(List<String> next) {
        cells = next;
        findings = null;
        Arrays.fill(filled, false);
    }

    /**
     * Lets cells that stand for the one above mean that: a mark for it always, and an empty one of these fields. Only rows that
     * are records are above others.
     */
    void fillFromAbove(Set<Headings.Field> asAbove) {
        for (Headings.Field field : FIELDS) {
            int at = field.ordinal();
            if (columns[at] < 0 || field == Headings.Field.remarks || field == Headings.Field.identifier) {
                continue;
            }
            String text = columns[at] < cells.size() ? Missing.strip(cells.get(columns[at])) : "";
            boolean stands = text.isEmpty() ? asAbove.contains(field) : Missing.isDitto(text);
            if (!stands) {
                above[at] = Missing.isWordFor(text) ? null : text;
            } else if (above[at] != null) {
                filled[at] = true;
                note(Finding.Kind.asAbove, field, "It is taken as in the row above: " + quoted(above[at]) + ".");
            }
        }
    }

    boolean has(Headings.Field field) {
        return columns[field.ordinal()] >= 0;
    }

    /** The cell without blanks at its ends; null where it says nothing or there is none. */
    @Nullable
    String told(Headings.Field field) {
        int column = columns[field.ordinal()];
        if (filled[field.ordinal()]) {
            return above[field.ordinal()];
        }
        if (column < 0 || column >= cells.size()) {
            return null;
        }
        String text = Missing.strip(cells.get(column));
        return Missing.isWordFor(text) ? null : text;
    }

    void note(Finding.Kind kind, Headings.@Nullable Field field, String detail) {
        add(Finding.note(kind, column(field), detail));
    }

    void doubt(Finding.Kind kind, Headings.@Nullable Field field, String detail, String wanted) {
        add(Finding.doubt(kind, column(field), detail, wanted));
    }

    void refuse(Finding.Kind kind, Headings.@Nullable Field field, String detail, String wanted) {
        add(Finding.refusal(kind, column(field), detail, wanted));
    }

    private @Nullable Integer column(Headings.@Nullable Field field) {
        return field == null || columns[field.ordinal()] < 0 ? null : columns[field.ordinal()];
    }

    private void add(Finding finding) {
        if (findings == null) {
            findings = new ArrayList<>(4);
        }
        findings.add(finding);
    }

    List<Finding> findings() {
        return findings == null ? List.of() : findings;
    }

    /** A cell within a sentence: no longer than somebody reads. */
    static String quoted(String cell) {
        int most = 60;
        String shown = cell.length() > most ? cell.substring(0, most) + "…" : cell;
        return "\"" + shown.replace('\n', ' ').replace('\r', ' ') + "\"";
    }
}
