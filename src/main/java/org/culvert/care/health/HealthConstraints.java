package org.culvert.care.health;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class HealthConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "an_exposure_is_of_one_person", "An exposure is of one person, a member or somebody outside."),
                Map.entry(
                        "a_guardian_is_of_somebody_outside", "A guardian is named of somebody outside of the roster."),
                Map.entry(
                        "an_exposure_is_whole_or_erased",
                        "An exposure says of which kind it was and whether it was washed, until it is erased whole."),
                Map.entry("only_washing_takes_minutes", "Minutes are told of washing alone."),
                Map.entry("only_a_needle_was_in_an_animal", "Whether it was in the animal is told of a needle alone."),
                Map.entry(
                        "telling_the_health_unit_has_time_unit_and_name",
                        "Telling the public health unit has a time, the unit and who told it."),
                Map.entry(
                        "the_health_unit_is_told_afterwards",
                        "The public health unit is told after somebody was exposed."),
                Map.entry(
                        "closing_an_exposure_has_time_name_and_outcome",
                        "Closing an exposure has a time, whose word it is, and the outcome."),
                Map.entry(
                        "an_exposure_is_closed_once_told",
                        "An exposure is closed once the public health unit has been told."),
                Map.entry(
                        "withdrawing_an_exposure_has_time_and_reason",
                        "Withdrawing an exposure has a time and a reason."),
                Map.entry(
                        "the_animal_of_an_exposure_stays",
                        "The animal of an exposure stays: withdraw this one and enter it of the right animal."),
                Map.entry("a_condition_is_named_once", "That condition is there already for this jurisdiction."),
                Map.entry("a_condition_names_its_jurisdiction", "A jurisdiction is an ISO 3166 code such as AU-VIC."),
                Map.entry("a_condition_is_read_again_later", "A condition is read again after it was read."),
                Map.entry("a_hotline_is_whole", "A hotline has a name, a number, a source and both days."),
                Map.entry("a_hotline_is_read_again_later", "A hotline is looked up again after it was read."),
                Map.entry("a_hold_and_its_case", "That hold is of another case."),
                Map.entry("a_suspicion_has_a_hold_of_its_case", "A suspicion has a hold on its own animal."),
                Map.entry(
                        "telling_of_a_suspicion_has_time_whom_and_name",
                        "Telling of a suspicion has a time, whom, and who told them."),
                Map.entry("a_suspicion_is_told_afterwards", "A suspicion is told after it was seen."),
                Map.entry("a_syndrome_is_named_once", "A syndrome of this name is there already."),
                Map.entry("a_threshold_ends_after_it_begins", "A threshold ends after it begins."),
                Map.entry(
                        "one_threshold_holds_at_a_time",
                        "A syndrome has one threshold at a time: end the one that holds first."),
                Map.entry("a_report_knows_the_animal_of_its_case", "A report is of the animal that its case is of."),
                Map.entry("withdrawing_a_report_has_time_and_reason", "Withdrawing a report has a time and a reason."),
                Map.entry("a_case_has_a_syndrome_once", "That syndrome is reported of this case already."),
                Map.entry("an_alert_goes_on_in_another", "An alert goes on in another, not in itself."),
                Map.entry("going_on_in_another_has_a_time", "That an alert goes on in another has a time."),
                Map.entry("a_report_is_in_one_alert", "That report is in an alert already."));
    }
}
