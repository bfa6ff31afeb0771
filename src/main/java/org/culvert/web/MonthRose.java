package org.culvert.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.hotspot.HotspotReport;

/**
 * The months as petals around a circle, January from the top and on by the clock, in a drawing 260 by 260. The area of a petal
 * goes with its count: a length that went with it would make large months look larger than they are.
 *
 * @param petals twelve
 * @param rings radius of the circle of the greatest count and of half of it
 */
public record MonthRose(List<Petal> petals, List<String> rings) {
    /**
     * A month.
     *
     * @param path of its petal; empty where there is none
     * @param labelX where its letter stands
     */
    public record Petal(String name, String shortName, String incidents, String path, String labelX, String labelY) {}

    private static final double MIDDLE = 130;
    private static final double LARGEST = 105;
    private static final double LABEL = 118;
    private static final int MONTHS = 12;

    static MonthRose of(List<HotspotReport.Month> months) {
        int most = 0;
        for (HotspotReport.Month month : months) {
            most = Math.max(most, shown(month));
        }
        List<Petal> petals = new ArrayList<>();
        for (HotspotReport.Month month : months) {
            double from = 2 * Math.PI * (month.month() - 1) / MONTHS;
            double to = 2 * Math.PI * month.month() / MONTHS;
            double radius = most == 0 ? 0 : LARGEST * Math.sqrt((double) shown(month) / most);
            String name = ReportPage.monthName(month.month());
            petals.add(new Petal(
                    name,
                    name.substring(0, 1),
                    month.incidents() == null ? "not told" : month.incidents().toString(),
                    radius == 0 ? "" : path(from, to, radius),
                    text(x((from + to) / 2, LABEL)),
                    text(y((from + to) / 2, LABEL) + 3)));
        }
        return new MonthRose(petals, List.of(text(LARGEST), text(LARGEST * Math.sqrt(0.5))));
    }

    private static int shown(HotspotReport.Month month) {
        return month.incidents() == null ? 0 : month.incidents();
    }

    private static String path(double from, double to, double radius) {
        return "M" + text(MIDDLE) + " " + text(MIDDLE) + "L" + text(x(from, radius)) + " " + text(y(from, radius)) + "A"
                + text(radius) + " " + text(radius) + " 0 0 1 " + text(x(to, radius)) + " " + text(y(to, radius)) + "Z";
    }

    private static double x(double angle, double radius) {
        return MIDDLE + radius * Math.sin(angle);
    }

    private static double y(double angle, double radius) {
        return MIDDLE - radius * Math.cos(angle);
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
