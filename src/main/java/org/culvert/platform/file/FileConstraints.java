package org.culvert.platform.file;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class FileConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "a_file_has_the_digest_of_its_content",
                "A file is kept with the digest of its own content.",
                "a_file_and_its_digest",
                "A file has one digest.");
    }
}
