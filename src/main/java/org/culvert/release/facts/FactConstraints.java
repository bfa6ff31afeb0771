package org.culvert.release.facts;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class FactConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "a_fact_of_distance_has_metres",
                        "A range or a distance from water is told with its metres, and nothing else is.",
                "a_fact_of_activity_has_its_period", "When it is about is told with its period, and nothing else is.",
                "a_fact_ends_after_it_begins", "The fact would end before it began.",
                "a_fact_is_looked_for_again_later", "A fact is looked for again after it was read.");
    }
}
