package org.culvert.exchange.reading;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.exchange.reading.Headings.Field;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.Coordinates;
import org.jspecify.annotations.Nullable;

/** Where a row's coordinates lie, in whatever form they are; and how surely. */
final class SpotCells {
    private static final String DEGREES = "degrees such as -33.8688 and 151.2093";
    private static final int UTM_NORTH = 32_600;
    private static final int UTM_SOUTH = 32_700;

    private static final Pattern POINT =
            Pattern.compile("(?i)POINT\\s*Z?M?\\s*\\(\\s*(\\S+)\\s+(\\S+?)(?:\\s+[-\\d.]+)*\\s*\\)");
    private static final Pattern GEO = Pattern.compile("(?i)geo:(-?[\\d.]+),(-?[\\d.]+).*");
    private static final Pattern UTM = Pattern.compile(
            "(?i)(?:UTM\\s*:?\\s*)?(?:zone\\s*)?(\\d{1,2})\\s*([C-HJ-NP-X])[\\s,]+(\\d{5,6}(?:[.,]\\d+)?)\\s*m?E?[\\s,;]+(\\d{6,8}(?:[.,]\\d+)?)\\s*m?N?");
    private static final Pattern PLUS_CODE =
            Pattern.compile("(?i)(?=.{2,8}\\+)[23456789CFGHJMPQRVWX]{2,8}0*\\+[23456789CFGHJMPQRVWX]{0,7}(?:[ ,].*)?");
    private static final Pattern DECIMAL_COMMA = Pattern.compile("(?<=\\d),(?=\\d)");
    private static final Pattern TWO_NUMBERS =
            Pattern.compile("([+\\-−]?\\d{1,3}(?:\\.\\d+)?)\\s*°?\\s*[,;/ ]\\s*([+\\-−]?\\d{1,3}(?:\\.\\d+)?)\\s*°?");
    private static final Pattern METRES = Pattern.compile(
            "(?i)[±~<≤]?\\s*(?:\\+/-)?\\s*(\\d+(?:[.,]\\d+)?)\\s*(m|metres?|meters?|km|kilometres?|kilometers?|ft|feet)?\\.?");

    /** The international foot (from memory). */
    private static final double FOOT_METRES = 0.3048;

    private final ReadingSettings settings;

    SpotCells(ReadingSettings settings) {
        this.settings = settings;
    }

    /** Where the row tells its place in another way too, what is wrong with its coordinates is a doubt. */
    private static void wrong(RowCells row, Finding.Kind kind, Field field, String detail, String wanted) {
        boolean otherwise = row.told(Field.road) != null
                && (row.told(Field.chainage) != null || row.told(Field.crossingRoad) != null);
        if (otherwise) {
            row.doubt(kind, field, detail, wanted);
        } else {
            row.refuse(kind, field, detail, wanted);
        }
    }

    @Nullable
    Spot read(RowCells row) {
        String latitude = row.told(Field.decimalLatitude);
        String longitude = row.told(Field.decimalLongitude);
        if (latitude != null && longitude != null) {
            return degrees(row, latitude, longitude);
        }
        if (latitude != null || longitude != null) {
            row.doubt(
                    Finding.Kind.halfACoordinate,
                    latitude == null ? Field.decimalLatitude : Field.decimalLongitude,
                    "One of two coordinates is told, and is left out.",
                    "both, or none");
        }
        String easting = row.told(Field.easting);
        String northing = row.told(Field.northing);
        if (easting != null && northing != null) {
            return grid(row, easting, northing);
        }
        String both = row.told(Field.coordinates);
        return both == null ? null : text(row, both);
    }

    private @Nullable Spot degrees(RowCells row, String latitude, String longitude) {
        String first = number(row, Field.decimalLatitude, latitude);
        String second = number(row, Field.decimalLongitude, longitude);
        if (first == null || second == null) {
            return understood(row, Field.decimalLatitude, beside(latitude, longitude));
        }
        boolean swapped = settings.axesSwapped();
        String north = swapped ? second : first;
        String east = swapped ? first : second;
        if (settings.latitudesWithoutSign() && isUnsigned(swapped ? longitude : latitude)) {
            north = withMinus(north);
        }
        if (settings.longitudesWithoutSign() && isUnsigned(swapped ? latitude : longitude)) {
            east = withMinus(east);
        }
        double lat = Double.parseDouble(north);
        double lon = Double.parseDouble(east);
        if (lat == 0 && lon == 0) {
            row.doubt(
                    Finding.Kind.zeroCoordinates,
                    Field.decimalLatitude,
                    "Both coordinates are nought, which is a word for missing here; they are left out.",
                    DEGREES);
            return null;
        }
        if (Math.abs(lat) > 90 || Math.abs(lon) > 180) {
            boolean otherWay = Math.abs(lon) <= 90 && Math.abs(lat) <= 180;
            wrong(
                    row,
                    otherWay ? Finding.Kind.swappedAxes : Finding.Kind.unreadableCoordinates,
                    Field.decimalLatitude,
                    "There is no latitude " + RowCells.quoted(north) + " with a longitude " + RowCells.quoted(east)
                            + (otherWay ? "; the other way round there is." : "."),
                    DEGREES);
            return null;
        }
        return Spot.decimalDegrees(north, east);
    }

    /** Whether degrees tell neither a sign nor a hemisphere. */
    private static boolean isUnsigned(String cell) {
        return "-+−".indexOf(cell.charAt(0)) < 0 && !hasLetter(cell);
    }

    private static String withMinus(String degrees) {
        return Double.parseDouble(degrees) == 0 ? degrees : '-' + degrees;
    }

    /** Degrees have no marks between thousands: with either mark before its decimals it is the same number. */
    private @Nullable String number(RowCells row, Field field, String cell) {
        String text = cell.endsWith("°") ? Missing.strip(cell.substring(0, cell.length() - 1)) : cell;
        Numbers.Mark mark = settings.decimalMark();
        Numbers.Mark other = mark == Numbers.Mark.point ? Numbers.Mark.comma : Numbers.Mark.point;
        if (text.indexOf(mark == Numbers.Mark.point ? ',' : '.') < 0) {
            return Numbers.normal(text, mark);
        }
        String plain = Numbers.normal(text, other);
        if (plain != null && Math.abs(Double.parseDouble(plain)) <= 180) {
            row.note(
                    Finding.Kind.otherDecimalMark,
                    field,
                    RowCells.quoted(cell) + " has the other decimal mark than the file, and is taken as " + plain
                            + ".");
            return plain;
        }
        return null;
    }

    /** Latitude and longitude with letters or signs of degrees, each in its own cell, in one text. */
    private String beside(String latitude, String longitude) {
        boolean letters = hasLetter(latitude) || hasLetter(longitude);
        String first = letters ? lettered(latitude, 'N', 'S') : latitude;
        String second = letters ? lettered(longitude, 'E', 'W') : longitude;
        if (letters) {
            return first + ", " + second;
        }
        String north = settings.axesSwapped() ? second : first;
        String east = settings.axesSwapped() ? first : second;
        return (settings.latitudesWithoutSign() && isUnsigned(north) ? "-" : "") + north + ", "
                + (settings.longitudesWithoutSign() && isUnsigned(east) ? "-" : "") + east;
    }

    /** Where one of them has a letter, the other one has a sign or is positive. */
    private static String lettered(String cell, char plus, char minus) {
        String text = cell.replace('−', '-');
        return hasLetter(text) || text.isEmpty()
                ? text
                : text.charAt(0) == '-'
                        ? text.substring(1) + minus
                        : (text.charAt(0) == '+' ? text.substring(1) : text) + plus;
    }

    private static boolean hasLetter(String text) {
        return text.chars().anyMatch(c -> "NSEWnsew".indexOf(c) >= 0);
    }

    private @Nullable Spot grid(RowCells row, String easting, String northing) {
        Integer epsg = settings.epsg();
        String east = Numbers.normal(easting, settings.decimalMark());
        String north = Numbers.normal(northing, settings.decimalMark());
        if (east == null || north == null) {
            return refused(row, Field.easting, easting + " " + northing, "metres such as 334368 and 6250948");
        }
        if (Double.parseDouble(east) == 0 && Double.parseDouble(north) == 0) {
            row.doubt(
                    Finding.Kind.zeroCoordinates,
                    Field.easting,
                    "Both coordinates are nought, which is a word for missing here; they are left out.",
                    "metres such as 334368 and 6250948");
            return null;
        }
        if (epsg == null) {
            return refused(row, Field.easting, easting + " " + northing, "the grid they are of, decided for the file");
        }
        return settings.axesSwapped() ? Spot.grid(epsg, north, east) : Spot.grid(epsg, east, north);
    }

    private @Nullable Spot text(RowCells row, String cell) {
        Matcher point = POINT.matcher(cell);
        if (point.matches()) {
            return degrees(row, point.group(2), point.group(1));
        }
        Matcher geo = GEO.matcher(cell);
        if (geo.matches()) {
            return degrees(row, geo.group(1), geo.group(2));
        }
        if (PLUS_CODE.matcher(cell).matches()) {
            return Spot.plusCode(cell);
        }
        Matcher utm = UTM.matcher(cell);
        if (utm.matches()) {
            int zone = Integer.parseInt(utm.group(1));
            if (zone >= 1 && zone <= 60) {
                boolean north = Character.toUpperCase(utm.group(2).charAt(0)) >= 'N';
                return Spot.grid(
                        (north ? UTM_NORTH : UTM_SOUTH) + zone,
                        utm.group(3).replace(',', '.'),
                        utm.group(4).replace(',', '.'));
            }
        }
        String bare = cell.startsWith("(") && cell.endsWith(")") ? cell.substring(1, cell.length() - 1) : cell;
        // A comma between figures is a decimal one where something else stands between the coordinates
        boolean commas =
                bare.indexOf(';') >= 0 || bare.indexOf('/') >= 0 || settings.decimalMark() == Numbers.Mark.comma;
        String points = commas ? DECIMAL_COMMA.matcher(bare).replaceAll(".") : bare;
        Matcher two = TWO_NUMBERS.matcher(points);
        return two.matches()
                ? degrees(row, two.group(1).replace('−', '-'), two.group(2).replace('−', '-'))
                : understood(row, Field.coordinates, points.replace(';', ' '));
    }

    /** A text that {@code geo} understands. */
    private @Nullable Spot understood(RowCells row, Field field, String text) {
        String points = settings.decimalMark() == Numbers.Mark.comma
                ? DECIMAL_COMMA.matcher(text).replaceAll(".")
                : text;
        try {
            Coordinates.text(points, null);
            return Spot.text(points);
        } catch (CoordinateException wrong) {
            wrong(
                    row,
                    Finding.Kind.unreadableCoordinates,
                    field,
                    "The coordinates " + RowCells.quoted(text) + " are not understood: " + wrong.whatIsWrong() + ".",
                    wrong.whatWouldBeRight());
            return null;
        }
    }

    private static @Nullable Spot refused(RowCells row, Field field, String cells, String wanted) {
        wrong(
                row,
                Finding.Kind.unreadableCoordinates,
                field,
                "The coordinates " + RowCells.quoted(cells) + " are not understood.",
                wanted);
        return null;
    }

    /** Metres, as the row tells them or as was decided; nought is told by machines that know nothing. */
    @Nullable
    Double uncertainty(RowCells row) {
        String cell = row.told(Field.coordinateUncertaintyInMeters);
        if (cell == null) {
            return settings.uncertaintyMetres();
        }
        Matcher metres = METRES.matcher(cell);
        double value = 0;
        if (metres.matches()) {
            value = Double.parseDouble(metres.group(1).replace(',', '.'));
            String unit = metres.group(2) == null ? "m" : metres.group(2).toLowerCase(Locale.ROOT);
            value *= unit.startsWith("k") ? 1000 : unit.startsWith("f") ? FOOT_METRES : 1;
        }
        if (value > 0) {
            return value;
        }
        row.note(
                Finding.Kind.unreadableUncertainty,
                Field.coordinateUncertaintyInMeters,
                "The uncertainty " + RowCells.quoted(cell) + " is none, and that of the file is taken.");
        return settings.uncertaintyMetres();
    }
}
