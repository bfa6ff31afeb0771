package org.culvert.exchange.demo;

import java.time.LocalDate;

/** Roughly when the sun rises and sets over the region, in minutes of the day: good enough to say when animals move. */
final class Sun {
    private static final double LATITUDE = -30;
    private static final double NOON_MINUTES = 12 * 60 - 4 * 6.7;

    private Sun() {}

    static double halfDayMinutes(LocalDate day) {
        double declination =
                StrictMath.toRadians(-23.44 * StrictMath.cos(2 * StrictMath.PI * (day.getDayOfYear() + 10) / 365.25));
        double cosine = -StrictMath.tan(StrictMath.toRadians(LATITUDE)) * StrictMath.tan(declination);
        return StrictMath.toDegrees(StrictMath.acos(cosine)) * 4;
    }

    static double rise(LocalDate day) {
        return NOON_MINUTES - halfDayMinutes(day);
    }

    static double set(LocalDate day) {
        return NOON_MINUTES + halfDayMinutes(day);
    }
}
