package org.culvert.web.forms;

import java.util.List;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.forms.FieldShape.Kind;

/**
 * A field of a form, with what was typed into it and what is wrong with that.
 *
 * @param id its own on the page
 * @param hint empty where the label says it all
 * @param options of a choice; of a text, what is offered while it is typed
 * @param values what was typed or chosen
 */
public record EntryField(
        FieldShape shape,
        String id,
        String label,
        String hint,
        List<Option> options,
        List<String> values,
        List<FieldError> wrong) {
    /** One of several that can be chosen. */
    public record Option(String value, String words) {}

    /** As it is sent. */
    public String name() {
        return SentForm.sentAs(shape.name());
    }

    public boolean needed() {
        return shape.needed();
    }

    /** Longest text, 0 where nobody says. */
    public int most() {
        return shape.most();
    }

    public String value() {
        return values.isEmpty() ? "" : values.get(0);
    }

    /** As templates ask for it. */
    public String how() {
        return shape.kind().name();
    }

    /** Whether it is typed in several lines. */
    public boolean isLong() {
        return switch (shape.kind()) {
            case lines, list, counts, table, geometry -> true;
            default -> false;
        };
    }

    /** How many lines are seen. */
    public int rows() {
        return shape.kind() == Kind.table || shape.kind() == Kind.geometry ? 8 : 3;
    }

    public boolean isChosen(Option option) {
        return values.contains(option.value());
    }

    public boolean isWrong() {
        return !wrong.isEmpty();
    }

    /** Whether it is wrong, or something is typed into it. */
    boolean isTouched() {
        return isWrong() || values.stream().anyMatch(text -> !text.isBlank());
    }
}
