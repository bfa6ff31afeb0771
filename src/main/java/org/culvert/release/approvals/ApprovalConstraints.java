package org.culvert.release.approvals;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class ApprovalConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "an_approval_is_of_a_site_or_of_a_case", "An approval is of a site or of a case.",
                "withdrawing_an_approval_has_time_and_reason",
                        "An approval that is withdrawn has a time and a reason of it.",
                "an_approval_does_not_end_before_it_was_given", "An approval does not end before it was given.");
    }
}
