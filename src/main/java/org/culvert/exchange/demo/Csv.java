package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads and writes tables as comma-separated values (RFC 4180, but with line feeds alone so that bytes are the same). */
final class Csv {
    private final StringBuilder text = new StringBuilder();

    Csv(String... columns) {
        row((Object[]) columns);
    }

    void row(@Nullable Object... cells) {
        for (int i = 0; i < cells.length; i++) {
            if (i > 0) {
                text.append(',');
            }
            Object cell = cells[i];
            text.append(cell == null ? "" : quoted(cell.toString()));
        }
        text.append('\n');
    }

    String text() {
        return text.toString();
    }

    private static String quoted(String cell) {
        boolean plain = cell.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
        return plain ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }

    /** The rows under a heading, each by column name; an empty cell is an empty string. */
    static List<Map<String, String>> read(String source) {
        List<List<String>> rows = rows(source);
        List<String> heading = rows.get(0);
        List<Map<String, String>> result = new ArrayList<>();
        for (List<String> cells : rows.subList(1, rows.size())) {
            if (cells.size() != heading.size()) {
                throw new IllegalArgumentException(
                        "a row has " + cells.size() + " cells under " + heading.size() + " headings: " + cells);
            }
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < cells.size(); i++) {
                row.put(heading.get(i), cells.get(i));
            }
            result.add(row);
        }
        return result;
    }

    private static List<List<String>> rows(String source) {
        List<List<String>> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean inside = false;
        for (int i = 0; i < source.length(); i++) {
            char c = source.charAt(i);
            if (inside) {
                if (c != '"') {
                    cell.append(c);
                } else if (i + 1 < source.length() && source.charAt(i + 1) == '"') {
                    cell.append('"');
                    i++;
                } else {
                    inside = false;
                }
            } else if (c == '"') {
                inside = true;
            } else if (c == ',' || c == '\n') {
                row.add(cell.toString());
                cell.setLength(0);
                if (c == '\n') {
                    rows.add(row);
                    row = new ArrayList<>();
                }
            } else {
                cell.append(c);
            }
        }
        return rows;
    }
}
