package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.culvert.hotspot.stats.rate.Windows.Window;

/**
 * The shortest windows of a road whose estimate is precise enough to be named.
 *
 * <p>The road is cut into windows of a length. A window whose coefficient of variation is at most the limit passes. If none
 * does, the windows are made longer by that length, moved by that length, and tried again, up to the whole road (Highway
 * Safety Manual, AASHTO 2010, chapter 4; that longer windows move by the first length is from memory).
 */
public final class PeakSearch {
    private static final int MOST_ROUNDS = 5_000;

    private PeakSearch() {}

    /** A value and its standard deviation for each window of a round. */
    @FunctionalInterface
    public interface Measure {
        /** In the order of the windows. */
        List<Precision> of(List<Window> windows);
    }

    /**
     * A value and its standard deviation.
     *
     * @param value 0 or more
     * @param standardDeviation 0 or more
     */
    public record Precision(double value, double standardDeviation) {
        /** NaN where the value is 0. */
        public double coefficientOfVariation() {
            return value > 0 ? standardDeviation / value : Double.NaN;
        }
    }

    /** A window of a round. */
    public record Measured(Window window, Precision precision) {}

    /**
     * One round.
     *
     * @param windowMetres length of its windows
     * @param windows all of them, in order of chainage
     */
    public record Round(double windowMetres, List<Measured> windows) {
        public Round {
            windows = List.copyOf(windows);
        }
    }

    /**
     * How it went.
     *
     * @param peaks windows of the last round that pass, by value, the greatest first; none where even the whole road does
     *     not pass
     * @param rounds all rounds
     */
    public record Result(List<Measured> peaks, List<Round> rounds) {
        public Result {
            peaks = List.copyOf(peaks);
            rounds = List.copyOf(rounds);
        }

        /** Whether a window passed. */
        public boolean isFound() {
            return !peaks.isEmpty();
        }
    }

    /**
     * Searches.
     *
     * @param windowMetres length of the first windows, above 0
     * @param limit greatest coefficient of variation that passes, above 0
     */
    public static Result search(RoadChainages road, double windowMetres, double limit, Measure measure) {
        if (!(windowMetres > 0) || !(limit > 0)) {
            throw new IllegalArgumentException("a peak search needs a window and a limit above 0");
        }
        if (road.lengthMetres() / windowMetres > MOST_ROUNDS) {
            throw new IllegalArgumentException("a peak search takes a road of at most " + MOST_ROUNDS
                    + " windows: cut the road, or take longer windows than " + windowMetres + " m");
        }
        List<Round> rounds = new ArrayList<>();
        double width = windowMetres;
        while (true) {
            List<Window> windows =
                    rounds.isEmpty() ? Windows.segments(road, windowMetres) : Windows.moved(road, width, windowMetres);
            List<Precision> precisions = measure.of(windows);
            List<Measured> measured = new ArrayList<>();
            for (int i = 0; i < windows.size(); i++) {
                measured.add(new Measured(windows.get(i), precisions.get(i)));
            }
            rounds.add(new Round(Math.min(width, road.lengthMetres()), measured));
            List<Measured> peaks = measured.stream()
                    .filter(one -> one.precision().coefficientOfVariation() <= limit)
                    .sorted(Comparator.comparingDouble(
                                    (Measured one) -> -one.precision().value())
                            .thenComparingDouble(one -> one.window().fromChainageMetres()))
                    .toList();
            if (!peaks.isEmpty() || width >= road.lengthMetres()) {
                return new Result(peaks, rounds);
            }
            width += windowMetres;
        }
    }

    /**
     * The empirical Bayes estimate, whose precision is its own.
     *
     * @param predicted for a window, above 0
     * @param overdispersion k of a window
     */
    public static Measure empiricalBayes(ToDoubleFunction<Window> predicted, ToDoubleFunction<Window> overdispersion) {
        return windows -> windows.stream()
                .map(window -> EmpiricalBayes.of(
                        predicted.applyAsDouble(window),
                        overdispersion.applyAsDouble(window),
                        window.incidents(),
                        0.95))
                .map(estimate -> new Precision(estimate.estimate(), estimate.standardError()))
                .toList();
    }

    /**
     * The plain count, whose standard deviation is that of the counts of all windows of the round: the manual's textbook
     * case, for roads that have no model.
     */
    public static Measure counts() {
        return windows -> {
            double mean = windows.stream().mapToInt(Window::incidents).average().orElse(0);
            double squares = windows.stream()
                    .mapToDouble(window -> (window.incidents() - mean) * (window.incidents() - mean))
                    .sum();
            double deviation = windows.size() < 2 ? Double.NaN : Math.sqrt(squares / (windows.size() - 1));
            return windows.stream()
                    .map(window -> new Precision(window.incidents(), deviation))
                    .toList();
        };
    }
}
