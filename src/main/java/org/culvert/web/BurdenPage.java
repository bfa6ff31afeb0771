package org.culvert.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.culvert.hotspot.works.BurdenView;
import org.culvert.web.words.RoadWords;
import org.jspecify.annotations.Nullable;

/**
 * What a page says of windows along roads that have more collisions than roads like them.
 *
 * @param compared the first windows as a drawing; null where there are none
 * @param residuals the drawing of how the model fits; null where there is no model
 */
public record BurdenPage(
        BurdenView view,
        String windowMetres,
        List<WindowRow> windows,
        @Nullable Compared compared,
        @Nullable Residuals residuals,
        List<ModelRow> model,
        List<PeakRow> peaks,
        int leftOutTotal) {
    private static final int MOST_DRAWN = 12;
    private static final double WIDTH = 360;
    private static final double ROW = 28;
    private static final double PLOT_HEIGHT = 170;
    private static final double EDGE = 8;

    public record WindowRow(
            int rank,
            String road,
            String kilometres,
            String incidents,
            String predicted,
            String estimate,
            String interval,
            String excess,
            String rate,
            String chance,
            boolean works) {}

    public record ModelRow(String name, String value, String error) {}

    public record PeakRow(String road, String where, String estimate, String variation) {}

    /**
     * Windows one below the other: what is counted, what is expected of roads like it, and the estimate with its interval.
     *
     * @param height of the drawing
     * @param words what it shows
     * @param ticks marks of the axis at the foot
     */
    public record Compared(String height, String foot, String words, List<Bar> bars, List<Tick> ticks) {}

    /**
     * @param y of the line
     * @param labelY of the words above it
     * @param low where the interval starts
     * @param high where it ends
     */
    public record Bar(
            String label,
            String y,
            String labelY,
            String low,
            String high,
            String estimate,
            String predicted,
            String counted) {}

    /**
     * Sums of residuals in the order of a covariate: Hauer and Bamfo (1997), Two tools for finding what function links the
     * dependent variable to the explanatory variables.
     *
     * @param bounds path of the area between the bounds
     * @param sums path of the sums
     * @param zero height of zero in the drawing
     */
    public record Residuals(String words, String bounds, String sums, String zero, List<Tick> ticks) {}

    static BurdenPage of(BurdenView view, RoadWords words) {
        BurdenView.Residuals residuals = view.residuals();
        return new BurdenPage(
                view,
                number("%.0f", view.windowMetres()),
                view.windows().stream().map(window -> row(window, words)).toList(),
                view.windows().isEmpty() ? null : compared(view.windows(), words),
                residuals == null || residuals.steps().isEmpty() ? null : residuals(residuals, words),
                view.model() == null
                        ? List.of()
                        : view.model().coefficients().stream()
                                .map(one -> new ModelRow(
                                        one.name(), number("%.3f", one.value()), number("%.3f", one.standardError())))
                                .toList(),
                view.peaks().stream().map(peak -> peak(peak, words)).toList(),
                view.basis().leftOut().stream()
                        .mapToInt(reason -> reason.incidents())
                        .sum());
    }

    private static WindowRow row(BurdenView.Window window, RoadWords words) {
        return new WindowRow(
                window.rank(),
                window.councils() == null ? window.road() : window.road() + " (" + window.councils() + ")",
                kilometres(window.fromChainageMetres()) + "–" + kilometres(window.toChainageMetres()),
                Integer.toString(window.incidents()),
                number("%.1f", window.predicted()),
                number("%.1f", window.estimate()),
                words.fromTo(number("%.1f", window.low()), number("%.1f", window.high())),
                number("%.1f", window.excess()),
                number("%.2f", window.excessPerKilometreYear()),
                number("%.0f %%", 100 * window.chanceOfExcess()),
                window.worksStandThere());
    }

    private static PeakRow peak(BurdenView.Peak peak, RoadWords words) {
        Double from = peak.fromChainageMetres();
        Double to = peak.toChainageMetres();
        return new PeakRow(
                peak.road(),
                from == null || to == null
                        ? words.nonePrecise(number("%.0f", peak.windowMetres()))
                        : kilometres(from) + "–" + kilometres(to),
                peak.estimate() == null ? "–" : number("%.1f", peak.estimate()),
                peak.coefficientOfVariation() == null ? "–" : number("%.2f", peak.coefficientOfVariation()));
    }

    private static Compared compared(List<BurdenView.Window> windows, RoadWords words) {
        List<BurdenView.Window> drawn = windows.subList(0, Math.min(MOST_DRAWN, windows.size()));
        double most = 1;
        for (BurdenView.Window window : drawn) {
            most = Math.max(most, Math.max(window.high(), Math.max(window.incidents(), window.predicted())));
        }
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < drawn.size(); i++) {
            BurdenView.Window window = drawn.get(i);
            double y = ROW * i + 20;
            bars.add(new Bar(
                    window.rank() + ". " + window.road() + ", km " + kilometres(window.fromChainageMetres()) + "–"
                            + kilometres(window.toChainageMetres()),
                    number("%.1f", y),
                    number("%.1f", y - 7),
                    number("%.1f", x(window.low(), most)),
                    number("%.1f", x(window.high(), most)),
                    number("%.1f", x(window.estimate(), most)),
                    number("%.1f", x(window.predicted(), most)),
                    number("%.1f", x(window.incidents(), most))));
        }
        double foot = ROW * drawn.size() + 10;
        double longest = most;
        BurdenView.Window first = drawn.get(0);
        String described = words.firstIs(
                first.road(),
                kilometres(first.fromChainageMetres()),
                kilometres(first.toChainageMetres()),
                first.incidents(),
                number("%.1f", first.predicted()),
                number("%.1f", first.estimate()));
        return new Compared(
                number("%.0f", foot + 20),
                number("%.1f", foot),
                described,
                bars,
                Tick.between(0, longest, value -> x(value, longest)));
    }

    private static double x(double value, double most) {
        return EDGE + (WIDTH - 2 * EDGE) * value / most;
    }

    private static Residuals residuals(BurdenView.Residuals residuals, RoadWords words) {
        List<BurdenView.Step> steps = residuals.steps();
        double first = steps.get(0).at();
        double last = steps.get(steps.size() - 1).at();
        double most = 1e-9;
        for (BurdenView.Step step : steps) {
            most = Math.max(most, Math.max(Math.abs(step.sum()), step.bound()));
        }
        var sums = new StringBuilder();
        var above = new StringBuilder();
        var below = new StringBuilder();
        for (BurdenView.Step step : steps) {
            double x = last > first ? EDGE + (WIDTH - 2 * EDGE) * (step.at() - first) / (last - first) : WIDTH / 2;
            sums.append(sums.isEmpty() ? 'M' : 'L').append(spot(x, y(step.sum(), most)));
            above.append(above.isEmpty() ? 'M' : 'L').append(spot(x, y(step.bound(), most)));
            below.insert(0, "L" + spot(x, y(-step.bound(), most)));
        }
        boolean byTraffic = residuals.by().equals("aadt");
        String from = number("%.0f", first);
        String to = number("%.0f", last);
        String percent = number("%.0f", 100 * residuals.shareOutside());
        String described =
                byTraffic ? words.residualsByTraffic(from, to, percent) : words.residualsByLength(from, to, percent);
        return new Residuals(
                described,
                above.append(below).append('Z').toString(),
                sums.toString(),
                number("%.1f", y(0, most)),
                List.of(
                        new Tick(number("%.1f", EDGE), number("%.0f", first)),
                        new Tick(number("%.1f", WIDTH - EDGE), number("%.0f", last))));
    }

    private static double y(double value, double most) {
        return PLOT_HEIGHT / 2 - (PLOT_HEIGHT / 2 - EDGE) * value / most;
    }

    private static String spot(double x, double y) {
        return number("%.1f", x) + " " + number("%.1f", y);
    }

    private static String kilometres(double metres) {
        return number("%.2f", metres / 1000);
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
