package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.culvert.hotspot.stats.rate.SafetyPerformance.Basis;
import org.culvert.hotspot.stats.rate.SafetyPerformance.LeftOut;
import org.culvert.hotspot.stats.rate.Windows.Estimated;
import org.culvert.hotspot.stats.rate.Windows.Window;

/**
 * Where roads have more collisions than roads like them: windows moved along all roads, ranked by excess.
 *
 * <p>A safety performance function is fitted to segments without works; each window, moved by a step, gets its empirical
 * Bayes estimate; those of greatest excess that share no road are reported (E. Hauer, J. Kononov, B. Allery and M. S.
 * Griffith 2002, Screening the road network for sites with promise, Transportation Research Record 1784, 27-32). The best of
 * many windows is a little better than it will be again, since each estimate only allows for its own chance.
 *
 * @param performance the function; without estimates it says why, and there are no windows
 * @param windows in order of rank
 * @param notScreened roads of which the function expects nothing, with the reason
 */
public record Screening(SafetyPerformance performance, List<Screened> windows, List<LeftOut> notScreened) {
    /**
     * How to screen.
     *
     * @param model how to fit the function
     * @param segmentMetres length of the segments it is fitted to
     * @param windowMetres length of the windows
     * @param stepMetres how far from one window to the next, at most a window
     * @param years for which incidents were counted
     * @param level of the intervals
     */
    public record Settings(
            SafetyPerformance.Settings model,
            double segmentMetres,
            double windowMetres,
            double stepMetres,
            double years,
            double level) {}

    /**
     * A window in its place.
     *
     * @param rank 1 for the greatest excess
     * @param window where
     * @param estimate for its length and all years
     * @param excessPerKilometreYear excess per kilometre and year
     * @param basis what the comparison means here
     * @param treated whether works already stand on any of it
     */
    public record Screened(
            int rank,
            Window window,
            EmpiricalBayes estimate,
            double excessPerKilometreYear,
            Basis basis,
            boolean treated) {}

    public Screening {
        windows = List.copyOf(windows);
        notScreened = List.copyOf(notScreened);
    }

    /**
     * Screens.
     *
     * @throws IllegalArgumentException where two profiles have the same road: pieces of a road need names of their own
     */
    public static Screening of(List<RoadProfile> profiles, Settings settings) {
        Map<String, RoadProfile> byRoad = new HashMap<>();
        List<Site> sites = new ArrayList<>();
        for (RoadProfile profile : profiles) {
            if (byRoad.put(profile.road().road(), profile) != null) {
                throw new IllegalArgumentException(
                        "road " + profile.road().road() + " comes twice: pieces of a road need names of their own");
            }
            sites.addAll(profile.sites(settings.segmentMetres(), settings.years()));
        }
        var performance = SafetyPerformance.of(sites, settings.model());
        if (!performance.fit().outcome().hasEstimates()) {
            return new Screening(performance, List.of(), List.of());
        }
        List<Estimated> estimated = new ArrayList<>();
        List<LeftOut> notScreened = new ArrayList<>();
        for (RoadProfile profile : profiles) {
            String obstacle = profile.obstacle(performance);
            if (!obstacle.isEmpty()) {
                notScreened.add(new LeftOut(profile.road().road(), obstacle));
                continue;
            }
            for (Window window : Windows.moved(profile.road(), settings.windowMetres(), settings.stepMetres())) {
                estimated.add(new Estimated(window, estimate(performance, profile, window, settings)));
            }
        }
        List<Screened> screened = new ArrayList<>();
        for (Estimated one : Windows.bestApart(estimated)) {
            RoadProfile profile = Objects.requireNonNull(byRoad.get(one.window().road()));
            screened.add(screened(screened.size() + 1, one, profile, performance, settings.years()));
        }
        return new Screening(performance, screened, notScreened);
    }

    private static EmpiricalBayes estimate(
            SafetyPerformance performance, RoadProfile profile, Window window, Settings settings) {
        return EmpiricalBayes.of(
                profile.expected(performance, window.fromChainageMetres(), window.toChainageMetres(), settings.years()),
                performance.overdispersion(window.lengthMetres()),
                window.incidents(),
                settings.level());
    }

    private static Screened screened(
            int rank, Estimated one, RoadProfile profile, SafetyPerformance performance, double years) {
        Window window = one.window();
        double from = window.fromChainageMetres();
        double to = window.toChainageMetres();
        return new Screened(
                rank,
                window,
                one.estimate(),
                EmpiricalBayes.perKilometreYear(one.estimate().excess(), window.lengthMetres(), years),
                profile.basis(performance, from, to),
                profile.isTreated(from, to));
    }
}
