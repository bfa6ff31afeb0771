package org.culvert.web.forms;

import java.util.List;
import org.culvert.platform.InvalidException.FieldError;

/**
 * A field of a form, with what was typed into it and what is wrong with that.
 *
 * @param id its own on the page
 * @param hint empty where the label says it all
 * @param options of a choice, none else
 * @param values what was typed or chosen
 */
public record EntryField(
        String name,
        String id,
        Kind kind,
        String label,
        String hint,
        boolean needed,
        List<Option> options,
        List<String> values,
        List<FieldError> wrong) {
    /** How it is typed. */
    public enum Kind {
        text,
        lines,
        /** One a line. */
        list,
        count,
        number,
        day,
        moment,
        choice,
        /** A choice of yes and no, or neither. */
        truth,
        /** Several that can be ticked. */
        ticks,
        file
    }

    /** One of several that can be chosen. */
    public record Option(String value, String words) {}

    public String value() {
        return values.isEmpty() ? "" : values.get(0);
    }

    /** As templates ask for it. */
    public String how() {
        return kind.name();
    }

    public boolean isChosen(Option option) {
        return values.contains(option.value());
    }

    public boolean isWrong() {
        return !wrong.isEmpty();
    }
}
