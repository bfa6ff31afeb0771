package org.culvert.care.clock.limit;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;

/**
 * How long a limit is.
 *
 * @param amount how many, at least 1
 */
public record Length(int amount, Unit unit) {
    /** Hours are exact; the others are of the calendar. */
    public enum Unit {
        hours,
        days,
        weeks,
        months,
        years
    }

    /** @throws IllegalArgumentException unless the amount is at least 1 */
    public Length {
        if (amount < 1) {
            throw new IllegalArgumentException("a limit lasts at least 1 " + unit);
        }
    }

    /**
     * The instant at which it is over.
     *
     * <p>Hours are counted on the clock of the world, whatever the wall clock does. Days, weeks, months and years end at the
     * same time of the wall clock as they began: the earliest that a count of calendar days can mean. A month that lacks the
     * day ends on its last; a time that daylight saving leaves out is as much later; of one that comes twice it is the one in
     * the offset from before, as {@link ZonedDateTime#plusDays} has it.
     */
    public Instant after(Instant start, ZoneId zone) {
        ZonedDateTime local = start.atZone(zone);
        return switch (unit) {
            case hours -> start.plus(amount, ChronoUnit.HOURS);
            case days -> local.plusDays(amount).toInstant();
            case weeks -> local.plusWeeks(amount).toInstant();
            case months -> local.plusMonths(amount).toInstant();
            case years -> local.plusYears(amount).toInstant();
        };
    }
}
