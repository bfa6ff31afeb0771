package org.culvert.road.network;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Tells the two carriageways of a divided road from each other, where a source has them as lines that are travelled one way
 * and says no more.
 *
 * <p>Lines of one name (or number) that go on in one another are a strand. A strand is a carriageway if beside half of its
 * length at least, within {@value #APART_METRES} m, another strand of the same road runs the other way. Strands beside one
 * another go into opposite directions, and each is named by the point of the compass that it goes to on the whole, on the
 * axis (north and south, or east and west) that its road keeps to most: {@code northbound}. A one-way street with nothing
 * beside it is no carriageway, and neither is a ring. How far apart, how long and how opposite are choices of ours (common
 * practice, no source).
 */
public final class CarriagewayPairs {
    private static final double APART_METRES = 80;
    private static final double SAMPLE_METRES = 20;
    private static final double SHARE_BESIDE = 0.5;
    private static final double OPPOSITE_DEGREES = 150;
    private static final double SHARPEST_TURN_DEGREES = 60;
    private static final double METRES_A_DEGREE = 111_320;

    /** A vertex is the same as another within about a millimetre. */
    private static final double SAME_DEGREES = 1e-8;

    /** A short piece of a line: its middle and where it goes to, in metres. */
    private record Sample(int strand, double x, double y, double dx, double dy) {}

    private record Cell(long x, long y) {}

    private record Vertex(long x, long y) {}

    private final List<double[]> lines;
    private final int[] strand;
    private final double metresEast;

    private CarriagewayPairs(List<double[]> lines) {
        this.lines = lines;
        this.strand = new int[lines.size()];
        this.metresEast = METRES_A_DEGREE * Math.cos(Math.toRadians(lines.get(0)[1]));
    }

    /**
     * The carriageway of each line, or null where it is none.
     *
     * @param lines lines of which some are travelled one way; longitude and latitude on WGS 84
     */
    public static @Nullable String[] tell(List<RoadLine> lines) {
        Map<String, List<Integer>> roads = new LinkedHashMap<>();
        for (int line = 0; line < lines.size(); line++) {
            String road = roadOf(lines.get(line));
            if (road != null) {
                roads.computeIfAbsent(road, key -> new ArrayList<>()).add(line);
            }
        }
        @Nullable String[] told = new String[lines.size()];
        for (List<Integer> road : roads.values()) {
            if (road.size() > 1) {
                @Nullable
                String[] ofRoad = new CarriagewayPairs(road.stream()
                                .map(line -> lines.get(line).vertices())
                                .toList())
                        .tell();
                for (int i = 0; i < ofRoad.length; i++) {
                    told[road.get(i)] = ofRoad[i];
                }
            }
        }
        return told;
    }

    /** Null for what can be no carriageway, or says itself which one it is. */
    private static @Nullable String roadOf(RoadLine line) {
        RoadAttributes known = line.attributes();
        double[] course = line.vertices();
        boolean oneWay = Boolean.TRUE.equals(known.oneWay()) && known.carriageway() == null && course.length >= 4;
        if (!oneWay || same(course, 0, course, course.length - 2)) {
            return null;
        }
        if (known.roadName() != null) {
            return "name " + known.roadName().toLowerCase(Locale.ROOT);
        }
        return known.ref() == null ? null : "ref " + known.ref().toLowerCase(Locale.ROOT);
    }

    private static boolean same(double[] one, int at, double[] other, int there) {
        return Math.abs(one[at] - other[there]) < SAME_DEGREES
                && Math.abs(one[at + 1] - other[there + 1]) < SAME_DEGREES;
    }

    private @Nullable String[] tell() {
        findStrands();
        Map<Integer, Map<Integer, Integer>> beside = beside();
        int[] side = new int[lines.size()];
        List<List<Integer>> dividedParts = new ArrayList<>();
        for (int first : beside.keySet()) {
            if (side[first] == 0) {
                dividedParts.add(sides(first, beside, side));
            }
        }
        double[][] along = new double[dividedParts.size()][];
        double north = 0;
        double east = 0;
        for (int part = 0; part < along.length; part++) {
            along[part] = goesTo(dividedParts.get(part), side);
            east += Math.abs(along[part][0]);
            north += Math.abs(along[part][1]);
        }
        @Nullable String[] told = new String[lines.size()];
        for (int part = 0; part < along.length; part++) {
            boolean northSouth = north >= east;
            double go = along[part][northSouth ? 1 : 0];
            double across = along[part][northSouth ? 0 : 1];
            // A part that runs square to its road keeps to the other axis
            if (Math.abs(go) < 0.2 * Math.abs(across)) {
                northSouth = !northSouth;
                go = across;
            }
            for (int line = 0; line < told.length; line++) {
                if (dividedParts.get(part).contains(strand[line])) {
                    boolean up = go * side[strand[line]] > 0;
                    told[line] = northSouth ? (up ? "northbound" : "southbound") : (up ? "eastbound" : "westbound");
                }
            }
        }
        return told;
    }

    private void findStrands() {
        Arrays.setAll(strand, line -> line);
        Map<Vertex, List<Integer>> begins = new HashMap<>();
        for (int line = 0; line < strand.length; line++) {
            begins.computeIfAbsent(vertex(lines.get(line), 0), key -> new ArrayList<>())
                    .add(line);
        }
        for (int line = 0; line < strand.length; line++) {
            double[] course = lines.get(line);
            for (int next : begins.getOrDefault(vertex(course, course.length - 2), List.of())) {
                double[] on = lines.get(next);
                double turn = TravelDirection.between(bearing(course, course.length - 4), bearing(on, 0));
                if (next != line && turn <= SHARPEST_TURN_DEGREES) {
                    int a = root(line);
                    int b = root(next);
                    strand[Math.max(a, b)] = Math.min(a, b);
                }
            }
        }
        for (int line = 0; line < strand.length; line++) {
            strand[line] = root(line);
        }
    }

    private int root(int line) {
        int at = line;
        while (strand[at] != at) {
            at = strand[at];
        }
        return at;
    }

    private static Vertex vertex(double[] course, int at) {
        return new Vertex(Math.round(course[at] / SAME_DEGREES), Math.round(course[at + 1] / SAME_DEGREES));
    }

    /** Of the segment that begins at a place in the list. */
    private double bearing(double[] course, int at) {
        double dx = (course[at + 2] - course[at]) * metresEast;
        double dy = (course[at + 3] - course[at + 1]) * METRES_A_DEGREE;
        return Math.toDegrees(Math.atan2(dx, dy));
    }

    /** Of each strand that is a carriageway the strands beside it, and how often. */
    private Map<Integer, Map<Integer, Integer>> beside() {
        List<Sample> samples = new ArrayList<>();
        for (int line = 0; line < strand.length; line++) {
            addSamples(line, samples);
        }
        Map<Cell, List<Sample>> cells = new HashMap<>();
        samples.forEach(sample -> cells.computeIfAbsent(cell(sample, 0, 0), key -> new ArrayList<>())
                .add(sample));
        Map<Integer, Integer> all = new HashMap<>();
        Map<Integer, Map<Integer, Integer>> beside = new LinkedHashMap<>();
        for (Sample sample : samples) {
            all.merge(sample.strand, 1, Integer::sum);
            Sample nearest = nearestOpposite(sample, cells);
            if (nearest != null) {
                beside.computeIfAbsent(sample.strand, key -> new LinkedHashMap<>())
                        .merge(nearest.strand, 1, Integer::sum);
            }
        }
        beside.entrySet()
                .removeIf(entry -> sum(entry.getValue().values()) < SHARE_BESIDE * all.getOrDefault(entry.getKey(), 0));
        beside.values().forEach(others -> others.keySet().retainAll(beside.keySet()));
        beside.values().removeIf(Map::isEmpty);
        return beside;
    }

    private static int sum(Collection<Integer> numbers) {
        return numbers.stream().mapToInt(Integer::intValue).sum();
    }

    private void addSamples(int line, List<Sample> samples) {
        double[] course = lines.get(line);
        for (int i = 0; i + 3 < course.length; i += 2) {
            double dx = (course[i + 2] - course[i]) * metresEast;
            double dy = (course[i + 3] - course[i + 1]) * METRES_A_DEGREE;
            double length = Math.hypot(dx, dy);
            int pieces = (int) Math.ceil(length / SAMPLE_METRES);
            for (int piece = 0; piece < pieces; piece++) {
                double part = (piece + 0.5) / pieces;
                samples.add(new Sample(
                        strand[line],
                        course[i] * metresEast + part * dx,
                        course[i + 1] * METRES_A_DEGREE + part * dy,
                        dx / length,
                        dy / length));
            }
        }
    }

    private static Cell cell(Sample sample, int east, int north) {
        return new Cell(
                (long) Math.floor(sample.x / APART_METRES) + east, (long) Math.floor(sample.y / APART_METRES) + north);
    }

    private static @Nullable Sample nearestOpposite(Sample sample, Map<Cell, List<Sample>> cells) {
        double opposite = Math.cos(Math.toRadians(OPPOSITE_DEGREES));
        Sample nearest = null;
        double best = APART_METRES;
        for (int east = -1; east <= 1; east++) {
            for (int north = -1; north <= 1; north++) {
                for (Sample other : cells.getOrDefault(cell(sample, east, north), List.of())) {
                    double apart = Math.hypot(other.x - sample.x, other.y - sample.y);
                    boolean otherWay = sample.dx * other.dx + sample.dy * other.dy <= opposite;
                    if (other.strand != sample.strand && otherWay && apart <= best) {
                        best = apart;
                        nearest = other;
                    }
                }
            }
        }
        return nearest;
    }

    /** Strands that hang together by being beside one another, each on the other side than those beside it. */
    private static List<Integer> sides(int first, Map<Integer, Map<Integer, Integer>> beside, int[] side) {
        List<Integer> part = new ArrayList<>();
        Deque<Integer> open = new ArrayDeque<>(List.of(first));
        side[first] = 1;
        while (!open.isEmpty()) {
            int here = open.remove();
            part.add(here);
            for (int there : beside.getOrDefault(here, Map.of()).keySet()) {
                if (side[there] == 0) {
                    side[there] = -side[here];
                    open.add(there);
                }
            }
        }
        return part;
    }

    /** Where the strands of one side go to, less where those of the other do: metres to the east and to the north. */
    private double[] goesTo(List<Integer> part, int[] side) {
        double[] sum = new double[2];
        for (int line = 0; line < strand.length; line++) {
            if (part.contains(strand[line])) {
                double[] course = lines.get(line);
                sum[0] += side[strand[line]] * (course[course.length - 2] - course[0]) * metresEast;
                sum[1] += side[strand[line]] * (course[course.length - 1] - course[1]) * METRES_A_DEGREE;
            }
        }
        return sum;
    }
}
