package org.culvert.exchange.reading;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.exchange.reading.Headings.Field;
import org.jspecify.annotations.Nullable;

/** Where along which road a row tells of: road, chainage, direction, a crossing road; from columns of their own or from words. */
final class RoadCells {
    /** What the cells tell. */
    record Where(
            @Nullable String road,
            @Nullable Double chainageMetres,
            @Nullable Double precisionMetres,
            @Nullable String direction,
            @Nullable String crossingRoad,
            @Nullable String locality) {}

    /** A chainage, how finely, and the words beside it. */
    private record Chainage(double metres, double precisionMetres, String rest) {}

    /** Two roads of one text. */
    private record Corner(String road, String crossing) {}

    private static final String CHAINAGE = "a distance along the road such as 12.4 or 12+400";
    private static final Pattern CORNER = Pattern.compile(
            "(?i)(?:(cnr\\.?|corner(?: of)?|intersection(?: of)?|junction(?: of)?|jct\\.?|jn\\.?|ecke)\\s+)?(.+?)\\s*(?:(/|&|@)|\\s(?:and|und|et|y|with|x|at)\\s)\\s*(.+)");
    private static final Pattern BLOCK = Pattern.compile(
            "(?i)(?:#?\\d{1,5}[a-d]?(?:\\s*[-/]\\s*\\d{1,5}[a-d]?)?)\\s+(?:(?:block|blk)\\.?\\s+(?:of\\s+)?)?(?=\\p{L})(.+)");
    private static final int LONGEST_ROAD = 80;

    private final ReadingSettings settings;
    private final Remembered<Optional<Chainage>> chainages = new Remembered<>(this::chainage);
    private final Remembered<Optional<Chainage>> chainagesInWords = new Remembered<>(RoadCells::inWords);
    private final Remembered<Optional<Corner>> corners = new Remembered<>(RoadCells::corner);
    private final Remembered<Optional<String>> directions = new Remembered<>(this::direction);

    RoadCells(ReadingSettings settings) {
        this.settings = settings;
    }

    Where read(RowCells row, boolean hasCoordinates) {
        String road = row.told(Field.road);
        String locality = row.told(Field.locality);
        String crossing = row.told(Field.crossingRoad);
        Chainage chainage = ownChainage(row);
        boolean fromWords = false;
        if (chainage == null && road != null) {
            Chainage found = chainagesInWords.of(road).orElse(null);
            if (found != null) {
                row.note(Finding.Kind.chainageInText, Field.road, told(road, found));
                chainage = found;
                fromWords = true;
                road = found.rest().isEmpty() ? null : found.rest();
            }
        }
        if (chainage == null && locality != null && !hasCoordinates) {
            Chainage found = chainagesInWords.of(locality).orElse(null);
            if (found != null) {
                row.note(Finding.Kind.chainageInText, Field.locality, told(locality, found));
                chainage = found;
                fromWords = true;
                road = road == null && !found.rest().isEmpty() ? found.rest() : road;
            }
        }
        if (road == null && locality != null && !hasCoordinates && locality.length() <= LONGEST_ROAD) {
            Corner corner = crossing == null ? corners.of(locality).orElse(null) : null;
            if (corner != null) {
                row.note(Finding.Kind.crossingInText, Field.locality, told(corner));
                return new Where(corner.road(), null, null, direction(row), corner.crossing(), locality);
            }
        }
        if (road != null && crossing == null && chainage == null) {
            Corner corner = corners.of(road).orElse(null);
            if (corner != null) {
                row.note(Finding.Kind.crossingInText, Field.road, told(corner));
                road = corner.road();
                crossing = corner.crossing();
            } else {
                Matcher block = BLOCK.matcher(road);
                if (block.matches()) {
                    row.note(
                            Finding.Kind.blockAddress,
                            Field.road,
                            RowCells.quoted(road) + " is an address of a house: the road is taken for "
                                    + RowCells.quoted(block.group(1)) + ", and where along it is not known.");
                    locality = locality == null ? road : locality;
                    road = block.group(1);
                }
            }
        }
        if (chainage != null && road == null) {
            row.doubt(
                    Finding.Kind.missingPlace,
                    fromWords ? null : Field.chainage,
                    "A chainage is told, and no road.",
                    "the road that it is along");
        }
        return new Where(
                road,
                chainage == null ? null : chainage.metres(),
                chainage == null ? null : chainage.precisionMetres(),
                direction(row),
                crossing,
                locality);
    }

    private static String told(String words, Chainage found) {
        return "A chainage stands within " + RowCells.quoted(words) + ": " + Math.round(found.metres()) + " m.";
    }

    private static String told(Corner corner) {
        return "Two roads are told: " + RowCells.quoted(corner.road()) + " and " + RowCells.quoted(corner.crossing())
                + ".";
    }

    private @Nullable Chainage ownChainage(RowCells row) {
        String cell = row.told(Field.chainage);
        if (cell == null) {
            return null;
        }
        Chainage chainage = chainages.of(cell).orElse(null);
        if (chainage == null) {
            row.doubt(
                    Finding.Kind.unreadableChainage,
                    Field.chainage,
                    "The chainage " + RowCells.quoted(cell) + " is not understood.",
                    CHAINAGE);
        }
        return chainage;
    }

    private Optional<Chainage> chainage(String cell) {
        String plain = Numbers.normal(cell, settings.decimalMark());
        if (plain == null) {
            Optional<Chainage> told = inWords(cell);
            return told.filter(chainage -> chainage.rest().isEmpty()).or(() -> told);
        }
        var number = new BigDecimal(plain);
        double unit = settings.chainageUnit().inMetres();
        return Optional.of(new Chainage(
                number.doubleValue() * unit,
                BigDecimal.ONE.movePointLeft(Math.max(0, number.scale())).doubleValue() * unit,
                ""));
    }

    private static Optional<Chainage> inWords(String words) {
        return Chainages.read(words)
                .map(told -> new Chainage(
                        told.kilometres().movePointRight(3).doubleValue(),
                        told.stepKilometres().movePointRight(3).doubleValue(),
                        told.rest()));
    }

    /** Without a word for it two names with a sign between them are a corner only where neither has figures alone. */
    private static Optional<Corner> corner(String text) {
        Matcher corner = CORNER.matcher(text);
        if (!corner.matches() || corner.group(1) == null && corner.group(3) == null) {
            return Optional.empty();
        }
        String first = Missing.strip(corner.group(2));
        String second = Missing.strip(corner.group(4));
        boolean names = hasLetters(first) && hasLetters(second) && second.indexOf('/') < 0 && second.indexOf('&') < 0;
        return names ? Optional.of(new Corner(first, second)) : Optional.empty();
    }

    private static boolean hasLetters(String name) {
        return name.chars().filter(Character::isLetter).count() > 1;
    }

    private @Nullable String direction(RowCells row) {
        String cell = row.told(Field.direction);
        if (cell == null) {
            return null;
        }
        String direction = directions.of(cell).orElse(null);
        if (direction == null) {
            row.note(
                    Finding.Kind.oddDirection,
                    Field.direction,
                    "The direction " + RowCells.quoted(cell) + " is not understood, and is left out.");
        } else if (direction.equals("ramp") || direction.equals("both")) {
            row.note(
                    Finding.Kind.oddDirection,
                    Field.direction,
                    "The direction " + RowCells.quoted(cell) + " tells no carriageway.");
        }
        return direction;
    }

    private Optional<String> direction(String cell) {
        String decided = settings.directions().get(cell.toLowerCase(Locale.ROOT));
        return Optional.ofNullable(decided != null ? decided : WordTables.direction(cell));
    }
}
