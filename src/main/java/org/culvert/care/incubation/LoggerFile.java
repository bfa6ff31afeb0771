package org.culvert.care.incubation;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads the file of a temperature logger: a header, then a row for each reading, with commas, semicolons or tabs between the
 * columns. Times are ISO 8601, with an offset or in the time of a zone; temperatures are in degrees Celsius, with a point or a
 * comma. All of it is read or none: what is wrong is told with the number of its line, the header being line 1.
 */
public final class LoggerFile {
    public static final int MOST_READINGS = 50_000;

    /** How many wrong rows are told; of the rest, how many there are. */
    public static final int MOST_TROUBLES = 20;

    private static final Pattern TIME =
            Pattern.compile("(\\d{4}-\\d{2}-\\d{2})[T ](\\d{2}:\\d{2}(?::\\d{2}(?:[.,]\\d{1,9})?)?) ?"
                    + "(Z|z|[+-]\\d{2}(?::?\\d{2})?)?");
    private static final Pattern NUMBER = Pattern.compile("[-+]?\\d{1,3}(?:[.,]\\d{1,9})?");
    private static final double COLDEST = -20;
    private static final double HOTTEST = 60;
    private static final String A_TIME =
            "an ISO time such as 2026-11-25T14:30:00+11:00, or 2026-11-25 14:30 in local time";

    /**
     * How a file is to be read where it does not tell by itself.
     *
     * @param timeColumn name of the column of times; null: the one whose name says time or date
     * @param temperatureColumn likewise; null: the one whose name says °C, Celsius or temperature
     * @param offset of times that bear none; null: those of {@code zone}
     */
    public record Form(
            @Nullable String timeColumn,
            @Nullable String temperatureColumn,
            @Nullable ZoneOffset offset,
            ZoneId zone) {}

    /** @param line in the file, the header being line 1 */
    public record Row(int line, Instant at, double celsius) {}

    /** @param field what it is about: {@code csv}, {@code timeColumn} or {@code temperatureColumn} */
    public record Trouble(String field, String detail, String wanted) {}

    /**
     * What was read.
     *
     * @param rows in the order of the file, each instant once; empty where there is trouble
     * @param repeated rows that say again what another said
     */
    public record Read(List<Row> rows, int repeated, List<Trouble> troubles) {}

    private final Form form;
    private final List<Trouble> troubles = new ArrayList<>();
    private int more;

    private LoggerFile(Form form) {
        this.form = form;
    }

    public static Read read(String csv, Form form) {
        return new LoggerFile(form).readAll(csv);
    }

    private Read readAll(String csv) {
        String[] lines = (csv.startsWith("\uFEFF") ? csv.substring(1) : csv).split("\\r\\n|\\n|\\r", -1);
        char delimiter = delimiter(lines[0]);
        List<String> header = cells(lines[0], delimiter);
        int time = column("timeColumn", form.timeColumn(), header, "time|date", "times");
        int temperature =
                column("temperatureColumn", form.temperatureColumn(), header, "°c|celsius|temp|^c$", "temperatures");
        if (temperature >= 0
                && header.get(temperature).toLowerCase(Locale.ROOT).matches(".*(°f|fahrenheit|\\(f\\)|kelvin).*")) {
            trouble("temperatureColumn", "The column " + header.get(temperature) + " is not in degrees Celsius.", "°C");
        }
        if (!troubles.isEmpty()) {
            return new Read(List.of(), 0, troubles);
        }
        Map<Instant, Row> rows = new HashMap<>();
        List<Row> inOrder = new ArrayList<>();
        int repeated = 0;
        for (int i = 1; i < lines.length; i++) {
            if (lines[i].isBlank()) {
                continue;
            }
            Row row = row(i + 1, cells(lines[i], delimiter), header.size(), time, temperature);
            if (row == null) {
                continue;
            }
            Row known = rows.putIfAbsent(row.at(), row);
            if (known == null) {
                inOrder.add(row);
            } else if (known.celsius() == row.celsius()) {
                repeated++;
            } else {
                trouble(
                        "csv",
                        "Row " + row.line() + " has the time of row " + known.line() + " and another temperature.",
                        "one temperature at a time");
            }
            if (inOrder.size() > MOST_READINGS) {
                trouble("csv", "The file has more than " + MOST_READINGS + " readings.", "a file in parts");
                break;
            }
        }
        if (inOrder.isEmpty() && troubles.isEmpty()) {
            trouble("csv", "The file has no readings.", "a header, and a row for each reading");
        }
        if (more > 0) {
            troubles.add(new Trouble("csv", more + " more rows are wrong.", "each row as the header says"));
        }
        return new Read(troubles.isEmpty() ? inOrder : List.of(), repeated, troubles);
    }

    private @Nullable Row row(int line, List<String> cells, int columns, int time, int temperature) {
        if (cells.size() != columns) {
            trouble(
                    "csv",
                    "Row " + line + " has " + cells.size() + " columns, and the header " + columns + ".",
                    "as many; with commas between columns, a decimal comma stands in quotes");
            return null;
        }
        Instant at = time(line, cells.get(time));
        String number = cells.get(temperature);
        if (!NUMBER.matcher(number).matches()) {
            trouble(
                    "csv",
                    "Row " + line + ": “" + cut(number) + "” is no temperature.",
                    "degrees Celsius such as 28.4");
            return null;
        }
        double celsius = Double.parseDouble(number.replace(',', '.'));
        if (celsius < COLDEST || celsius > HOTTEST) {
            trouble(
                    "csv",
                    "Row " + line + ": no substrate with eggs is at " + cut(number) + " °C.",
                    "degrees Celsius from -20 to 60");
            return null;
        }
        return at == null ? null : new Row(line, at, celsius);
    }

    private @Nullable Instant time(int line, String text) {
        Matcher told = TIME.matcher(text);
        if (!told.matches()) {
            trouble("csv", "Row " + line + ": “" + cut(text) + "” is no time.", A_TIME);
            return null;
        }
        try {
            LocalDateTime local =
                    LocalDateTime.parse(told.group(1) + "T" + told.group(2).replace(',', '.'));
            String offset = told.group(3);
            if (offset != null) {
                return instant(local, ZoneOffset.of(offset.toUpperCase(Locale.ROOT)));
            }
            if (form.offset() != null) {
                return instant(local, form.offset());
            }
            List<ZoneOffset> valid = form.zone().getRules().getValidOffsets(local);
            if (valid.size() == 1) {
                return instant(local, valid.get(0));
            }
            trouble(
                    "csv",
                    "Row " + line + ": " + cut(text) + " is "
                            + (valid.isEmpty()
                                    ? "in the hour that the clocks leave out in " + form.zone() + "."
                                    : "twice in " + form.zone() + ", where the clocks go back: at " + valid.get(0)
                                            + " and at " + valid.get(1) + "."),
                    "a time with its offset, or utcOffset where the logger's clock stays the same all year");
        } catch (DateTimeException e) {
            trouble("csv", "Row " + line + ": “" + cut(text) + "” is no time.", A_TIME);
        }
        return null;
    }

    private static Instant instant(LocalDateTime local, ZoneOffset offset) {
        return local.toInstant(offset).truncatedTo(ChronoUnit.MILLIS);
    }

    private int column(String field, @Nullable String asked, List<String> header, String names, String what) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < header.size(); i++) {
            String name = header.get(i);
            if (asked == null
                    ? Pattern.compile(names)
                            .matcher(name.toLowerCase(Locale.ROOT))
                            .find()
                    : name.equals(asked.strip())) {
                found.add(i);
            }
        }
        if (found.size() == 1) {
            return found.get(0);
        }
        String columns = cut(String.join(", ", header));
        trouble(
                field,
                found.isEmpty()
                        ? "No column is that of the " + what + "."
                        : "Several columns may be that of the " + what + ".",
                "the name of one of the columns in the first row: " + columns);
        return -1;
    }

    private void trouble(String field, String detail, String wanted) {
        if (troubles.size() < MOST_TROUBLES) {
            troubles.add(new Trouble(field, detail, wanted));
        } else {
            more++;
        }
    }

    private static String cut(String text) {
        return text.length() <= 80 ? text : text.substring(0, 80) + "…";
    }

    private static char delimiter(String header) {
        return header.indexOf(';') >= 0 ? ';' : header.indexOf('\t') >= 0 ? '\t' : ',';
    }

    /** RFC 4180 within a line: a cell may stand in quotes, and a quote in it is doubled. */
    private static List<String> cells(String line, char delimiter) {
        List<String> cells = new ArrayList<>();
        var cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                if (quoted && i + 1 < line.length() && line.charAt(i + 1) == '"') {
                    cell.append('"');
                    i++;
                } else {
                    quoted = !quoted;
                }
            } else if (c == delimiter && !quoted) {
                cells.add(cell.toString().strip());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString().strip());
        return cells;
    }
}
