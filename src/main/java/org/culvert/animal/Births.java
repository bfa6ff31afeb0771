package org.culvert.animal;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/** What can be told of a birth. */
final class Births {
    private static final int FIRST_YEAR = 1800;

    /** East of every other clock: a day that has begun anywhere has begun here. */
    private static final ZoneOffset FIRST = ZoneOffset.ofHours(14);

    private Births() {}

    /**
     * A birth has passed, and only one that is told is in doubt.
     *
     * @param at what goes before the fields in the request
     * @throws InvalidException naming the field that is wrong
     */
    static void require(String at, @Nullable LocalDate bornOn, @Nullable Integer doubtDays, Clock clock) {
        if (doubtDays != null && (bornOn == null || doubtDays < 0 || doubtDays > CaseEntries.MOST_DOUBT_DAYS)) {
            throw InvalidException.of(
                    at + "bornDoubtDays",
                    "That is no doubt of a birth.",
                    "0 to " + CaseEntries.MOST_DOUBT_DAYS + " days, with bornOn");
        }
        if (bornOn != null
                && (bornOn.getYear() < FIRST_YEAR || bornOn.isAfter(LocalDate.ofInstant(clock.instant(), FIRST)))) {
            throw InvalidException.of(at + "bornOn", "No animal in care was born then.", "a day that has passed");
        }
    }
}
