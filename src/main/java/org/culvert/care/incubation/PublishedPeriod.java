package org.culvert.care.incubation;

import org.jspecify.annotations.Nullable;

/**
 * How long eggs of a taxon took where somebody looked.
 *
 * @param celsiusLow at which temperatures, in degrees Celsius; null where it was not told
 * @param daysLow from setting to hatching, in days
 * @param words what was found, with its spread
 */
public record PublishedPeriod(
        Setting setting,
        Basis basis,
        @Nullable Double celsiusLow,
        @Nullable Double celsiusHigh,
        double daysLow,
        double daysHigh,
        String words,
        String source) {
    /** Where the eggs lay. */
    public enum Setting {
        incubator,
        nest
    }

    /** What stands behind a figure. */
    public enum Basis {
        published,
        secondaryPage,
        commonPractice,
        fromMemory,
        derived
    }
}
