package org.culvert.web.animal;

import java.util.List;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/**
 * A form of a case as its page shows it.
 *
 * @param keyEnd what its key ends with, so that each form of the page has its own
 * @param caution what is to be minded before anything is entered
 * @param open whether it is to be seen at once
 * @param more fields that are rarely needed
 * @param moreOpen whether something was typed into those
 * @param errors those that belong to none of its fields
 */
public record CaseFormView(
        String id,
        String keyEnd,
        String action,
        String title,
        String send,
        @Nullable String caution,
        boolean open,
        List<Field> fields,
        List<Field> more,
        boolean moreOpen,
        List<FieldError> errors) {

    /** @param hint what to type, empty where the label says it all */
    public record Field(
            String path,
            String id,
            String label,
            String hint,
            String kind,
            boolean needed,
            String value,
            List<Option> options,
            @Nullable FieldError wrong) {}

    public record Option(String value, String words) {}
}
