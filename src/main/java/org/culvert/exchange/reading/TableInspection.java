package org.culvert.exchange.reading;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.culvert.exchange.reading.Headings.Field;
import org.jspecify.annotations.Nullable;

/** Looks through all rows of a table once: in which ways its columns can be read, what is proposed, and what has to be asked. */
public final class TableInspection {
    /** One answer that a question may have. */
    public record Choice(String value, String words) {}

    /**
     * What nobody but somebody who knows the file can say.
     *
     * @param key of the setting of a reading that it asks for
     * @param evidence of the whole file
     * @param needed whether there is no reading without an answer
     * @param proposed value that is likely, or null
     */
    public record Question(
            String key,
            String words,
            List<Choice> choices,
            String evidence,
            boolean needed,
            @Nullable String proposed) {}

    /** Below that share of its cells a sign is an accident. */
    private static final double HARDLY = 0.05;

    private static final double MOST = 0.5;
    private static final double FEW_BLANKS = 0.1;
    private static final int FEWEST = 5;
    private static final List<Choice> AXES = List.of(
            new Choice("false", "as they are headed"), new Choice("true", "latitude and longitude are swapped"));

    private final List<String> headings;
    private final Axes.@Nullable Box region;
    private final List<ColumnWays> ways = new ArrayList<>();
    private long rows;
    private long emptyRows;
    private long shorterRows;
    private long longerRows;
    private long brokenQuotes;

    /** @param region or null where none is known yet */
    public TableInspection(List<String> headings, LocalDate latest, Axes.@Nullable Box region) {
        this.headings = List.copyOf(headings);
        this.region = region;
        headings.forEach(heading -> ways.add(new ColumnWays(latest)));
    }

    /** Takes a row below the headings. */
    public void take(List<String> cells, boolean quoteBroken) {
        boolean empty = true;
        for (int i = 0; i < cells.size() && empty; i++) {
            empty = Missing.strip(cells.get(i)).isEmpty();
        }
        if (empty) {
            emptyRows++;
            return;
        }
        rows++;
        brokenQuotes += quoteBroken ? 1 : 0;
        shorterRows += cells.size() < headings.size() ? 1 : 0;
        longerRows += cells.size() > headings.size() ? 1 : 0;
        int both = Math.min(cells.size(), headings.size());
        for (int i = 0; i < both; i++) {
            ways.get(i).take(cells.get(i), region);
        }
    }

    public List<String> headings() {
        return headings;
    }

    public ColumnWays column(int index) {
        return ways.get(index);
    }

    /** Rows that are not empty. */
    public long rows() {
        return rows;
    }

    public long emptyRows() {
        return emptyRows;
    }

    public long shorterRows() {
        return shorterRows;
    }

    public long longerRows() {
        return longerRows;
    }

    public long brokenQuotes() {
        return brokenQuotes;
    }

    public List<Headings.Proposal> proposals() {
        return Headings.propose(headings, ways);
    }

    /** Which column holds what, as proposed. */
    public Map<Field, Integer> proposedColumns() {
        return columns(proposals());
    }

    /** Which column holds what, if it is as proposed. */
    public static Map<Field, Integer> columns(List<Headings.Proposal> proposals) {
        Map<Field, Integer> columns = new EnumMap<>(Field.class);
        proposals.forEach(proposal -> columns.put(proposal.field(), proposal.column()));
        return columns;
    }

    /** What has to be asked if the columns hold this. */
    public List<Question> questions(Map<Field, Integer> columns) {
        List<Question> questions = new ArrayList<>();
        Integer day = columns.get(Field.day);
        if (day != null) {
            addDayOrder(questions, day);
            addSerials(questions, day);
        }
        addBlanks(questions, columns);
        addMidnight(questions, columns);
        addDecimalMark(questions, columns);
        addAxes(questions, columns);
        if (columns.containsKey(Field.easting) && columns.containsKey(Field.northing)) {
            questions.add(new Question(
                    "epsg",
                    "Of which grid are eastings and northings?",
                    List.of(),
                    "Figures of a grid do not tell which it is.",
                    true,
                    null));
        }
        addChainageUnit(questions, columns);
        return List.copyOf(questions);
    }

    private void addDayOrder(List<Question> questions, int column) {
        ColumnWays way = ways.get(column);
        Set<Dates.Order> orders = way.orders();
        if (orders.isEmpty() || orders.size() == Dates.Order.values().length) {
            return;
        }
        Dates.Order first = orders.iterator().next();
        long others = way.notIn(first);
        if (orders.size() > 1) {
            questions.add(new Question(
                    "dayOrder",
                    "In which order do the days under " + quoted(column) + " stand?",
                    choices(orders),
                    "All " + way.told() + " cells can be read in either, such as " + example(way) + ".",
                    true,
                    null));
        } else if (others > 0) {
            questions.add(new Question(
                    "dayOrder",
                    "In which order do the days under " + quoted(column) + " stand?",
                    choices(EnumSet.allOf(Dates.Order.class)),
                    "Most are " + words(first) + (way.onlyIn(first) == null ? "" : ", such as " + way.onlyIn(first))
                            + "; " + others + " are none in that order" + otherExample(way, first) + ".",
                    false,
                    first.name()));
        }
    }

    /** The order in which a column's days are, where it tells; null where it has to be asked or does not matter. */
    public Dates.@Nullable Order toldOrder(int column) {
        Set<Dates.Order> orders = ways.get(column).orders();
        return orders.size() == 1 ? orders.iterator().next() : null;
    }

    /** Whether a column's days can be read in more than one order, and differ. */
    public boolean isOrderOpen(int column) {
        int orders = ways.get(column).orders().size();
        return orders == 2;
    }

    private static String otherExample(ColumnWays way, Dates.Order first) {
        for (Dates.Order other : Dates.Order.values()) {
            String example = other == first ? null : way.onlyIn(other);
            if (example != null) {
                return ", such as " + example;
            }
        }
        return "";
    }

    private static List<Choice> choices(Set<Dates.Order> orders) {
        return orders.stream()
                .map(order -> new Choice(order.name(), words(order)))
                .toList();
    }

    private static String words(Dates.Order order) {
        return switch (order) {
            case yearMonthDay -> "year, month, day";
            case dayMonthYear -> "day, month, year";
            case monthDayYear -> "month, day, year";
        };
    }

    private void addSerials(List<Question> questions, int column) {
        ColumnWays way = ways.get(column);
        if (way.shareOfSerials() == 0) {
            return;
        }
        questions.add(new Question(
                "serialDays",
                "Are numbers under " + quoted(column) + " days as spreadsheets keep them, counted from 1900 on?",
                List.of(new Choice("true", "yes"), new Choice("false", "no: each is in doubt")),
                Math.round(way.shareOfSerials() * way.told()) + " of " + way.told() + " cells may be.",
                false,
                way.shareOfSerials() >= MOST ? "true" : "false"));
    }

    /** A record without a day is seldom; a day that stands over several rows is not. */
    private void addBlanks(List<Question> questions, Map<Field, Integer> columns) {
        Integer column = columns.get(Field.day);
        if (column == null) {
            return;
        }
        ColumnWays way = ways.get(column);
        if (way.told() > 0 && way.isFirstTold() && way.missing() >= FEW_BLANKS * (way.told() + way.missing())) {
            questions.add(new Question(
                    "asAbove",
                    "Do empty cells under " + quoted(column) + " mean the same as the cell above?",
                    List.of(
                            new Choice("day", "yes: a day stands over all its rows"),
                            new Choice("", "no: it is not known")),
                    way.missing() + " of " + (way.told() + way.missing()) + " cells are empty, and the first is not.",
                    false,
                    null));
        }
    }

    private void addMidnight(List<Question> questions, Map<Field, Integer> columns) {
        Integer column = columns.containsKey(Field.time) ? columns.get(Field.time) : columns.get(Field.day);
        if (column == null) {
            return;
        }
        ColumnWays way = ways.get(column);
        if (way.midnights() >= FEWEST && way.midnights() >= MOST * way.hours()) {
            questions.add(new Question(
                    "midnightIsNoHour",
                    "Does 00:00 under " + quoted(column) + " stand where no hour is known?",
                    List.of(new Choice("true", "yes"), new Choice("false", "no: it was midnight")),
                    way.midnights() + " of " + way.hours() + " hours are 00:00.",
                    false,
                    "true"));
        }
    }

    private void addDecimalMark(List<Question> questions, Map<Field, Integer> columns) {
        Told told = marks(columns);
        if (told.point() != null && told.comma() != null) {
            questions.add(new Question(
                    "decimalMark",
                    "Which mark stands before decimals?",
                    marks(),
                    "Both do, such as in " + told.point() + " and in " + told.comma() + ".",
                    true,
                    null));
        } else if (told.point() == null && told.comma() == null && told.either() != null) {
            questions.add(new Question(
                    "decimalMark",
                    "Which mark stands before decimals?",
                    marks(),
                    "Numbers such as " + told.either() + " can be read with either.",
                    true,
                    null));
        }
    }

    private static List<Choice> marks() {
        return List.of(new Choice("point", "the point: 12.5"), new Choice("comma", "the comma: 12,5"));
    }

    /** Examples of numbers that have one mark or the other. */
    private record Told(
            @Nullable String point,
            @Nullable String comma,
            @Nullable String either) {}

    private Told marks(Map<Field, Integer> columns) {
        String point = null;
        String comma = null;
        String either = null;
        for (Map.Entry<Field, Integer> one : columns.entrySet()) {
            ColumnWays way = ways.get(one.getValue());
            if (!Headings.isOfNumbers(one.getKey()) && one.getKey() != Field.chainage) {
                continue;
            }
            boolean degrees = one.getKey() == Field.decimalLatitude || one.getKey() == Field.decimalLongitude;
            // Among degrees a few with the other mark are read all the same, and told
            Set<Numbers.Mark> most = degrees ? way.marks() : Set.of();
            if (most.size() != 1 || most.contains(Numbers.Mark.point)) {
                point = point == null ? way.onlyWith(Numbers.Mark.point) : point;
            }
            if (most.size() != 1 || most.contains(Numbers.Mark.comma)) {
                comma = comma == null ? way.onlyWith(Numbers.Mark.comma) : comma;
            }
            String open = way.withEither();
            if (open != null && degrees) {
                // Degrees have no thousands
                point = point == null && open.indexOf('.') >= 0 ? open : point;
                comma = comma == null && open.indexOf(',') >= 0 ? open : comma;
            } else if (open != null) {
                either = either == null ? open : either;
            }
        }
        return new Told(point, comma, either);
    }

    /** The mark before decimals in what the columns hold: the point where no cell has one; null where it has to be asked. */
    public Numbers.@Nullable Mark toldMark(Map<Field, Integer> columns) {
        Told told = marks(columns);
        if (told.point() != null) {
            return told.comma() == null ? Numbers.Mark.point : null;
        }
        return told.comma() != null ? Numbers.Mark.comma : told.either() == null ? Numbers.Mark.point : null;
    }

    private void addAxes(List<Question> questions, Map<Field, Integer> columns) {
        Integer latitude = columns.get(Field.decimalLatitude);
        Integer longitude = columns.get(Field.decimalLongitude);
        if (region == null || latitude == null || longitude == null) {
            return;
        }
        ColumnWays north = ways.get(latitude);
        ColumnWays east = ways.get(longitude);
        if (north.shareInLatitudes() >= MOST && east.shareInLongitudes() >= MOST) {
            return;
        }
        boolean hardlyAsTheyStand = north.shareInLatitudes() <= HARDLY || east.shareInLongitudes() <= HARDLY;
        boolean straight = mayBe(north, east);
        boolean swapped =
                mayBe(east, north) && north.shareInLatitudes() <= HARDLY && east.shareInLongitudes() <= HARDLY;
        if (straight && hardlyAsTheyStand) {
            if (mayBe(east, north)) {
                questions.add(axes(
                        "With a minus sign the cells are of the region as they stand, and swapped too.", true, null));
            }
            addSigns(questions, latitude, longitude);
        } else if (swapped) {
            questions.add(axes(
                    percent(north.shareInLatitudes()) + " of the cells under " + quoted(latitude)
                            + " are latitudes of the region, and "
                            + percent(Math.max(north.shareInLongitudes(), north.shareInLongitudesWithMinus()))
                            + " are longitudes of it; of " + quoted(longitude) + " "
                            + percent(Math.max(east.shareInLatitudes(), east.shareInLatitudesWithMinus()))
                            + " are latitudes of it" + (isPlain(east, north) ? "." : ", with a minus sign."),
                    true,
                    "true"));
            addSigns(questions, longitude, latitude);
        } else if (north.told() >= FEWEST && north.shareInLatitudes() < MOST) {
            questions.add(axes(
                    "Only " + percent(north.shareInLatitudes()) + " of the cells under " + quoted(latitude) + ", and "
                            + percent(east.shareInLongitudes()) + " of those under " + quoted(longitude)
                            + ", are those of the region, and swapped they are not either.",
                    false,
                    "false"));
        }
    }

    private static Question axes(String evidence, boolean needed, @Nullable String proposed) {
        return new Question(
                "axesSwapped",
                "Do latitude and longitude stand under each other's headings?",
                AXES,
                evidence,
                needed,
                proposed);
    }

    /** Whether two columns are latitudes and longitudes of the region, as they stand or with a minus sign. */
    private static boolean mayBe(ColumnWays north, ColumnWays east) {
        return Math.max(north.shareInLatitudes(), north.shareInLatitudesWithMinus()) >= MOST
                && Math.max(east.shareInLongitudes(), east.shareInLongitudesWithMinus()) >= MOST;
    }

    private static boolean isPlain(ColumnWays north, ColumnWays east) {
        return north.shareInLatitudes() >= MOST && east.shareInLongitudes() >= MOST;
    }

    /** Signs are lost in whole columns: a few that stand without one are told row by row. */
    private void addSigns(List<Question> questions, int latitude, int longitude) {
        ColumnWays north = ways.get(latitude);
        ColumnWays east = ways.get(longitude);
        if (north.shareInLatitudesWithMinus() >= MOST && north.shareInLatitudes() <= HARDLY) {
            questions.add(
                    signs("latitudesWithoutSign", latitude, "latitudes", "south", north.shareInLatitudesWithMinus()));
        }
        if (east.shareInLongitudesWithMinus() >= MOST && east.shareInLongitudes() <= HARDLY) {
            questions.add(
                    signs("longitudesWithoutSign", longitude, "longitudes", "west", east.shareInLongitudesWithMinus()));
        }
    }

    private Question signs(String key, int column, String what, String where, double share) {
        return new Question(
                key,
                "Do the " + what + " under " + quoted(column) + " lack their minus sign?",
                List.of(
                        new Choice("true", "yes: without a sign they are " + where),
                        new Choice("false", "no: they are as they stand")),
                percent(share) + " of the cells are " + what + " of the region only with a minus sign, such as "
                        + example(ways.get(column)) + ".",
                true,
                "true");
    }

    private void addChainageUnit(List<Question> questions, Map<Field, Integer> columns) {
        Integer column = columns.get(Field.chainage);
        if (column == null || ways.get(column).shareOfNumbers() == 0) {
            return;
        }
        ReadingSettings.ChainageUnit told = Headings.unitOf(headings.get(column));
        if (told == null) {
            questions.add(new Question(
                    "chainageUnit",
                    "In what are numbers under " + quoted(column) + "?",
                    List.of(
                            new Choice("kilometres", "kilometres"),
                            new Choice("metres", "metres"),
                            new Choice("miles", "miles")),
                    "The heading names no unit; the numbers are such as " + example(ways.get(column)) + ".",
                    true,
                    null));
        }
    }

    private String quoted(int column) {
        return "\"" + headings.get(column) + "\"";
    }

    private static String example(ColumnWays way) {
        return way.examples().stream()
                .limit(3)
                .reduce((one, other) -> one + ", " + other)
                .orElse("those of the file");
    }

    private static String percent(double share) {
        return Math.round(share * 100) + " %";
    }
}
