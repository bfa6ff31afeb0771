package org.culvert.care.schedule;

import java.time.LocalTime;
import org.jspecify.annotations.Nullable;

/**
 * One step of a plan.
 *
 * @param key what the step is called within its plan; a step that is changed midway keeps it, so that what was done stays done
 * @param words what to do, in the vet's words
 * @param firstDay in days from day 0, which is 0
 * @param lastDay in days from day 0; a last day is one on which the step may still be due
 * @param everyDays from one time to the next, for {@link Rhythm#everyDays} and nothing else; 1 or more
 * @param low a number below this is flagged; in the unit of the measure
 * @param high a number above this is flagged
 * @param flagAnswer the answer that is flagged, for {@link Measure#yesNo}
 * @param fallPercentPerWeek a weight that falls faster is flagged; per cent of the first fitted weight
 * @param fallOverDays how many days back that fall is looked for
 * @param hour from which hour of its day it is due; null: from the day's beginning
 */
public record Step(
        String key,
        String words,
        int firstDay,
        int lastDay,
        Rhythm rhythm,
        @Nullable Integer everyDays,
        Measure measure,
        @Nullable Double low,
        @Nullable Double high,
        @Nullable Boolean flagAnswer,
        @Nullable Double fallPercentPerWeek,
        @Nullable Integer fallOverDays,
        @Nullable LocalTime hour) {
    /** @throws IllegalArgumentException for a step that nobody can mean */
    public Step {
        require(firstDay >= 0 && lastDay >= firstDay, "a step lasts from day 0 or later to the same day or later");
        require(
                (rhythm == Rhythm.everyDays) == (everyDays != null),
                "every so many days, and nothing else, says how many");
        require(everyDays == null || everyDays >= 1, "days between two times are 1 or more");
        require(measure.isNumber() || (low == null && high == null), "only a number has limits");
        require(low == null || high == null || low <= high, "the low limit is not above the high one");
        require(measure == Measure.yesNo || flagAnswer == null, "only an answer is flagged");
        require(measure == Measure.grams || fallPercentPerWeek == null, "only a weight falls");
        require((fallPercentPerWeek == null) == (fallOverDays == null), "a fall is looked for over some days");
        require(fallPercentPerWeek == null || fallPercentPerWeek > 0, "a fall is more than 0");
        require(fallOverDays == null || fallOverDays >= 2, "three days lie within two days back or more");
    }

    private static void require(boolean holds, String words) {
        if (!holds) {
            throw new IllegalArgumentException(words);
        }
    }

    /** Whether it is due again on a day, counted from day 0; of a step that is done once, whether the day is its first. */
    public boolean isOn(int day) {
        if (day < firstDay || day > lastDay) {
            return false;
        }
        int since = day - firstDay;
        return switch (rhythm) {
            case once -> since == 0;
            case daily -> true;
            case everyDays -> everyDays != null && since % everyDays == 0;
            case weekly -> since % 7 == 0;
        };
    }

    /** Whether a number lies outside the limits; the limits themselves are inside. */
    public boolean crossesLimit(double number) {
        return (low != null && number < low) || (high != null && number > high);
    }
}
