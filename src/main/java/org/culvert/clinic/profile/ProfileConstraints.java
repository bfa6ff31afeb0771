package org.culvert.clinic.profile;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class ProfileConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of("a_clinic_has_one_profile", "That clinic has its profile already: correct that one.");
    }
}
