package org.culvert.exchange.records;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says of files when one of their constraints refuses a row. */
@ApplicationScoped
class RecordFileConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "calling_off_a_file_has_time_author_reason",
                "A file is called off with a time, an author and a reason.",
                "a_file_of_records_is_brought_once",
                "The same file is there already, octet by octet.",
                "a_file_has_octets_of_its_own",
                "The octets of a file are of it alone.",
                "an_erased_part_is_gone",
                "A part of a file that is erased holds nothing.",
                "an_erased_inspection_is_gone",
                "What was found in a file that is erased holds nothing.",
                "a_reading_is_of_its_file",
                "A reading is of one file.");
    }
}
