package org.culvert.web;

import java.time.Month;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Counts as petals around a circle, the first from the top and on by the clock, in a drawing 260 by 260. The area of a petal goes
 * with its count: a length that went with it would make large counts look larger than they are.
 *
 * @param petals one a count
 * @param rings radius of the circle of the greatest count and of half of it
 */
public record Rose(List<Petal> petals, List<String> rings) {
    /**
     * A count.
     *
     * @param shortName its label; empty for none
     * @param incidents the count, or that it is not told
     * @param path of its petal; empty where there is none
     * @param outlined whether it is drawn as an outline alone, as one that is not asked about
     * @param labelX where its label stands
     */
    public record Petal(
            String name,
            String shortName,
            String incidents,
            String path,
            boolean outlined,
            String labelX,
            String labelY) {
        /** Whether its count is not told, so that no petal does not mean none. */
        public boolean isWithheld() {
            return incidents.equals(NOT_TOLD);
        }
    }

    static final String NOT_TOLD = "–";
    private static final double MIDDLE = 130;
    private static final double LARGEST = 105;
    private static final double LABEL = 118;
    private static final int HOURS_A_LABEL = 3;

    /** Twelve counts from January, null for what is not told. */
    static Rose ofMonths(List<@Nullable Integer> counts) {
        return ofMonths(counts, month -> true, Locale.ENGLISH);
    }

    /** @param asked which months, 1 to 12, are asked about */
    static Rose ofMonths(List<@Nullable Integer> counts, IntPredicate asked, Locale locale) {
        List<String> names = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        for (int month = 1; month <= counts.size(); month++) {
            names.add(Month.of(month).getDisplayName(TextStyle.FULL_STANDALONE, locale));
            labels.add(Month.of(month).getDisplayName(TextStyle.NARROW_STANDALONE, locale));
        }
        return of(counts, names, labels, 0.5, petal -> asked.test(petal + 1));
    }

    /** 24 counts from midnight, null for what is not told; labels stand where their hour begins. */
    static Rose ofHours(List<@Nullable Integer> counts) {
        List<String> names = new ArrayList<>();
        List<String> labels = new ArrayList<>();
        for (int hour = 0; hour < counts.size(); hour++) {
            names.add(hour + "–" + (hour + 1));
            labels.add(hour % HOURS_A_LABEL == 0 ? Integer.toString(hour) : "");
        }
        return of(counts, names, labels, 0, hour -> true);
    }

    /** @param labelAt where in its petal a label stands, 0 for where it begins to 1 for where it ends */
    private static Rose of(
            List<@Nullable Integer> counts,
            List<String> names,
            List<String> labels,
            double labelAt,
            IntPredicate filled) {
        int most = 0;
        for (Integer count : counts) {
            most = Math.max(most, shown(count));
        }
        List<Petal> petals = new ArrayList<>();
        for (int i = 0; i < counts.size(); i++) {
            Integer count = counts.get(i);
            double from = angle(i, counts.size());
            double to = angle(i + 1, counts.size());
            double label = angle(i + labelAt, counts.size());
            double radius = most == 0 ? 0 : LARGEST * Math.sqrt((double) shown(count) / most);
            petals.add(new Petal(
                    names.get(i),
                    labels.get(i),
                    count == null ? NOT_TOLD : count.toString(),
                    radius == 0 ? "" : path(from, to, radius),
                    !filled.test(i),
                    text(x(label, LABEL)),
                    text(y(label, LABEL) + 3)));
        }
        return new Rose(petals, List.of(text(LARGEST), text(LARGEST * Math.sqrt(0.5))));
    }

    /** Whether there is anything to draw. */
    public boolean isDrawn() {
        return petals.stream().anyMatch(petal -> !petal.path().isEmpty());
    }

    /** Whether some petals are outlined alone. */
    public boolean hasOutlined() {
        return petals.stream()
                .anyMatch(petal -> petal.outlined() && !petal.path().isEmpty());
    }

    /** Whether some counts are not told. */
    public boolean isWithheld() {
        return petals.stream().anyMatch(Petal::isWithheld);
    }

    /** The counts that are not nought, in words. */
    public String words() {
        return petals.stream()
                .filter(petal -> !petal.incidents().equals("0"))
                .map(petal -> petal.name() + ": " + petal.incidents())
                .collect(Collectors.joining("; "));
    }

    private static double angle(double petal, int petals) {
        return 2 * Math.PI * petal / petals;
    }

    private static int shown(@Nullable Integer count) {
        return count == null ? 0 : count;
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
