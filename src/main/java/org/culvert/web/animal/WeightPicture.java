package org.culvert.web.animal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.care.growth.GrowthEntries.BodyMeasure;
import org.culvert.care.growth.GrowthViews.MeasuredView;
import org.jspecify.annotations.Nullable;

/**
 * The weighings of an animal as a line, 360 by 150.
 *
 * @param line points of the line through all weighings
 * @param low grams at the foot of the drawing; likewise those at its top
 */
public record WeightPicture(
        String line,
        List<Dot> dots,
        List<MeasuredView> weighings,
        String low,
        String high,
        Instant from,
        Instant to,
        String sentence) {
    private static final double LEFT = 52;
    private static final double RIGHT = 350;
    private static final double TOP = 12;
    private static final double FOOT = 122;

    public record Dot(String x, String y) {}

    /** Null where there are not two weighings. */
    static @Nullable WeightPicture of(List<MeasuredView> measurements, CaseTongue tongue) {
        List<MeasuredView> weighings = measurements.stream()
                .filter(one -> one.measure() == BodyMeasure.weight)
                .toList();
        if (weighings.size() < 2) {
            return null;
        }
        MeasuredView first = weighings.get(0);
        MeasuredView last = weighings.get(weighings.size() - 1);
        double least = weighings.stream().mapToDouble(MeasuredView::value).min().orElseThrow();
        double most = weighings.stream().mapToDouble(MeasuredView::value).max().orElseThrow();
        double room = Math.max((most - least) * 0.1, most * 0.02);
        double low = Math.max(0, least - room);
        double high = most + room;
        double all = Math.max(1, Duration.between(first.at(), last.at()).toSeconds());
        List<Dot> dots = new ArrayList<>();
        for (MeasuredView one : weighings) {
            double x = LEFT
                    + (RIGHT - LEFT) * Duration.between(first.at(), one.at()).toSeconds() / all;
            double y = FOOT - (FOOT - TOP) * (one.value() - low) / (high - low);
            dots.add(new Dot(text(x), text(y)));
        }
        return new WeightPicture(
                dots.stream()
                        .map(dot -> dot.x() + "," + dot.y())
                        .reduce((one, next) -> one + " " + next)
                        .orElse(""),
                dots,
                weighings,
                tongue.number(Math.round(low)),
                tongue.number(Math.round(high)),
                first.at(),
                last.at(),
                tongue.words()
                        .weighed(
                                weighings.size(),
                                tongue.number(first.value()),
                                tongue.day(tongue.dayOf(first.at())),
                                tongue.number(last.value()),
                                tongue.day(tongue.dayOf(last.at())),
                                tongue.number(least),
                                tongue.number(most)));
    }

    private static String text(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }
}
