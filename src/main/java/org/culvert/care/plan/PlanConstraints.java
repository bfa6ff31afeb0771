package org.culvert.care.plan;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class PlanConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "one_aftercare_plan_is_in_force_for_a_case",
                        "A plan is in force for that animal already: change it, or end it first."),
                Map.entry("an_aftercare_plan_and_its_case", "A plan is of one case."),
                Map.entry(
                        "ending_an_aftercare_plan_has_time_reason_and_vet",
                        "A plan is ended by a vet, at a time and for a reason."),
                Map.entry("an_aftercare_plan_ends_after_it_was_made", "A plan ends after it was made."),
                Map.entry(
                        "changes_of_a_plan_have_an_order",
                        "Somebody else changed that plan at the same moment: read it again."),
                Map.entry("a_change_of_a_plan_has_its_reason", "A change of a plan has its reason."),
                Map.entry("a_plan_begins_with_day_0", "A plan begins with day 0."),
                Map.entry("an_entry_of_a_task_is_of_the_cases_plan", "That plan is of another animal."),
                Map.entry("a_photograph_of_an_entry_is_of_its_case", "That photograph is of another animal."),
                Map.entry("an_entry_of_a_task_names_it", "An entry of a task, and no other, names its step and day."),
                Map.entry("a_figure_has_its_measure", "A value has its unit."),
                Map.entry("only_a_task_is_skipped", "Only a task is skipped."),
                Map.entry("what_is_skipped_has_no_value", "What was skipped has no value."),
                Map.entry("a_weight_is_told_in_grams", "A weight is more than 0 grams."),
                Map.entry("what_is_no_weight_is_told_in_words", "What was seen is told in words."),
                Map.entry(
                        "withdrawing_a_care_entry_has_time_and_reason",
                        "An entry is taken back at a time and for a reason."),
                Map.entry(
                        "a_task_has_one_entry", "That task has its entry already: correct that one, or take it back."));
    }
}
