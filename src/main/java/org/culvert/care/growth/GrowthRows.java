package org.culvert.care.growth;

import java.util.ArrayList;
import java.util.List;
import org.culvert.care.growth.GrowthEntries.BodyMeasure;
import org.culvert.care.growth.GrowthEntries.GrowthRow;
import org.culvert.care.growth.curve.GrowthCurve;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/** Reads the rows of a table, as a list or as lines of a file, and says which of them are wrong. */
final class GrowthRows {
    private static final String HEADING = "ageDays,value";

    private GrowthRows() {}

    /** Rows as the curve takes them. */
    static List<GrowthCurve.Row> of(List<GrowthRow> rows) {
        return rows.stream()
                .map(row -> new GrowthCurve.Row(row.ageDays(), row.value()))
                .toList();
    }

    /**
     * The rows of an entry.
     *
     * @throws InvalidException unless there is a list or a text, naming each line that cannot be read
     */
    static List<GrowthRow> read(GrowthEntries.GrowthTableEntry entry) {
        List<GrowthRow> told = entry.rows();
        String csv = entry.csv();
        if ((told == null) == (csv == null)) {
            throw InvalidException.of("rows", "A table has its rows.", "either rows or csv");
        }
        boolean isFile = csv != null;
        List<Integer> lines = new ArrayList<>();
        List<GrowthRow> rows = csv == null ? List.copyOf(told == null ? List.of() : told) : lines(csv, lines);
        require(rows, entry.measure(), entry.estimatesAge(), isFile ? lines : null);
        return rows;
    }

    private static List<GrowthRow> lines(String csv, List<Integer> lines) {
        String[] all = csv.replace("\uFEFF", "").split("\r\n|\r|\n", -1);
        if (!all[0].replace(" ", "").equalsIgnoreCase(HEADING)) {
            throw InvalidException.of("csv[1]", "The first line is the heading.", HEADING);
        }
        List<GrowthRow> rows = new ArrayList<>();
        List<FieldError> errors = new ArrayList<>();
        for (int i = 1; i < all.length; i++) {
            if (all[i].isBlank()) {
                continue;
            }
            String[] cells = all[i].split(",", -1);
            Double age = cells.length == 2 ? number(cells[0]) : null;
            Double value = cells.length == 2 ? number(cells[1]) : null;
            if (age == null || value == null) {
                errors.add(new FieldError(
                        "csv[" + (i + 1) + "]",
                        "This line is not two numbers.",
                        "an age in days, a comma, a value",
                        null));
            } else {
                rows.add(new GrowthRow(age, value));
                lines.add(i + 1);
            }
        }
        if (!errors.isEmpty()) {
            throw new InvalidException(errors.subList(0, Math.min(errors.size(), 100)));
        }
        return rows;
    }

    private static @Nullable Double number(String cell) {
        try {
            double number = Double.parseDouble(cell.strip());
            return Double.isFinite(number) ? Double.valueOf(number) : null;
        } catch (NumberFormatException none) {
            return null;
        }
    }

    /**
     * @param lines the line of each row in the file, from 1; null where there is none
     * @throws InvalidException naming each row that is wrong
     */
    static void require(
            List<@Nullable GrowthRow> rows, BodyMeasure measure, boolean estimatesAge, @Nullable List<Integer> lines) {
        String all = lines == null ? "rows" : "csv";
        if (rows.size() < 2 || rows.size() > GrowthEntries.MOST_ROWS) {
            throw InvalidException.of(
                    all, "A table has from 2 to " + GrowthEntries.MOST_ROWS + " rows.", "so many rows");
        }
        List<GrowthRow> whole = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            GrowthRow row = rows.get(i);
            if (row == null || row.ageDays() == null || row.value() == null) {
                throw InvalidException.of(all + "[" + i + "]", "This row is not whole.", "ageDays and value");
            }
            whole.add(row);
        }
        GrowthCurve.Rising rising = estimatesAge
                ? GrowthCurve.Rising.strictly
                : measure == BodyMeasure.weight ? GrowthCurve.Rising.no : GrowthCurve.Rising.notFall;
        List<FieldError> errors = GrowthCurve.faults(of(whole), rising).stream()
                .limit(100)
                .map(fault -> new FieldError(
                        all + "[" + (lines == null ? fault.row() : lines.get(fault.row())) + "]." + fault.field(),
                        fault.what(),
                        fault.wanted(),
                        null))
                .toList();
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
    }
}
