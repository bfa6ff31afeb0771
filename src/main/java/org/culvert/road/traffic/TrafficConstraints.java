package org.culvert.road.traffic;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class TrafficConstraints implements ConstraintSentences {
    @Override
    public Map<String, String> sentences() {
        return Map.of(
                "traffic_is_of_a_year_at_most",
                        "Traffic is of a period that ends after it begins, and within 366 days.",
                "traffic_is_from_a_chainage_to_another", "A counted stretch goes from a chainage to a greater one.",
                "a_direction_is_of_traffic_in_one", "Traffic of both directions together has no direction.",
                "days_counted_are_of_the_period", "More days were counted than the period has.",
                "an_estimate_counts_no_days", "Traffic that was estimated has no days that were counted.",
                "withdrawing_a_traffic_count_has_time_and_reason",
                        "A traffic count that is withdrawn has a time and a reason of it.");
    }
}
