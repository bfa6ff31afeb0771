package org.culvert.care.growth;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class GrowthConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("doubt_of_a_birth_has_a_birth", "Only a birth that is entered is in doubt by some days."),
                Map.entry("an_age_caution_is_entered_once", "That is entered of this taxon and measure already."),
                Map.entry("a_growth_table_has_its_own_key", "Another table has that key already."),
                Map.entry("a_growth_table_has_two_rows", "A table has two rows or more."),
                Map.entry(
                        "growth_is_told_in_ages_and_values", "A row has an age of 0 or more days and a value above 0."),
                Map.entry("ages_of_a_growth_table_rise", "Ages rise from row to row."),
                Map.entry("lengths_do_not_fall", "A length does not fall with age."),
                Map.entry("what_tells_an_age_rises", "A value from which an age is told rises from row to row."),
                Map.entry(
                        "no_age_is_told_from_what_does_not_tell_it",
                        "No age is told from this measure for this kind: see the cautions on ages."),
                Map.entry(
                        "a_growth_table_is_adopted_as_it_stands",
                        "The table was changed in the meantime: read it again before you adopt it."),
                Map.entry(
                        "withdrawing_an_adopted_table_has_time_and_reason",
                        "An adoption is taken back at a time and for a reason."),
                Map.entry(
                        "withdrawing_a_body_measurement_has_time_and_reason",
                        "A measurement is taken back at a time and for a reason."));
    }
}
