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
                Map.entry(
                        "a_rule_of_days_has_its_days",
                        "A greatest number of days is told with its days, and nothing else is."),
                Map.entry(
                        "only_policy_asks_a_second_person",
                        "Only the network's own policy is set aside by a person, so only it can ask for a second one."),
                Map.entry("only_an_override_is_agreed_to", "A permit needs nobody else to agree."),
                Map.entry("the_second_person_is_another", "The second person is another than who sets the test aside."),
                Map.entry("an_override_has_a_reason", "Whoever sets a test aside gives a reason."),
                Map.entry(
                        "a_permit_has_number_and_document",
                        "A permit has its number, who issued it, and its document."),
                Map.entry(
                        "only_a_soft_release_has_support_feeding",
                        "Only a soft release has support feeding: take its days away first, or leave it soft."),
                Map.entry(
                        "ending_support_feeding_has_time_and_name",
                        "The end of support feeding is told with its time and who ended it."),
                Map.entry("support_feeding_ends_after_the_release", "Support feeding ends after the release."),
                Map.entry("a_file_is_one_photograph", "That file is a photograph already."),
                Map.entry(
                        "withdrawing_a_photograph_has_time_and_reason",
                        "A photograph is taken back at a time and for a reason."),
                Map.entry("a_release_and_its_time", "A release happened at one time."),
                Map.entry("an_animal_is_once_in_a_release", "An animal is in a release once."),
                Map.entry("a_case_and_its_animal", "A case is of one animal."),
                Map.entry("a_sighting_is_of_a_release_at_its_time", "The release happened at another time."),
                Map.entry("a_sighting_comes_after_the_release", "An animal is seen after it was let go."),
                Map.entry("a_sighting_is_of_an_animal_of_the_release", "The animal of that case was not let go then."),
                Map.entry("a_sighting_knows_the_animal_of_its_case", "That case is of another animal."),
                Map.entry("a_sighting_names_case_and_animal_or_neither", "A sighting names a case with its animal."),
                Map.entry("who_comes_in_again_is_the_same_animal", "The new case is of another animal."),
                Map.entry(
                        "who_comes_in_again_has_another_case",
                        "Who comes in again has a case of its own, and is known by the one before."),
                Map.entry(
                        "a_sighting_has_its_whole_place_or_none",
                        "A place is told with latitude, longitude and uncertainty."),
                Map.entry("an_incident_is_named_of_a_death", "An incident is named of an animal that was found dead."),
                Map.entry(
                        "withdrawing_a_sighting_has_time_and_reason",
                        "A sighting is taken back at a time and for a reason."));
    }
}
