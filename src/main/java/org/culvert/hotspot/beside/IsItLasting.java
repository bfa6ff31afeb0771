package org.culvert.hotspot.beside;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.culvert.hotspot.stats.Hotspot;
import org.culvert.hotspot.stats.pattern.Persistence;
import org.jspecify.annotations.Nullable;

/**
 * Through how many moving windows of three years each hotspot lasts, after Bil, Andrasik and Sedonik (2019), A detailed
 * spatiotemporal analysis of traffic crash hotspots, Applied Geography 107, 82-90.
 *
 * @param sentence what it says and rests on
 * @param windowYears length of a window
 * @param simulations how many sets were simulated in each window
 * @param windows the windows, in their order; none where the period is too short
 * @param hotspots those of the run, by rank
 */
public record IsItLasting(
        String sentence, int windowYears, int simulations, List<Window> windows, List<Lasting> hotspots) {
    /**
     * A window.
     *
     * @param collisions of the group in it; null where the asker is not told
     * @param hotspots how many were found in it; null where it could not be searched
     * @param why it could not, or null
     */
    public record Window(
            LocalDate from,
            LocalDate to,
            @Nullable Integer collisions,
            @Nullable Integer hotspots,
            @Nullable String why) {}

    /**
     * How a hotspot of the run fared.
     *
     * @param foundIn windows in which at least half of its length was found, counted from 1
     * @param windows how many those are
     * @param windowsApart how many of them share no year
     */
    public record Lasting(int rank, List<Integer> foundIn, int windows, int windowsApart) {}

    /** The search of one window. */
    @FunctionalInterface
    public interface Search {
        /** @return its hotspots, or why it cannot be searched */
        Found in(LocalDate first, LocalDate last);
    }

    /**
     * What a window had.
     *
     * @param collisions of the group
     * @param why it cannot be searched, or null
     */
    public record Found(
            int collisions,
            List<Hotspot> hotspots,
            @Nullable String why) {}

    private static final int YEARS = 3;
    private static final double SHARE = 0.5;

    /**
     * @param hotspots of the run, by rank
     * @param simulations of each window
     */
    public static IsItLasting ask(
            List<Hotspot> hotspots, LocalDate periodFrom, LocalDate periodTo, int simulations, Search search) {
        List<Window> windows = new ArrayList<>();
        List<Persistence.Period> periods = new ArrayList<>();
        // The whole run stands first, so that the same rule measures its stretches against every window
        periods.add(new Persistence.Period(
                periodFrom.getYear(),
                periodTo.getYear(),
                hotspots.stream().map(Overlap::stretch).toList()));
        if (!periodFrom.plusYears(YEARS + 1).minusDays(1).isAfter(periodTo)) {
            for (int i = 0; !end(periodFrom, i).isAfter(periodTo); i++) {
                LocalDate from = periodFrom.plusYears(i);
                Found found = search.in(from, end(periodFrom, i));
                periods.add(new Persistence.Period(
                        from.getYear(),
                        from.getYear() + YEARS - 1,
                        found.hotspots().stream().map(Overlap::stretch).toList()));
                windows.add(new Window(
                        from,
                        end(periodFrom, i),
                        found.collisions(),
                        found.why() == null ? found.hotspots().size() : null,
                        found.why()));
            }
        }
        if (windows.isEmpty()) {
            return new IsItLasting(
                    "The period is too short to say what lasts: it takes " + (YEARS + 1) + " years.",
                    YEARS,
                    0,
                    List.of(),
                    List.of());
        }
        List<Lasting> lasting = new ArrayList<>();
        for (Persistence.Lasting stretch : Persistence.stretches(periods, SHARE)) {
            if (stretch.period() == 0) {
                List<Integer> in =
                        stretch.heldIn().stream().filter(period -> period > 0).toList();
                lasting.add(new Lasting(hotspots.get(stretch.stretch()).rank(), in, in.size(), apart(in)));
            }
        }
        return new IsItLasting(sentence(windows.size(), simulations), YEARS, simulations, windows, lasting);
    }

    private static LocalDate end(LocalDate periodFrom, int window) {
        return periodFrom.plusYears((long) window + YEARS).minusDays(1);
    }

    /** Windows begin a year apart, so that of those held the first, and each three or more after the one taken, share no year. */
    private static int apart(List<Integer> windows) {
        int count = 0;
        int free = Integer.MIN_VALUE;
        for (int window : windows) {
            if (window >= free) {
                count++;
                free = window + YEARS;
            }
        }
        return count;
    }

    private static String sentence(int windows, int simulations) {
        return "The same search, at the same error rate in each window, in " + windows + " windows of " + YEARS
                + " years that move by one, with " + simulations
                + " simulated sets each. A hotspot lasts through a window"
                + " in which at least half of its length is found again. Windows share years, so that the same collisions"
                + " count in up to three of them; a window has fewer collisions than the whole period, so that a hotspot"
                + " that is not found in it may be there all the same.";
    }
}
