package org.culvert.web;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/** A mark on an axis: where in the drawing, and its number. */
public record Tick(String at, String words) {
    private static final int MOST = 5;

    /** Marks at round numbers from one number to another, about five. */
    static List<Tick> between(double from, double to, DoubleUnaryOperator place) {
        double step = step(to - from);
        List<Tick> ticks = new ArrayList<>();
        for (long i = (long) Math.ceil(from / step - 1e-9); i * step <= to + 1e-9 * step; i++) {
            ticks.add(new Tick(String.format(Locale.ROOT, "%.1f", place.applyAsDouble(i * step)), number(i * step)));
        }
        return ticks;
    }

    /** A round number without zeros that say nothing. */
    public static String number(double value) {
        BigDecimal number = BigDecimal.valueOf(value)
                .round(new MathContext(6, RoundingMode.HALF_EVEN))
                .stripTrailingZeros();
        return (number.scale() < 0 ? number.setScale(0, RoundingMode.UNNECESSARY) : number).toPlainString();
    }

    /** The least of 1, 2 and 5 times a power of ten that makes few enough of them. */
    private static double step(double length) {
        double power = Math.pow(10, Math.floor(Math.log10(length / MOST)));
        for (double times : new double[] {1, 2, 5}) {
            if (length / (times * power) <= MOST) {
                return times * power;
            }
        }
        return 10 * power;
    }
}
