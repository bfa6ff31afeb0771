package org.culvert.hotspot.stats.season;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;

/**
 * Directions on a circle, in radians from 0 to less than 2 pi: days of a year, hours of a day.
 *
 * <p>A date is the middle of its day in a year as long as that year is: {@code 2 pi (day of year - 0.5) / days in the
 * year}, so that New Year's Eve and New Year's Day are neighbours and 29 February has a place of its own. The order in
 * which directions are given is forgotten. Immutable.
 */
public final class CircularSample {
    static final double FULL_TURN = 2 * Math.PI;
    private static final double HOURS_A_DAY = 24;

    private final double[] ascending;

    private CircularSample(double[] radians) {
        this.ascending = new double[radians.length];
        for (int i = 0; i < radians.length; i++) {
            if (!Double.isFinite(radians[i])) {
                throw new IllegalArgumentException("a direction is a finite number of radians, not " + radians[i]);
            }
            ascending[i] = turned(radians[i]);
        }
        Arrays.sort(ascending);
    }

    /** @throws IllegalArgumentException if a direction is not a finite number */
    public static CircularSample ofRadians(double[] radians) {
        return new CircularSample(radians);
    }

    /** @throws IllegalArgumentException if a direction is not a finite number */
    public static CircularSample ofDegrees(double[] degrees) {
        return new CircularSample(Arrays.stream(degrees).map(Math::toRadians).toArray());
    }

    /** The middles of days, each in its own year's length. */
    public static CircularSample ofDates(Collection<LocalDate> dates) {
        return new CircularSample(
                dates.stream().mapToDouble(CircularSample::directionOf).toArray());
    }

    /**
     * Hours of a day, 0 to 24, fractions for minutes.
     *
     * @throws IllegalArgumentException if an hour is not between 0 and 24
     */
    public static CircularSample ofHours(double[] hours) {
        double[] radians = new double[hours.length];
        for (int i = 0; i < hours.length; i++) {
            if (!(hours[i] >= 0 && hours[i] <= HOURS_A_DAY)) {
                throw new IllegalArgumentException("an hour of the day is between 0 and 24, not " + hours[i]);
            }
            radians[i] = FULL_TURN * hours[i] / HOURS_A_DAY;
        }
        return new CircularSample(radians);
    }

    /** The direction of the middle of a date. */
    public static double directionOf(LocalDate date) {
        return FULL_TURN * (date.getDayOfYear() - 0.5) / date.lengthOfYear();
    }

    /** The date of a given year in which a direction falls. */
    public static LocalDate dateAt(double radians, int year) {
        int days = LocalDate.ofYearDay(year, 1).lengthOfYear();
        int day = (int) Math.floor(turned(radians) / FULL_TURN * days);
        return LocalDate.ofYearDay(year, Math.min(day, days - 1) + 1);
    }

    /** The hour of the day, 0 to less than 24, at a direction. */
    public static double hourAt(double radians) {
        return turned(radians) / FULL_TURN * HOURS_A_DAY;
    }

    /**
     * Each direction doubled: two peaks half a circle apart become one (Mardia and Jupp 2000, Directional Statistics,
     * section 1.3).
     */
    public CircularSample doubled() {
        return new CircularSample(
                Arrays.stream(ascending).map(angle -> 2 * angle).toArray());
    }

    public int count() {
        return ascending.length;
    }

    /** A direction by its place in ascending order, in radians. */
    public double ascending(int index) {
        return ascending[index];
    }

    /** The mean vector of {@code p} times the directions: the p-th trigonometric moment. */
    Moment moment(int p) {
        double cosine = 0;
        double sine = 0;
        for (double angle : ascending) {
            cosine += Math.cos(p * angle);
            sine += Math.sin(p * angle);
        }
        return new Moment(cosine / ascending.length, sine / ascending.length);
    }

    /** The same direction between 0 and less than 2 pi. */
    static double turned(double radians) {
        double turned = radians % FULL_TURN;
        if (turned < 0) {
            turned += FULL_TURN;
        }
        return turned >= FULL_TURN ? 0 : turned;
    }

    /** A mean vector. */
    record Moment(double cosine, double sine) {
        double length() {
            return Math.min(1, Math.hypot(cosine, sine));
        }

        /** Direction of the vector, 0 to less than 2 pi. */
        double direction() {
            return turned(Math.atan2(sine, cosine));
        }
    }
}
