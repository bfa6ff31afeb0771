package org.culvert.care.incubation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * How fast eggs of a taxon develop: so many degree days above a threshold, which is a rate that grows in a straight line with
 * the temperature, {@code (T - threshold) / degreeDays} of the whole in a day.
 *
 * @param thresholdCelsius where development would stand still
 * @param degreeDays above the threshold, from setting to the end of development
 * @param celsiusLow from here to {@code celsiusHigh} it holds, and {@link #MARGIN_CELSIUS} beyond
 * @param statedError the largest share by which it missed a published time
 * @param waitsAfterwards whether the young wait in the egg once development is complete
 */
public record RateModel(
        double thresholdCelsius,
        double degreeDays,
        double celsiusLow,
        double celsiusHigh,
        double statedError,
        boolean waitsAfterwards,
        String words,
        String source) {
    /** How long the temperature may go unread, and still counts as the straight line between two readings. */
    public static final Duration LONGEST_GAP = Duration.ofHours(36);

    /** How far a reading may lie outside of where the model holds; as far as a good probe is wrong. */
    public static final double MARGIN_CELSIUS = 0.5;

    private static final Duration RECENT = Duration.ofDays(7);
    private static final double SECONDS_A_DAY = 86_400;

    /**
     * How far development has come.
     *
     * @param done share of the whole; 1 and more is complete
     * @param completeAt when it was complete, or will be if the temperature stays as it was in the last week; null where that
     *     is not known
     * @param notKnown why the record does not tell it, or null
     */
    public record Development(
            double done,
            @Nullable Instant completeAt,
            @Nullable String notKnown) {
        static Development notKnown(String why) {
            return new Development(0, null, why);
        }
    }

    /** Days of development at one temperature. */
    public double daysAt(double celsius) {
        return degreeDays / (celsius - thresholdCelsius);
    }

    /**
     * Follows development through a record, in straight lines between the readings. From the start to the first reading the
     * temperature counts as that of the first.
     *
     * @param start when the eggs were set
     * @param now until when the record should reach
     */
    public Development develop(TemperatureSeries record, Instant start, Instant now) {
        List<TemperatureSeries.Reading> course = course(record, start);
        if (course.isEmpty()) {
            return Development.notKnown("No temperature has been recorded since the eggs were set.");
        }
        double done = 0;
        for (int i = 0; i < course.size(); i++) {
            TemperatureSeries.Reading here = course.get(i);
            if (here.celsius() < celsiusLow - MARGIN_CELSIUS || here.celsius() > celsiusHigh + MARGIN_CELSIUS) {
                return Development.notKnown(String.format(
                        Locale.ROOT,
                        "At %s it was %.1f °C, and the model holds from %.1f to %.1f °C.",
                        here.at(),
                        here.celsius(),
                        celsiusLow,
                        celsiusHigh));
            }
            if (i == 0) {
                continue;
            }
            TemperatureSeries.Reading before = course.get(i - 1);
            if (isGap(before.at(), here.at())) {
                return gap(before.at(), here.at());
            }
            double seconds = TemperatureSeries.seconds(before.at(), here.at());
            double from = rate(before.celsius());
            double to = rate(here.celsius());
            double more = seconds * (from + to) / 2;
            if (done + more >= 1) {
                double bend = (to - from) / seconds;
                double left = 1 - done;
                double after = 2 * left / (from + Math.sqrt(Math.max(0, from * from + 2 * bend * left)));
                return new Development(1, before.at().plusMillis(Math.round(after * 1000)), null);
            }
            done += more;
        }
        Instant last = course.get(course.size() - 1).at();
        if (isGap(last, now)) {
            return gap(last, now);
        }
        double recent = TemperatureSeries.of(course)
                .from(
                        last.minus(RECENT).isBefore(course.get(0).at())
                                ? course.get(0).at()
                                : last.minus(RECENT))
                .mean();
        return new Development(done, last.plusMillis(Math.round((1 - done) / rate(recent) * 1000)), null);
    }

    private List<TemperatureSeries.Reading> course(TemperatureSeries record, Instant start) {
        List<TemperatureSeries.Reading> course = new ArrayList<>();
        TemperatureSeries.Reading before = null;
        for (TemperatureSeries.Reading reading : record.readings()) {
            if (reading.at().isBefore(start)) {
                before = reading;
                continue;
            }
            if (course.isEmpty() && reading.at().isAfter(start)) {
                course.add(new TemperatureSeries.Reading(start, at(before, reading, start)));
            }
            course.add(reading);
        }
        return course;
    }

    /** Between two readings that are near enough; else as at the later one. */
    private static double at(TemperatureSeries.@Nullable Reading before, TemperatureSeries.Reading after, Instant at) {
        if (before == null || isGap(before.at(), after.at())) {
            return after.celsius();
        }
        double share = TemperatureSeries.seconds(before.at(), at) / TemperatureSeries.seconds(before.at(), after.at());
        return before.celsius() + share * (after.celsius() - before.celsius());
    }

    private static boolean isGap(Instant from, Instant to) {
        return Duration.between(from, to).compareTo(LONGEST_GAP) > 0;
    }

    private static Development gap(Instant from, Instant to) {
        return Development.notKnown("From " + from + " to " + to + " no temperature was read; more than "
                + LONGEST_GAP.toHours() + " hours are not known.");
    }

    private double rate(double celsius) {
        return (celsius - thresholdCelsius) / degreeDays / SECONDS_A_DAY;
    }
}
