package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

@ApplicationScoped
class CallConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "an_incident_is_joined_into_one_other",
                "That incident is joined to another already; undo that join first.",
                "an_incident_is_not_joined_to_itself",
                "An incident cannot be joined to itself.");
    }
}
