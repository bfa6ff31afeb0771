package org.culvert.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

@ApplicationScoped
class DispatchConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "an_attendance_has_one_lead",
                "An attendance has one lead.",
                "an_attendance_goes_forward",
                "The times of an attendance run backwards.",
                "someone_goes_once_to_an_attendance",
                "Someone is named twice for this attendance.");
    }
}
