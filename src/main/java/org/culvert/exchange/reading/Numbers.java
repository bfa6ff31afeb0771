package org.culvert.exchange.reading;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Numbers with a point or a comma before the decimals, and with or without marks between the thousands.
 *
 * <p>Which of the two a column has is told by all its cells together: {@code 1,234} alone may be either.
 */
public final class Numbers {
    /** What stands before the decimals. */
    public enum Mark {
        point,
        comma
    }

    private static final String BLANK = " \u00a0\u202f\u2009'’";
    private static final Pattern WITH_POINT =
            Pattern.compile("[+\\-−]?(\\d+|\\d{1,3}([," + BLANK + "]\\d{3})+)?(\\.\\d*)?");
    private static final Pattern WITH_COMMA =
            Pattern.compile("[+\\-−]?(\\d+|\\d{1,3}([." + BLANK + "]\\d{3})+)?(,\\d*)?");

    private static final Set<Mark> NONE = Collections.unmodifiableSet(EnumSet.noneOf(Mark.class));
    private static final Set<Mark> POINT = Collections.unmodifiableSet(EnumSet.of(Mark.point));
    private static final Set<Mark> COMMA = Collections.unmodifiableSet(EnumSet.of(Mark.comma));
    private static final Set<Mark> BOTH = Collections.unmodifiableSet(EnumSet.allOf(Mark.class));
    private static final int LONGEST = 40;

    private Numbers() {}

    /** The marks with which a cell is a number; both where it does not tell, none where it is no number. */
    public static Set<Mark> marksOf(String cell) {
        String text = Missing.strip(cell);
        if (text.length() > LONGEST || !mayBe(text)) {
            return NONE;
        }
        boolean point = normal(text, Mark.point) != null;
        boolean comma = normal(text, Mark.comma) != null;
        return point ? comma ? BOTH : POINT : comma ? COMMA : NONE;
    }

    /** The number of a cell, or empty where it is none with this mark. */
    public static Optional<BigDecimal> read(String cell, Mark mark) {
        return Optional.ofNullable(normal(Missing.strip(cell), mark)).map(BigDecimal::new);
    }

    /**
     * A number with a point before its decimals, without marks between its thousands, and with all its figures; null where it is
     * none with this mark.
     */
    static @Nullable String normal(String text, Mark mark) {
        int n = text.length();
        if (n == 0 || n > LONGEST) {
            return null;
        }
        char decimal = mark == Mark.point ? '.' : ',';
        int figures = 0;
        int marks = 0;
        boolean plain = true;
        for (int i = 0; i < n; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                figures++;
            } else if (c == decimal) {
                marks++;
            } else if (i > 0 || c != '-') {
                plain = false;
                break;
            }
        }
        if (plain && marks <= 1 && figures > 0) {
            return marks == 1 && decimal == ',' ? text.replace(',', '.') : text;
        }
        return plain ? null : unusual(text, mark);
    }

    private static @Nullable String unusual(String text, Mark mark) {
        int thousands = text.lastIndexOf(mark == Mark.point ? ',' : '.');
        if (thousands >= 0
                && text.length() != thousands + 4
                && (text.length() < thousands + 4 || text.charAt(thousands + 4) != (mark == Mark.point ? '.' : ','))) {
            return null;
        }
        Matcher whole = (mark == Mark.point ? WITH_POINT : WITH_COMMA).matcher(text);
        if (!whole.matches()) {
            return null;
        }
        var plain = new StringBuilder();
        boolean any = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                plain.append(c);
                any = true;
            } else if (c == '-' || c == '−') {
                plain.append('-');
            } else if (c == (mark == Mark.point ? '.' : ',')) {
                plain.append('.');
            }
        }
        return any ? plain.toString() : null;
    }

    /** A number that may be degrees, in which no thousands are marked: either mark stands before the decimals. */
    static double degrees(String text) {
        String plain = normal(text, Mark.point);
        if (plain == null || text.indexOf(',') >= 0) {
            plain = normal(text, Mark.comma);
        }
        return plain == null ? Double.NaN : Double.parseDouble(plain);
    }

    private static boolean mayBe(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c >= 'A' && c < 0x80 || c == ':' || c == '/') {
                return false;
            }
        }
        return true;
    }
}
