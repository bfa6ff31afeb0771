package org.culvert.web;

import java.time.Month;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.culvert.hotspot.HotspotReport;
import org.jspecify.annotations.Nullable;

/**
 * A report laid out for reading.
 *
 * @param rows the hotspots; their lines as longitude and latitude, points apart by commas and lines by bars
 * @param bars the months as bars of a chart 360 wide and 120 high
 * @param curves roads around the first hotspots, as far as they are told
 */
public record ReportPage(
        HotspotReport.ErrorRate errorRate,
        HotspotReport.Inputs inputs,
        HotspotReport.Network network,
        HotspotReport.Engine engine,
        String aboutIntervals,
        @Nullable String informationWithheld,
        List<Row> rows,
        List<LeftOutRow> leftOut,
        int leftOutTotal,
        List<Bar> bars,
        Rose rose,
        BesidePage beside,
        List<RoadCurve> curves) {
    private static final int ROWS_ON_PAPER = 10;
    private static final int CHART_WIDTH = 360;
    private static final int CHART_HEIGHT = 90;

    /** A hotspot as a row of the table. */
    public record Row(
            int rank,
            String road,
            @Nullable String owner,
            String from,
            String to,
            String length,
            int incidents,
            String interval,
            String expected,
            String excess,
            String adjustedP,
            String odds,
            String rate,
            String lines) {}

    public record LeftOutRow(String reason, int incidents) {}

    /** A bar of the chart; its foot is at {@code y + height}. */
    public record Bar(String name, String shortName, String incidents, int x, int y, int width, int height) {
        /** Where its middle is. */
        public int middle() {
            return x + width / 2;
        }

        /** Where its number stands. */
        public int above() {
            return y - 3;
        }
    }

    static ReportPage of(HotspotReport report, Locale locale) {
        return new ReportPage(
                report.errorRate(),
                report.inputs(),
                report.network(),
                report.engine(),
                report.aboutIntervals(),
                report.informationWithheld(),
                report.hotspots().stream().map(ReportPage::row).toList(),
                report.leftOut().stream()
                        .filter(reason -> reason.incidents() > 0)
                        .map(reason -> new LeftOutRow(reason.reason(), reason.incidents()))
                        .toList(),
                report.leftOut().stream()
                        .mapToInt(HotspotReport.Reason::incidents)
                        .sum(),
                bars(report.months(), locale),
                Rose.ofMonths(
                        report.months().stream()
                                .map(HotspotReport.Month::incidents)
                                .toList(),
                        month -> true,
                        locale),
                BesidePage.of(report),
                RoadCurve.of(report.hotspots()));
    }

    static Row row(HotspotReport.Stretch stretch) {
        return new Row(
                stretch.rank(),
                stretch.road(),
                stretch.owner(),
                kilometres(stretch.fromChainageMetres()),
                kilometres(stretch.toChainageMetres()),
                number("%.0f", stretch.lengthMetres()),
                stretch.incidents(),
                number("%.1f", stretch.intervalLow()) + " – " + number("%.1f", stretch.intervalHigh()),
                number("%.2f", stretch.expected()),
                number("%.1f", stretch.excess()),
                number("%.3f", stretch.adjustedP()),
                odds(stretch.adjustedP()),
                number("%.2f", stretch.incidentsPerKilometreAndYear()),
                stretch.lines().stream().map(ReportPage::course).collect(Collectors.joining("|")));
    }

    private static String course(double[][] line) {
        return Arrays.stream(line)
                .map(point -> number("%.6f", point[0]) + " " + number("%.6f", point[1]))
                .collect(Collectors.joining(","));
    }

    /** One in how many, to two figures: a p in words. */
    static String odds(double p) {
        double many = p > 0 ? 1 / p : Double.POSITIVE_INFINITY;
        if (!(many < 1e9)) {
            return "1\u00a0000\u00a0000\u00a0000";
        }
        double unit = Math.max(1, Math.pow(10, Math.floor(Math.log10(many)) - 1));
        return grouped(Math.round(many / unit) * (long) unit);
    }

    /** In groups of three digits, as ISO 80000-1 has them. */
    private static String grouped(long value) {
        return String.format(Locale.ROOT, "%,d", value).replace(',', '\u00a0');
    }

    /** How much road the hotspots have, told in kilometres. */
    public String kilometres() {
        return number(
                "%.1f",
                rows.stream()
                                .mapToDouble(row -> Double.parseDouble(row.length()))
                                .sum()
                        / 1000);
    }

    /** The error rate in per cent, as far as it has figures. */
    public String alphaPercent() {
        return Tick.number(100 * errorRate.alpha());
    }

    /** How many collisions were counted on them. */
    public int incidentsThere() {
        return rows.stream().mapToInt(Row::incidents).sum();
    }

    /** The first hotspots, as far as a page of paper has room. */
    public List<Row> firstRows() {
        return rows.subList(0, Math.min(ROWS_ON_PAPER, rows.size()));
    }

    private static String kilometres(double metres) {
        return number("%.2f", metres / 1000);
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }

    private static List<Bar> bars(List<HotspotReport.Month> months, Locale locale) {
        int most = Math.max(1, months.stream().mapToInt(ReportPage::shown).max().orElse(1));
        int step = CHART_WIDTH / 12;
        return months.stream()
                .map(month -> {
                    int height = Math.round((float) shown(month) / most * CHART_HEIGHT);
                    return new Bar(
                            Month.of(month.month()).getDisplayName(TextStyle.FULL_STANDALONE, locale),
                            Month.of(month.month()).getDisplayName(TextStyle.NARROW_STANDALONE, locale),
                            month.incidents() == null ? "–" : month.incidents().toString(),
                            (month.month() - 1) * step + 3,
                            15 + CHART_HEIGHT - height,
                            step - 6,
                            height);
                })
                .toList();
    }

    private static int shown(HotspotReport.Month month) {
        return month.incidents() == null ? 0 : month.incidents();
    }

    static String monthName(int month) {
        return Month.of(month).getDisplayName(TextStyle.FULL_STANDALONE, Languages.now());
    }
}
