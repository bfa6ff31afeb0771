package org.culvert.roster;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class RosterConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("organisations_name_is_taken", "Another organisation has this name already."),
                Map.entry("members_call_sign_is_taken", "Another member has this call sign already."),
                Map.entry("members_person_id_key", "Another member is this person already."),
                Map.entry(
                        "authorisations_have_one_holder",
                        "An authorisation has exactly one holder, a member or an organisation."),
                Map.entry("authorisations_end_after_they_begin", "The authorisation would end before it began."),
                Map.entry("vaccinations_end_after_they_begin", "The vaccination would end before it was given."));
    }
}
