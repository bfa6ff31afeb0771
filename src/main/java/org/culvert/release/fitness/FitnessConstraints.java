package org.culvert.release.fitness;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class FitnessConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "one_vet_signs_a_check", "One vet signs a check: a member of the network or another by name.",
                "what_is_looked_at_is_known",
                        "A check tells of what is listed, each once at most, in the words listed.");
    }
}
