package org.culvert.exchange.annualreturn;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class ReturnConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("a_form_has_years_or_periods", "A form is of years or of periods."),
                Map.entry("a_year_of_a_form_begins_on_a_day", "A year of a form begins on a day that every year has."),
                Map.entry("a_form_is_due_on_a_day", "A return is due on a day that every year has."),
                Map.entry("a_form_ends_after_it_begins", "The form would end before it began."),
                Map.entry("a_form_is_read_again_later", "A form is read again after it was read."),
                Map.entry("a_return_is_of_one_holder", "A return is of one member or of one organisation."),
                Map.entry(
                        "a_return_is_signed_once",
                        "That return has been signed already; what changed since is told by a supplement."),
                Map.entry("a_return_ends_after_it_begins", "A period ends after it begins."),
                Map.entry("a_return_is_signed_when_its_period_is_over", "A return is signed after its period is over."),
                Map.entry("a_return_is_frozen_with_its_digest", "A return is kept with the digest of its document."),
                Map.entry("a_return_table_is_frozen_with_its_digest", "A return is kept with the digest of its table."),
                Map.entry(
                        "supplements_of_a_return_are_numbered",
                        "Another supplement of that return was signed at the same time."),
                Map.entry(
                        "a_supplement_is_frozen_with_its_digest",
                        "A supplement is kept with the digest of its document."),
                Map.entry(
                        "a_supplement_table_is_frozen_with_its_digest",
                        "A supplement is kept with the digest of its table."),
                Map.entry(
                        "a_line_of_a_return_has_its_sums",
                        "A line of a return has its four sums, and nothing else has."),
                Map.entry(
                        "opening_and_in_are_out_and_closing",
                        "What was held and came in is what went out and is held: a line of a return that says otherwise is"
                                + " wrong."),
                Map.entry(
                        "the_parts_of_a_line_are_its_sums",
                        "The parts of what came in and went out add up to the sums of the line."));
    }
}
