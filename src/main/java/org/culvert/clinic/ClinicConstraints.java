package org.culvert.clinic;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class ClinicConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("a_visit_ends_with_one_discharge", "That visit has been discharged already."),
                Map.entry("a_patient_is_stable_after_it_came", "An animal is stable after it came."),
                Map.entry("a_visit_ends_after_it_begins", "A visit ends after it begins."),
                Map.entry("body_condition_is_one_of_five", "Body condition goes from 1 (emaciated) to 5 (fat)."),
                Map.entry(
                        "parts_of_a_body_have_an_order",
                        "Another part of the body has that place in the list already."),
                Map.entry(
                        "a_paired_part_and_no_other_has_its_side",
                        "A part of which there are two says which one, and no other part has a side."),
                Map.entry("a_drug_order_ends_after_it_began", "A drug order ends after it began."),
                Map.entry(
                        "withdrawing_a_drug_order_has_time_and_reason",
                        "A drug order is withdrawn with a time and a reason."),
                Map.entry(
                        "a_drug_order_and_whether_it_is_controlled",
                        "There is a drug order with this identifier already."),
                Map.entry(
                        "a_controlled_drug_has_batch_and_expiry",
                        "Each use of a controlled drug is recorded with its batch and expiry."),
                Map.entry(
                        "withdrawing_a_drug_use_has_time_and_reason",
                        "That a drug was given is taken back with a time and a reason."));
    }
}
