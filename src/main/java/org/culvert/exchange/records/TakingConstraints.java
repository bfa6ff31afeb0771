package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when a constraint of trials and takings refuses a row. */
@ApplicationScoped
class TakingConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "a_trial_is_of_a_reading_of_its_file", "A trial is of a reading of the same file.",
                "a_failed_trial_says_why", "A trial that failed says why.",
                "a_trial_ends_once", "A trial is done or has failed, and not both.",
                "rows_of_a_trial_add_up", "Every row of a trial has one verdict.",
                "a_failed_taking_says_why", "A taking that failed says why.",
                "a_taking_ends_once", "A taking is done or has failed, and not both.",
                "an_erased_row_is_gone", "A row of a file has its text until it is erased.",
                "a_row_of_a_file_is_taken_once", "That row of the file was taken in already.");
    }
}
