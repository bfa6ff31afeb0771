package org.culvert.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.hotspot.works.PublishedFigures;
import org.culvert.hotspot.works.StretchAnswer;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a stretch, laid out for reading.
 *
 * @param years counts by year as bars of a chart 360 wide and 120 high
 */
public record StretchPage(
        StretchAnswer answer,
        List<ReportPage.Bar> years,
        String fromKm,
        String toKm,
        Rose rose,
        List<Row> groups,
        List<ElsewhereRow> elsewhere,
        @Nullable ExpectedRow expected,
        List<PowerRow> power,
        @Nullable CaseRow worth,
        int leftOutTotal) {
    private static final int CHART_WIDTH = 360;
    private static final int CHART_HEIGHT = 90;

    public record Row(String of, String incidents) {}

    public record ElsewhereRow(String works, String animals, String reduction, String design, String source) {}

    public record ExpectedRow(
            String predicted, String estimate, String interval, String excess, String chance, String rate) {}

    public record PowerRow(int years, String power, String atBest) {}

    public record CaseRow(
            String collisions, String benefits, String costs, String net, String ratio, String breakEven) {}

    static StretchPage of(StretchAnswer answer, Locale locale) {
        List<@Nullable Integer> months = new ArrayList<>();
        answer.byMonth().forEach(month -> months.add(month.incidents()));
        return new StretchPage(
                answer,
                bars(answer.byYear()),
                number("%.2f", answer.fromChainageMetres() / 1000),
                number("%.2f", answer.toChainageMetres() / 1000),
                Rose.ofMonths(months, month -> true, locale),
                answer.byGroup().stream()
                        .map(count -> new Row(count.of(), shown(count)))
                        .toList(),
                answer.elsewhere().stream().map(StretchPage::elsewhere).toList(),
                expected(answer.expected()),
                power(answer.power()),
                worth(answer.businessCase()),
                answer.basis() == null
                        ? 0
                        : answer.basis().leftOut().stream()
                                .mapToInt(reason -> reason.incidents())
                                .sum());
    }

    private static String shown(StretchAnswer.Count count) {
        return count.incidents() == null ? "not told" : count.incidents().toString();
    }

    private static List<ReportPage.Bar> bars(List<StretchAnswer.Count> counts) {
        int most = counts.stream()
                .mapToInt(count -> count.incidents() == null ? 0 : count.incidents())
                .max()
                .orElse(0);
        int step = CHART_WIDTH / Math.max(1, Math.max(5, counts.size()));
        List<ReportPage.Bar> bars = new ArrayList<>();
        for (int i = 0; i < counts.size(); i++) {
            StretchAnswer.Count count = counts.get(i);
            int incidents = count.incidents() == null ? 0 : count.incidents();
            int height = Math.round((float) incidents / Math.max(1, most) * CHART_HEIGHT);
            bars.add(new ReportPage.Bar(
                    count.of(),
                    counts.size() > 10 ? "’" + count.of().substring(2) : count.of(),
                    shown(count),
                    i * step + 2,
                    15 + CHART_HEIGHT - height,
                    step - 4,
                    height));
        }
        return bars;
    }

    private static ElsewhereRow elsewhere(PublishedFigures.Elsewhere row) {
        String reduction = row.reductionPercent() == null ? "" : number("%.1f %%", row.reductionPercent());
        if (row.reductionLowPercent() != null || row.reductionHighPercent() != null) {
            reduction += (reduction.isEmpty() ? "" : ", ")
                    + (row.reductionLowPercent() == null ? "" : "from " + number("%.0f %%", row.reductionLowPercent()))
                    + (row.reductionHighPercent() == null ? "" : " – " + number("%.0f %%", row.reductionHighPercent()));
        }
        return new ElsewhereRow(
                row.works(),
                row.animals(),
                (reduction + (row.rangeIs() == null ? "" : " (" + row.rangeIs() + ")")).strip(),
                row.design(),
                row.source() + (row.doi() == null ? "" : ", doi " + row.doi()));
    }

    static @Nullable ExpectedRow expected(StretchAnswer.@Nullable Expected expected) {
        return expected == null
                ? null
                : new ExpectedRow(
                        number("%.1f", expected.predicted()),
                        number("%.1f", expected.estimate()),
                        number("%.1f", expected.low()) + " – " + number("%.1f", expected.high()),
                        number("%.1f", expected.excess()),
                        number("%.0f %%", 100 * expected.chanceOfExcess()),
                        number("%.2f", expected.perKilometreYear()));
    }

    private static List<PowerRow> power(StretchAnswer.@Nullable Power power) {
        return power == null
                ? List.of()
                : power.years().stream()
                        .map(year -> new PowerRow(
                                year.yearsAfter(),
                                number("%.0f %%", 100 * year.power()),
                                number("%.0f %%", 100 * year.atBest())))
                        .toList();
    }

    private static @Nullable CaseRow worth(StretchAnswer.@Nullable Case worth) {
        return worth == null
                ? null
                : new CaseRow(
                        ranged("%.2f", worth.collisionsPerYear()),
                        ranged("%.0f", worth.benefits()),
                        ranged("%.0f", worth.costs()),
                        ranged("%.0f", worth.net()),
                        ranged("%.2f", worth.benefitCostRatio()),
                        worth.breakEvenShareAvoided() == null
                                ? "never"
                                : number("%.0f %%", 100 * worth.breakEvenShareAvoided()));
    }

    private static String ranged(String format, StretchAnswer.Ranged range) {
        return number(format, range.best()) + " (" + number(format, range.low()) + " – " + number(format, range.high())
                + ")";
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
