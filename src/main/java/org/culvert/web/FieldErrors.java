package org.culvert.web;

import io.quarkus.qute.TemplateExtension;
import java.util.List;
import org.culvert.platform.InvalidException.FieldError;

/** What is wrong with one field, among all that is: {@code errors.wrongAt('road')} in a template. */
@TemplateExtension
final class FieldErrors {
    private FieldErrors() {}

    static List<FieldError> wrongAt(List<FieldError> errors, String field) {
        return errors.stream().filter(error -> error.field().equals(field)).toList();
    }
}
