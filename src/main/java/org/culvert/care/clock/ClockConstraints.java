package org.culvert.care.clock;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class ClockConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "a_networks_limit_is_policy",
                        "The network's own limits are policy, and policy is the network's own."),
                Map.entry("a_limit_is_about_a_group_or_a_name", "A limit is about a group or about a taxon."),
                Map.entry(
                        "after_a_death_only_telling_is_left",
                        "After a death only telling the authority is left to be done."),
                Map.entry("a_limit_ends_after_it_begins", "The limit would end before it began."),
                Map.entry("a_limit_is_read_again_later", "A limit is read again after it was read."),
                Map.entry(
                        "an_extension_has_a_ground_or_an_order",
                        "A limit is extended on one ground or by one order, and by nothing else."),
                Map.entry("an_order_is_told_whole", "An order has an authority, a number, a date and words."),
                Map.entry("an_extension_ends_after_it_begins", "An extension ends after it was granted."),
                Map.entry(
                        "withdrawing_an_extension_has_time_and_reason",
                        "An extension is withdrawn with a time and a reason."),
                Map.entry(
                        "withdrawing_a_notice_has_time_and_reason", "A notice is withdrawn with a time and a reason."));
    }
}
