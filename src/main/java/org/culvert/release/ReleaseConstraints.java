package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class ReleaseConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("a_case_is_released_once", "That animal's case ended by a release already."),
                Map.entry("a_test_is_lifted_once", "One test is lifted twice: name it in one permit or one override."),
                Map.entry(
                        "policy_is_the_networks_own",
                        "The network's own rules are policy, and policy is the network's own."),
                Map.entry("a_rule_ends_after_it_begins", "The rule would end before it began."),
                Map.entry("the_assessment_is_of_that_case", "The assessment is of another case."),
                Map.entry("assessments_id_case_id_key", "That assessment is kept already."),
                Map.entry("a_rule_is_about_a_group_or_a_name", "A rule is about a group or about a taxon, not both."),
                Map.entry("a_rule_says_whom_it_means", "The rule does not say whom it means by an adult or an orphan."),
                Map.entry(
                        "a_distance_rule_has_its_distance",
                        "A greatest distance is told with its metres, and nothing else is."),
                Map.entry("an_override_has_a_reason", "Whoever sets a test aside gives a reason."),
                Map.entry(
                        "a_permit_has_number_and_document",
                        "A permit has its number, who issued it, and its document."));
    }
}
