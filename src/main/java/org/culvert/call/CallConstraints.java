package org.culvert.call;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class CallConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "an_incident_is_joined_into_one_other",
                        "That incident is joined to another already; undo that join first."),
                Map.entry("an_incident_is_not_joined_to_itself", "An incident cannot be joined to itself."),
                Map.entry("incidents_number_key", "Another incident has this number already."),
                Map.entry(
                        "an_incident_happened_within_its_interval",
                        "The incident would have happened before the instant at which it had certainly not."),
                Map.entry(
                        "undoing_a_join_has_time_author_reason",
                        "A join is undone at a time, by somebody, for a reason."),
                Map.entry("places_on_a_link_say_where", "A place on a road says where along it."),
                Map.entry("a_moved_place_says_where_to", "A place that was moved says where to, and how far."),
                Map.entry("a_failed_move_says_why", "A moving of places that failed says why."),
                Map.entry("a_sentence_is_ticked_once", "This was said, and ticked, already."),
                Map.entry("withdrawing_a_tick_has_time_and_reason", "A tick is withdrawn at a time, for a reason."),
                Map.entry("a_move_ends_once", "A moving of places is done or has failed, not both."));
    }
}
