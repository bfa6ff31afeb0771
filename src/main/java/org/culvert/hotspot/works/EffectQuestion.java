package org.culvert.hotspot.works;

import java.util.List;
import org.culvert.platform.InvalidException;
import org.jspecify.annotations.Nullable;

/**
 * What is asked about works.
 *
 * @param months numbers with commas between them
 * @param yearsBefore whole years before the building began
 * @param yearsAfter whole years after it was finished
 * @param beyondMetres how far beyond the ends animals may have been moved
 * @param windowMetres length of the windows that say what is usual
 * @param comparison stretches such as {@code Mill Road:2000-6000}; none for all other roads of the same class
 */
record EffectQuestion(
        @Nullable String taxonGroup,
        @Nullable String months,
        @Nullable String seasonWindow,
        int yearsBefore,
        int yearsAfter,
        double beyondMetres,
        double windowMetres,
        List<Stretch> comparison) {
    private static final int MOST_YEARS = 30;
    private static final int MOST_STRETCHES = 50;

    /** A stretch of a road. */
    record Stretch(String road, double from, double to) {}

    static EffectQuestion of(
            @Nullable String taxonGroup,
            @Nullable String months,
            @Nullable String seasonWindow,
            @Nullable Integer yearsBefore,
            @Nullable Integer yearsAfter,
            @Nullable Double beyondMetres,
            @Nullable Double windowMetres,
            List<String> comparison) {
        if (comparison.size() > MOST_STRETCHES) {
            throw InvalidException.of("comparison", "These are too many.", "at most " + MOST_STRETCHES + " stretches");
        }
        return new EffectQuestion(
                taxonGroup,
                months,
                seasonWindow,
                years("yearsBefore", yearsBefore, 5),
                years("yearsAfter", yearsAfter, 5),
                metres("beyondMetres", beyondMetres, 1000, 1, 20_000),
                windowMetres(windowMetres),
                comparison.stream().map(EffectQuestion::stretch).toList());
    }

    static double windowMetres(@Nullable Double asked) {
        return metres("windowMetres", asked, 1000, 100, 10_000);
    }

    static double metres(String field, @Nullable Double asked, double usual, double least, double most) {
        if (asked == null) {
            return usual;
        }
        if (!(asked >= least && asked <= most)) {
            throw InvalidException.of(
                    field, "That is no length for this.", "metres, " + (int) least + " to " + (int) most);
        }
        return asked;
    }

    private static int years(String field, @Nullable Integer asked, int usual) {
        if (asked == null) {
            return usual;
        }
        if (asked < 1 || asked > MOST_YEARS) {
            throw InvalidException.of(field, "So many years cannot be asked for.", "1 to " + MOST_YEARS);
        }
        return asked;
    }

    private static Stretch stretch(String text) {
        int colon = text.lastIndexOf(':');
        int dash = text.indexOf('-', colon + 2);
        if (colon < 1 || dash < 0) {
            throw notRead();
        }
        try {
            double from = Double.parseDouble(text.substring(colon + 1, dash));
            double to = Double.parseDouble(text.substring(dash + 1));
            if (!Double.isFinite(from) || !Double.isFinite(to)) {
                throw notRead();
            }
            return new Stretch(text.substring(0, colon).strip(), from, to);
        } catch (NumberFormatException noNumber) {
            throw notRead();
        }
    }

    private static InvalidException notRead() {
        return InvalidException.of(
                "comparison", "This is no stretch.", "a road, its first and its last chainage, as Mill Road:2000-6000");
    }
}
