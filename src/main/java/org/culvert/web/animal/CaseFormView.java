package org.culvert.web.animal;

import org.culvert.web.forms.EntryForm;
import org.jspecify.annotations.Nullable;

/**
 * A form of a case as its page shows it.
 *
 * @param keyEnd what its key ends with, so that each form of the page has its own
 * @param caution what is to be minded before anything is entered
 * @param open whether it is to be seen at once
 */
public record CaseFormView(
        EntryForm form,
        String keyEnd,
        String action,
        String title,
        String send,
        @Nullable String caution,
        boolean open) {
    public String id() {
        return "form-" + form.name();
    }
}
