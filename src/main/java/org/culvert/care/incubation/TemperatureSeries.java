package org.culvert.care.incubation;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Temperatures of the substrate in the order of time, one at each instant: several at one instant count as their mean. */
public final class TemperatureSeries {
    /** @param celsius in degrees Celsius */
    public record Reading(Instant at, double celsius) {}

    private final List<Reading> readings;

    private TemperatureSeries(List<Reading> readings) {
        this.readings = List.copyOf(readings);
    }

    public static TemperatureSeries of(List<Reading> readings) {
        List<Reading> sorted = readings.stream()
                .sorted(Comparator.comparing(Reading::at).thenComparing(Reading::celsius))
                .toList();
        List<Reading> single = new ArrayList<>();
        int i = 0;
        while (i < sorted.size()) {
            Instant at = sorted.get(i).at();
            double sum = 0;
            int count = 0;
            while (i < sorted.size() && sorted.get(i).at().equals(at)) {
                sum += sorted.get(i++).celsius();
                count++;
            }
            single.add(new Reading(at, sum / count));
        }
        return new TemperatureSeries(single);
    }

    public boolean isEmpty() {
        return readings.isEmpty();
    }

    public List<Reading> readings() {
        return readings;
    }

    /** Those from an instant on. */
    public TemperatureSeries from(Instant from) {
        return new TemperatureSeries(readings.stream()
                .filter(reading -> !reading.at().isBefore(from))
                .toList());
    }

    /**
     * The mean over time of the straight lines between readings; of one reading, or none that lasts, the reading itself.
     *
     * @throws IllegalStateException of an empty series
     */
    public double mean() {
        double seconds = 0;
        double sum = 0;
        for (int i = 1; i < readings.size(); i++) {
            double lasts = seconds(readings.get(i - 1).at(), readings.get(i).at());
            seconds += lasts;
            sum += lasts * (readings.get(i - 1).celsius() + readings.get(i).celsius()) / 2;
        }
        return seconds > 0 ? sum / seconds : first().celsius();
    }

    public double lowest() {
        return readings.stream().mapToDouble(Reading::celsius).min().orElseThrow(IllegalStateException::new);
    }

    public double highest() {
        return readings.stream().mapToDouble(Reading::celsius).max().orElseThrow(IllegalStateException::new);
    }

    public Reading first() {
        if (readings.isEmpty()) {
            throw new IllegalStateException("an empty series has no readings");
        }
        return readings.get(0);
    }

    public Reading last() {
        if (readings.isEmpty()) {
            throw new IllegalStateException("an empty series has no readings");
        }
        return readings.get(readings.size() - 1);
    }

    static double seconds(Instant from, Instant to) {
        return (to.toEpochMilli() - from.toEpochMilli()) / 1000.0;
    }
}
