package org.culvert.web;

import java.util.List;
import java.util.Locale;
import org.culvert.hotspot.HotspotReport;

/**
 * A count with its interval beside what chance expects, in a drawing 360 by 64.
 *
 * @param low where the interval begins in the drawing
 * @param expected where that of chance stands
 */
public record IntervalPicture(String low, String high, String counted, String expected, List<Tick> ticks) {
    private static final double LEFT = 14;
    private static final double RIGHT = 346;

    static IntervalPicture of(HotspotReport.Stretch stretch) {
        double most = 1.05 * Math.max(stretch.intervalHigh(), stretch.expected());
        return new IntervalPicture(
                x(stretch.intervalLow(), most),
                x(stretch.intervalHigh(), most),
                x(stretch.incidents(), most),
                x(stretch.expected(), most),
                Tick.between(0, most, value -> Double.parseDouble(x(value, most))));
    }

    private static String x(double value, double most) {
        return String.format(Locale.ROOT, "%.1f", LEFT + (RIGHT - LEFT) * value / Math.max(most, 1e-9));
    }
}
