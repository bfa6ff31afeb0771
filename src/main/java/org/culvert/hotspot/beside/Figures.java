package org.culvert.hotspot.beside;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as reports have them. */
final class Figures {
    private Figures() {}

    static double rounded(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .doubleValue();
    }

    /** Three figures, however small. */
    static double significant(double value) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(3, RoundingMode.HALF_EVEN))
                .doubleValue();
    }

    static String text(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return (rounded.scale() < 0 ? rounded.setScale(0, RoundingMode.UNNECESSARY) : rounded).toPlainString();
    }
}
