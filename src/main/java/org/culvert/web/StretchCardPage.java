package org.culvert.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.hotspot.HotspotReport;
import org.culvert.hotspot.RunSettings;
import org.culvert.hotspot.card.StretchCard;
import org.culvert.hotspot.when.StretchTimes;
import org.culvert.hotspot.works.StretchAnswer;
import org.culvert.hotspot.works.StretchWorks;
import org.culvert.road.CurrentRoads;
import org.culvert.web.words.RoadWords;
import org.jspecify.annotations.Nullable;

/**
 * The card of a hotspot, laid out for reading.
 *
 * @param row as the ranking has it
 * @param map the roads around it; null where nothing of it is drawn
 * @param curve its road; null where it is not told
 * @param now what the records say of it; null where that is not told
 * @param whyNotNow why it is not
 * @param ask address of the question about the stretch, filled in; null for those who may not ask
 */
public record StretchCardPage(
        ReportPage.Row row,
        String low,
        String high,
        List<String> councils,
        List<CrossingRow> crossings,
        IntervalPicture interval,
        @Nullable RoadMap map,
        @Nullable RoadCurve curve,
        @Nullable Now now,
        @Nullable String whyNotNow,
        @Nullable String ask) {
    /**
     * A road that meets it.
     *
     * @param where {@code on} it, {@code before} or {@code behind}
     * @param figure the kilometre on it, or metres from it
     */
    public record CrossingRow(String road, String where, String figure) {}

    /**
     * The records as they stand.
     *
     * @param months of all months, those of the run's season filled
     * @param hours null where they are not told
     */
    public record Now(
            StretchAnswer answer,
            String from,
            String to,
            Rose months,
            YearsPicture years,
            @Nullable HoursPicture hours,
            String hourUnknown,
            List<LightRow> light,
            List<StretchPage.Row> groups,
            List<WorksPart> works,
            StretchPage.@Nullable ExpectedRow expected) {}

    /** How many in which light; counts and shares in words. */
    public record LightRow(String light, String collisions, String share) {}

    /**
     * Works on the stretch.
     *
     * @param page what they did; null where it cannot be told yet
     */
    public record WorksPart(
            String letter,
            WorksRow works,
            @Nullable EffectPage page,
            @Nullable String whyNone) {}

    static StretchCardPage of(
            StretchCard card,
            HotspotReport report,
            @Nullable CurrentRoads roads,
            Locale locale,
            RoadWords words,
            boolean mayAsk) {
        HotspotReport.Stretch stretch = card.stretch();
        StretchCard.Now now = card.now();
        List<RoadCurve> curves = RoadCurve.of(List.of(stretch));
        return new StretchCardPage(
                ReportPage.row(stretch),
                number("%.1f", stretch.intervalLow()),
                number("%.1f", stretch.intervalHigh()),
                card.councils(),
                crossings(card),
                IntervalPicture.of(stretch),
                RoadMap.of(List.of(stretch), roads, RoadMap.Frame.ONE),
                curves.isEmpty() ? null : curves.get(0),
                now == null ? null : now(now, report.settings().season(), locale, words),
                card.whyNotNow(),
                mayAsk && now != null ? ask(now, report.settings()) : null);
    }

    private static List<CrossingRow> crossings(StretchCard card) {
        return card.crossings().stream()
                .map(crossing -> crossing.metresBeyond() == 0
                        ? new CrossingRow(crossing.road(), "on", number("%.2f", crossing.chainageMetres() / 1000))
                        : new CrossingRow(
                                crossing.road(),
                                crossing.chainageMetres() < card.stretch().fromChainageMetres() ? "before" : "behind",
                                number("%.0f", crossing.metresBeyond())))
                .toList();
    }

    private static Now now(StretchCard.Now now, RunSettings.Season season, Locale locale, RoadWords words) {
        StretchAnswer answer = now.answer();
        StretchTimes times = now.times();
        List<@Nullable Integer> months = new ArrayList<>();
        now.allYear().byMonth().forEach(month -> months.add(month.incidents()));
        Rose rose = Rose.ofMonths(months, month -> isAsked(season, month), locale);
        List<WorksPart> works = new ArrayList<>();
        for (int i = 0; i < now.works().size(); i++) {
            works.add(works(YearsPicture.letter(i), now.works().get(i), words));
        }
        return new Now(
                answer,
                number("%.2f", now.fromChainageMetres() / 1000),
                number("%.2f", now.toChainageMetres() / 1000),
                rose,
                YearsPicture.of(answer.byYear(), now.works()),
                times == null ? null : HoursPicture.of(times),
                times == null ? "–" : told(times.hours().unknown()),
                times == null
                        ? List.of()
                        : times.light().classes().stream()
                                .map(row -> new LightRow(
                                        row.light(),
                                        told(row.collisions()),
                                        row.shareOfTime() == null ? "–" : number("%.0f %%", 100 * row.shareOfTime())))
                                .toList(),
                answer.byGroup().stream()
                        .map(group -> new StretchPage.Row(group.of(), told(group.incidents())))
                        .toList(),
                works,
                StretchPage.expected(answer.expected()));
    }

    /** Of a window, a month counts of which any day does. */
    private static boolean isAsked(RunSettings.Season season, int month) {
        for (int day = 1; day <= 28; day++) {
            if (season.has(LocalDate.of(2023, month, day))) {
                return true;
            }
        }
        return false;
    }

    private static WorksPart works(String letter, StretchWorks works, RoadWords words) {
        return new WorksPart(
                letter,
                WorksRow.of(works.works(), words),
                works.effect() == null ? null : EffectPage.of(works.effect()),
                works.whyNone());
    }

    private static String ask(StretchCard.Now now, RunSettings settings) {
        StretchAnswer answer = now.answer();
        var address = new StringBuilder("/stretch?road=")
                .append(URLEncoder.encode(answer.road(), StandardCharsets.UTF_8))
                .append("&fromChainageMetres=")
                .append(number("%.0f", now.fromChainageMetres()))
                .append("&toChainageMetres=")
                .append(number("%.0f", now.toChainageMetres()))
                .append("&yearFrom=")
                .append(answer.yearFrom())
                .append("&yearTo=")
                .append(answer.yearTo())
                .append("&chosenBeforeLooking=no");
        if (settings.taxonGroup() != null) {
            address.append("&taxonGroup=").append(URLEncoder.encode(settings.taxonGroup(), StandardCharsets.UTF_8));
        }
        String window = settings.season().window();
        if (window != null) {
            address.append("&seasonWindow=").append(URLEncoder.encode(window, StandardCharsets.UTF_8));
        } else if (settings.season().months().size() < 12) {
            settings.season()
                    .months()
                    .forEach(month -> address.append("&months=").append(month));
        }
        return address.toString();
    }

    private static String told(@Nullable Integer count) {
        return count == null ? "–" : count.toString();
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
