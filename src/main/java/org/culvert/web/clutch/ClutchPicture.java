package org.culvert.web.clutch;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.care.clutch.ClutchViews.ClutchView;
import org.culvert.care.clutch.ClutchViews.HatchWindowView;
import org.culvert.care.incubation.RateModel;
import org.culvert.care.incubation.TemperatureSeries;
import org.jspecify.annotations.Nullable;

/**
 * The temperatures of a clutch over its days, with the days on which eggs may hatch, in a drawing 400 by {@link #HEIGHT}. A gap
 * that is not known breaks the line. Of many readings in the same part of the drawing the lowest and the highest are drawn.
 *
 * @param path of the line; empty where no temperature is recorded
 * @param window where the days of hatching lie; null where neither end is told
 * @param openBefore whether they have no earliest day, and {@code openAfter} no latest
 * @param days labels below, {@code celsius} labels at the left
 */
public record ClutchPicture(
        String path,
        @Nullable Span window,
        boolean openBefore,
        boolean openAfter,
        List<Label> days,
        List<Label> celsius,
        List<Mark> marks,
        String words) {
    static final int HEIGHT = 230;
    private static final double LEFT = 34;
    private static final double RIGHT = 394;
    private static final double TOP = 26;
    private static final double BOTTOM = 196;
    private static final int MOST_DAY_LABELS = 6;
    private static final double LEAST_RANGE = 4;

    /** From one place to another, across. */
    public record Span(String from, String width) {}

    public record Label(String at, String words) {}

    /** @param sign S set, C candled, F failed, H hatched */
    public record Mark(String at, String sign) {}

    /** The frame of the drawing. */
    private record Scale(Instant from, double seconds, double low, double high) {
        double x(Instant at) {
            return LEFT + (RIGHT - LEFT) * between(from, at) / seconds;
        }

        double y(double celsius) {
            return BOTTOM - (BOTTOM - TOP) * (celsius - low) / (high - low);
        }
    }

    private static double between(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 1000.0;
    }

    /** @param set when the first eggs were set; null where none are, and there is nothing to draw */
    static @Nullable ClutchPicture draw(
            ClutchView clutch, TemperatureSeries series, @Nullable Instant set, Instant now, ClutchTongue tongue) {
        ZoneId zone = tongue.zone();
        if (set == null) {
            return null;
        }
        HatchWindowView window = clutch.hatchWindow();
        Instant begins = window.earliest() == null ? null : start(window.earliest(), zone);
        Instant ends = window.latest() == null ? null : start(window.latest().plusDays(1), zone);
        TemperatureSeries record = series.from(set);
        Instant last = set.plus(Duration.ofDays(7));
        for (Instant one : new Instant[] {
            begins == null ? null : begins.plus(Duration.ofDays(7)),
            ends,
            record.isEmpty() ? null : record.last().at()
        }) {
            last = one != null && one.isAfter(last) ? one : last;
        }
        for (var hatched : clutch.hatchings()) {
            last = hatched.at() != null && hatched.at().isAfter(last) ? hatched.at() : last;
        }
        double low = record.isEmpty() ? 26 : Math.floor(record.lowest() - 0.5);
        double high = record.isEmpty() ? 32 : Math.ceil(record.highest() + 0.5);
        if (high - low < LEAST_RANGE) {
            high = low + LEAST_RANGE;
        }
        var scale = new Scale(set, between(set, last), low, high);
        boolean told = begins != null || ends != null;
        double from = begins == null ? LEFT : scale.x(begins);
        double to = ends == null ? RIGHT : scale.x(ends);
        return new ClutchPicture(
                path(record, scale),
                told ? new Span(number(from), number(Math.max(1, to - from))) : null,
                told && begins == null,
                told && ends == null,
                days(scale, last, zone),
                celsius(scale),
                marks(clutch, scale, set),
                words(clutch, record, now, tongue));
    }

    private static Instant start(LocalDate day, ZoneId zone) {
        return day.atStartOfDay(zone).toInstant();
    }

    private static String path(TemperatureSeries record, Scale scale) {
        var path = new StringBuilder();
        TemperatureSeries.Reading before = null;
        int column = Integer.MIN_VALUE;
        double lowest = 0;
        double highest = 0;
        for (TemperatureSeries.Reading reading : record.readings()) {
            double x = scale.x(reading.at());
            boolean breaks = before == null
                    || Duration.between(before.at(), reading.at()).compareTo(RateModel.LONGEST_GAP) > 0;
            if ((int) x == column && !breaks) {
                lowest = Math.min(lowest, reading.celsius());
                highest = Math.max(highest, reading.celsius());
            } else {
                spread(path, column, lowest, highest, scale);
                column = (int) x;
                lowest = reading.celsius();
                highest = reading.celsius();
                path.append(breaks ? 'M' : 'L')
                        .append(number(x))
                        .append(' ')
                        .append(number(scale.y(reading.celsius())));
                if (breaks) {
                    path.append("h.1");
                }
            }
            before = reading;
        }
        spread(path, column, lowest, highest, scale);
        return path.toString();
    }

    private static void spread(StringBuilder path, int column, double lowest, double highest, Scale scale) {
        if (highest > lowest) {
            path.append('L')
                    .append(column)
                    .append(' ')
                    .append(number(scale.y(lowest)))
                    .append('L')
                    .append(column)
                    .append(' ')
                    .append(number(scale.y(highest)));
        }
    }

    private static List<Label> days(Scale scale, Instant last, ZoneId zone) {
        LocalDate first = scale.from().atZone(zone).toLocalDate();
        long all = ChronoUnit.DAYS.between(first, last.atZone(zone).toLocalDate());
        long step = 1;
        for (long wider : new long[] {2, 5, 10, 20, 50, 100, 200, 500}) {
            if (all / step > MOST_DAY_LABELS) {
                step = wider;
            }
        }
        List<Label> labels = new ArrayList<>();
        for (long day = 0; day <= all; day += step) {
            double x = scale.x(scale.from().plus(Duration.ofDays(day)));
            if (x <= RIGHT) {
                labels.add(new Label(number(x), Long.toString(day)));
            }
        }
        return labels;
    }

    private static List<Label> celsius(Scale scale) {
        int step = scale.high() - scale.low() > 8 ? 4 : 1;
        List<Label> labels = new ArrayList<>();
        for (int celsius = (int) Math.ceil(scale.low()); celsius <= scale.high(); celsius += step) {
            labels.add(new Label(number(scale.y(celsius)), Integer.toString(celsius)));
        }
        return labels;
    }

    private static List<Mark> marks(ClutchView clutch, Scale scale, Instant set) {
        List<Mark> marks = new ArrayList<>();
        marks.add(new Mark(number(scale.x(set)), "S"));
        clutch.candlings().stream()
                .filter(one -> one.withdrawnAt() == null)
                .forEach(one -> add(marks, scale, one.at(), "C"));
        clutch.failures().stream()
                .filter(one -> one.withdrawnAt() == null)
                .forEach(one -> add(marks, scale, one.at(), "F"));
        clutch.hatchings().forEach(one -> {
            if (one.at() != null) {
                add(marks, scale, one.at(), "H");
            }
        });
        return marks;
    }

    private static void add(List<Mark> marks, Scale scale, Instant at, String sign) {
        double x = scale.x(at);
        if (x >= LEFT && x <= RIGHT) {
            marks.add(new Mark(number(x), sign));
        }
    }

    private static String words(ClutchView clutch, TemperatureSeries record, Instant now, ClutchTongue tongue) {
        String temperatures = record.isEmpty()
                ? tongue.words().noTemperature()
                : tongue.words()
                        .temperatureRange(
                                tongue.number(record.lowest()),
                                tongue.number(record.highest()),
                                tongue.number(record.mean()),
                                tongue.day(record.last().at()));
        return temperatures + " " + tongue.window(clutch.hatchWindow()) + " "
                + tongue.words().todayIs(tongue.day(now));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
