package org.culvert.exchange.reading;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.culvert.exchange.reading.Headings.Field;
import org.jspecify.annotations.Nullable;

/**
 * Reads rows as was decided. What a row does not tell is null, what its cells tell in an odd way is in its findings, and nothing
 * is left out without one. A reader is of one thread, and remembers words that come again.
 */
public final class RowReader {
    private static final int MOST_ANIMALS = 1000;
    private static final List<String> LIKE_WGS_84 = List.of(
            "WGS84",
            "WGS1984",
            "EPSG4326",
            "CRS84",
            "GDA94",
            "GDA2020",
            "EPSG4283",
            "EPSG7844",
            "NAD83",
            "EPSG4269",
            "ETRS89",
            "EPSG4258",
            "NZGD2000",
            "EPSG4167",
            "SIRGAS2000",
            "EPSG4674");
    private static final Pattern TOTAL =
            Pattern.compile("(?iu)(?:grand\\s+)?(?:totals?|sum|summe|gesamt|subtotal|count|totaux|suma)\\b.*");
    private static final Pattern BESIDE_ANIMAL =
            Pattern.compile("(?iu)(\\d{1,3})\\s*x?\\s+\\p{L}.*|\\p{L}[^\\d]*?(?:\\(\\s*x?|\\bx)\\s*(\\d{1,3})\\s*\\)?");
    private static final Pattern COUNT_WITH_DOUBT =
            Pattern.compile("[~<>≈±]?\\s*(\\d{1,4})\\s*(?:\\+|\\?|[-–]\\s*\\d{1,4}|\\(.*\\)|x)?");

    private final ReadingSettings settings;
    private final List<String> headings;
    private final RowCells row;
    private final DayCells days;
    private final SpotCells spots;
    private final RoadCells roads;
    private final int lastColumn;
    private final Remembered<Boolean> domestic = new Remembered<>(Domestic::isNamedBy);
    private final Remembered<Optional<String>> animals;
    private final Remembered<Optional<String>> causes;

    /**
     * A reader of one file.
     *
     * @param headings of the columns: a row of as many cells is whole
     * @param latest a day after which nothing in the file lies, such as that on which it is read
     * @param zone of hours that tell another offset from UTC
     */
    public RowReader(ReadingSettings settings, List<String> headings, LocalDate latest, ZoneId zone) {
        this.settings = settings;
        this.headings = List.copyOf(headings);
        this.row = new RowCells(settings.columns());
        this.days = new DayCells(settings, latest, zone);
        this.spots = new SpotCells(settings);
        this.roads = new RoadCells(settings);
        this.lastColumn = settings.columns().values().stream()
                .mapToInt(Integer::intValue)
                .max()
                .orElse(-1);
        this.animals =
                new Remembered<>(words -> Optional.ofNullable(settings.animals().get(ReadingSettings.wordKey(words))));
        this.causes =
                new Remembered<>(words -> Optional.ofNullable(settings.causes().get(ReadingSettings.wordKey(words))));
    }

    /** Reads a row whose quotes are right. */
    public ReadRow read(long number, String original, List<String> cells) {
        return read(number, original, cells, false);
    }

    /**
     * Reads one row.
     *
     * @param number line of the table as a spreadsheet counts it
     * @param original its text as in the file
     * @param quoteBroken whether a quote was taken for a letter, since it does not close
     */
    public ReadRow read(long number, String original, List<String> cells, boolean quoteBroken) {
        row.turnTo(cells);
        String kept = original;
        if (original.indexOf('\0') >= 0) {
            kept = original.replace('\0', '␀');
            row.note(Finding.Kind.unreadableCharacters, null, "It holds characters of no meaning (NUL), shown as ␀.");
        }
        if (original.indexOf('\ufffd') >= 0) {
            row.doubt(
                    Finding.Kind.unreadableCharacters,
                    null,
                    "It holds characters that are not of the encoding of the file.",
                    "the file in one encoding, best in UTF-8");
        }
        if (quoteBroken) {
            row.doubt(
                    Finding.Kind.brokenQuote,
                    null,
                    "A quote does not close where its cell ends, and is taken for a letter.",
                    "quotes around whole cells, and doubled within them (RFC 4180)");
        }
        if (isNoRecord(cells)) {
            return ReadRow.parts(number, kept).row(row.findings());
        }
        row.fillFromAbove(settings.asAbove());
        checkCells(cells);
        checkPresence();
        DayCells.When when = days.read(row);
        Spot spot = spots.read(row);
        RoadCells.Where where = roads.read(row, spot != null);
        checkPlace(spot, where);
        checkDatum(spot);
        String animal = row.told(Field.scientificName);
        String common = row.told(Field.vernacularName);
        String decided = decided(animal);
        String commonDecided = decided(common);
        checkAnimal(animal, decided, common, commonDecided);
        return ReadRow.parts(number, kept)
                .identifier(row.told(Field.identifier))
                .when(when)
                .spot(spot, spots.uncertainty(row))
                .where(where)
                .animal(animal, decided)
                .common(common, commonDecided)
                .individuals(count(), vitality(), row.told(Field.lifeStage), sex())
                .cause(cause())
                .remarks(row.told(Field.remarks))
                .row(row.findings());
    }

    private @Nullable String decided(@Nullable String words) {
        return words == null ? null : animals.of(words).orElse(null);
    }

    /** The heading once more, and sums at the end, are refused as what they are. */
    private boolean isNoRecord(List<String> cells) {
        if (Missing.strip(cells.get(0)).equals(headings.get(0))
                && TableStart.headings(cells, headings.size()).equals(headings)) {
            row.refuse(Finding.Kind.noRecord, null, "It is the row of headings once more.", "a record");
            return true;
        }
        String first = null;
        int told = 0;
        for (String cell : cells) {
            String text = Missing.strip(cell);
            if (!text.isEmpty()) {
                told++;
                first = first == null ? text : first;
            }
        }
        if (first == null) {
            row.refuse(Finding.Kind.noRecord, null, "All its cells are empty.", "a record");
            return true;
        }
        String day = row.told(Field.day);
        boolean noDay = day == null || day.equals(first) && first.chars().noneMatch(Character::isDigit);
        boolean isSum =
                told <= 1 + headings.size() / 2 && noDay && TOTAL.matcher(first).matches();
        boolean isWords = told == 1 && headings.size() > 2 && noDay;
        if (isSum || isWords) {
            row.refuse(
                    Finding.Kind.noRecord,
                    null,
                    "It is a line of words or a sum: " + RowCells.quoted(first) + ".",
                    "a record");
            return true;
        }
        return false;
    }

    private void checkCells(List<String> cells) {
        int wanted = headings.size();
        if (cells.size() < wanted) {
            String detail = "It has " + cells.size() + " cells of " + wanted + ".";
            if (cells.size() > lastColumn) {
                row.note(Finding.Kind.cellsMissing, null, detail);
            } else {
                row.doubt(Finding.Kind.cellsMissing, null, detail, "as many cells as the heading has");
            }
        } else if (cells.size() > wanted) {
            for (int i = wanted; i < cells.size(); i++) {
                if (!Missing.strip(cells.get(i)).isEmpty()) {
                    row.refuse(
                            Finding.Kind.cellsTooMany,
                            null,
                            "It has " + cells.size() + " cells, and the heading " + wanted
                                    + ": its cells may stand under other headings than their own.",
                            "as many cells as the heading has; quotes around a cell that holds the separator");
                    return;
                }
            }
        }
    }

    /** A record of nothing is no animal (Darwin Core's occurrenceStatus). */
    private void checkPresence() {
        String cell = row.told(Field.occurrenceStatus);
        if (cell == null) {
            return;
        }
        String presence = WordTables.presence(cell);
        if (presence == null) {
            row.doubt(
                    Finding.Kind.unknownWord,
                    Field.occurrenceStatus,
                    "Whether an animal was there is not understood from " + RowCells.quoted(cell) + ".",
                    "present or absent");
        } else if (presence.equals("absent")) {
            row.refuse(
                    Finding.Kind.noRecord,
                    Field.occurrenceStatus,
                    "It tells that none was there: " + RowCells.quoted(cell) + ".",
                    "a record of an animal that was there");
        }
    }

    /** Others differ from WGS 84 by up to some hundred metres; these by two at most (from memory). */
    private void checkDatum(@Nullable Spot spot) {
        String cell = row.told(Field.geodeticDatum);
        if (cell == null || spot == null || spot.kind() == Spot.Kind.grid || spot.kind() == Spot.Kind.plusCode) {
            return;
        }
        String plain = cell.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]+", "");
        if (!plain.startsWith("NOTRECORDED") && LIKE_WGS_84.stream().noneMatch(plain::contains)) {
            row.doubt(
                    Finding.Kind.otherDatum,
                    Field.geodeticDatum,
                    "The coordinates are told on " + RowCells.quoted(cell)
                            + ", and are read as on WGS 84: they may be off by some hundred metres.",
                    "coordinates on WGS 84");
        }
    }

    private void checkPlace(@Nullable Spot spot, RoadCells.Where where) {
        if (spot != null || where.chainageMetres() != null || where.road() != null && where.crossingRoad() != null) {
            return;
        }
        if (where.road() != null) {
            row.note(
                    Finding.Kind.routeOnly,
                    Field.road,
                    "The road alone is told: it counts, and is in no analysis of places.");
        } else if (where.locality() != null) {
            row.doubt(
                    Finding.Kind.localityOnly,
                    Field.locality,
                    "The place is told in words alone: " + RowCells.quoted(where.locality()) + ".",
                    "coordinates, or a road and a chainage");
        } else if (row.findings().stream().noneMatch(finding -> finding.weight() == Finding.Weight.refusal)) {
            row.doubt(Finding.Kind.missingPlace, null, "No place is told.", "coordinates, or a road and a chainage");
        }
    }

    /** The scientific name leads; the common one is looked at alone where there is no other. */
    private void checkAnimal(
            @Nullable String animal,
            @Nullable String decided,
            @Nullable String common,
            @Nullable String commonDecided) {
        if (animal != null) {
            checkName(Field.scientificName, animal, decided);
        } else if (common != null) {
            checkName(Field.vernacularName, common, commonDecided);
        } else {
            row.doubt(
                    Finding.Kind.missingAnimal,
                    row.has(Field.scientificName) ? Field.scientificName : Field.vernacularName,
                    "No animal is told.",
                    "what it was, or at least its group");
        }
        if (animal != null
                && decided == null
                && !domestic.of(animal)
                && common != null
                && isKept(common, commonDecided)) {
            row.doubt(
                    Finding.Kind.namesDisagree,
                    Field.vernacularName,
                    RowCells.quoted(animal) + " is no name of an animal that people keep, and "
                            + RowCells.quoted(common) + " is one.",
                    "one animal in both columns, or what one of the names means, decided for the file");
        }
    }

    private void checkName(Field field, String words, @Nullable String decided) {
        if (isKept(words, decided)) {
            row.note(
                    Finding.Kind.domestic,
                    field,
                    RowCells.quoted(words)
                            + " is an animal that people keep: it is kept apart, and is no evidence of wildlife.");
        } else if (ReadingSettings.UNDECIDED.equals(decided)) {
            row.doubt(
                    Finding.Kind.undecidedAnimal,
                    field,
                    "What " + RowCells.quoted(words) + " is was left undecided.",
                    "a taxon or a group");
        }
    }

    private boolean isKept(String words, @Nullable String decided) {
        return decided == null ? domestic.of(words) : decided.equals(ReadingSettings.DOMESTIC);
    }

    /** Young in a column of their own are animals too; whether the other number has them already is not told. */
    private int count() {
        String cell = row.told(Field.youngCount);
        String plain = cell == null ? null : Numbers.normal(cell, settings.decimalMark());
        if (cell == null || plain != null && Double.parseDouble(plain) == 0) {
            return countWithoutYoung();
        }
        double young = plain == null ? -1 : Double.parseDouble(plain);
        String others = row.told(Field.individualCount);
        String other = others == null ? null : Numbers.normal(others, settings.decimalMark());
        boolean alone =
                other != null && Double.parseDouble(other) == 0 || others == null && row.has(Field.individualCount);
        int animals = alone ? 0 : countWithoutYoung();
        if (young != Math.rint(young) || !within(young) || !within(animals + young)) {
            row.doubt(
                    Finding.Kind.unreadableCount,
                    Field.youngCount,
                    "The number of young " + RowCells.quoted(cell) + " is not understood, and is left out.",
                    "a whole number");
            return Math.max(1, animals);
        }
        row.doubt(
                Finding.Kind.unreadableCount,
                Field.youngCount,
                "Young are told besides, " + plain + ": the number is taken as " + (animals + (int) young) + " in all.",
                "a number of all animals, young among them");
        return animals + (int) young;
    }

    private int countWithoutYoung() {
        String cell = row.told(Field.individualCount);
        if (cell == null) {
            return countBesideAnimal();
        }
        String plain = Numbers.normal(cell, settings.decimalMark());
        if (plain == null) {
            String word = WordTables.count(cell);
            if (word != null) {
                return Integer.parseInt(word);
            }
            Counts.Sum sum = Counts.sum(cell).orElse(null);
            if (sum != null && within(sum.animals())) {
                row.doubt(
                        Finding.Kind.unreadableCount,
                        Field.individualCount,
                        "The number " + RowCells.quoted(cell) + " is taken as " + sum.animals()
                                + (sum.withEggs() ? ", eggs not counted." : "."),
                        "a whole number");
                return sum.animals();
            }
            var doubted = COUNT_WITH_DOUBT.matcher(cell);
            if (doubted.matches() && within(Double.parseDouble(doubted.group(1)))) {
                row.doubt(
                        Finding.Kind.unreadableCount,
                        Field.individualCount,
                        "The number " + RowCells.quoted(cell) + " is taken as " + doubted.group(1) + ".",
                        "a whole number");
                return Integer.parseInt(doubted.group(1));
            }
        } else {
            double number = Double.parseDouble(plain);
            if (number == Math.rint(number) && within(number)) {
                return (int) number;
            }
            if (number == 0) {
                row.refuse(
                        Finding.Kind.unreadableCount,
                        Field.individualCount,
                        "It tells of no animal: the number is nought.",
                        "a whole number from 1 to " + MOST_ANIMALS);
                return 1;
            }
        }
        row.refuse(
                Finding.Kind.unreadableCount,
                Field.individualCount,
                "The number " + RowCells.quoted(cell) + " is none of animals.",
                "a whole number from 1 to " + MOST_ANIMALS);
        return 1;
    }

    /** {@code 2 x wallaby} and {@code wallaby (2)}, where no other cell tells a number. */
    private int countBesideAnimal() {
        String animal = row.told(Field.scientificName) != null
                ? row.told(Field.scientificName)
                : row.told(Field.vernacularName);
        var beside = animal == null ? null : BESIDE_ANIMAL.matcher(animal);
        if (beside == null || !beside.matches()) {
            return 1;
        }
        String told = beside.group(1) != null ? beside.group(1) : beside.group(2);
        int number = Integer.parseInt(told);
        if (!within(number)) {
            return 1;
        }
        row.doubt(
                Finding.Kind.unreadableCount,
                row.told(Field.scientificName) != null ? Field.scientificName : Field.vernacularName,
                "A number stands beside the animal, " + RowCells.quoted(String.valueOf(animal))
                        + ", and is taken as that of" + " animals: " + told + ".",
                "a whole number in a cell of its own");
        return number;
    }

    private static boolean within(double number) {
        return number >= 1 && number <= MOST_ANIMALS;
    }

    private @Nullable String vitality() {
        String cell = row.told(Field.vitality);
        if (cell == null) {
            return null;
        }
        String decided = settings.vitalities().get(ReadingSettings.wordKey(cell));
        String vitality = decided != null ? decided : WordTables.vitality(cell);
        if (vitality == null) {
            row.note(
                    Finding.Kind.unknownWord,
                    Field.vitality,
                    "Whether it lived is not understood from " + RowCells.quoted(cell) + ", and is not known.");
        }
        return "unknown".equals(vitality) ? null : vitality;
    }

    private @Nullable String sex() {
        String cell = row.told(Field.sex);
        if (cell == null) {
            return null;
        }
        String sex = WordTables.sex(cell);
        if (sex == null) {
            row.note(
                    Finding.Kind.unknownWord,
                    Field.sex,
                    "The sex is not understood from " + RowCells.quoted(cell) + ", and is not known.");
        }
        return sex;
    }

    /** A cause that nobody decided is not that of the file: it would be evidence that nobody gave. */
    private @Nullable String cause() {
        String cell = row.told(Field.cause);
        if (cell == null) {
            return settings.cause();
        }
        String decided = causes.of(cell).orElse(null);
        if (decided == null) {
            row.doubt(
                    Finding.Kind.unknownWord,
                    Field.cause,
                    "What cause " + RowCells.quoted(cell) + " is was not decided.",
                    "a cause of the network, decided for this word");
        }
        return decided;
    }
}
