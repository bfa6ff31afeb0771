package org.culvert.release.holds;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class HoldConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "a_hold_is_cleared_after_it_began", "A hold is cleared after it began.",
                "clearing_a_hold_has_time_name_and_reference",
                        "Clearing a hold has a time, who cleared it and their reference.",
                "who_asked_for_a_hold_is_named", "Somebody asked for this hold, and is to be named.",
                "an_authority_clears_its_holds", "Only the authority that it is held for clears this hold.");
    }
}
