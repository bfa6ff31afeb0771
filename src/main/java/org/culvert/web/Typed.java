package org.culvert.web;

import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/** What people typed into a form. */
public final class Typed {
    private static final int LONGEST_SHOWN = 200;

    private Typed() {}

    /** Without the spaces around it; null where nothing was typed. */
    public static @Nullable String given(@Nullable String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }

    /** Says that it cannot be read, as far as it is short enough to be said again. */
    public static String unreadable(String given) {
        return "This cannot be read: "
                + (given.length() <= LONGEST_SHOWN
                        ? given
                        : given.substring(0, LONGEST_SHOWN).strip() + " …")
                + ".";
    }

    /**
     * What was typed as something else; null where nothing was typed, or where it cannot be read.
     *
     * @param errors gets the field and what would be right where it cannot
     */
    public static <T> @Nullable T read(
            String field, @Nullable String text, Function<String, T> reader, String wanted, List<FieldError> errors) {
        String given = given(text);
        if (given == null) {
            return null;
        }
        try {
            return reader.apply(given);
        } catch (IllegalArgumentException | DateTimeException e) {
            errors.add(new FieldError(field, unreadable(given), wanted, null));
            return null;
        }
    }

    /** The months to tick, with their names. */
    static List<RunForm.MonthBox> monthBoxes(@Nullable List<String> ticked) {
        List<RunForm.MonthBox> boxes = new ArrayList<>();
        for (int month = 1; month <= 12; month++) {
            boxes.add(new RunForm.MonthBox(
                    month, ReportPage.monthName(month), ticked != null && ticked.contains(Integer.toString(month))));
        }
        return boxes;
    }
}
