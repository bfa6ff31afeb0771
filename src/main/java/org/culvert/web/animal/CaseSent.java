package org.culvert.web.animal;

import java.util.List;
import org.culvert.platform.InvalidException.FieldError;
import org.culvert.web.forms.SentFields;

/**
 * What was sent from a form of a case and not taken, so that it stands there again.
 *
 * @param form what the form is called on its page
 */
record CaseSent(String form, SentFields typed, List<FieldError> errors) {
    static final CaseSent NOTHING = new CaseSent("", SentFields.NOTHING, List.of());

    CaseSent of(String asked) {
        return form.equals(asked) ? this : NOTHING;
    }

    boolean isRefused() {
        return !errors.isEmpty();
    }
}
