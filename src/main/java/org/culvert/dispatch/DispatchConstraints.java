package org.culvert.dispatch;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class DispatchConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("an_attendance_has_one_lead", "An attendance has one lead."),
                Map.entry("an_attendance_goes_forward", "The times of an attendance run backwards."),
                Map.entry("someone_goes_once_to_an_attendance", "Someone is named twice for this attendance."),
                Map.entry(
                        "gate_rules_one_at_a_time",
                        "Another rule of the gate with this key holds on some of these days."),
                Map.entry("an_override_has_author_and_reason", "Whoever sets the gate aside gives a reason."),
                Map.entry("gate_results_id_incident_id_key", "That answer of the gate is kept already."),
                Map.entry("attendances_gate_result_id_incident_id_fkey", "The gate was asked about another incident."),
                Map.entry(
                        "an_attendance_ends_with_an_outcome",
                        "An attendance ends at a time and with an outcome, or goes on without both."),
                Map.entry(
                        "passed_on_names_the_body", "What was passed on was passed to somebody, and nothing else was."),
                Map.entry(
                        "a_closing_that_passes_on_names_the_body",
                        "What was passed on was passed to somebody, and nothing else was."));
    }
}
