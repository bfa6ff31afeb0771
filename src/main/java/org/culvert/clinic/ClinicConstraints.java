package org.culvert.clinic;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class ClinicConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("a_visit_ends_with_one_discharge", "That visit has been discharged already."),
                Map.entry("a_visit_ends_after_it_begins", "A visit ends after it begins."));
    }
}
