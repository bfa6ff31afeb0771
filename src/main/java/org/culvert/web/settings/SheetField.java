package org.culvert.web.settings;

import java.util.List;
import org.culvert.platform.InvalidException.FieldError;

/**
 * A field of a form of a sheet, with what was typed into it and what is wrong with that.
 *
 * @param label name of its label
 * @param kind how it is typed
 * @param hint name of its hint, empty where it has none
 * @param columns of a table, what each part of a line is
 * @param most longest text, 0 where nobody says
 */
public record SheetField(
        String name,
        String id,
        String label,
        String kind,
        boolean needed,
        String value,
        List<Choice> choices,
        String hint,
        List<String> columns,
        int most,
        List<FieldError> wrong) {
    /**
     * @param word name of its words in the bundle; empty where {@code words} says it
     * @param words of a thing that has a name of its own
     */
    public record Choice(String value, String word, String words, boolean chosen) {}
}
