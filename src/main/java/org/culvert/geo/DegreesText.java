package org.culvert.geo;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A latitude and a longitude written in one text, in the notations that receivers and maps use.
 *
 * <p>Each coordinate has one to three numbers (degrees, minutes, seconds), of which only the last may have decimals, and a
 * hemisphere letter before or after, or a sign. With letters the order is free; without, latitude comes first.
 */
record DegreesText(double latitude, double longitude, double unitDegrees, GivenAs givenAs) {
    private static final String FIELD = "verbatimCoordinates";
    private static final String RIGHT = "a latitude and a longitude such as 33\u00b052'07.7\"S 151\u00b012'33.5\"E, "
            + "S 33 52.128 E 151 12.558 or -33.8688, 151.2093";
    private static final int LONGEST = 100;
    private static final Pattern TOKEN = Pattern.compile(
            "\\s*(?:([+-]?\\d+(?:\\.\\d+)?)|([NSEW])(?:ORTH|OUTH|AST|EST)?(?![A-Z])|([\u00b0'\":DM]|[,;/]))");

    private record Item(String text, Kind kind) {}

    private enum Kind {
        NUMBER,
        LETTER,
        UNIT,
        SEPARATOR
    }

    /** One coordinate: its numbers as written and its letter, or a blank. */
    private record Half(List<String> numbers, char letter) {}

    static DegreesText read(String text) {
        List<Item> items = itemsOf(text);
        List<Half> halves = halvesOf(items);
        Half first = halves.get(0);
        Half second = halves.get(1);
        boolean longitudeFirst = isEastWest(first.letter);
        if (first.letter != ' ' && longitudeFirst == isEastWest(second.letter)) {
            throw wrong(
                    "both coordinates have a letter of the same axis (" + first.letter + " and " + second.letter + ")");
        }
        Half latitude = longitudeFirst ? second : first;
        Half longitude = longitudeFirst ? first : second;
        double unit = Math.min(unitDegrees(latitude), unitDegrees(longitude));
        int parts = Math.max(latitude.numbers.size(), longitude.numbers.size());
        GivenAs givenAs = switch (parts) {
            case 1 -> GivenAs.DECIMAL_DEGREES;
            case 2 -> GivenAs.DEGREES_DECIMAL_MINUTES;
            default -> GivenAs.DEGREES_MINUTES_SECONDS;
        };
        return new DegreesText(degrees(latitude), degrees(longitude), unit, givenAs);
    }

    private static List<Item> itemsOf(String text) {
        if (text.length() > LONGEST) {
            throw wrong("the text is longer than " + LONGEST + " characters");
        }
        String plain = text.toUpperCase(Locale.ROOT)
                .replaceAll("[\u2032\u2019\u02b9\u00b4`]{2}|''|[\u2033\u201d\u201c]", "\"")
                .replaceAll("[\u2032\u2019\u02b9\u00b4`\u2018]", "'")
                .replaceAll("[\u00ba\u02da]|DEG(?:REES?)?", "\u00b0")
                .replaceAll("MIN(?:UTES?)?", "'")
                .replaceAll("SEC(?:ONDS?)?", "\"")
                .replaceAll("LAT(?:ITUDE)?[:=]?|LON(?:G(?:ITUDE)?)?[:=]?", " ")
                .replace('\u2212', '-')
                .trim();
        List<Item> items = new ArrayList<>();
        Matcher token = TOKEN.matcher(plain);
        int at = 0;
        while (at < plain.length()) {
            token.region(at, plain.length());
            if (!token.lookingAt()) {
                throw wrong("\"" + plain.substring(at) + "\" is not understood");
            }
            if (token.group(1) != null) {
                items.add(new Item(token.group(1), Kind.NUMBER));
            } else if (token.group(2) != null) {
                items.add(new Item(token.group(2), Kind.LETTER));
            } else {
                boolean separator = ",;/".contains(token.group(3));
                items.add(new Item(token.group(3), separator ? Kind.SEPARATOR : Kind.UNIT));
            }
            at = token.end();
        }
        if (items.isEmpty()) {
            throw wrong("there are no coordinates in the text");
        }
        return items;
    }

    private static List<Half> halvesOf(List<Item> items) {
        long letters = items.stream().filter(item -> item.kind == Kind.LETTER).count();
        if (letters == 2) {
            return lettered(items);
        }
        if (letters != 0) {
            throw wrong(letters == 1 ? "only one of the coordinates has a letter" : "there are more than two letters");
        }
        return unlettered(items);
    }

    private static List<Half> lettered(List<Item> items) {
        boolean before = items.get(0).kind == Kind.LETTER;
        List<Half> halves = new ArrayList<>();
        List<String> numbers = new ArrayList<>();
        char letter = ' ';
        for (Item item : items) {
            if (item.kind == Kind.NUMBER) {
                numbers.add(item.text);
            } else if (item.kind == Kind.LETTER) {
                if (before) {
                    if (letter != ' ') {
                        halves.add(new Half(List.copyOf(numbers), letter));
                        numbers.clear();
                    }
                    letter = item.text.charAt(0);
                } else {
                    halves.add(new Half(List.copyOf(numbers), item.text.charAt(0)));
                    numbers.clear();
                }
            }
        }
        if (before) {
            halves.add(new Half(List.copyOf(numbers), letter));
        } else if (!numbers.isEmpty()) {
            throw wrong("a number stands after the last letter");
        }
        return halves;
    }

    private static List<Half> unlettered(List<Item> items) {
        List<String> numbers = new ArrayList<>();
        int split = -1;
        for (Item item : items) {
            if (item.kind == Kind.NUMBER) {
                numbers.add(item.text);
            } else if (item.kind == Kind.SEPARATOR) {
                if (split >= 0) {
                    throw wrong("there is more than one comma; use a point as decimal mark");
                }
                split = numbers.size();
            }
        }
        if (split < 0) {
            if (numbers.size() % 2 != 0) {
                throw wrong("the numbers cannot be shared out between a latitude and a longitude");
            }
            split = numbers.size() / 2;
        }
        return List.of(
                new Half(List.copyOf(numbers.subList(0, split)), ' '),
                new Half(List.copyOf(numbers.subList(split, numbers.size())), ' '));
    }

    private static double degrees(Half half) {
        List<String> numbers = half.numbers;
        if (numbers.isEmpty() || numbers.size() > 3) {
            throw wrong(
                    "a coordinate needs one to three numbers, degrees, minutes and seconds, and has " + numbers.size());
        }
        boolean signed = numbers.get(0).startsWith("-") || numbers.get(0).startsWith("+");
        if (signed && half.letter != ' ') {
            throw wrong("a coordinate has both a sign and a letter");
        }
        double degrees = 0;
        double scale = 1;
        for (int i = 0; i < numbers.size(); i++) {
            String number = numbers.get(i);
            if (i > 0 && (number.startsWith("-") || number.startsWith("+"))) {
                throw wrong("minutes and seconds have no sign of their own");
            }
            if (i < numbers.size() - 1 && number.indexOf('.') >= 0) {
                throw wrong("only the last number of a coordinate can have decimals");
            }
            double value = Math.abs(Double.parseDouble(number));
            if (i > 0 && value >= 60) {
                throw wrong((i == 1 ? "minutes" : "seconds") + " of " + number + " are not under 60");
            }
            degrees += value * scale;
            scale /= 60;
        }
        boolean negative = numbers.get(0).startsWith("-") || half.letter == 'S' || half.letter == 'W';
        return negative ? -degrees : degrees;
    }

    private static double unitDegrees(Half half) {
        if (half.numbers.isEmpty()) {
            return 1;
        }
        String last = half.numbers.get(half.numbers.size() - 1);
        int decimals = Math.max(0, new BigDecimal(last).scale());
        return Math.pow(60, 1 - half.numbers.size()) * Math.pow(10, -decimals);
    }

    private static boolean isEastWest(char letter) {
        return letter == 'E' || letter == 'W';
    }

    private static CoordinateException wrong(String what) {
        return new CoordinateException(FIELD, what, RIGHT, null);
    }
}
