package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class CaseConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "custody_of_a_case_never_overlaps",
                        "Someone else answers for the animal at that time already; custody never overlaps."),
                Map.entry(
                        "one_hand_over_is_pending_at_a_time",
                        "A hand-over of this animal is pending already: let it be accepted or refused first."),
                Map.entry("a_case_ends_once", "That case has ended already."),
                Map.entry(
                        "a_body_with_barbiturate_is_never_left_out",
                        "A body that has, or may have, barbiturate in it is never left out."),
                Map.entry("euthanasia_has_method_and_approver", "Euthanasia needs its method and who approved it."),
                Map.entry(
                        "euthanasia_has_authority_and_confirmed_death",
                        "Euthanasia needs its authority, and who confirmed that the animal is dead."),
                Map.entry("confirming_a_death_has_name_and_time", "A death is confirmed by somebody, at a time."),
                Map.entry("a_death_is_confirmed_once_it_happened", "A death is confirmed once it has happened."),
                Map.entry(
                        "a_held_body_is_kept",
                        "The body is held, and nobody disposes of it until the hold has been cleared."),
                Map.entry(
                        "no_hand_over_under_suspicion",
                        "A disease that must be notified is suspected: it is handed to nobody but the wildlife authority"
                                + " until the hold has been cleared. Ring the hotline."),
                Map.entry("nobody_is_their_own_mother", "An animal is not its own mother."),
                Map.entry("cases_number_key", "Another case has this number already."),
                Map.entry(
                        "a_known_origin_has_a_place",
                        "An animal whose origin is known has a found place, and no other has."),
                Map.entry("one_holder_answers_for_an_animal", "Exactly one holder answers for an animal."),
                Map.entry("custody_lasts", "Custody lasts: it has a beginning, and ends after it."),
                Map.entry(
                        "another_licence_of_a_hand_over_is_told_whole",
                        "Another licence has a number and a jurisdiction."),
                Map.entry(
                        "another_licence_of_a_link_is_told_whole", "Another licence has a number and a jurisdiction."),
                Map.entry(
                        "a_networks_referral_is_policy",
                        "What the network itself does not hold is policy, and policy is the network's own."),
                Map.entry("a_referral_is_of_a_group_or_of_a_name", "A referral is of one group or of one taxon."),
                Map.entry("a_referral_ends_after_it_begins", "The referral would end before it began."),
                Map.entry("a_referral_is_read_again_later", "A referral is read again after it was read."),
                Map.entry("one_taker_is_asked", "A hand-over is offered to exactly one taker."),
                Map.entry("a_hand_over_is_accepted_or_refused", "A hand-over is accepted or refused, not both."),
                Map.entry("a_refusal_has_a_reason", "A refusal has a reason."),
                Map.entry("whereabouts_say_where", "It does not say where the animal is."),
                Map.entry("a_release_is_a_release", "A case that ended by a release was released."),
                Map.entry("fates_release_is_recorded", "There is no release by this identifier."),
                Map.entry("a_case_leaves_one_body", "That animal has left a body already."),
                Map.entry("a_body_has_at_most_one_holder", "A body has one holder at most."),
                Map.entry("disposal_has_a_time", "What became of a body and when go together."));
    }
}
