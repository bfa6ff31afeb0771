package org.culvert.exchange.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** When things happen: the seasons of each taxon group, rain, the slow growth of the network, and the hours of the day. */
final class Calendar {
    private final Settings settings;
    private final boolean[] rain;
    private final Map<String, double[]> weights = new HashMap<>();

    Calendar(Settings settings) {
        this.settings = settings;
        Dice dice = new Dice(settings.seed(), "rain");
        rain = new boolean[(int) ChronoUnit.DAYS.between(settings.firstDay(), settings.lastDay()) + 1];
        for (int day = 0; day < rain.length; day++) {
            int month = settings.firstDay().plusDays(day).getMonthValue();
            boolean wetSeason = month >= 10 || month <= 3;
            double chance = day > 0 && rain[day - 1] ? 0.55 : wetSeason ? 0.2 : 0.12;
            rain[day] = dice.chance(chance);
        }
    }

    boolean rainedBy(LocalDate day) {
        int index = index(day);
        return rain[index] || index > 0 && rain[index - 1];
    }

    private int index(LocalDate day) {
        return (int) ChronoUnit.DAYS.between(settings.firstDay(), day);
    }

    /** A weight for each day from the first to the last; turtles leave the water after rain. */
    private double[] weights(Settings.Group group) {
        return weights.computeIfAbsent(group.name(), name -> {
            double[] result = new double[rain.length];
            for (int i = 0; i < result.length; i++) {
                LocalDate day = settings.firstDay().plusDays(i);
                double wet = group.activity().equals("nesting") && rainedBy(day) ? 2.5 : 1;
                result[i] = group.months()[day.getMonthValue() - 1]
                        * wet
                        * StrictMath.pow(1 + settings.yearlyGrowth(), i / 365.25);
            }
            return result;
        });
    }

    LocalDate day(Dice dice, Settings.Group group) {
        return settings.firstDay().plusDays(dice.weighted(weights(group)));
    }

    /** A day of the given months between two days, both included. */
    LocalDate day(Dice dice, Settings.Group group, List<Integer> months, LocalDate from, LocalDate to) {
        return settings.firstDay().plusDays(dice.weighted(restricted(group, months, from, to)));
    }

    /** The weight of the given months between two days. */
    double weight(Settings.Group group, List<Integer> months, LocalDate from, LocalDate to) {
        double sum = 0;
        for (double weight : restricted(group, months, from, to)) {
            sum += weight;
        }
        return sum;
    }

    private double[] restricted(Settings.Group group, List<Integer> months, LocalDate from, LocalDate to) {
        double[] all = weights(group);
        double[] some = new double[all.length];
        for (int i = 0; i < all.length; i++) {
            LocalDate day = settings.firstDay().plusDays(i);
            boolean in = !day.isBefore(from) && !day.isAfter(to) && months.contains(day.getMonthValue());
            some[i] = in ? all[i] : 0;
        }
        return some;
    }

    /** A moment of the day when animals of this activity are on the move. */
    LocalDateTime moment(Dice dice, String activity, LocalDate day) {
        double rise = Sun.rise(day);
        double set = Sun.set(day);
        double minutes = switch (activity) {
            case "dusk" -> {
                double of = dice.unit();
                yield of < 0.55
                        ? dice.normal(set + 25, 45)
                        : of < 0.8 ? dice.normal(rise - 15, 35) : dice.between(set, rise + 1440);
            }
            case "night" -> dice.between(set + 20, rise + 1440 - 20);
            case "midday" -> dice.normal((rise + set) / 2 + 60, 120);
            case "nesting" -> dice.chance(0.45) ? dice.normal(set - 20, 60) : dice.between(rise, set);
            case "day" -> dice.between(rise, set);
            default -> throw new IllegalArgumentException("no hours are known for " + activity);
        };
        return day.atStartOfDay().plusSeconds((long) (minutes * 60));
    }

    /** The time by which somebody would drive past in daylight and see it. */
    LocalDateTime nextDaylight(Dice dice, LocalDateTime from) {
        LocalDateTime at = from;
        double minutes = at.getHour() * 60.0 + at.getMinute();
        LocalDate day = at.toLocalDate();
        if (minutes > Sun.set(day) - 30) {
            day = day.plusDays(1);
            minutes = 0;
        }
        if (minutes < Sun.rise(day)) {
            at = day.atStartOfDay().plusSeconds((long) (60 * (Sun.rise(day) + dice.between(5, 150))));
        }
        return at;
    }

    Instant instant(LocalDateTime local) {
        ZoneOffset offset = settings.zone().getRules().getOffset(local);
        return local.toInstant(offset);
    }
}
