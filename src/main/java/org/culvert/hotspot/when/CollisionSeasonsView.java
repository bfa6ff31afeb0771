package org.culvert.hotspot.when;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When collisions of a group of animals happened, in whole years.
 *
 * @param owner counted on the roads of this owner alone
 * @param smallestCount counts below this, and those that would give them back, are left out for roads authorities; null where
 *     nothing is left out
 * @param season of the group that was asked about
 * @param comparedWith of the other group
 * @param comparison whether the two have the same season
 * @param restsOn what must be known to read it
 */
public record CollisionSeasonsView(
        LocalDate periodFrom,
        LocalDate periodTo,
        @Nullable String owner,
        @Nullable Integer smallestCount,
        GroupSeason season,
        @Nullable GroupSeason comparedWith,
        @Nullable Comparison comparison,
        List<String> restsOn) {

    /**
     * The season and the hours of one group.
     *
     * @param taxonGroup null for all animals
     * @param collisions counted; null where so few are not told
     * @param countedOnDayOfReport of those, how many count on the day of their report since nobody knows when they happened
     * @param leftOut why other incidents of the period do not count
     * @param inWords what the circle of the year says, in a sentence
     * @param months collisions by month, twelve from January, null where left out
     * @param year the circle of the year; null where there are too few to tell
     * @param effort against how much was reported of all animals
     */
    public record GroupSeason(
            @Nullable String taxonGroup,
            @Nullable Integer collisions,
            @Nullable Integer countedOnDayOfReport,
            List<LeftOut> leftOut,
            String inWords,
            List<@Nullable Integer> months,
            @Nullable YearCircle year,
            Effort effort,
            LightTable light,
            HourTable hours,
            HourTable reportHours) {}

    public record LeftOut(String reason, int incidents) {}

    /**
     * Directions on the circle of the year.
     *
     * @param meanDay direction of the mean vector; of two peaks it lies between them and says nothing
     * @param meanDayHalfWidthDays half the width of its 95 % interval, where it can be told
     * @param resultantLength 0 (all around the year) to 1 (all on one day)
     * @param circularStandardDeviationDays null where the collisions cancel out
     * @param peaks {@code one}, {@code two} or {@code none-told}
     * @param peakDays where they are, the higher first
     * @param because by what rule and figures
     * @param tests against the bare year
     */
    public record YearCircle(
            @Nullable MonthDay meanDay,
            @Nullable Double meanDayHalfWidthDays,
            double resultantLength,
            @Nullable Double circularStandardDeviationDays,
            String peaks,
            List<MonthDay> peakDays,
            String because,
            List<Test> tests) {}

    /** A test: its name, its statistic, its p, and by what formula or simulation. */
    public record Test(String test, double statistic, double p, String pBy) {}

    /**
     * The group's months against those of everything that was reported.
     *
     * @param calls incidents of any cause and any animal by month of their report, null where left out
     * @param test null where there are too few to be taken as known effort
     */
    public record Effort(
            List<@Nullable Integer> calls, @Nullable Test test, String inWords) {}

    /**
     * How light it was.
     *
     * @param classes by the height of the sun at the instant
     * @param unknown collisions without a known instant, without a place, or whose interval has more than one class
     */
    public record LightTable(
            List<LightRow> classes, @Nullable Integer unknown, String inWords) {}

    /**
     * @param light {@code day}, {@code civil-twilight}, {@code nautical-twilight}, {@code astronomical-twilight} or {@code
     *     night}
     * @param collisions null where left out
     * @param shareOfTime of a year there, 0 to 1; null without any place
     */
    public record LightRow(
            String light,
            @Nullable Integer collisions,
            @Nullable Double shareOfTime) {}

    /**
     * Hours by the clocks of the region.
     *
     * @param counts 24 numbers from midnight, null where left out
     * @param unknown how many have no known hour
     * @param meanHour of those known; null for none
     */
    public record HourTable(
            List<@Nullable Integer> counts,
            @Nullable Integer unknown,
            @Nullable Double meanHour,
            @Nullable Double resultantLength) {}

    /**
     * @param inBothLeftOut incidents of both groups, which are in neither sample here
     * @param test null where one sample has too few
     */
    public record Comparison(
            @Nullable Integer inBothLeftOut, @Nullable Test test, String inWords) {}
}
