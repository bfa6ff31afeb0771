package org.culvert.animal;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

@ApplicationScoped
class CaseConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "custody_of_a_case_never_overlaps",
                "Someone else answers for the animal at that time already; custody never overlaps.",
                "one_hand_over_is_pending_at_a_time",
                "A hand-over of this animal is pending already: let it be accepted or refused first.",
                "a_case_ends_once",
                "That case has ended already.",
                "a_body_with_barbiturate_is_never_left_out",
                "A body that has, or may have, barbiturate in it is never left out.",
                "euthanasia_has_method_and_approver",
                "Euthanasia needs its method and who approved it.");
    }
}
