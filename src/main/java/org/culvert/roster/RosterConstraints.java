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
                Map.entry(
                        "one_vaccination_rule_begins_on_a_day",
                        "Another rule for that begins on that day already: choose a later day."),
                Map.entry(
                        "a_vaccination_rule_is_reviewed_after_it_was_read",
                        "A rule is looked at again after it was read."),
                Map.entry("antibodies_are_none_or_more", "There are no antibodies, or some."),
                Map.entry("an_antibody_test_has_a_figure", "A test for antibodies has a figure, and nothing else has."),
                Map.entry("what_covers_no_day_is_a_test", "Only a test may show no protection."),
                Map.entry("vaccinations_end_after_they_begin", "The vaccination would end before it was given."));
    }
}
