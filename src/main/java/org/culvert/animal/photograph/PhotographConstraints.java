package org.culvert.animal.photograph;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class PhotographConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "a_photograph_is_of_an_incident_or_a_case",
                        "A photograph belongs to an incident or to a case, and to one of them."),
                Map.entry("a_photograph_and_its_case", "A photograph belongs to one case."),
                Map.entry("a_file_is_one_original", "A file is the original of one photograph."),
                Map.entry(
                        "a_seal_is_the_digest_of_its_file",
                        "A photograph is sealed with the digest of its own original."),
                Map.entry(
                        "a_place_that_stays_sealed_is_not_read",
                        "Where a photograph was taken is read only where the animal was found."),
                Map.entry(
                        "what_a_picture_says_of_its_place_is_whole",
                        "A place that a picture tells has a latitude, a longitude and their words."),
                Map.entry("an_offset_is_of_a_clock", "An offset is told of a clock."),
                Map.entry(
                        "taking_back_a_photograph_has_time_and_reason",
                        "A photograph is taken back at a time, for a reason."));
    }
}
