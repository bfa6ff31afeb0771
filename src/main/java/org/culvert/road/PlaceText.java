package org.culvert.road;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.geo.CoordinateException;
import org.culvert.geo.Coordinates;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * A place in one line, as people say it on the telephone or read it from a screen: a road and how far along it, two roads that
 * meet, or coordinates in any form.
 */
final class PlaceText {
    static final String FORMS =
            "a road and how far along it (\"Mill Road 12.4\"), two roads that meet (\"Mill Road / Creek"
                    + " Street\"), or coordinates (\"-33.8688, 151.2093\", a grid with its zone, a Plus Code)";

    private static final int LONGEST = 300;
    private static final int UTM_NORTH = 32_600;
    private static final int UTM_SOUTH = 32_700;

    private static final Pattern VAGUE = Pattern.compile(
            "(?i)^(?:(?:just|somewhere|near|about|around|roughly|by|at|on|the|past|corner of|junction of|crossing of|crossroads of|intersection of)\\s+)+");

    /** RFC 5870 */
    private static final Pattern GEO = Pattern.compile("(?i)geo:(-?[\\d.]+),(-?[\\d.]+).*");

    private static final Pattern PLUS_CODE = Pattern.compile(
            "(?i)(?=\\S{2,8}\\+)[23456789CFGHJMPQRVWX]{2,8}0*\\+[23456789CFGHJMPQRVWX]{0,7}(?:[ ,].*)?");
    private static final String METRES = "(\\d{4,8}(?:[.,]\\d+)?)";
    private static final Pattern EPSG = Pattern.compile(
            "(?i)EPSG\\s*:?\\s*(\\d{4,5})[\\s,;:]+" + METRES + "\\s*m?E?[\\s,;]+" + METRES + "\\s*m?N?");
    private static final Pattern UTM =
            Pattern.compile("(?i)(?:UTM\\s*:?\\s*)?(?:zone\\s*)?(\\d{1,2})\\s*([C-HJ-NP-X])[\\s,]+" + METRES
                    + "\\s*m?E?[\\s,;]+" + METRES + "\\s*m?N?");
    private static final Pattern TWO_NUMBERS =
            Pattern.compile("([+-]?\\d{1,3}(?:\\.\\d+)?)\\s*°?\\s*[,;/ ]\\s*([+-]?\\d{1,3}(?:\\.\\d+)?)\\s*°?");
    private static final Pattern DECIMAL_COMMAS =
            Pattern.compile("([+-]?\\d{1,3}),(\\d+)\\s*[; /]\\s*([+-]?\\d{1,3}),(\\d+)");

    private static final String MARK =
            "(?:km|kp|kilomet(?:re|er)s?(?:\\s*(?:post|mark(?:er)?))?|post|marker|chainage|ch\\.?)";
    private static final String DISTANCE =
            "(\\d{1,5}\\s*\\+\\s*\\d{3}|\\d{1,8}\\s*m(?:et(?:re|er)s?)?\\b|\\d{1,5}(?:[.,]\\d{1,6})?)";
    private static final String DIRECTION =
            "((?:north|south|east|west|[nsew])(?:-?(?:east|west|[ew]))?(?:\\s*-?(?:bound|b|wards?))?)";
    private static final Pattern ALONG = Pattern.compile("(?i)(.+?)[\\s,;:@]+(?:at\\s+)?(?:" + MARK + "\\s*)?"
            + DISTANCE + "\\s*(?:km|k|kilomet(?:re|er)s?)?(?:[\\s,]+" + DIRECTION + ")?");

    /** Without a mark of kilometres a number before a road is a house's. */
    private static final Pattern DISTANCE_FIRST = Pattern.compile("(?i)(?:" + MARK + "\\s*" + DISTANCE + "\\s*(?:km)?|"
            + DISTANCE + "\\s*(?:km|k|kilomet(?:re|er)s?))[\\s,]+(?:(?:along|on|of|up|down|into|the)\\s+)*(.+?)");

    private static final Pattern BETWEEN_ROADS = Pattern.compile(
            "(?i)\\s*[/&]\\s*|\\s+(?:and|x|crossing|crosses|corner of|meets|at|with|junction with|und)\\s+");

    private static final Pattern DOUBT =
            Pattern.compile("(?i)(.+?)[\\s,;]*(?:±|\\+/?-)\\s*(\\d{1,6})\\s*(k?)m(?:et(?:re|er)s?)?");

    private PlaceText() {}

    /**
     * @param isRoad whether something is the name or number of a road
     * @throws InvalidException of {@code place}, with the forms that are understood
     */
    static PlaceAsGiven read(String said, Predicate<String> isRoad) {
        String text = said.strip().replace('−', '-').replaceAll("\\s+", " ");
        if (text.isEmpty() || text.length() > LONGEST) {
            throw InvalidException.of("place", text.isEmpty() ? "No place is given." : "This is too long.", FORMS);
        }
        Matcher doubt = DOUBT.matcher(text);
        if (doubt.matches()) {
            double metres = Double.parseDouble(doubt.group(2)) * (doubt.group(3).isEmpty() ? 1 : 1000);
            return read(doubt.group(1), isRoad).knownWithin(metres);
        }
        PlaceAsGiven coordinates = coordinates(text);
        if (coordinates != null) {
            return coordinates;
        }
        String plain = VAGUE.matcher(text).replaceFirst("");
        if (isRoad.test(text) || isRoad.test(plain)) {
            throw InvalidException.of(
                    "place",
                    "That is a road; how far along it is not said.",
                    "\"" + plain + " 12.4\", or the road it meets");
        }
        PlaceAsGiven byRoad = byRoads(plain, isRoad, true);
        if (byRoad == null) {
            byRoad = degrees(text);
        }
        if (byRoad == null) {
            byRoad = byRoads(plain, isRoad, false);
        }
        if (byRoad == null) {
            throw InvalidException.of("place", "This place is not understood.", FORMS);
        }
        return byRoad;
    }

    /** Both sides of whatever stands between two roads, at each place where something of the kind does. */
    static List<String[]> aroundCrossings(String text) {
        Matcher between = BETWEEN_ROADS.matcher(text);
        return between.results()
                .map(found -> new String[] {
                    text.substring(0, found.start()).strip(),
                    text.substring(found.end()).strip()
                })
                .toList();
    }

    private static @Nullable PlaceAsGiven coordinates(String text) {
        Matcher geo = GEO.matcher(text);
        if (geo.matches()) {
            return decimal(geo.group(1), geo.group(2));
        }
        if (PLUS_CODE.matcher(text).matches()) {
            return new PlaceAsGiven(null, null, null, text, null, null, null, null, null);
        }
        Matcher epsg = EPSG.matcher(text);
        if (epsg.matches()) {
            return grid(Integer.parseInt(epsg.group(1)), epsg.group(2), epsg.group(3));
        }
        Matcher utm = UTM.matcher(text);
        if (utm.matches()) {
            int zone = Integer.parseInt(utm.group(1));
            if (zone < 1 || zone > 60) {
                throw InvalidException.of(
                        "place", "There is no zone " + zone + ".", "a zone from 1 to 60, such as 55H");
            }
            boolean north = Character.toUpperCase(utm.group(2).charAt(0)) >= 'N';
            return grid((north ? UTM_NORTH : UTM_SOUTH) + zone, utm.group(3), utm.group(4));
        }
        String bare = text.startsWith("(") && text.endsWith(")") ? text.substring(1, text.length() - 1) : text;
        Matcher commas = DECIMAL_COMMAS.matcher(bare);
        if (commas.matches()) {
            return decimal(commas.group(1) + '.' + commas.group(2), commas.group(3) + '.' + commas.group(4));
        }
        Matcher two = TWO_NUMBERS.matcher(bare);
        return two.matches() ? decimal(two.group(1), two.group(2)) : null;
    }

    private static PlaceAsGiven decimal(String latitude, String longitude) {
        return new PlaceAsGiven(
                new PlaceAsGiven.DecimalDegrees(latitude, longitude), null, null, null, null, null, null, null, null);
    }

    private static PlaceAsGiven grid(int epsg, String easting, String northing) {
        return new PlaceAsGiven(
                null,
                null,
                new PlaceAsGiven.Grid(epsg, easting.replace(',', '.'), northing.replace(',', '.')),
                null,
                null,
                null,
                null,
                null,
                null);
    }

    /** Degrees, minutes and seconds, or degrees with letters of their hemispheres; null for anything else. */
    private static @Nullable PlaceAsGiven degrees(String text) {
        try {
            Coordinates.text(text, null);
            return new PlaceAsGiven(null, text, null, null, null, null, null, null, null);
        } catch (CoordinateException anythingElse) {
            return null;
        }
    }

    /** @param known whether the roads must be known */
    private static @Nullable PlaceAsGiven byRoads(String text, Predicate<String> isRoad, boolean known) {
        Matcher first = DISTANCE_FIRST.matcher(text);
        if (first.matches() && (!known || isRoad.test(first.group(3)))) {
            return along(first.group(3), first.group(1) == null ? first.group(2) : first.group(1), null);
        }
        Matcher along = ALONG.matcher(text);
        if (along.matches() && (!known || isRoad.test(along.group(1)))) {
            return along(along.group(1), along.group(2), along.group(3));
        }
        for (String[] sides : aroundCrossings(text)) {
            if (!sides[0].isEmpty()
                    && !sides[1].isEmpty()
                    && (!known || (isRoad.test(sides[0]) && isRoad.test(sides[1])))) {
                return new PlaceAsGiven(
                        null,
                        null,
                        null,
                        null,
                        null,
                        new PlaceAsGiven.CrossingRoads(sides[0], sides[1]),
                        null,
                        null,
                        null);
            }
        }
        return null;
    }

    private static PlaceAsGiven along(String road, String distance, @Nullable String direction) {
        String plain = distance.replace(',', '.')
                .replaceFirst("(?i)\\s*m(?:et(?:re|er)s?)?$", " m")
                .toLowerCase(Locale.ROOT);
        return new PlaceAsGiven(
                null,
                null,
                null,
                null,
                new PlaceAsGiven.RoadAndChainage(road.strip(), plain, null),
                null,
                null,
                null,
                direction);
    }
}
