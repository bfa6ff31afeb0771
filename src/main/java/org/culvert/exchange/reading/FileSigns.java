package org.culvert.exchange.reading;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.culvert.road.network.RoadNames;
import org.jspecify.annotations.Nullable;

/**
 * What a whole file shows, from its cells alone, that no row shows by itself: it is told every row, and keeps counts. The limits
 * are common practice, no source, unless said.
 */
public final class FileSigns {
    private static final LocalTime OFFICE_OPENS = LocalTime.of(8, 0);
    private static final LocalTime OFFICE_CLOSES = LocalTime.of(17, 0);
    private static final int FEWEST_HOURS = 30;

    /** Of the hours of a week 27 % are of offices. */
    private static final double OFFICE_SHARE = 0.8;

    /** Nothing in months of which that many rows would be usual has a chance of e^-5, less than 1 %, if rows come by chance. */
    private static final double MISSED_ROWS = 5;

    private static final int FEWEST_COPIED = 3;
    private static final double COPIED_SHARE = 0.001;
    private static final double MANY_TIES = 0.1;
    private static final double MANY_ROUNDED = 0.05;
    private static final int FEWEST_CHAINAGES = 10;
    private static final Pattern YEAR = Pattern.compile("(?<!\\d)((?:19|20)\\d\\d)(?!\\d)");

    private final List<Integer> titleYears = new ArrayList<>();
    private final @Nullable Axes axes;
    private final Pins pins = new Pins();
    private final Remembered<String> places =
            new Remembered<>(name -> RoadNames.comparable(name).replace(" ", ""));
    private final Map<YearMonth, Long> months = new TreeMap<>();
    private final Map<Integer, Long> years = new TreeMap<>();
    private long rows;
    private long hours;
    private long officeHours;
    private long chainages;
    private long wholeKilometres;
    private long hundredsOfMetres;
    private long spots;
    private long spotsWithUncertainty;

    /**
     * Signs of one file.
     *
     * @param region or null where none is known yet
     * @param titles the file's name and what stands above its headings: years in them are those that it says it is of
     */
    public FileSigns(Axes.@Nullable Box region, List<String> titles) {
        axes = region == null ? null : new Axes(region);
        for (String title : titles) {
            Matcher year = YEAR.matcher(title);
            while (year.find()) {
                titleYears.add(Integer.parseInt(year.group(1)));
            }
        }
    }

    public void take(ReadRow row) {
        rows++;
        takeTime(row);
        takeSpot(row);
        Double precision = row.chainagePrecisionMetres();
        Double chainage = row.chainageMetres();
        if (precision != null && chainage != null) {
            chainages++;
            wholeKilometres += chainage % 1000 == 0 ? 1 : 0;
            hundredsOfMetres += chainage % 100 < 1e-6 || chainage % 100 > 100 - 1e-6 ? 1 : 0;
        }
    }

    private void takeTime(ReadRow row) {
        if (row.day() != null
                && row.lastDay() != null
                && !YearMonth.from(row.day()).equals(YearMonth.from(row.lastDay()))) {
            years.merge(row.day().getYear(), 1L, Long::sum);
        } else if (row.day() != null) {
            months.merge(YearMonth.from(row.day()), 1L, Long::sum);
            years.merge(row.day().getYear(), 1L, Long::sum);
            LocalTime time = row.time();
            if (time != null) {
                hours++;
                DayOfWeek day = row.day().getDayOfWeek();
                boolean office = day != DayOfWeek.SATURDAY
                        && day != DayOfWeek.SUNDAY
                        && !time.isBefore(OFFICE_OPENS)
                        && !time.isAfter(OFFICE_CLOSES);
                officeHours += office ? 1 : 0;
            }
        } else if (row.year() != null) {
            years.merge(row.year(), 1L, Long::sum);
        }
    }

    private void takeSpot(ReadRow row) {
        Spot spot = row.spot();
        if (spot == null) {
            return;
        }
        spots++;
        spotsWithUncertainty += row.uncertaintyMetres() == null ? 0 : 1;
        String first = spot.first();
        String second = spot.second();
        if (first == null || second == null) {
            pins.take(String.valueOf(spot.text()), otherPlace(row));
            return;
        }
        pins.take(first + ", " + second, otherPlace(row));
        if (axes != null && spot.kind() == Spot.Kind.decimalDegrees) {
            axes.take(Double.parseDouble(first), Double.parseDouble(second));
        }
    }

    /** Two names of places for one position speak against it, whatever the names are; two spellings of one do not. */
    private @Nullable String otherPlace(ReadRow row) {
        String place = row.road() != null ? row.road() : row.locality();
        return place == null ? null : places.of(place);
    }

    /** Rows told. */
    public long rows() {
        return rows;
    }

    /** Findings of the whole file, with the counts that speak for them. */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        addAxes(findings);
        addYears(findings);
        addGaps(findings);
        addHours(findings);
        addPins(findings);
        addChainages(findings);
        if (spots > 0 && spotsWithUncertainty == 0) {
            findings.add(Finding.note(
                    Finding.Kind.noUncertainty,
                    null,
                    "No row tells how far off its coordinates may be: that is taken from their figures alone."));
        }
        if (rows > 0) {
            findings.add(Finding.note(
                    Finding.Kind.noEffort,
                    null,
                    "Nothing tells how often anybody looked: where few rows are, few may have looked."));
        }
        return List.copyOf(findings);
    }

    private void addAxes(List<Finding> findings) {
        if (axes == null) {
            return;
        }
        long[] counts = axes.counts();
        if (axes.standing() == Axes.Standing.withoutSign) {
            findings.add(Finding.doubt(
                    Finding.Kind.missingSign,
                    null,
                    "Of " + counts[0] + " positions " + counts[1] + " lie in the region as they stand, and " + counts[3]
                            + " with a minus sign before latitude, longitude or both.",
                    "a reading in which latitudes or longitudes without a sign are south or west"));
        }
        if (axes.standing() != Axes.Standing.swapped) {
            return;
        }
        findings.add(Finding.doubt(
                Finding.Kind.swappedAxes,
                null,
                "Of " + counts[0] + " positions " + counts[1] + " lie in the region as they stand, and " + counts[2]
                        + " with latitude and longitude swapped.",
                "a reading in which the axes are swapped"));
    }

    private void addYears(List<Finding> findings) {
        if (titleYears.isEmpty() || years.isEmpty()) {
            return;
        }
        int first = titleYears.stream().mapToInt(Integer::intValue).min().orElseThrow();
        int last = titleYears.stream().mapToInt(Integer::intValue).max().orElseThrow();
        Map<Integer, Long> outside = new TreeMap<>(years);
        outside.keySet().removeIf(year -> year >= first && year <= last);
        if (!outside.isEmpty()) {
            findings.add(Finding.doubt(
                    Finding.Kind.yearOutside,
                    null,
                    "By its title it is of " + (first == last ? "" + first : first + " to " + last)
                            + "; rows of other years: " + told(outside) + ".",
                    "days in the years that the title says, or another title"));
        }
    }

    private static String told(Map<Integer, Long> counts) {
        List<String> told = new ArrayList<>();
        counts.forEach((year, count) -> told.add(year + " (" + count + ")"));
        return told.size() <= 12
                ? String.join(", ", told)
                : String.join(", ", told.subList(0, 12)) + " and " + (told.size() - 12) + " years more";
    }

    /** Months of which rows would be expected, if as many came at any time, and none is there. */
    private void addGaps(List<Finding> findings) {
        if (months.size() < 2) {
            return;
        }
        List<YearMonth> there = new ArrayList<>(months.keySet());
        long all = months.values().stream().mapToLong(Long::longValue).sum();
        double perMonth = all / (double) (between(there.get(0), there.get(there.size() - 1)) + 1);
        List<String> gaps = new ArrayList<>();
        for (int i = 1; i < there.size(); i++) {
            long none = between(there.get(i - 1), there.get(i)) - 1;
            if (none * perMonth >= MISSED_ROWS) {
                gaps.add(there.get(i - 1).plusMonths(1)
                        + (none == 1 ? "" : " to " + there.get(i).minusMonths(1)));
            }
        }
        if (!gaps.isEmpty()) {
            findings.add(Finding.doubt(
                    Finding.Kind.monthsWithoutRows,
                    null,
                    String.format(
                                    Locale.ROOT,
                                    "There is no row of %s, where %.1f a month are usual",
                                    gaps.size() <= 12
                                            ? String.join(", ", gaps)
                                            : String.join(", ", gaps.subList(0, 12)) + " and " + (gaps.size() - 12)
                                                    + " gaps more",
                                    perMonth)
                            + ": nobody may have looked then.",
                    "what is missing, or a season and years in which somebody looked"));
        }
    }

    private static long between(YearMonth from, YearMonth to) {
        return ChronoUnit.MONTHS.between(from, to);
    }

    private void addHours(List<Finding> findings) {
        if (hours >= FEWEST_HOURS && officeHours >= OFFICE_SHARE * hours) {
            findings.add(Finding.doubt(
                    Finding.Kind.officeHours,
                    null,
                    "Of " + hours + " hours " + officeHours
                            + " are between 8 and 17 on weekdays: it may be when it was reported, and animals of dusk are"
                            + " struck at dusk.",
                    "hours at which it happened, or a reading without the column of hours"));
        }
    }

    private void addPins(List<Finding> findings) {
        String copied = pins.commonest(true);
        if (copied != null && pins.onOtherRoads() >= Math.max(FEWEST_COPIED, COPIED_SHARE * pins.rows())) {
            findings.add(Finding.doubt(
                    Finding.Kind.copiedPin,
                    null,
                    pins.onOtherRoads() + " rows have coordinates that stand on more than one road or place; " + copied
                            + " alone has " + pins.count(copied) + ".",
                    "coordinates of each row's own place"));
        }
        String tied = pins.commonest(false);
        if (tied != null && pins.tied() >= MANY_TIES * pins.rows()) {
            findings.add(Finding.note(
                    Finding.Kind.tiedPins,
                    null,
                    pins.tied() + " of " + pins.rows() + " rows share their exact coordinates with another row; " + tied
                            + " has " + pins.count(tied) + ": they may come from rounded chainages or a place's middle."
                            + (pins.isFull() ? " (Of more positions than are kept not all were counted.)" : "")));
        }
    }

    private void addChainages(List<Finding> findings) {
        if (chainages < FEWEST_CHAINAGES) {
            return;
        }
        // By chance every tenth and every hundredth would be such a one if they were told to 10 m
        if (hundredsOfMetres >= (0.1 + MANY_ROUNDED) * chainages
                || wholeKilometres >= (0.01 + MANY_ROUNDED) * chainages) {
            findings.add(Finding.note(
                    Finding.Kind.roundedChainage,
                    null,
                    "Of " + chainages + " chainages " + hundredsOfMetres + " are whole hundreds of metres, and "
                            + wholeKilometres + " of these whole kilometres: they are no finer than that."));
        }
    }
}
