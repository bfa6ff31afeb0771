package org.culvert.care.template;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class TemplateConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "a_plan_template_has_its_own_key", "Another template has that key already.",
                "a_plan_template_has_steps", "A template has its steps.",
                "an_adoption_is_of_the_template_as_it_stands",
                        "The template was changed in the meantime: read it again before you adopt it.",
                "withdrawing_an_adoption_has_time_and_reason", "An adoption is taken back at a time and for a reason.");
    }
}
