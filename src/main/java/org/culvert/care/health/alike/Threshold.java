package org.culvert.care.health.alike;

import java.time.temporal.ChronoUnit;
import org.culvert.geo.Geodesy;

/**
 * How many, how near and how soon.
 *
 * @param smallestCount animals that make a group, 2 or more
 * @param withinKilometres edge included, after rounding to whole metres
 * @param withinDays days apart, edge included; 0: the same day
 */
public record Threshold(int smallestCount, double withinKilometres, int withinDays) {
    public Threshold {
        if (smallestCount < 2 || !(withinKilometres > 0) || withinDays < 0) {
            throw new IllegalArgumentException("a threshold is of two or more animals, some distance and some days");
        }
    }

    /** Whether two reports are near in place and time; a report is near to itself. */
    public boolean isNear(Report one, Report other) {
        return Math.abs(ChronoUnit.DAYS.between(one.day(), other.day())) <= withinDays
                && Math.round(Geodesy.metresBetween(one.place(), other.place())) <= withinKilometres * 1000;
    }
}
