package org.culvert.hotspot.when;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.culvert.hotspot.stats.season.AgainstEffort;
import org.culvert.hotspot.stats.season.CircularSample;
import org.culvert.hotspot.stats.season.CircularSummary;
import org.culvert.hotspot.stats.season.SeasonShape;
import org.culvert.hotspot.stats.season.Uniformity;
import org.culvert.hotspot.stats.season.WatsonWheeler;
import org.culvert.hotspot.when.CollisionSeasonsView.Comparison;
import org.culvert.hotspot.when.CollisionSeasonsView.Effort;
import org.culvert.hotspot.when.CollisionSeasonsView.Test;
import org.culvert.hotspot.when.CollisionSeasonsView.YearCircle;
import org.jspecify.annotations.Nullable;

/** Says what days of the year tell, by the rules of {@link SeasonShape} and at its level, in figures and in a sentence. */
final class SeasonTeller {
    static final double ALPHA = 0.05;
    private static final long SEED = 1;
    private static final int LEAST = 5;
    private static final int MANY = 2000;
    /** With more, many share a day, and gaps of none look like nearness (choice of ours, no source). */
    private static final int MOST_FOR_SPACING = 60;
    /** Below these the calls of a month are too few to be taken as known (choices of ours, no source). */
    private static final int LEAST_CALLS_A_MONTH = 5;

    private static final int CALLS_A_COLLISION = 10;
    private static final double DAYS_A_RADIAN = 365.25 / (2 * Math.PI);
    /** No leap year: a direction is shown as a day of an ordinary one. */
    private static final int A_YEAR = 2001;

    private final Told told;

    SeasonTeller(Told told) {
        this.told = told;
    }

    /** The circle, or null where there are too few to tell anything, or so few that they are not told. */
    @Nullable
    YearCircle circle(List<LocalDate> days) {
        if (days.size() < LEAST || !told.tells(days.size())) {
            return null;
        }
        CircularSample sample = CircularSample.ofDates(days);
        CircularSummary summary = CircularSummary.of(sample);
        SeasonShape shape = SeasonShape.of(sample, ALPHA, simulations(days.size()), SEED);
        List<Test> tests = new ArrayList<>();
        tests.add(Told.test(shape.rayleigh()));
        tests.add(new Test(
                "Rayleigh of the doubled directions",
                Told.significant(shape.rayleighOfDoubled().statistic()),
                Told.significant(shape.rayleighOfDoubled().p()),
                shape.rayleighOfDoubled().pBy()));
        tests.add(Told.test(Uniformity.watson(sample)));
        if (days.size() <= MOST_FOR_SPACING) {
            tests.add(Told.test(Uniformity.raoSpacing(sample)));
        }
        double mean = summary.meanDirectionRadians();
        return new YearCircle(
                Double.isNaN(mean) ? null : day(mean),
                Told.rounded(summary.meanDirection95HalfWidthRadians() * DAYS_A_RADIAN, 0),
                Told.significant(summary.resultantLength()),
                Told.rounded(summary.circularStandardDeviationRadians() * DAYS_A_RADIAN, 0),
                switch (shape.decision()) {
                    case ONE_PEAK -> "one";
                    case TWO_PEAKS -> "two";
                    case NONE_TOLD -> "none-told";
                },
                shape.peaksRadians().stream().map(SeasonTeller::day).toList(),
                shape.because(),
                tests);
    }

    String words(int count, @Nullable YearCircle circle) {
        if (circle == null) {
            return told.tells(count)
                    ? "With " + count + (count == 1 ? " collision" : " collisions")
                            + " nothing can be told of a season;" + " it takes " + LEAST + "."
                    : "There are too few collisions to be told to you.";
        }
        List<MonthDay> peaks = circle.peakDays();
        return switch (circle.peaks()) {
            case "one" ->
                "One season: collisions gather around " + words(circle.meanDay())
                        + (circle.meanDayHalfWidthDays() == null
                                ? ""
                                : ", give or take " + Math.round(circle.meanDayHalfWidthDays())
                                        + " days (95 % interval of the mean day)")
                        + ".";
            case "two" ->
                "Two seasons, or more: collisions gather around "
                        + String.join(
                                " and ", peaks.stream().map(SeasonTeller::words).toList())
                        + ". The mean day lies between them, where neither is, and is not to be used.";
            default ->
                "No season is told: so few collisions, or so even, could as well have come from all around the year."
                        + " That is not to say that there is none.";
        };
    }

    /** @param calls incidents of any cause and animal by month, those of the group among them */
    Effort effort(int[] months, int[] calls) {
        int collisions = 0;
        int all = 0;
        int fewest = Integer.MAX_VALUE;
        for (int month = 0; month < months.length; month++) {
            collisions += months[month];
            all += calls[month];
            fewest = Math.min(fewest, calls[month]);
        }
        List<@Nullable Integer> shown = told.parts(calls);
        if (collisions < LEAST || !told.tells(collisions)) {
            return new Effort(shown, null, "There are too few collisions to hold against the calls.");
        }
        if (fewest < LEAST_CALLS_A_MONTH || all < CALLS_A_COLLISION * collisions) {
            return new Effort(
                    shown,
                    null,
                    "There are too few calls beside these collisions to be taken as known effort: that takes "
                            + LEAST_CALLS_A_MONTH + " in every month and " + CALLS_A_COLLISION
                            + " to every collision. What is said of the year is said of the bare year: where people drive"
                            + " or ring more in some months, more is reported.");
        }
        double[] effort = new double[calls.length];
        for (int month = 0; month < calls.length; month++) {
            effort[month] = calls[month];
        }
        AgainstEffort against = AgainstEffort.test(months, effort, simulations(collisions), SEED);
        boolean differs = against.verdict().p() <= ALPHA;
        return new Effort(
                shown,
                Told.test(against.verdict()),
                differs
                        ? "The months differ from those in which calls of any kind come in: the season is not one of"
                                + " reporting alone."
                        : "The months do not differ from those in which calls of any kind come in by more than chance: a"
                                + " season, if one is told, may be one of reporting.");
    }

    Comparison compare(CountedCollisions one, CountedCollisions other) {
        Set<UUID> both = one.alsoIn(other);
        List<LocalDate> ofOne = one.daysWithout(both);
        List<LocalDate> ofOther = other.daysWithout(both);
        boolean tells = told.tells(one.count())
                && told.tells(other.count())
                && told.tells(ofOne.size())
                && told.tells(ofOther.size());
        Integer left = tells ? told.count(both.size()) : null;
        if (ofOne.size() < LEAST || ofOther.size() < LEAST || !tells) {
            return new Comparison(left, null, "There are too few collisions of one of the two groups to compare them.");
        }
        Test test = Told.test(WatsonWheeler.byPermutation(
                List.of(CircularSample.ofDates(ofOne), CircularSample.ofDates(ofOther)),
                simulations(ofOne.size() + ofOther.size()),
                SEED));
        return new Comparison(
                left,
                test,
                test.p() <= ALPHA
                        ? "The two groups are struck at different times of the year, or are spread over it differently."
                        : "The two groups are not told apart by the time of the year; that is not to say that they are"
                                + " alike.");
    }

    private static int simulations(int count) {
        return count <= MANY ? 999 : 199;
    }

    private static MonthDay day(double radians) {
        return MonthDay.from(CircularSample.dateAt(radians, A_YEAR));
    }

    private static String words(@Nullable MonthDay day) {
        return day == null
                ? "no day"
                : day.getDayOfMonth() + " " + day.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }
}
