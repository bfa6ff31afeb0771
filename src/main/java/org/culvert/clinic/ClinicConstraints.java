package org.culvert.clinic;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

@ApplicationScoped
class ClinicConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "a_visit_ends_with_one_discharge", "That visit has been discharged already.",
                "a_visit_ends_after_it_begins", "A visit ends after it begins.");
    }
}
