package org.culvert.exchange.reading;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * In which ways all cells of a column together can be read: counted row by row, so that a column of any length needs the memory
 * of its words alone, and of these no more than {@value #MOST_WORDS}.
 */
public final class ColumnWays {
    /** More words than that are no list of words that somebody decides one by one. */
    public static final int MOST_WORDS = 2000;

    private static final int FEWEST_RUNNING = 5;
    private static final double NEARLY_EACH = 0.9;
    private static final int EXAMPLES = 5;
    private static final int LONGEST_DEGREES = 30;
    private static final int LONGEST_WORD = 80;
    private static final Pattern PAIR = Pattern.compile(
            "(?i)(?:POINT\\s*Z?M?\\s*)?\\(?\\s*[-+−]?\\d{1,3}\\.\\d+°?\\s*[,;/ ]\\s*[-+−]?\\d{1,3}\\.\\d+°?(?:\\s[-\\d.]+)*\\s*\\)?");
    private static final int MOST_DAYS = 20_000;

    /** How a cell can be read, kept for cells that come again. */
    private record Way(Set<Dates.Order> orders, boolean serial, boolean yearAlone, boolean midnight, boolean hour) {}

    private final LocalDate latest;
    private final Map<Dates.Order, Long> days = new EnumMap<>(Dates.Order.class);
    private final Map<Numbers.Mark, Long> numbers = new EnumMap<>(Numbers.Mark.class);
    private final Map<String, Way> ways = new HashMap<>();
    private final Map<String, Integer> words = new LinkedHashMap<>();
    private final Map<Dates.Order, String> onlyThus = new EnumMap<>(Dates.Order.class);
    private final List<String> examples = new ArrayList<>();
    private boolean moreWords;
    private boolean isFirstTold;
    private long told;
    private long missing;
    private long dayTold;
    private long numberTold;
    private long serials;
    private long years;
    private long hours;
    private long midnights;
    private long degrees;
    private long pairs;
    private long latitudes;
    private long longitudes;
    private long northernLatitudes;
    private long following;
    private double last = Double.NaN;
    private long easternLongitudes;
    private @Nullable String onlyPoint;
    private @Nullable String onlyComma;
    private @Nullable String either;

    /** @param latest a day after which nothing in the file lies */
    public ColumnWays(LocalDate latest) {
        this.latest = latest;
    }

    public void take(String cell) {
        take(cell, null);
    }

    /** @param region whose latitudes and longitudes numbers are held against, or null where none is known */
    public void take(String cell, Axes.@Nullable Box region) {
        String text = Missing.strip(cell);
        if (Missing.isWordFor(text)) {
            missing++;
            return;
        }
        isFirstTold |= told + missing == 0;
        told++;
        keep(text);
        char first = text.charAt(0);
        boolean mayBeNumber =
                first >= '0' && first <= '9' || first == '-' || first == '+' || first == '.' || first == '−';
        if (mayBeNumber) {
            number(text, region);
        }
        degrees += isDegreesText(text) ? 1 : 0;
        pairs += (mayBeNumber || first == '(' || first == 'P' || first == 'p')
                        && text.length() <= LONGEST_WORD
                        && PAIR.matcher(text).matches()
                ? 1
                : 0;
        if (text.length() <= 60 && first != '-') {
            Way way = ways.get(text);
            if (way == null) {
                way = way(text);
                if (ways.size() < MOST_DAYS) {
                    ways.put(text, way);
                }
            }
            count(text, way);
        }
    }

    /** Figures with a sign of degrees or minutes, or with a letter of a hemisphere at one end. */
    private static boolean isDegreesText(String text) {
        int n = text.length();
        if (n < 2 || n > LONGEST_DEGREES) {
            return false;
        }
        boolean letter = "NSEWnsew".indexOf(text.charAt(0)) >= 0 || "NSEWnsew".indexOf(text.charAt(n - 1)) >= 0;
        if (!letter && text.indexOf('°') < 0 && text.indexOf('\'') < 0) {
            return false;
        }
        int figures = 0;
        int others = 0;
        for (int i = 0; i < n; i++) {
            char c = text.charAt(i);
            figures += c >= '0' && c <= '9' ? 1 : 0;
            others += Character.isLetter(c) && "NSEWnsewdmDM".indexOf(c) < 0 ? 1 : 0;
        }
        return figures > 0 && others == 0;
    }

    private void count(String text, Way way) {
        for (Dates.Order order : way.orders()) {
            days.merge(order, 1L, Long::sum);
        }
        if (way.orders().size() == 1) {
            onlyThus.putIfAbsent(way.orders().iterator().next(), text);
        }
        dayTold += way.orders().isEmpty() ? 0 : 1;
        serials += way.serial() ? 1 : 0;
        years += way.yearAlone() ? 1 : 0;
        hours += way.hour() ? 1 : 0;
        midnights += way.midnight() ? 1 : 0;
    }

    private Way way(String text) {
        Set<Dates.Order> orders = Dates.ordersOf(text, latest);
        Hours.Told hour = orders.isEmpty()
                ? Hours.readAlone(text)
                : Dates.parse(text, orders.iterator().next(), latest)
                        .map(day -> day.time() == null ? null : new Hours.Told(day.time(), null))
                        .orElse(null);
        return new Way(
                orders,
                orders.isEmpty() && Dates.serial(text).isPresent(),
                orders.isEmpty()
                        && (Dates.yearAlone(text).isPresent()
                                || Dates.span(text, latest).isPresent()),
                hour != null && hour.time().toSecondOfDay() == 0,
                hour != null);
    }

    private void number(String text, Axes.@Nullable Box region) {
        Set<Numbers.Mark> marks = Numbers.marksOf(text);
        for (Numbers.Mark mark : marks) {
            numbers.merge(mark, 1L, Long::sum);
        }
        numberTold += marks.isEmpty() ? 0 : 1;
        if (marks.size() == 1) {
            if (marks.contains(Numbers.Mark.point)) {
                onlyPoint = onlyPoint == null ? text : onlyPoint;
            } else {
                onlyComma = onlyComma == null ? text : onlyComma;
            }
        }
        if (either == null && marks.size() == 2 && (text.indexOf(',') >= 0 || text.indexOf('.') >= 0)) {
            either = text;
        }
        double value = marks.isEmpty() ? Double.NaN : Numbers.degrees(text);
        following += value == last + 1 ? 1 : 0;
        last = value;
        degrees += Math.abs(value) <= 180 ? 1 : 0;
        if (region != null) {
            latitudes += value >= region.south() && value <= region.north() ? 1 : 0;
            longitudes += value >= region.west() && value <= region.east() ? 1 : 0;
            northernLatitudes += value > 0 && -value >= region.south() && -value <= region.north() ? 1 : 0;
            easternLongitudes += value > 0 && -value >= region.west() && -value <= region.east() ? 1 : 0;
        }
    }

    private void keep(String text) {
        if (examples.size() < EXAMPLES && !examples.contains(text)) {
            examples.add(text);
        }
        if (moreWords || text.length() > LONGEST_WORD) {
            return;
        }
        words.merge(text, 1, Integer::sum);
        if (words.size() > MOST_WORDS) {
            moreWords = true;
            words.clear();
        }
    }

    /** Cells that say something. */
    public long told() {
        return told;
    }

    /** Whether the first of the cells says something. */
    public boolean isFirstTold() {
        return isFirstTold;
    }

    public long missing() {
        return missing;
    }

    /** Share of the cells that say something which are a day in some order. */
    public double shareOfDays() {
        return share(dayTold);
    }

    public double shareOfNumbers() {
        return share(numberTold);
    }

    /** Whether nearly each number is one more than that before it: such a column numbers the rows. */
    public boolean isRunning() {
        return numberTold >= FEWEST_RUNNING && following >= NEARLY_EACH * (numberTold - 1);
    }

    /** Share of the cells that may be days as spreadsheets keep them. */
    public double shareOfSerials() {
        return share(serials);
    }

    /** Share of the cells that are a year, a month of one, or days between two. */
    public double shareOfYears() {
        return share(years);
    }

    /** Share of the cells that tell an hour. */
    public double shareOfHours() {
        return share(hours);
    }

    /** Cells that tell 00:00. */
    public long midnights() {
        return midnights;
    }

    public long hours() {
        return hours;
    }

    /** Share of the cells that may be degrees: numbers of no more than 180 either way, or with signs and letters. */
    public double shareOfDegrees() {
        return share(degrees);
    }

    /** Share of the cells that are two numbers with decimals, as coordinates in one cell are. */
    public double shareOfPairs() {
        return share(pairs);
    }

    /** Share of the cells that lie between the region's latitudes, if they are degrees. */
    public double shareInLatitudes() {
        return share(latitudes);
    }

    public double shareInLongitudes() {
        return share(longitudes);
    }

    /** Share of the cells that would lie between the region's latitudes with a minus sign before them. */
    public double shareInLatitudesWithMinus() {
        return share(northernLatitudes);
    }

    public double shareInLongitudesWithMinus() {
        return share(easternLongitudes);
    }

    /** The first cells that say something, no two of them the same. */
    public List<String> examples() {
        return examples;
    }

    /** Each cell with how often it stands there, in the order of the file; empty where they are more than a list of words. */
    public Map<String, Integer> words() {
        return words;
    }

    /** The orders in which the most cells are days: where these are two, whoever wrote the file has to say. */
    public Set<Dates.Order> orders() {
        return best(days, Dates.Order.class);
    }

    /** A cell that is a day in this order alone, or null. */
    public @Nullable String onlyIn(Dates.Order order) {
        return onlyThus.get(order);
    }

    /** A cell that is a number with this mark alone, or null. */
    public @Nullable String onlyWith(Numbers.Mark mark) {
        return mark == Numbers.Mark.point ? onlyPoint : onlyComma;
    }

    /** A cell with a mark that is a number with either, or null. */
    public @Nullable String withEither() {
        return either;
    }

    /** The marks with which the most cells are numbers: where these are two, no cell tells which. */
    public Set<Numbers.Mark> marks() {
        return best(numbers, Numbers.Mark.class);
    }

    /** How many cells that are a day in some order are none in this one. */
    public long notIn(Dates.Order order) {
        return dayTold - days.getOrDefault(order, 0L);
    }

    private double share(long cells) {
        return told == 0 ? 0 : cells / (double) told;
    }

    private static <T extends Enum<T>> Set<T> best(Map<T, Long> counts, Class<T> type) {
        long most = counts.values().stream().mapToLong(Long::longValue).max().orElse(0);
        Set<T> best = EnumSet.noneOf(type);
        counts.forEach((one, count) -> {
            if (count == most) {
                best.add(one);
            }
        });
        return best;
    }
}
