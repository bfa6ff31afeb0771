package org.culvert.hotspot.works;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whole years before the building and after it, so that every season is in each as often; the building itself is in neither.
 *
 * @param before first days of the years before, the oldest first
 * @param after first days of the years after
 */
record EffectPeriods(List<LocalDate> before, List<LocalDate> after) {
    /** The years that are over, and that the works stood through. */
    static EffectPeriods of(Works works, int yearsBefore, int yearsAfter, LocalDate today) {
        List<LocalDate> before = new ArrayList<>();
        for (int year = yearsBefore; year >= 1; year--) {
            before.add(works.builtFrom.minusYears(year));
        }
        List<LocalDate> after = new ArrayList<>();
        LocalDate built = works.builtUntil;
        if (built != null) {
            LocalDate first = built.plusDays(1);
            LocalDate end = works.endedOn != null && works.endedOn.isBefore(today) ? works.endedOn : today;
            long whole = Math.max(0, ChronoUnit.YEARS.between(first, end));
            for (int year = 0; year < Math.min(whole, yearsAfter); year++) {
                after.add(first.plusYears(year));
            }
        }
        return new EffectPeriods(before, after);
    }

    /** Without those of the oldest years in which nobody reported anything. */
    EffectPeriods from(@Nullable LocalDate firstReport) {
        return new EffectPeriods(
                before.stream()
                        .filter(year -> firstReport != null && firstReport.isBefore(year.plusYears(1)))
                        .toList(),
                after);
    }

    boolean canBeCompared() {
        return !before.isEmpty() && !after.isEmpty();
    }

    LocalDate beforeFrom() {
        return before.get(0);
    }

    LocalDate beforeTo() {
        return before.get(before.size() - 1).plusYears(1).minusDays(1);
    }

    LocalDate afterFrom() {
        return after.get(0);
    }

    LocalDate afterTo() {
        return after.get(0).plusYears(after.size()).minusDays(1);
    }

    boolean isBefore(LocalDate day) {
        return !before.isEmpty() && !day.isBefore(beforeFrom()) && !day.isAfter(beforeTo());
    }

    boolean isAfter(LocalDate day) {
        return !after.isEmpty() && !day.isBefore(afterFrom()) && !day.isAfter(afterTo());
    }

    /** Which of the years before a day lies in. */
    int yearBefore(LocalDate day) {
        int year = 0;
        while (year + 1 < before.size() && !day.isBefore(before.get(year + 1))) {
            year++;
        }
        return year;
    }
}
