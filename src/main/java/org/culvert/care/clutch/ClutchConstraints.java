package org.culvert.care.clutch;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import org.culvert.platform.ConstraintSentences;

/** What this room says when one of its constraints refuses a row. */
@ApplicationScoped
class ClutchConstraints implements ConstraintSentences {
    private static final String TIME_AND_REASON = "What is taken back has a time and a reason.";

    @Override
    public Map<String, String> sentences() {
        return Map.ofEntries(
                Map.entry(
                        "custody_of_a_clutch_never_overlaps",
                        "Someone else answers for that clutch at that time already; custody never overlaps."),
                Map.entry(
                        "every_egg_is_accounted_for",
                        "The eggs do not add up: recovered = set to incubate + broken + discarded."),
                Map.entry(
                        "no_more_hatch_than_were_set",
                        "More hatchlings than eggs were set in this clutch and have not failed."),
                Map.entry(
                        "no_more_fail_than_were_set",
                        "More failed eggs than were set in this clutch and have not hatched."),
                Map.entry(
                        "as_many_stay_set_as_hatched_or_failed",
                        "More eggs of this clutch have hatched or failed than would be left set."),
                Map.entry("one_holder_answers_for_a_clutch", "Exactly one holder answers for a clutch."),
                Map.entry("custody_of_a_clutch_lasts", "Custody of a clutch ends after it begins."),
                Map.entry("other_grounds_of_failing_have_words", "Other grounds are told in words."),
                Map.entry("a_ratio_by_weight_has_both_parts", "A ratio by weight has both of its parts."),
                Map.entry("a_candling_is_of_some_eggs", "A candling is of one egg or more."),
                Map.entry(
                        "a_temperature_record_and_its_source",
                        "The temperatures of a record are of its own clutch and source."),
                Map.entry(
                        "a_temperature_record_ends_after_it_begins", "A record of temperatures ends after it begins."),
                Map.entry("a_temperature_record_has_its_range", "The lowest temperature is not above the highest."),
                Map.entry(
                        "one_temperature_of_a_source_at_a_time",
                        "A temperature of this source at that time is known already."),
                Map.entry("withdrawing_a_recovery_has_time_and_reason", TIME_AND_REASON),
                Map.entry("withdrawing_failed_eggs_has_time_and_reason", TIME_AND_REASON),
                Map.entry("withdrawing_a_reading_of_the_inside_has_time_and_reason", TIME_AND_REASON),
                Map.entry("withdrawing_a_set_up_has_time_and_reason", TIME_AND_REASON),
                Map.entry("withdrawing_a_candling_has_time_and_reason", TIME_AND_REASON),
                Map.entry("withdrawing_temperatures_has_time_and_reason", TIME_AND_REASON),
                Map.entry(
                        "a_period_has_its_days",
                        "A period is told with its days and where the eggs lay, and nothing else is."),
                Map.entry("days_go_from_few_to_many", "Days go from few to many."),
                Map.entry("temperatures_go_from_low_to_high", "Temperatures go from low to high, both or none."),
                Map.entry(
                        "a_rate_model_has_its_figures",
                        "A model of the rate is told with its threshold, degree days and stated error, and nothing else is."),
                Map.entry(
                        "a_rate_model_says_where_it_holds",
                        "A model of the rate says between which temperatures it holds, all above its threshold."),
                Map.entry("what_makes_the_sex_is_told", "A fact of sex says what makes it, and nothing else does."),
                Map.entry("a_fact_of_incubation_ends_after_it_begins", "The fact would end before it began."),
                Map.entry(
                        "a_fact_of_incubation_is_looked_for_again_later",
                        "A fact is looked for again after it was read."));
    }
}
