package org.culvert.hotspot.stats.rate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Windows of fixed length moved along roads, and segments that cut roads up.
 *
 * <p>No window crosses a road's ends. The last one lies flush with the end, so that no piece of road is in none; a road
 * shorter than a window is one window. A window holds the incidents from its start on and before its end, and the road's
 * last window those at the very end too, so that segments share none and lose none.
 *
 * <p>Fit a model to {@link #segments segments}, which share no incident, and apply it to moved windows: moved ones overlap
 * and are no sample.
 */
public final class Windows {
    private static final int MOST_PER_ROAD = 1_000_000;

    private Windows() {}

    /**
     * A piece of a road.
     *
     * @param road its road
     * @param fromChainageMetres where it starts
     * @param toChainageMetres where it ends
     * @param incidents counted on it
     */
    public record Window(String road, double fromChainageMetres, double toChainageMetres, int incidents) {
        /** Length in metres. */
        public double lengthMetres() {
            return toChainageMetres - fromChainageMetres;
        }

        /** Incidents per kilometre and year. */
        public double perKilometreYear(double years) {
            return EmpiricalBayes.perKilometreYear(incidents, lengthMetres(), years);
        }

        /** Whether they share a piece of road. */
        public boolean overlaps(Window other) {
            return road.equals(other.road)
                    && fromChainageMetres < other.toChainageMetres
                    && other.fromChainageMetres < toChainageMetres;
        }

        /** This window as a site. */
        public Site site(double years, double aadt, String roadClass, boolean treated) {
            String id = road + " " + fromChainageMetres + "-" + toChainageMetres;
            return new Site(id, lengthMetres(), years, aadt, roadClass, incidents, treated);
        }
    }

    /** A window with its estimate. */
    public record Estimated(Window window, EmpiricalBayes estimate) {}

    /**
     * Windows moved by a step.
     *
     * @param widthMetres length of a window, above 0
     * @param stepMetres from one start to the next, above 0 and at most the width, so that no piece of road is skipped
     */
    public static List<Window> moved(RoadChainages road, double widthMetres, double stepMetres) {
        if (!(widthMetres > 0 && Double.isFinite(widthMetres)) || !(stepMetres > 0 && stepMetres <= widthMetres)) {
            throw new IllegalArgumentException("a window needs a length above 0, and a step above 0 and at most that");
        }
        requireFew(road, stepMetres);
        double start = road.fromChainageMetres();
        double end = road.toChainageMetres();
        if (road.lengthMetres() <= widthMetres) {
            return List.of(window(road, start, end));
        }
        List<Window> windows = new ArrayList<>();
        double slack = 1e-9 * widthMetres;
        int step = 0;
        while (start + step * stepMetres + widthMetres < end - slack) {
            double from = start + step * stepMetres;
            windows.add(window(road, from, from + widthMetres));
            step++;
        }
        windows.add(window(road, Math.max(start, end - widthMetres), end));
        return windows;
    }

    /**
     * The road cut into segments of a length; the last is what is left over.
     *
     * @param lengthMetres above 0
     */
    public static List<Window> segments(RoadChainages road, double lengthMetres) {
        if (!(lengthMetres > 0 && Double.isFinite(lengthMetres))) {
            throw new IllegalArgumentException("a segment needs a length above 0");
        }
        requireFew(road, lengthMetres);
        List<Window> segments = new ArrayList<>();
        double start = road.fromChainageMetres();
        double end = road.toChainageMetres();
        double slack = 1e-9 * lengthMetres;
        int step = 0;
        while (start + (step + 1) * lengthMetres < end - slack) {
            segments.add(window(road, start + step * lengthMetres, start + (step + 1) * lengthMetres));
            step++;
        }
        segments.add(window(road, start + step * lengthMetres, end));
        return segments;
    }

    /**
     * The windows of greatest excess that share no road: the best, the best of those apart from it, and so on. Equal ones
     * by estimate, then road and start.
     */
    public static List<Estimated> bestApart(List<Estimated> windows) {
        List<Estimated> ordered = windows.stream()
                .sorted(Comparator.comparingDouble(
                                (Estimated one) -> -one.estimate().excess())
                        .thenComparingDouble(one -> -one.estimate().estimate())
                        .thenComparing(one -> one.window().road())
                        .thenComparingDouble(one -> one.window().fromChainageMetres())
                        .thenComparingDouble(one -> one.window().toChainageMetres()))
                .toList();
        List<Estimated> apart = new ArrayList<>();
        Map<String, TreeMap<Double, Window>> taken = new HashMap<>();
        for (Estimated one : ordered) {
            Window window = one.window();
            TreeMap<Double, Window> onRoad = taken.computeIfAbsent(window.road(), road -> new TreeMap<>());
            var before = onRoad.floorEntry(window.fromChainageMetres());
            var after = onRoad.ceilingEntry(window.fromChainageMetres());
            if ((before == null || !before.getValue().overlaps(window))
                    && (after == null || !after.getValue().overlaps(window))) {
                apart.add(one);
                onRoad.put(window.fromChainageMetres(), window);
            }
        }
        return apart;
    }

    static void requireFew(RoadChainages road, double stepMetres) {
        if (road.lengthMetres() / stepMetres > MOST_PER_ROAD) {
            throw new IllegalArgumentException("a step of " + stepMetres + " m cuts road " + road.road()
                    + " into more than " + MOST_PER_ROAD + " pieces: take a longer one");
        }
    }

    private static Window window(RoadChainages road, double from, double to) {
        return new Window(road.road(), from, to, road.count(from, to));
    }
}
