package org.culvert.hotspot.works;

import org.culvert.hotspot.Words;
import org.jspecify.annotations.Nullable;

/** Figures as answers have them: rounded, and none where there is none. */
final class Figures {
    private Figures() {}

    /** Rounded, or null where it is not a number or has no bound. */
    static @Nullable Double finite(double value, int decimals) {
        return Double.isFinite(value) ? Double.valueOf(Words.rounded(value, decimals)) : null;
    }

    static double rounded(double value) {
        return Words.rounded(value, 4);
    }

    /** A figure in words. */
    static String number(double value) {
        return Words.number(value, Math.abs(value) < 10 ? 1 : 0);
    }

    /** A share as per cent in words. */
    static String percent(double share) {
        return Words.number(100 * share, 0) + " %";
    }
}
