package org.culvert.care.placement;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class PlacementConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("placements_hand_over_id_key", "That hand-over belongs to another placement already."),
                Map.entry(
                        "a_place_is_filled_once",
                        "Somebody has filled the last place of this carer meanwhile: ask again who can take the animal."),
                Map.entry(
                        "passing_over_a_rule_has_a_reason",
                        "A rule of the network speaks against it; say why it is done all the same."),
                Map.entry(
                        "approving_a_proposal_has_time_and_name",
                        "Approving a proposal has a time and a name, or is not yet."),
                Map.entry("an_animal_is_proposed_once", "An animal is proposed once."),
                Map.entry("what_is_placed_has_a_carer", "What is placed has a carer."),
                Map.entry(
                        "together_is_with_another_animal",
                        "What is kept together names another animal, and what goes alone does not."),
                Map.entry("nobody_is_kept_with_themselves", "Another animal is kept with it, not itself."),
                Map.entry("two_are_told_to_be_together_once", "These two are told to be kept together already."),
                Map.entry("one_is_told_to_go_alone_once", "That animal is told to go alone already."),
                Map.entry(
                        "withdrawing_a_keeping_tie_has_time_and_reason",
                        "Withdrawing a tie has a time and a reason, or is not yet."),
                Map.entry("supervision_ends_after_it_begins", "Supervision ends on or after the day it begins."),
                Map.entry("days_of_supervision_have_a_supervisor", "Supervision that has days has a supervisor."),
                Map.entry("a_carer_has_one_profile", "This carer has a profile already: correct that one."),
                Map.entry("places_are_none_or_more", "There are no places, or some."),
                Map.entry("nobody_supervises_themselves", "Nobody supervises themselves."),
                Map.entry("an_absence_ends_after_it_began", "An absence ends after it began."),
                Map.entry(
                        "withdrawing_an_absence_has_time_and_reason",
                        "Withdrawing an absence has a time and a reason, or is not yet."),
                Map.entry(
                        "what_is_kept_apart_has_another_group",
                        "What is kept apart is kept apart from another group; company is of its own."),
                Map.entry(
                        "withdrawing_a_keeping_rule_has_time_and_reason",
                        "Withdrawing a rule has a time and a reason, or is not yet."));
    }
}
