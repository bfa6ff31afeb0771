package org.culvert.care;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class CareConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "custody_of_a_clutch_never_overlaps",
                        "Someone else answers for that clutch at that time already; custody never overlaps."),
                Map.entry(
                        "every_egg_is_accounted_for",
                        "The eggs do not add up: recovered = set to incubate + broken + discarded."),
                Map.entry("no_more_hatch_than_were_set", "More hatchlings than eggs were set in this clutch."),
                Map.entry("one_holder_answers_for_a_clutch", "Exactly one holder answers for a clutch."),
                Map.entry("custody_of_a_clutch_lasts", "Custody of a clutch ends after it begins."));
    }
}
