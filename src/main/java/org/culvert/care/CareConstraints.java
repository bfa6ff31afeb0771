package org.culvert.care;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

@ApplicationScoped
class CareConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "custody_of_a_clutch_never_overlaps",
                "Someone else answers for that clutch at that time already; custody never overlaps.",
                "every_egg_is_accounted_for",
                "The eggs do not add up: recovered = set to incubate + broken + discarded.",
                "no_more_hatch_than_were_set",
                "More hatchlings than eggs were set in this clutch.");
    }
}
