package org.culvert.exchange.reading;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Days as people write them: figures in three orders, padded or not, with any of the usual separators, or with the month as a
 * word; with an hour behind them or without.
 *
 * <p>A year of four figures in front is year, month, day (ISO 8601). Otherwise day and month may be either way round, which all
 * cells of a column together tell, or nobody but whoever wrote them.
 */
public final class Dates {
    /** In which order. */
    public enum Order {
        yearMonthDay,
        dayMonthYear,
        monthDayYear
    }

    /**
     * A day, and the hour where there is one.
     *
     * @param time null: none is told
     * @param offset from UTC where one is told
     */
    public record Day(
            LocalDate date,
            @Nullable LocalTime time,
            @Nullable ZoneOffset offset) {}

    /** Several days, on one of which it was; with hours where both ends tell them. */
    record Span(Day first, Day last) {}

    private static final int CENTURY = 100;
    private static final int LONGEST = 60;

    /** Days of spreadsheets that count from 1900 on (ECMA-376-1, 18.17.4.1; from memory) that may be meant: 1954 to 2119. */
    private static final int FIRST_SERIAL = 20_000;

    private static final int LAST_SERIAL = 80_000;
    private static final LocalDate SERIAL_NOUGHT = LocalDate.of(1899, 12, 30);
    private static final double SECONDS_A_DAY = 86_400;

    /** In small letters; in English, German, French, Spanish, Italian, Portuguese and Dutch, from memory. */
    private static final Map<String, Integer> MONTHS = months(
            "jan january januar januari jänner janvier janv enero ene gennaio gen janeiro",
            "feb february februar februari février fevrier févr febrero febbraio fevereiro fev",
            "mar march märz maerz mär mrz maart mrt mars marzo março marco",
            "apr april avril avr abril abr aprile",
            "may mai mei mayo maggio mag maio",
            "jun june juni juin junio giugno giu junho",
            "jul july juli juillet juil julio luglio lug julho",
            "aug august augustus août aout agosto ago",
            "sep sept september septembre septiembre settembre set setembro",
            "oct october okt oktober octobre octubre ottobre ott outubro out",
            "nov november novembre noviembre novembro",
            "dec december dez dezember décembre decembre déc diciembre dic dicembre dezembro");

    private static final Pattern DAY_WORD = Pattern.compile(
            "(?:\\p{L}+\\.?,? )?(\\d{1,2})(?:st|nd|rd|th|\\.|er|º)?[-/. ]*(?:de )?(\\p{L}+)\\.?[-/., ]+(?:de )?(\\d{4}|\\d{2})(?!\\d)");
    private static final Pattern WORD_DAY = Pattern.compile(
            "(?:\\p{L}+\\.?,? )?(\\p{L}+)\\.?[-/. ]+(\\d{1,2})(?:st|nd|rd|th)?[-/., ]+(\\d{4}|\\d{2})(?!\\d)");
    private static final Pattern YEAR = Pattern.compile("(1[89]\\d\\d|20\\d\\d)(?:\\.0+)?");
    private static final Pattern MONTH_OF_YEAR =
            Pattern.compile("(1[89]\\d\\d|20\\d\\d)[-/.](\\d{1,2})|(\\d{1,2})[-/.](1[89]\\d\\d|20\\d\\d)");
    private static final Pattern MONTH_WORD_OF_YEAR = Pattern.compile("(\\p{L}{3,})\\.?[-/., ]+(1[89]\\d\\d|20\\d\\d)");

    private Dates() {}

    /**
     * The orders in which a cell is a day: all three where it says by itself which it is, none where it is no day.
     *
     * @param latest a day after which nothing in the file lies, such as that on which it is read
     */
    public static Set<Order> ordersOf(String cell, LocalDate latest) {
        Set<Order> orders = EnumSet.noneOf(Order.class);
        Shape shape = shape(Missing.strip(cell));
        if (shape != null) {
            for (Order order : Order.values()) {
                LocalDate date = shape.date(order, latest);
                if (date != null && !date.isAfter(latest)) {
                    orders.add(order);
                }
            }
        }
        return orders;
    }

    /** The day of a cell in an order, or empty where it is none, or lies after {@code latest}. */
    public static Optional<Day> read(String cell, Order order, LocalDate latest) {
        return parse(cell, order, latest).filter(day -> !day.date().isAfter(latest));
    }

    /** The day of a cell in an order, be it after {@code latest} or not. */
    static Optional<Day> parse(String cell, Order order, LocalDate latest) {
        Shape shape = shape(Missing.strip(cell));
        LocalDate date = shape == null ? null : shape.date(order, latest);
        return shape == null || date == null
                ? Optional.empty()
                : Optional.of(new Day(
                        date,
                        shape.hour() == null ? null : shape.hour().time(),
                        shape.hour() == null ? null : shape.hour().offset()));
    }

    /** The day, and the hour where it has a fraction, that a spreadsheet keeps as a number; empty where it may be none. */
    static Optional<Day> serial(String cell) {
        String text = Missing.strip(cell).replace(',', '.');
        if (text.length() < 5
                || text.chars().anyMatch(c -> c != '.' && (c < '0' || c > '9'))
                || text.indexOf('.') != -1 && text.indexOf('.') != 5
                || text.indexOf('.') != text.lastIndexOf('.')
                || text.indexOf('.') == -1 && text.length() != 5) {
            return Optional.empty();
        }
        double serial = Double.parseDouble(text);
        int day = (int) serial;
        if (day < FIRST_SERIAL || day > LAST_SERIAL) {
            return Optional.empty();
        }
        long second = Math.round((serial - day) * SECONDS_A_DAY);
        LocalTime time = second == 0 || second >= SECONDS_A_DAY ? null : LocalTime.ofSecondOfDay(second);
        return Optional.of(new Day(SERIAL_NOUGHT.plusDays(second >= SECONDS_A_DAY ? day + 1L : day), time, null));
    }

    /** The year of a cell that tells a year and no more. */
    static OptionalInt yearAlone(String cell) {
        String text = Missing.strip(cell);
        Matcher year = text.length() >= 4 && text.length() <= 8 ? YEAR.matcher(text) : null;
        return year != null && year.matches() ? OptionalInt.of(Integer.parseInt(year.group(1))) : OptionalInt.empty();
    }

    /**
     * The first and the last of several days, on one of which it was: of a month of a year, or between two ends as ISO 8601 and
     * Darwin Core's {@code eventDate} have them ({@code 2016-01-02/2016-01-05}, {@code 2016-01-02/05}, {@code 2016/2017}). Empty
     * where a cell tells none, or the last comes before the first.
     */
    static Optional<Span> span(String cell, LocalDate latest) {
        String text = Missing.strip(cell);
        int n = text.length();
        if (n < 6 || n > LONGEST) {
            return Optional.empty();
        }
        Optional<Span> month = month(text).map(one -> new Span(day(one.atDay(1)), day(one.atEndOfMonth())));
        int bar = text.indexOf('/');
        if (month.isPresent() || bar < 4 || bar != text.lastIndexOf('/')) {
            return month;
        }
        String from = text.substring(0, bar).strip();
        String to = text.substring(bar + 1).strip();
        Span first = end(from, latest);
        // What is left out of the second end is that of the first
        int whole = Math.min(from.length(), 10);
        Span last =
                end(to.length() < whole && to.length() != 4 ? from.substring(0, whole - to.length()) + to : to, latest);
        return first == null
                        || last == null
                        || last.last().date().isBefore(first.first().date())
                ? Optional.empty()
                : Optional.of(new Span(first.first(), last.last()));
    }

    /** A year, a month or a day as ISO 8601 has them, with its first and its last day. */
    private static @Nullable Span end(String text, LocalDate latest) {
        if (text.length() == 4) {
            OptionalInt year = yearAlone(text);
            return year.isEmpty()
                    ? null
                    : new Span(day(LocalDate.of(year.getAsInt(), 1, 1)), day(LocalDate.of(year.getAsInt(), 12, 31)));
        }
        if (text.length() == 7) {
            return month(text)
                    .map(month -> new Span(day(month.atDay(1)), day(month.atEndOfMonth())))
                    .orElse(null);
        }
        return text.length() < 10 || text.charAt(4) != '-'
                ? null
                : parse(text, Order.yearMonthDay, latest)
                        .map(day -> new Span(day, day))
                        .orElse(null);
    }

    private static Day day(LocalDate date) {
        return new Day(date, null, null);
    }

    private static Optional<YearMonth> month(String text) {
        if (text.length() > 20 || !text.contains("19") && !text.contains("20") && !text.contains("18")) {
            return Optional.empty();
        }
        Matcher figures = MONTH_OF_YEAR.matcher(text);
        if (figures.matches()) {
            boolean yearFirst = figures.group(1) != null;
            int of = Integer.parseInt(yearFirst ? figures.group(2) : figures.group(3));
            return of < 1 || of > 12
                    ? Optional.empty()
                    : Optional.of(YearMonth.of(Integer.parseInt(yearFirst ? figures.group(1) : figures.group(4)), of));
        }
        Matcher word = MONTH_WORD_OF_YEAR.matcher(text);
        Integer named = word.matches() ? monthNamed(word.group(1)) : null;
        return named == null ? Optional.empty() : Optional.of(YearMonth.of(Integer.parseInt(word.group(2)), named));
    }

    /** The month of a word, or null. */
    static @Nullable Integer monthNamed(String word) {
        return MONTHS.get(Missing.strip(word).toLowerCase(Locale.ROOT));
    }

    /**
     * What a text has that may be a day.
     *
     * @param first figures, or null where the month is a word
     * @param month where it is a word
     */
    private record Shape(@Nullable String first, String second, String third, int month, Hours.@Nullable Told hour) {
        @Nullable
        LocalDate date(Order order, LocalDate latest) {
            try {
                if (first == null) {
                    return LocalDate.of(year(third, latest), month, Integer.parseInt(second));
                }
                if (first.length() > 2) {
                    return first.length() == 4 && third.length() <= 2
                            ? LocalDate.of(Integer.parseInt(first), Integer.parseInt(second), Integer.parseInt(third))
                            : null;
                }
                if (third.length() == 3 || order == Order.yearMonthDay && third.length() > 2) {
                    return null;
                }
                int middle = Integer.parseInt(second);
                return switch (order) {
                    case yearMonthDay -> LocalDate.of(year(first, latest), middle, Integer.parseInt(third));
                    case dayMonthYear -> LocalDate.of(year(third, latest), middle, Integer.parseInt(first));
                    case monthDayYear -> LocalDate.of(year(third, latest), Integer.parseInt(first), middle);
                };
            } catch (DateTimeException noSuchDay) {
                return null;
            }
        }
    }

    private static @Nullable Shape shape(String text) {
        int n = text.length();
        if (n < 6 || n > LONGEST) {
            return null;
        }
        int first = figures(text, 0);
        if (first == 8) {
            return with(text.substring(0, 4), text.substring(4, 6), text.substring(6, 8), 0, text.substring(8));
        }
        if (first >= 1 && first <= 4 && first + 1 < n && "-/. ".indexOf(text.charAt(first)) >= 0) {
            int second = figures(text, first + 1);
            int behind = first + 1 + second;
            if (second > 0) {
                if (second > 2 || behind + 1 >= n || text.charAt(behind) != text.charAt(first)) {
                    return null;
                }
                int third = figures(text, behind + 1);
                int tail = behind + 1 + third;
                return third < 1 || third > 4
                        ? null
                        : with(
                                text.substring(0, first),
                                text.substring(first + 1, behind),
                                text.substring(behind + 1, tail),
                                0,
                                text.substring(tail));
            }
        }
        return worded(text);
    }

    private static @Nullable Shape worded(String text) {
        if (!hasMonth(text)) {
            return null;
        }
        Matcher dayWord = DAY_WORD.matcher(text);
        if (dayWord.lookingAt()) {
            Integer month = monthNamed(dayWord.group(2));
            return month == null
                    ? null
                    : with(null, dayWord.group(1), dayWord.group(3), month, text.substring(dayWord.end()));
        }
        Matcher wordDay = WORD_DAY.matcher(text);
        if (wordDay.lookingAt()) {
            Integer month = monthNamed(wordDay.group(1));
            return month == null
                    ? null
                    : with(null, wordDay.group(2), wordDay.group(3), month, text.substring(wordDay.end()));
        }
        return null;
    }

    /** Most words of a table are none of a day: this is quicker than to look for its parts. */
    private static boolean hasMonth(String text) {
        int n = text.length();
        boolean figure = false;
        boolean month = false;
        int at = 0;
        while (at < n) {
            char c = text.charAt(at);
            figure |= c >= '0' && c <= '9';
            if (!Character.isLetter(c)) {
                at++;
                continue;
            }
            int from = at;
            while (at < n && Character.isLetter(text.charAt(at))) {
                at++;
            }
            month |= at - from >= 3
                    && at - from <= 10
                    && MONTHS.containsKey(text.substring(from, at).toLowerCase(Locale.ROOT));
        }
        return figure && month;
    }

    private static @Nullable Shape with(@Nullable String first, String second, String third, int month, String tail) {
        if (tail.isEmpty()) {
            return new Shape(first, second, third, month, null);
        }
        int at = 0;
        while (at < tail.length() && "T ,".indexOf(tail.charAt(at)) >= 0) {
            at++;
        }
        if (tail.startsWith("at ", at)) {
            at += 3;
        }
        Hours.Told hour = at == 0 ? null : Hours.read(tail.substring(at));
        return hour == null ? null : new Shape(first, second, third, month, hour);
    }

    /** How many figures stand from an index on. */
    private static int figures(String text, int from) {
        int at = from;
        while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
            at++;
        }
        return at - from;
    }

    /** Two figures mean the century in which it is read up to that year, and the one before beyond. */
    private static int year(String figures, LocalDate latest) {
        int year = Integer.parseInt(figures);
        if (figures.length() > 2) {
            return year;
        }
        int century = latest.getYear() / CENTURY * CENTURY;
        return century + year > latest.getYear() ? century - CENTURY + year : century + year;
    }

    private static Map<String, Integer> months(String... words) {
        Map<String, Integer> months = new HashMap<>();
        for (int month = 0; month < words.length; month++) {
            for (String word : words[month].split(" ")) {
                months.put(word, month + 1);
            }
        }
        return Map.copyOf(months);
    }
}
