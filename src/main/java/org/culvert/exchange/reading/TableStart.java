package org.culvert.exchange.reading;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a table begins: which sign separates its cells, and which row has its headings, below titles and empty lines.
 *
 * @param headingRow number of the row of headings, from 1; 0 where there is none
 * @param headings of the columns; {@code column 1} and so on where there is none
 * @param titles what stands above the headings
 * @param rivals separators that fit nearly as well
 */
public record TableStart(
        Separator separator, long headingRow, List<String> headings, List<String> titles, List<Separator> rivals) {
    private static final int FIRST_ROWS = 40;
    private static final double NEARLY = 0.05;

    /**
     * Looks at the beginning of a text.
     *
     * @param isWhole whether it goes on to the end of the file
     * @param latest a day after which nothing in the file lies
     */
    public static TableStart of(String beginning, boolean isWhole, LocalDate latest) {
        List<Separator.Fit> fits = Separator.fits(beginning, isWhole);
        Separator separator = named(beginning).orElse(fits.get(0).separator());
        double best = fits.get(0).share();
        List<Separator> rivals = fits.stream()
                .filter(fit -> fit.separator() != separator && fit.cells() > 1 && fit.share() >= best - NEARLY)
                .map(Separator.Fit::separator)
                .toList();
        return with(beginning, separator, rivals, latest);
    }

    /** As {@link #of}, with a separator that somebody decided. */
    public static TableStart with(String beginning, Separator separator, LocalDate latest) {
        return with(beginning, separator, List.of(), latest);
    }

    /** As a start that is known, but with the headings in another row, or in none. */
    public static TableStart at(String beginning, TableStart known, long headingRow) {
        List<String> titles = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        List<String> heading = List.of();
        List<String> before = List.of();
        var text = new TextRows(new Text(beginning), known.separator().sign(), 0);
        while (rows.size() < FIRST_ROWS && text.next()) {
            if (text.number() < headingRow && !text.isEmpty()) {
                titles.add(String.join(" ", text.cells()).strip());
                before = text.number() == headingRow - 1 ? text.cells() : List.of();
            } else if (text.number() == headingRow) {
                heading = filled(text.cells(), before);
            }
            if (!text.isEmpty()) {
                rows.add(text.cells());
            }
        }
        return new TableStart(
                known.separator(), headingRow, headings(heading, usualCells(rows)), titles, known.rivals());
    }

    private static TableStart with(String beginning, Separator separator, List<Separator> rivals, LocalDate latest) {
        List<List<String>> rows = new ArrayList<>();
        List<Long> numbers = new ArrayList<>();
        var text = new TextRows(new Text(beginning), separator.sign(), 0);
        while (rows.size() < FIRST_ROWS && text.next()) {
            if (!text.isEmpty()) {
                rows.add(text.cells());
                numbers.add(text.number());
            }
        }
        int heading = heading(rows, latest);
        List<String> titles = new ArrayList<>();
        for (int i = 0; i < heading; i++) {
            titles.add(String.join(" ", rows.get(i)).strip());
        }
        if (heading < 0) {
            List<String> names = new ArrayList<>();
            for (int i = 1; i <= usualCells(rows); i++) {
                names.add("column " + i);
            }
            return new TableStart(separator, 0, names, titles, rivals);
        }
        boolean isBelow = heading > 0 && numbers.get(heading - 1) == numbers.get(heading) - 1;
        List<String> names = isBelow ? filled(rows.get(heading), rows.get(heading - 1)) : rows.get(heading);
        return new TableStart(separator, numbers.get(heading), headings(names, usualCells(rows)), titles, rivals);
    }

    /** Headings in two lines: where the lower one is empty the upper one stands. A title alone in its line is none. */
    private static List<String> filled(List<String> lower, List<String> upper) {
        long told =
                upper.stream().filter(cell -> !Missing.strip(cell).isEmpty()).count();
        if (told < 2 || upper.size() != lower.size()) {
            return lower;
        }
        List<String> names = new ArrayList<>(lower);
        names.replaceAll(Missing::strip);
        for (int i = 0; i < names.size(); i++) {
            if (names.get(i).isEmpty()) {
                names.set(i, upper.get(i));
            }
        }
        return names;
    }

    private static Optional<Separator> named(String beginning) {
        var text = new TextRows(new Text(beginning), ',', 0);
        text.next();
        for (Separator one : Separator.values()) {
            if (text.separator() == one.sign()
                    && beginning.regionMatches(true, beginning.startsWith("\"") ? 1 : 0, "sep=", 0, 4)) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }

    /** Which of the first rows names the most fields; else the first whole one without a number or a day; -1 for none. */
    private static int heading(List<List<String>> rows, LocalDate latest) {
        int usual = usualCells(rows);
        int best = -1;
        int most = 0;
        for (int i = 0; i < rows.size(); i++) {
            int meant = 0;
            int told = 0;
            for (String cell : rows.get(i)) {
                told += Missing.strip(cell).isEmpty() ? 0 : 1;
                meant += isWords(cell, latest) && !Headings.meanings(cell).isEmpty() ? 1 : 0;
            }
            if (meant > most && meant * 3 >= told) {
                most = meant;
                best = i;
            }
        }
        if (most >= 2 || best >= 0 && usual <= 2) {
            return best + 1 < rows.size() && goesOn(rows.get(best), rows.get(best + 1), latest) ? best + 1 : best;
        }
        for (int i = 0; i < rows.size(); i++) {
            List<String> row = rows.get(i);
            long words = row.stream().filter(cell -> isWords(cell, latest)).count();
            if (row.size() == usual
                    && words == row.size()
                    && row.stream().distinct().count() == row.size()) {
                boolean othersHaveNumbers = i + 1 < rows.size()
                        && rows.get(i + 1).stream()
                                .anyMatch(cell -> !Missing.isMissing(cell) && !isWords(cell, latest));
                return othersHaveNumbers ? i : -1;
            }
        }
        return -1;
    }

    /** Whether headings go on in the line below: all that it tells are headings, and one stands where the upper one has none. */
    private static boolean goesOn(List<String> upper, List<String> lower, LocalDate latest) {
        boolean fills = false;
        for (int i = 0; i < lower.size(); i++) {
            if (Missing.strip(lower.get(i)).isEmpty()) {
                continue;
            }
            if (!isWords(lower.get(i), latest)
                    || Headings.meanings(lower.get(i)).isEmpty()) {
                return false;
            }
            fills |= i < upper.size() && Missing.strip(upper.get(i)).isEmpty();
        }
        return fills && upper.size() == lower.size();
    }

    private static boolean isWords(String cell, LocalDate latest) {
        String text = Missing.strip(cell);
        return !text.isEmpty()
                && Numbers.marksOf(text).isEmpty()
                && Dates.ordersOf(text, latest).isEmpty();
    }

    private static int usualCells(List<List<String>> rows) {
        Map<Integer, Integer> counts = new HashMap<>();
        rows.forEach(row -> counts.merge(row.size(), 1, Integer::sum));
        return counts.entrySet().stream()
                .max(Map.Entry.<Integer, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey)
                .orElse(0);
    }

    /** Each column has a heading of its own: what has none is numbered, and what comes again too. */
    static List<String> headings(List<String> cells, int usual) {
        List<String> headings = new ArrayList<>();
        Map<String, Integer> seen = new HashMap<>();
        for (int i = 0; i < Math.max(cells.size(), usual); i++) {
            String text = i < cells.size() ? Missing.strip(cells.get(i).replace('\0', '␀')) : "";
            String name = text.isEmpty() ? "column " + (i + 1) : text;
            int times = seen.merge(name, 1, Integer::sum);
            headings.add(times == 1 ? name : name + " (" + times + ")");
        }
        // Separators at the end of every row make no columns
        while (headings.size() > usual && headings.get(headings.size() - 1).equals("column " + headings.size())) {
            headings.remove(headings.size() - 1);
        }
        return List.copyOf(headings);
    }

    /** A text as a source. */
    public static final class Text implements TextRows.Source {
        private final String text;
        private int at;

        public Text(String text) {
            this.text = text;
        }

        @Override
        public int read(char[] into, int from, int length) {
            if (at >= text.length()) {
                return -1;
            }
            int some = Math.min(length, text.length() - at);
            text.getChars(at, at + some, into, from);
            at += some;
            return some;
        }
    }
}
