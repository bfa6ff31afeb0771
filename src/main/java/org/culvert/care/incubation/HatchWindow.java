package org.culvert.care.incubation;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.culvert.care.incubation.PublishedPeriod.Basis;
import org.culvert.care.incubation.PublishedPeriod.Setting;
import org.jspecify.annotations.Nullable;

/**
 * When eggs may hatch: days to look more closely, and no days by which anything must have happened.
 *
 * @param earliest null where it cannot be told
 * @param latest likewise
 * @param narrowed whether the temperatures narrowed it, by a model of how fast such eggs develop
 * @param words on what it rests, a sentence each
 */
public record HatchWindow(
        @Nullable LocalDate earliest,
        @Nullable LocalDate latest,
        boolean narrowed,
        List<String> words,
        List<String> sources) {
    /** How far the mean may lie outside of a published temperature, and its days still stand. */
    public static final double NEAR_CELSIUS = 1;

    /** Swings that did no harm in a study of Elusor macrurus: 28 °C, three degrees up and down. */
    private static final double STEADY_CELSIUS = 6;

    /** By how much eggs were later where the swings were of six degrees up and down, in the same study. */
    private static final int DAYS_FOR_SWINGS = 10;

    public static final String NEVER_FAILED =
            "No egg has failed because these days have passed: an egg is given up only by a person who looked at it.";

    /**
     * @param scientificName for the words
     * @param firstSet when the first eggs were set; null where none are
     * @param lastSet when the last were
     * @param now until when the temperatures should be known
     * @param zone whose days are told
     */
    public static HatchWindow of(
            String scientificName,
            List<PublishedPeriod> periods,
            @Nullable RateModel model,
            TemperatureSeries record,
            @Nullable Instant firstSet,
            @Nullable Instant lastSet,
            Instant now,
            ZoneId zone) {
        List<String> words = new ArrayList<>();
        if (firstSet == null || lastSet == null) {
            words.add("No eggs are set.");
            return new HatchWindow(null, null, false, words, List.of());
        }
        if (model != null) {
            RateModel.Development first = model.develop(record, firstSet, now);
            RateModel.Development last = firstSet.equals(lastSet) ? first : model.develop(record, lastSet, now);
            Instant begins = first.completeAt();
            Instant ends = last.completeAt();
            if (begins != null && ends != null) {
                return ofModel(model, record.from(firstSet), firstSet, begins, lastSet, ends, zone);
            }
            words.add("The temperatures do not narrow it: "
                    + (first.notKnown() == null ? last.notKnown() : first.notKnown()));
        }
        return ofPeriods(scientificName, periods, record.from(firstSet), firstSet, lastSet, zone, words);
    }

    private static HatchWindow ofModel(
            RateModel model,
            TemperatureSeries record,
            Instant firstSet,
            Instant begins,
            Instant lastSet,
            Instant ends,
            ZoneId zone) {
        List<String> words = new ArrayList<>();
        Duration early = share(model.statedError(), Duration.between(firstSet, begins));
        Duration late = share(model.statedError(), Duration.between(lastSet, ends));
        LocalDate latest = ends.plus(late).atZone(zone).toLocalDate();
        words.add(model.words());
        words.add(String.format(
                Locale.ROOT,
                "The substrate was %.1f °C in the mean. Temperatures are taken as straight lines between readings, and from now on"
                        + " as in the last week; the model's stated error, %.1f per cent, is added on both sides.",
                record.isEmpty() ? Double.NaN : record.mean(),
                model.statedError() * 100));
        if (model.waitsAfterwards()) {
            words.add("Development is complete by " + latest
                    + " for all of them; the young then wait in the egg, so that no latest day is told.");
        }
        words.add(NEVER_FAILED);
        return new HatchWindow(
                begins.minus(early).atZone(zone).toLocalDate(),
                model.waitsAfterwards() ? null : latest,
                true,
                words,
                List.of(model.source()));
    }

    private static HatchWindow ofPeriods(
            String scientificName,
            List<PublishedPeriod> periods,
            TemperatureSeries record,
            Instant firstSet,
            Instant lastSet,
            ZoneId zone,
            List<String> words) {
        boolean ofIncubators = periods.stream().anyMatch(period -> period.setting() == Setting.incubator);
        List<PublishedPeriod> told = periods.stream()
                .filter(period -> (period.setting() == Setting.incubator) == ofIncubators)
                .toList();
        if (told.isEmpty()) {
            words.add("How many days eggs of " + scientificName + " take is not entered here.");
            words.add(NEVER_FAILED);
            return new HatchWindow(null, null, false, words, List.of());
        }
        Set<String> sources = new LinkedHashSet<>();
        double low = Double.MAX_VALUE;
        double high = 0;
        for (PublishedPeriod period : told) {
            low = Math.min(low, period.daysLow());
            high = Math.max(high, period.daysHigh());
            words.add(period.words() + basis(period.basis()));
            sources.add(period.source());
        }
        LocalDate earliest = firstSet.atZone(zone).toLocalDate().plusDays((long) Math.floor(low));
        LocalDate latest = lastSet.atZone(zone).toLocalDate().plusDays((long) Math.ceil(high));
        if (!ofIncubators) {
            words.add("These days are of nests in the ground; in an incubator it may be sooner.");
            earliest = null;
        }
        if (record.isEmpty()) {
            words.add("No temperature of the substrate is recorded.");
        } else {
            double mean = record.mean();
            words.add(String.format(
                    Locale.ROOT,
                    "The substrate was %.1f °C in the mean, from %.1f to %.1f °C.",
                    mean,
                    record.lowest(),
                    record.highest()));
            double coldest = told.stream()
                    .mapToDouble(period -> period.celsiusLow() == null ? Double.NaN : period.celsiusLow())
                    .filter(celsius -> !Double.isNaN(celsius))
                    .min()
                    .orElse(Double.NaN);
            double warmest = told.stream()
                    .mapToDouble(period -> period.celsiusHigh() == null ? Double.NaN : period.celsiusHigh())
                    .filter(celsius -> !Double.isNaN(celsius))
                    .max()
                    .orElse(Double.NaN);
            if (mean < coldest - NEAR_CELSIUS) {
                latest = null;
                words.add(
                        "That is colder than where the days were counted: cooler eggs take longer, and how much longer is"
                                + " not known.");
            } else if (mean > warmest + NEAR_CELSIUS) {
                earliest = null;
                words.add(
                        "That is warmer than where the days were counted: warmer eggs are sooner, and heat may harm them."
                                + " Ask somebody who knows the species.");
            }
            if (latest != null && record.highest() - record.lowest() > STEADY_CELSIUS) {
                latest = latest.plusDays(DAYS_FOR_SWINGS);
                words.add(
                        "It swings: ten days are added to the latest, since eggs of Elusor macrurus at 28 °C, six degrees up"
                                + " and down, were ten days later (Micheli, Journal of Zoology 2012, the abstract was read).");
            }
        }
        words.add(NEVER_FAILED);
        return new HatchWindow(earliest, latest, false, words, List.copyOf(sources));
    }

    private static String basis(Basis basis) {
        return switch (basis) {
            case published -> "";
            case secondaryPage -> " (From secondary pages, of low weight.)";
            case commonPractice -> " (Common practice, no source.)";
            case fromMemory -> " (From memory, no source.)";
            case derived -> " (Derived.)";
        };
    }

    private static Duration share(double share, Duration of) {
        return Duration.ofSeconds(Math.round(of.toSeconds() * share));
    }
}
