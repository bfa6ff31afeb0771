package org.culvert.hotspot;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as documents have them. */
public final class Words {
    private Words() {}

    /** A number with at most so many decimals, without trailing zeros or exponent. */
    public static String number(double value, int decimals) {
        BigDecimal rounded = BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return (rounded.scale() < 0 ? rounded.setScale(0, RoundingMode.UNNECESSARY) : rounded).toPlainString();
    }

    public static double rounded(double value, int decimals) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_EVEN)
                .doubleValue();
    }
}
