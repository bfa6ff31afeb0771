package org.culvert.road.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which links of a network are those of an older one.
 *
 * <p>A link is the same if it runs in the same direction at the same level, begins and ends within {@value #TOLERANCE_METRES}
 * m of the other, is as long within {@value #LENGTH_SHARE} of the longer or twice that distance, and no point of either is
 * further than {@value #TOLERANCE_METRES} m from the other (the Hausdorff distance of two curves; Hausdorff 1914, Grundzüge
 * der Mengenlehre, chapter VIII), which is looked at every {@value #STEP_METRES} m and at every vertex. What a road is called
 * does not matter. Each link is the same as one other at most: the nearest pairs come first. The distances are choices of ours
 * (common practice, no source): more than maps of one survey differ by, less than a road is wide.
 */
public final class LinkMatching {
    public static final double TOLERANCE_METRES = 5;

    private static final double LENGTH_SHARE = 0.01;
    private static final double STEP_METRES = 5;
    private static final double METRES_A_DEGREE = 111_320;

    private record Cell(long east, long north) {}

    private record Pair(int before, int now, double apart) {}

    private final RoadNetwork before;
    private final RoadNetwork now;
    private final double metresEast;
    private final Map<Cell, List<Integer>> begins = new HashMap<>();

    private LinkMatching(RoadNetwork before, RoadNetwork now) {
        this.before = before;
        this.now = now;
        double latitude = now.link(0).vertices()[1];
        this.metresEast = METRES_A_DEGREE * Math.cos(Math.toRadians(latitude));
        for (int link = 0; link < before.linkCount(); link++) {
            double[] course = before.link(link).vertices();
            begins.computeIfAbsent(cell(course, 0, 0), key -> new ArrayList<>()).add(link);
        }
    }

    /**
     * For each link of the network the number of the same one in the older network, or -1 where there is none.
     *
     * @param before geographic
     * @param now geographic
     */
    public static int[] match(RoadNetwork before, RoadNetwork now) {
        return new LinkMatching(before, now).match();
    }

    private int[] match() {
        List<Pair> pairs = new ArrayList<>();
        for (int link = 0; link < now.linkCount(); link++) {
            double[] course = now.link(link).vertices();
            for (int east = -1; east <= 1; east++) {
                for (int north = -1; north <= 1; north++) {
                    for (int old : begins.getOrDefault(cell(course, east, north), List.of())) {
                        double apart = apart(old, link);
                        if (apart <= TOLERANCE_METRES) {
                            pairs.add(new Pair(old, link, apart));
                        }
                    }
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::apart)
                .thenComparingInt(Pair::before)
                .thenComparingInt(Pair::now));
        int[] same = new int[now.linkCount()];
        Arrays.fill(same, -1);
        boolean[] taken = new boolean[before.linkCount()];
        for (Pair pair : pairs) {
            if (same[pair.now] < 0 && !taken[pair.before]) {
                same[pair.now] = pair.before;
                taken[pair.before] = true;
            }
        }
        return same;
    }

    private Cell cell(double[] course, int east, int north) {
        return new Cell(
                (long) Math.floor(course[0] * metresEast / TOLERANCE_METRES) + east,
                (long) Math.floor(course[1] * METRES_A_DEGREE / TOLERANCE_METRES) + north);
    }

    /** Metres between two links, or infinity where they are not the same. */
    private double apart(int old, int link) {
        double oldLength = before.graph().length(old);
        double length = now.graph().length(link);
        boolean asLong = Math.abs(oldLength - length)
                <= Math.max(2 * TOLERANCE_METRES, LENGTH_SHARE * Math.max(oldLength, length));
        boolean level =
                before.attributes(old).effectiveLevel() == now.attributes(link).effectiveLevel();
        double[] here = before.link(old).vertices();
        double[] there = now.link(link).vertices();
        boolean ends = metres(here, 0, there, 0) <= TOLERANCE_METRES
                && metres(here, here.length - 2, there, there.length - 2) <= TOLERANCE_METRES;
        if (!asLong || !level || !ends) {
            return Double.POSITIVE_INFINITY;
        }
        return Math.max(farthest(here, there), farthest(there, here));
    }

    private double metres(double[] one, int at, double[] other, int there) {
        return Math.hypot((one[at] - other[there]) * metresEast, (one[at + 1] - other[there + 1]) * METRES_A_DEGREE);
    }

    /** How far the point of a course that is furthest from another is from it; infinity where that is too far. */
    private double farthest(double[] course, double[] other) {
        double farthest = 0;
        for (int i = 0; i + 3 < course.length; i += 2) {
            double dx = (course[i + 2] - course[i]) * metresEast;
            double dy = (course[i + 3] - course[i + 1]) * METRES_A_DEGREE;
            int pieces = (int) Math.max(1, Math.ceil(Math.hypot(dx, dy) / STEP_METRES));
            for (int piece = 0; piece <= pieces; piece++) {
                double part = (double) piece / pieces;
                double x = course[i] * metresEast + part * dx;
                double y = course[i + 1] * METRES_A_DEGREE + part * dy;
                farthest = Math.max(farthest, distance(x, y, other));
                if (farthest > TOLERANCE_METRES) {
                    return Double.POSITIVE_INFINITY;
                }
            }
        }
        return farthest;
    }

    private double distance(double x, double y, double[] course) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i + 3 < course.length; i += 2) {
            double ax = course[i] * metresEast;
            double ay = course[i + 1] * METRES_A_DEGREE;
            double dx = course[i + 2] * metresEast - ax;
            double dy = course[i + 3] * METRES_A_DEGREE - ay;
            double squared = dx * dx + dy * dy;
            double part = squared <= 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / squared));
            least = Math.min(least, Math.hypot(ax + part * dx - x, ay + part * dy - y));
        }
        return least;
    }
}
