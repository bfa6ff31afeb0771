package org.culvert.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.culvert.hotspot.when.StretchTimes;
import org.jspecify.annotations.Nullable;

/**
 * Counts by hour as bars above, and below how light it is at each hour of the middle day of each month, in a drawing 360 by 220.
 *
 * @param night a row a month
 * @param twilight from dawn to dusk
 * @param day from sunrise to sunset
 * @param hours marks of the axis between both
 * @param words the counts that are not nought, in words
 */
public record HoursPicture(
        List<ReportPage.Bar> bars,
        List<Band> night,
        List<Band> twilight,
        List<Band> day,
        List<Tick> hours,
        String words) {
    private static final double LEFT = 12;
    private static final double HOUR = 14;
    private static final int BARS_TOP = 14;
    private static final int BARS_HEIGHT = 70;
    private static final double BANDS_TOP = 102;
    private static final double BAND = 9;
    private static final int HOURS = 24;
    private static final int HOURS_A_TICK = 3;

    /** A part of a row. */
    public record Band(String x, String y, String width, String height) {}

    static HoursPicture of(StretchTimes times) {
        List<@Nullable Integer> counts = times.hours().counts();
        int most = 1;
        for (Integer count : counts) {
            most = Math.max(most, count == null ? 0 : count);
        }
        List<ReportPage.Bar> bars = new ArrayList<>();
        for (int hour = 0; hour < counts.size(); hour++) {
            Integer count = counts.get(hour);
            int height = Math.round((float) (count == null ? 0 : count) / most * BARS_HEIGHT);
            bars.add(new ReportPage.Bar(
                    hour + "–" + (hour + 1),
                    "",
                    count == null ? "–" : count.toString(),
                    (int) (LEFT + hour * HOUR) + 1,
                    BARS_TOP + BARS_HEIGHT - height,
                    (int) HOUR - 2,
                    height));
        }
        List<Band> night = new ArrayList<>();
        List<Band> twilight = new ArrayList<>();
        List<Band> day = new ArrayList<>();
        for (StretchTimes.SunOfMonth sun : times.sun()) {
            double y = BANDS_TOP + (sun.month() - 1) * BAND;
            night.add(band(0, HOURS, y));
            add(twilight, sun.dawn(), sun.dusk(), y);
            add(day, sun.sunrise(), sun.sunset(), y);
        }
        List<Tick> ticks = new ArrayList<>();
        for (int hour = 0; hour <= HOURS; hour += HOURS_A_TICK) {
            ticks.add(new Tick(text(LEFT + hour * HOUR), Integer.toString(hour)));
        }
        return new HoursPicture(
                bars,
                night,
                twilight,
                day,
                ticks,
                bars.stream()
                        .filter(bar -> !bar.incidents().equals("0"))
                        .map(bar -> bar.name() + ": " + bar.incidents())
                        .collect(Collectors.joining("; ")));
    }

    /** Whether any hour has a count to draw. */
    public boolean isDrawn() {
        return bars.stream().anyMatch(bar -> bar.height() > 0);
    }

    /** In two parts where the end is after midnight; nothing where the sun does not get there. */
    private static void add(List<Band> bands, @Nullable Double from, @Nullable Double to, double y) {
        if (from == null || to == null) {
            return;
        }
        if (from <= to) {
            bands.add(band(from, to, y));
        } else {
            bands.add(band(0, to, y));
            bands.add(band(from, HOURS, y));
        }
    }

    private static Band band(double from, double to, double y) {
        return new Band(text(LEFT + from * HOUR), text(y), text((to - from) * HOUR), text(BAND));
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
