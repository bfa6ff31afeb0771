package org.culvert.exchange.reading;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Distances along a road as people write them within words: {@code 12.4 km}, {@code KM 12+400}, {@code 10K}, {@code Ch 12400},
 * {@code 3.2 km past the bridge}, {@code MP 12.3}. A number that nothing marks as a chainage is none: it may be of a house.
 */
public final class Chainages {
    /**
     * A distance along a road.
     *
     * @param kilometres as told
     * @param stepKilometres the step in which it is told: 1 for whole kilometres, 0.1 for one decimal
     * @param rest what is left of the words, such as the name of the road
     */
    public record Told(BigDecimal kilometres, BigDecimal stepKilometres, String rest) {}

    private static final String NUMBER = "(\\d{1,4}(?:[.,]\\d{1,3})?)";
    private static final Pattern WITH_PLUS = Pattern.compile(
            "(?i)(?:\\b(?:km|k|ch|chainage|sta|pk|pr)\\.?\\s*)?\\b(\\d{1,4})\\s*\\+\\s*(\\d{3})(?:[.,](\\d+))?\\s*(?:m\\b)?");
    private static final Pattern METRES =
            Pattern.compile("(?i)\\b(?:ch|chainage)\\.?\\s*:?\\s*(\\d{3,6})\\s*m?\\b(?![.,]\\d)");
    private static final Pattern BEFORE = Pattern.compile(
            "(?i)\\b(?:km|kms|kilomet(?:er|re)s?|kp|pk|pr|ch|chainage)\\.?\\s*:?\\s*" + NUMBER + "(?![\\d+])");
    private static final Pattern BEHIND = Pattern.compile(
            "(?i)(?<![\\d.,])" + NUMBER + "\\s*(?:kms?|kilomet(?:er|re)s?|k)(?![a-z0-9/])(?!\\s*/?\\s*h\\b)");

    private static final Pattern MILES =
            Pattern.compile("(?i)\\b(?:mp|mm|milepost|mile\\s+post|mile\\s+marker|mile)\\.?\\s*:?\\s*" + NUMBER
                    + "(?![\\d+])|(?<![\\d.,])" + NUMBER + "\\s*(?:mi|miles?)(?![a-z0-9/])(?!\\s*/?\\s*h\\b)");

    /** The international mile, 1.609344 km exactly (from memory). */
    private static final BigDecimal MILE = new BigDecimal("1.609344");

    private Chainages() {}

    /** The chainage that some words tell, or empty where they tell none, or two that are not the same. */
    public static Optional<Told> read(String words) {
        String text = Missing.strip(words);
        if (!hasFigure(text)) {
            return Optional.empty();
        }
        Matcher plus = WITH_PLUS.matcher(text);
        if (plus.find()) {
            var metres = new BigDecimal(plus.group(2));
            var told = new Told(
                    new BigDecimal(plus.group(1)).add(metres.movePointLeft(3)),
                    metres.remainder(BigDecimal.valueOf(100)).signum() == 0
                            ? new BigDecimal("0.1")
                            : new BigDecimal("0.001"),
                    rest(text, plus));
            return alone(plus, told);
        }
        Matcher metres = METRES.matcher(text);
        if (metres.find()) {
            var told = new Told(
                    new BigDecimal(metres.group(1)).movePointLeft(3), new BigDecimal("0.001"), rest(text, metres));
            return alone(metres, told);
        }
        for (Pattern pattern : new Pattern[] {BEFORE, BEHIND}) {
            Matcher one = pattern.matcher(text);
            if (one.find()) {
                BigDecimal kilometres = new BigDecimal(one.group(1).replace(',', '.'));
                var told = new Told(kilometres, BigDecimal.ONE.movePointLeft(kilometres.scale()), rest(text, one));
                return alone(one, told);
            }
        }
        Matcher miles = MILES.matcher(text);
        if (miles.find()) {
            var number = new BigDecimal((miles.group(1) == null ? miles.group(2) : miles.group(1)).replace(',', '.'));
            var told = new Told(
                    number.multiply(MILE),
                    BigDecimal.ONE.movePointLeft(number.scale()).multiply(MILE),
                    rest(text, miles));
            return alone(miles, told);
        }
        return Optional.empty();
    }

    private static boolean hasFigure(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) >= '0' && text.charAt(i) <= '9') {
                return true;
            }
        }
        return false;
    }

    /** Two chainages in one text are a stretch, and no place. */
    private static Optional<Told> alone(Matcher found, Told told) {
        String first = found.group();
        while (found.find()) {
            if (!found.group().toLowerCase(Locale.ROOT).equals(first.toLowerCase(Locale.ROOT))) {
                return Optional.empty();
            }
        }
        return Optional.of(told);
    }

    private static String rest(String text, Matcher found) {
        String left = text.substring(0, found.start()) + ' ' + text.substring(found.end());
        return Missing.strip(left.replaceAll("\\s+", " ").replaceAll("^[\\s,;:@-]+|[\\s,;:@-]+$", ""));
    }
}
