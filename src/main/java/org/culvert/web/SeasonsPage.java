package org.culvert.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.hotspot.when.CollisionSeasonsView;
import org.culvert.hotspot.when.CollisionSeasonsView.GroupSeason;
import org.culvert.hotspot.when.CollisionSeasonsView.HourTable;
import org.culvert.hotspot.when.CollisionSeasonsView.YearCircle;
import org.culvert.taxon.TaxonService.GroupView;
import org.culvert.web.words.RoadWords;
import org.jspecify.annotations.Nullable;

/**
 * When collisions happen, laid out for reading.
 *
 * @param seasons of the group that was asked about, and of that it was compared with
 * @param comparison whether the two have the same season
 */
public record SeasonsPage(
        LocalDate periodFrom,
        LocalDate periodTo,
        @Nullable String owner,
        @Nullable String smallest,
        List<Group> seasons,
        @Nullable Compared comparison,
        List<String> restsOn) {
    private static final double SMALLEST_P = 0.0001;

    /**
     * A group.
     *
     * @param key tells its parts of the page from those of another group
     * @param circle null where there are too few to tell anything
     */
    public record Group(
            String key,
            String name,
            String collisions,
            String countedOnDayOfReport,
            String inWords,
            List<LeftOutRow> leftOut,
            Rose months,
            List<MonthRow> monthRows,
            @Nullable Circle circle,
            String effortInWords,
            @Nullable TestRow effortTest,
            List<LightRow> light,
            String lightUnknown,
            String lightInWords,
            Hours hours,
            Hours reportHours) {}

    public record LeftOutRow(String reason, int incidents) {}

    public record MonthRow(String name, String collisions, String calls) {}

    /** The circle of the year in figures. */
    public record Circle(
            String meanDay, String resultantLength, String deviation, String because, List<TestRow> tests) {}

    public record TestRow(String test, String statistic, String p, String pBy) {}

    public record LightRow(String light, String collisions, String share) {}

    /** The hours around a day. */
    public record Hours(Rose rose, String unknown, @Nullable String mean) {}

    public record Compared(String inWords, @Nullable TestRow test, String inBoth) {}

    static SeasonsPage of(CollisionSeasonsView view, List<GroupView> groups, RoadWords words) {
        return new Writer(groups, words).page(view);
    }

    /** Writes in one language. */
    private record Writer(List<GroupView> groups, RoadWords words) {
        SeasonsPage page(CollisionSeasonsView view) {
            List<Group> seasons = new ArrayList<>();
            seasons.add(group("first", view.season()));
            GroupSeason other = view.comparedWith();
            if (other != null) {
                seasons.add(group("second", other));
            }
            CollisionSeasonsView.Comparison comparison = view.comparison();
            return new SeasonsPage(
                    view.periodFrom(),
                    view.periodTo(),
                    view.owner(),
                    view.smallestCount() == null ? null : view.smallestCount().toString(),
                    seasons,
                    comparison == null
                            ? null
                            : new Compared(
                                    comparison.inWords(), test(comparison.test()), told(comparison.inBothLeftOut())),
                    view.restsOn());
        }

        private Group group(String key, GroupSeason season) {
            List<MonthRow> months = new ArrayList<>();
            for (int month = 1; month <= season.months().size(); month++) {
                months.add(new MonthRow(
                        ReportPage.monthName(month),
                        told(season.months().get(month - 1)),
                        told(season.effort().calls().get(month - 1))));
            }
            return new Group(
                    key,
                    name(season.taxonGroup()),
                    told(season.collisions()),
                    told(season.countedOnDayOfReport()),
                    season.inWords(),
                    season.leftOut().stream()
                            .filter(left -> left.incidents() > 0)
                            .map(left -> new LeftOutRow(left.reason(), left.incidents()))
                            .toList(),
                    Rose.ofMonths(season.months(), month -> true, Languages.now()),
                    months,
                    circle(season.year()),
                    season.effort().inWords(),
                    test(season.effort().test()),
                    season.light().classes().stream()
                            .map(row -> new LightRow(
                                    row.light(),
                                    told(row.collisions()),
                                    row.shareOfTime() == null
                                            ? words.notKnown()
                                            : String.format(Locale.ROOT, "%.0f %%", 100 * row.shareOfTime())))
                            .toList(),
                    told(season.light().unknown()),
                    season.light().inWords(),
                    hours(season.hours()),
                    hours(season.reportHours()));
        }

        private String name(@Nullable String key) {
            return key == null
                    ? words.allAnimals()
                    : groups.stream()
                            .filter(group -> group.key().equals(key))
                            .map(GroupView::name)
                            .findFirst()
                            .orElse(key);
        }

        private @Nullable Circle circle(@Nullable YearCircle year) {
            if (year == null) {
                return null;
            }
            String mean = year.meanDay() == null
                    ? words.none()
                    : RegionTimes.format("d MMMM", Languages.now().toLanguageTag())
                            .format(year.meanDay());
            return new Circle(
                    year.meanDayHalfWidthDays() == null
                            ? mean
                            : words.giveOrTake(mean, figure(year.meanDayHalfWidthDays())),
                    figure(year.resultantLength()),
                    year.circularStandardDeviationDays() == null
                            ? words.none()
                            : words.days(figure(year.circularStandardDeviationDays())),
                    year.because(),
                    year.tests().stream().map(this::known).toList());
        }

        private Hours hours(HourTable hours) {
            return new Hours(
                    Rose.ofHours(hours.counts()),
                    told(hours.unknown()),
                    hours.meanHour() == null ? null : figure(hours.meanHour()));
        }

        private @Nullable TestRow test(CollisionSeasonsView.@Nullable Test test) {
            return test == null ? null : known(test);
        }

        private TestRow known(CollisionSeasonsView.Test test) {
            return new TestRow(test.test(), figure(test.statistic()), p(test.p()), test.pBy());
        }

        private String told(@Nullable Integer count) {
            return count == null ? words.notTold() : count.toString();
        }

        /** No reader does more with a smaller one, and no formula is true so far out. */
        private String p(double value) {
            return value < SMALLEST_P ? words.below(figure(SMALLEST_P)) : figure(value);
        }

        private static String figure(double value) {
            return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
        }
    }
}
