package org.culvert.release;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

@ApplicationScoped
class ReleaseConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "a_case_is_released_once",
                "That animal's case ended by a release already.",
                "a_test_is_lifted_once",
                "One test is lifted twice: name it in one permit or one override.",
                "policy_is_the_networks_own",
                "The network's own rules are policy, and policy is the network's own.",
                "a_rule_ends_after_it_begins",
                "The rule would end before it began.");
    }
}
