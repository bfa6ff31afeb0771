package org.culvert.animal.photograph.picture;

import com.drew.lang.Rational;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;

/**
 * Degrees, minutes and seconds of EXIF as a text with as many decimals as the file has, so that what the digits cannot tell
 * counts for the uncertainty of the place. What is finer than a millionth is cut off.
 */
final class GpsText {
    private static final int MOST_DECIMALS = 6;

    private GpsText() {}

    /** @param parts degrees, minutes and seconds, none of them with the denominator 0 */
    static String of(Rational[] parts) {
        boolean wholeDegrees = isWhole(parts[0]);
        boolean wholeMinutes = isWhole(parts[1]);
        boolean noSeconds = parts[2].getNumerator() == 0;
        if (wholeDegrees && wholeMinutes && !(noSeconds && parts[1].getDenominator() > 1)) {
            return plain(parts[0], 0) + "\u00b0" + plain(parts[1], 0) + "'" + plain(parts[2], decimals(parts[2]))
                    + "\"";
        }
        if (wholeDegrees && noSeconds) {
            return plain(parts[0], 0) + "\u00b0" + plain(parts[1], decimals(parts[1])) + "'";
        }
        BigDecimal degrees = exact(parts[0])
                .add(exact(parts[1]).divide(BigDecimal.valueOf(60), 12, RoundingMode.HALF_EVEN))
                .add(exact(parts[2]).divide(BigDecimal.valueOf(3600), 12, RoundingMode.HALF_EVEN));
        int decimals = noSeconds && parts[1].getNumerator() == 0 ? decimals(parts[0]) : MOST_DECIMALS;
        return degrees.setScale(decimals, RoundingMode.DOWN).toPlainString() + "\u00b0";
    }

    private static boolean isWhole(Rational number) {
        return number.getNumerator() % number.getDenominator() == 0;
    }

    /** Those of a denominator that is a power of ten; otherwise, as of reduced fractions, as many as the number needs. */
    private static int decimals(Rational number) {
        BigDecimal denominator = BigDecimal.valueOf(number.getDenominator()).stripTrailingZeros();
        int decimals = denominator.unscaledValue().equals(BigInteger.ONE)
                ? -denominator.scale()
                : Math.max(0, exact(number).stripTrailingZeros().scale());
        return Math.min(decimals, MOST_DECIMALS);
    }

    private static String plain(Rational number, int decimals) {
        return exact(number).setScale(decimals, RoundingMode.DOWN).toPlainString();
    }

    private static BigDecimal exact(Rational number) {
        return BigDecimal.valueOf(number.getNumerator())
                .divide(BigDecimal.valueOf(number.getDenominator()), 12, RoundingMode.DOWN);
    }
}
