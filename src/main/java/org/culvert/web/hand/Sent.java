package org.culvert.web.hand;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/**
 * What was sent from a form and not taken, so that it stands there again.
 *
 * @param form what the form is called on its page
 * @param fields what was typed, by field
 */
public record Sent(String form, Map<String, String> fields, List<FieldError> errors) {
    static final Sent NOTHING = new Sent("", Map.of(), List.of());

    /** This, for the form of that name; nothing, for any other. */
    Sent of(String asked) {
        return form.equals(asked) ? this : NOTHING;
    }

    public boolean isRefused() {
        return !errors.isEmpty();
    }

    public String typed(String field) {
        return Objects.requireNonNullElse(fields.get(field), "");
    }

    /** What is wrong with a field, or null. */
    public @Nullable FieldError wrong(String field) {
        return errors.stream()
                .filter(error -> error.field().equals(field))
                .findFirst()
                .orElse(null);
    }
}
