package org.culvert.exchange.reading;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Hours of a day as people write them: {@code 14:30}, {@code 14.30}, {@code 14h30}, {@code 2.30pm}, {@code 2 pm}, and in a column
 * of their own {@code 1430}, {@code 930}, {@code 1430 hrs} and the fraction of a day that spreadsheets keep.
 */
public final class Hours {
    /** @param offset from UTC where one is told */
    public record Told(LocalTime time, @Nullable ZoneOffset offset) {}

    private static final Pattern WRITTEN = Pattern.compile(
            "(\\d{1,2})(?:[:.h]\\s?(\\d{2})(?:[:.](\\d{2})(?:[.,]\\d+)?)?)?"
                    + "\\s*([aApP]\\.?\\s?[mM]\\.?)?\\s*(?:(Z)|([+-]\\d{2}):?(\\d{2})?)?\\s*(h|hrs?\\.?|hours|Uhr|uhr|heures)?");
    private static final Pattern FIGURES = Pattern.compile("([01]\\d|2[0-3])([0-5]\\d)\\s*(?:h|hrs?\\.?|hours)?");
    /** Figures of which a spreadsheet took the nought in front. */
    private static final Pattern THREE = Pattern.compile("[1-9][0-5]\\d");

    private static final Pattern FRACTION = Pattern.compile("0?[.,]\\d{3,}");
    private static final int LONGEST = 24;
    private static final double SECONDS_A_DAY = 86_400;

    private Hours() {}

    /** The hour that a text behind a day tells, or null. */
    static @Nullable Told read(String text) {
        int n = text.length();
        if (n >= 4 && n <= 8) {
            Told plain = plain(text, n);
            if (plain != null) {
                return plain;
            }
        }
        if (n == 0 || n > LONGEST || text.charAt(0) < '0' || text.charAt(0) > '9') {
            return null;
        }
        char behind = text.charAt(Math.min(n - 1, n > 1 && text.charAt(1) >= '0' && text.charAt(1) <= '9' ? 2 : 1));
        if (":.h aApP".indexOf(behind) < 0) {
            return null;
        }
        Matcher written = WRITTEN.matcher(text);
        if (!written.matches() || written.group(2) == null && written.group(4) == null && written.group(8) == null) {
            return null;
        }
        try {
            int hour = Integer.parseInt(written.group(1));
            String half = written.group(4);
            if (half != null) {
                if (hour < 1 || hour > 12) {
                    return null;
                }
                hour = hour % 12 + (Character.toLowerCase(half.charAt(0)) == 'p' ? 12 : 0);
            }
            var time = LocalTime.of(hour, number(written.group(2)), number(written.group(3)));
            ZoneOffset offset = written.group(5) != null
                    ? ZoneOffset.UTC
                    : written.group(6) == null
                            ? null
                            : ZoneOffset.of(
                                    written.group(6) + ':' + (written.group(7) == null ? "00" : written.group(7)));
            return new Told(time, offset);
        } catch (DateTimeException noSuchHour) {
            return null;
        }
    }

    /** The hour that a cell of a column of hours tells, or null. */
    static @Nullable Told readAlone(String text) {
        Told told = read(text);
        if (told != null) {
            return told;
        }
        if (text.length() == 3 && THREE.matcher(text).matches()) {
            return new Told(LocalTime.of(text.charAt(0) - '0', number(text.substring(1))), null);
        }
        if (text.length() < 4 || text.length() > LONGEST) {
            return null;
        }
        Matcher figures = FIGURES.matcher(text);
        if (text.charAt(0) <= '2' && text.charAt(3) >= '0' && text.charAt(3) <= '9' && figures.matches()) {
            return new Told(LocalTime.of(number(figures.group(1)), number(figures.group(2))), null);
        }
        if ("0.,".indexOf(text.charAt(0)) >= 0 && FRACTION.matcher(text).matches()) {
            double day = Double.parseDouble(text.replace(',', '.'));
            long second = Math.round(day * SECONDS_A_DAY);
            return second < SECONDS_A_DAY ? new Told(LocalTime.ofSecondOfDay(second), null) : null;
        }
        return null;
    }

    /** {@code H:mm} and {@code H:mm:ss} alone, or null. */
    private static @Nullable Told plain(String text, int n) {
        int first = text.indexOf(':');
        if (first < 1 || first > 2 || n != first + 3 && n != first + 6) {
            return null;
        }
        int hour = two(text, 0, first);
        int minute = two(text, first + 1, first + 3);
        int second = n == first + 3 ? 0 : text.charAt(first + 3) == ':' ? two(text, first + 4, first + 6) : -1;
        return hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59
                ? null
                : new Told(LocalTime.of(hour, minute, second), null);
    }

    private static int two(String text, int from, int to) {
        int number = 0;
        for (int i = from; i < to; i++) {
            char c = text.charAt(i);
            if (c < '0' || c > '9') {
                return -1;
            }
            number = number * 10 + c - '0';
        }
        return number;
    }

    private static int number(@Nullable String figures) {
        return figures == null ? 0 : Integer.parseInt(figures);
    }
}
