package org.culvert.hotspot.effort;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class SurveyConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "surveys_are_travelled_in_a_known_way", "Surveys are made in one of the ways that are listed.",
                "surveys_go_from_a_chainage_to_a_greater_one", "A survey goes from a chainage to a greater one.",
                "surveys_end_within_a_day_of_their_beginning",
                        "A survey ends after it began, and within 24 hours of that.",
                "withdrawing_a_survey_has_time_and_reason",
                        "A survey that is withdrawn has a time and a reason of it.");
    }
}
