package org.culvert.exchange.files;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class BroughtFileConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "an_erased_part_of_a_file_is_gone",
                "A part of a file that is erased holds nothing.",
                "a_failed_file_says_why",
                "A file of which nothing was taken says why.",
                "a_taken_file_says_what_came_of_it",
                "A file that was taken says what came of it.",
                "a_file_that_was_begun_says_when",
                "A file whose reading was begun says when that was.",
                "a_file_is_read_to_one_end",
                "A file is taken, or nothing of it.");
    }
}
