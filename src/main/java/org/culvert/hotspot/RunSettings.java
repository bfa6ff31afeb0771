package org.culvert.hotspot;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.culvert.hotspot.stats.RoadKernel;
import org.culvert.hotspot.stats.Settings;
import org.jspecify.annotations.Nullable;

/**
 * A hotspot run with nothing left open.
 *
 * @param season the days of the year that count
 * @param reachMetres half-width of the kernel; beside a sigma that of the compact kernel of the same standard deviation
 * @param sigmaMetres standard deviation of the heat kernel, or null for the compact one
 * @param declaration null in an exploratory run
 * @param alsoAsk what else is computed, by the keys of {@link AlsoAsk}, in their order
 */
public record RunSettings(
        LocalDate periodFrom,
        LocalDate periodTo,
        Season season,
        @Nullable String taxonGroup,
        @Nullable String owner,
        double reachMetres,
        @Nullable Double sigmaMetres,
        double pieceMetres,
        int simulations,
        long seed,
        String chance,
        double alpha,
        int minimumIncidents,
        double largestUncertaintyMetres,
        RunEntry.@Nullable Declaration declaration,
        List<String> alsoAsk) {
    /** Runs that were asked for before there was anything else to ask have none. */
    @SuppressWarnings("ConstantConditions")
    public RunSettings {
        alsoAsk = alsoAsk == null ? List.of() : List.copyOf(alsoAsk);
    }

    private static final int FEWER = 199;
    private static final double DAYS_A_YEAR = 365.25;

    /**
     * Days of the year: months, or a window from one day to another, both included, across the new year where the first
     * comes later.
     *
     * @param months months that count; empty for a window
     * @param window its name, or null
     * @param from first day of the window as {@code --MM-DD}, or null
     * @param to last day of the window, or null
     * @param source where the window comes from, or null
     */
    public record Season(
            List<Integer> months,
            @Nullable String window,
            @Nullable MonthDay from,
            @Nullable MonthDay to,
            @Nullable String source) {
        public static Season ofMonths(List<Integer> months) {
            return new Season(months.stream().distinct().sorted().toList(), null, null, null, null);
        }

        public boolean has(LocalDate day) {
            if (from == null || to == null) {
                return months.contains(day.getMonthValue());
            }
            MonthDay at = MonthDay.from(day);
            boolean afterFrom = !at.isBefore(from);
            boolean beforeTo = !at.isAfter(to);
            return from.isAfter(to) ? afterFrom || beforeTo : afterFrom && beforeTo;
        }

        /** In words, to follow "in". */
        public String words() {
            if (window != null) {
                return "the season " + window + " (" + dayMonth(from) + " to " + dayMonth(to) + ")";
            }
            if (months.size() == 12) {
                return "all months";
            }
            return String.join(
                    ", ",
                    months.stream()
                            .map(month -> java.time.Month.of(month)
                                    .getDisplayName(java.time.format.TextStyle.FULL, java.util.Locale.ENGLISH))
                            .toList());
        }

        private static String dayMonth(@Nullable MonthDay day) {
            return day == null
                    ? ""
                    : day.getDayOfMonth() + " "
                            + day.getMonth().getDisplayName(java.time.format.TextStyle.FULL, java.util.Locale.ENGLISH);
        }
    }

    /** The error rate at which this run names stretches: alpha, or its part of it where several runs share it. */
    double runAlpha() {
        return declaration == null ? alpha : alpha / declaration.cells();
    }

    boolean has(LocalDate day) {
        return inPeriod(day) && season.has(day);
    }

    boolean inPeriod(LocalDate day) {
        return !day.isBefore(periodFrom) && !day.isAfter(periodTo);
    }

    /** Length of the period, of which the season may be a part. */
    double years() {
        return (ChronoUnit.DAYS.between(periodFrom, periodTo) + 1) / DAYS_A_YEAR;
    }

    boolean asks(AlsoAsk question) {
        return alsoAsk.contains(question.key());
    }

    Settings search() {
        return search(1, simulations);
    }

    /** The same search at another bandwidth or with another number of simulations; pieces are cut finer where it is narrower. */
    Settings search(double timesBandwidth, int sets) {
        RoadKernel kernel = sigmaMetres == null
                ? new RoadKernel.Epanechnikov(timesBandwidth * reachMetres)
                : new RoadKernel.Gaussian(timesBandwidth * sigmaMetres);
        return new Settings(
                kernel, Math.min(1, timesBandwidth) * pieceMetres, sets, seed, runAlpha(), minimumIncidents);
    }

    /** Fewer sets than the run's, yet enough to tell its error rate. */
    int fewerSimulations() {
        return Math.min(simulations, Math.max(FEWER, (int) Math.ceil(1 / runAlpha() - 1 + 1e-9)));
    }
}
