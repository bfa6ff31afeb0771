package org.culvert.release.nonrelease;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class NonReleaseConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "one_non_release_decision_stands_for_a_case",
                        "A decision not to release that animal stands already: withdraw it first, with a reason."),
                Map.entry("a_non_release_decision_and_its_time", "A decision was made at one time."),
                Map.entry("a_non_release_decision_has_its_grounds", "A decision not to release has its grounds."),
                Map.entry("a_welfare_review_is_due_after_the_decision", "A welfare review is due after the decision."),
                Map.entry(
                        "withdrawing_a_non_release_decision_has_time_and_reason",
                        "A decision is withdrawn at a time and for a reason."),
                Map.entry(
                        "a_second_opinion_is_anothers",
                        "A second opinion is given by another vet than the one who decided, with another name and another"
                                + " registration."),
                Map.entry(
                        "withdrawing_a_second_opinion_has_time_and_reason",
                        "A second opinion is taken back at a time and for a reason."),
                Map.entry(
                        "withdrawing_an_authority_notice_has_time_and_reason",
                        "A notice is taken back at a time and for a reason."),
                Map.entry("a_file_is_one_permit", "That file is a permit already."),
                Map.entry("a_permit_to_keep_and_its_decision", "A permit to keep is of one decision."),
                Map.entry("a_permit_to_keep_ends_after_it_begins", "The permit would end before it began."),
                Map.entry(
                        "withdrawing_a_permit_to_keep_has_time_and_reason",
                        "A permit is taken back at a time and for a reason."),
                Map.entry("a_welfare_review_is_of_a_decision_at_its_time", "The decision was made at another time."),
                Map.entry("a_welfare_review_comes_after_the_decision", "A welfare review is held after the decision."),
                Map.entry("the_next_welfare_review_comes_later", "The next welfare review comes after this one."),
                Map.entry(
                        "withdrawing_a_welfare_review_has_time_and_reason",
                        "A welfare review is taken back at a time and for a reason."),
                Map.entry(
                        "one_outcome_of_a_decision_stands",
                        "What is to become of that animal is recorded already: take that back first, with a reason."),
                Map.entry("an_outcome_names_a_permit_of_its_decision", "That is no permit to keep of this decision."),
                Map.entry("a_placement_is_with_somebody", "A placement, and nothing else, says with whom."),
                Map.entry("only_a_placement_has_a_permit", "Only a placement names a permit to keep."),
                Map.entry("euthanasia_has_its_approver", "Euthanasia is approved by somebody."),
                Map.entry(
                        "withdrawing_an_outcome_has_time_and_reason",
                        "An outcome is taken back at a time and for a reason."));
    }
}
