package org.culvert.release.land;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class LandConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "a_jurisdiction_is_named_by_its_code", "Land of one law is named by its ISO 3166 code, such as AU-QLD.",
                "land_ends_after_it_began", "What is known of land ends after it began.",
                "the_box_of_land_is_on_the_earth", "Land lies on the Earth and has some width and height.");
    }
}
