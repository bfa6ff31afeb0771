package org.culvert.care.template;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Positive;
import jakarta.validation.constraints.Size;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.culvert.care.schedule.Measure;
import org.culvert.care.schedule.Rhythm;
import org.culvert.care.schedule.Step;
import org.culvert.platform.InvalidException;
import org.culvert.platform.InvalidException.FieldError;
import org.jspecify.annotations.Nullable;

/**
 * A step as entered, kept and shown; {@link Step} says what each field means.
 *
 * @param rhythm once where it is left out
 * @param measure none where it is left out
 */
public record PlanStepEntry(
        @NotBlank
        @Size(max = 40)
        @Pattern(regexp = "[a-z0-9]+(-[a-z0-9]+)*", message = "must be small letters, digits and hyphens")
        String key,

        @NotBlank @Size(max = 2000) String words,
        @Min(0) @Max(LAST_DAY) int firstDay,
        @Min(0) @Max(LAST_DAY) int lastDay,
        @NotNull Rhythm rhythm,
        @Nullable @Min(1) @Max(LAST_DAY) Integer everyDays,
        @NotNull Measure measure,
        @Nullable @Min(-1_000_000) @Max(1_000_000) Double low,
        @Nullable @Min(-1_000_000) @Max(1_000_000) Double high,
        @Nullable Boolean flagAnswer,
        @Nullable @Positive @Max(100) Double fallPercentPerWeek,
        @Nullable @Min(2) @Max(LAST_DAY) Integer fallOverDays,
        @Nullable LocalTime hour) {
    /** Longer plans than about four years are not made. */
    public static final int LAST_DAY = 1500;

    /** More steps than these nobody follows. */
    public static final int MOST_STEPS = 50;

    public PlanStepEntry {
        rhythm = rhythm == null ? Rhythm.once : rhythm;
        measure = measure == null ? Measure.none : measure;
    }

    /** @throws IllegalArgumentException unless {@link #read} has taken it */
    public Step step() {
        return new Step(
                key,
                words,
                firstDay,
                lastDay,
                rhythm,
                everyDays,
                measure,
                low,
                high,
                flagAnswer,
                fallPercentPerWeek,
                fallOverDays,
                hour);
    }

    /**
     * Steps as the schedule takes them.
     *
     * @param field what they are called in the request
     * @throws InvalidException naming each field that does not fit the others
     */
    public static List<Step> read(String field, List<PlanStepEntry> entries) {
        List<FieldError> errors = new ArrayList<>();
        Set<String> keys = new HashSet<>();
        for (int i = 0; i < entries.size(); i++) {
            PlanStepEntry entry = entries.get(i);
            String at = field + "[" + i + "].";
            if (!keys.add(entry.key)) {
                errors.add(wrong(at + "key", "Two steps are called " + entry.key + ".", "a key for each step"));
            }
            entry.check(at, errors);
        }
        if (!errors.isEmpty()) {
            throw new InvalidException(errors);
        }
        return entries.stream().map(PlanStepEntry::step).toList();
    }

    private void check(String at, List<FieldError> errors) {
        if (lastDay < firstDay) {
            errors.add(wrong(at + "lastDay", "It ends before it begins.", firstDay + " or more"));
        }
        if ((rhythm == Rhythm.everyDays) != (everyDays != null)) {
            errors.add(wrong(
                    at + "everyDays",
                    "A step that is done every so many days, and no other, says how many.",
                    "a number with the rhythm everyDays, else nothing"));
        }
        if (!measure.isNumber() && (low != null || high != null)) {
            errors.add(wrong(at + "low", "Only a number has limits.", "no limits, or a measure that is a number"));
        }
        if (low != null && high != null && low > high) {
            errors.add(wrong(at + "high", "The limits are the wrong way round.", low + " or more"));
        }
        if (measure != Measure.yesNo && flagAnswer != null) {
            errors.add(wrong(at + "flagAnswer", "Only an answer is flagged.", "the measure yesNo, or nothing"));
        }
        if (measure != Measure.grams && fallPercentPerWeek != null) {
            errors.add(wrong(at + "fallPercentPerWeek", "Only a weight falls.", "the measure grams, or nothing"));
        }
        if ((fallPercentPerWeek == null) != (fallOverDays == null)) {
            errors.add(wrong(
                    at + "fallOverDays",
                    "A fall is looked for over some days back.",
                    "both fallPercentPerWeek and fallOverDays, or neither"));
        }
    }

    private static FieldError wrong(String field, String detail, String wanted) {
        return new FieldError(field, detail, wanted, null);
    }
}
