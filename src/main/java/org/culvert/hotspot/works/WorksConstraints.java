package org.culvert.hotspot.works;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class WorksConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "works_are_of_a_known_kind", "Works are of one of the kinds that are listed.",
                "works_go_from_a_chainage_to_a_greater_one", "Works go from a chainage to a greater one.",
                "ends_of_works_have_a_length", "What counts as ends is more than 0 m and at most 10,000 m long.",
                "works_are_built_forwards", "Works cannot be finished before they were begun.",
                "works_end_after_they_began", "Works cannot end before they were finished, or before they were begun.");
    }
}
