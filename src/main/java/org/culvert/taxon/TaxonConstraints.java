package org.culvert.taxon;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class TaxonConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry("taxon_groups_key_is_taken", "Another group has this key already."),
                Map.entry("taxa_scientific_name_is_taken", "Another taxon has this scientific name already."),
                Map.entry("a_taxon_has_another_name_once", "The taxon has this other name already."),
                Map.entry(
                        "a_common_name_has_a_language", "A common name has a language, and a scientific one has none."),
                Map.entry("ending_a_synonym_has_time_and_reason", "A name is ended with a time and a reason."),
                Map.entry("a_listing_ends_after_it_begins", "The listing would end before it began."),
                Map.entry("a_listing_is_read_again_later", "A listing is read again after it was read."),
                Map.entry(
                        "taxa_sensitivity_has_reason_and_review",
                        "A sensitive taxon has a reason and a day by which that is looked at again."));
    }
}
