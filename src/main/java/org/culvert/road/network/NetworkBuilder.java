package org.culvert.road.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.culvert.geo.Bounds;
import org.culvert.geo.Grid;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;

/**
 * Makes a road network of lines: joins them where they share a vertex at the same level ({@link Noding}), cuts them there
 * into links, and gives every link its chainage ({@link Chaining}).
 *
 * <p>Left out, and counted by reason: lines with fewer than two different vertices, and lines that repeat another line of
 * the same road vertex by vertex in either direction, which would count every collision on them twice. A vertex that repeats
 * the one before is dropped. Not for use by several threads.
 */
public final class NetworkBuilder {
    /** A vertex is the same as another within about a millimetre. */
    private static final double DEGREE_CELL = 1e-8;

    private static final double METRE_CELL = 1e-3;

    /** A straight line on the map of longitude and latitude bends away from the plane by a few centimetres in this length. */
    private static final double LONGEST_STRAIGHT_METRES = 1000;

    private static final int EXAMPLES = 20;

    private final VertexMap vertexMap;
    private final boolean planar;
    private final boolean degrees;
    private final List<RoadLine> lines = new ArrayList<>();
    private final Map<String, Integer> leftOut = new TreeMap<>();
    private final List<String> leftOutExamples = new ArrayList<>();

    private NetworkBuilder(VertexMap vertexMap, boolean planar, boolean degrees) {
        this.vertexMap = vertexMap;
        this.planar = planar;
        this.degrees = degrees;
    }

    /** From coordinates of the source to those of the network's frame, written into {@code target[0]} and {@code [1]}. */
    @FunctionalInterface
    private interface VertexMap {
        void map(double first, double second, double[] target);
    }

    private static final VertexMap SAME = (first, second, target) -> {
        target[0] = first;
        target[1] = second;
    };

    /** Vertices are longitude and latitude on WGS 84. */
    public static NetworkBuilder geographic() {
        return new NetworkBuilder(SAME, false, true);
    }

    /** Vertices are in a reference system, easting (or longitude) first. Lines are straight in that system. */
    public static NetworkBuilder in(Grid grid) {
        VertexMap toWgs84 = (first, second, target) -> {
            Position position = grid.inverse(first, second);
            target[0] = position.longitude();
            target[1] = position.latitude();
        };
        return new NetworkBuilder(toWgs84, false, grid.isGeographic());
    }

    /** Vertices are x and y in metres on a plane of their own. */
    public static NetworkBuilder planar() {
        return new NetworkBuilder(SAME, true, false);
    }

    public NetworkBuilder add(RoadLine line) {
        lines.add(line);
        return this;
    }

    /** Counts something of the source that never became a line, e.g. a feature without a course. */
    public NetworkBuilder leaveOut(String key, String reason) {
        leftOut.merge(reason, 1, Integer::sum);
        if (leftOutExamples.size() < EXAMPLES) {
            leftOutExamples.add(key + ": " + reason);
        }
        return this;
    }

    /**
     * Builds the network.
     *
     * @throws IllegalArgumentException if no line is left
     */
    public Built build() {
        int given = lines.size()
                + leftOut.values().stream().mapToInt(Integer::intValue).sum();
        Joined joined = join();
        if (joined.kept.isEmpty()) {
            throw new IllegalArgumentException("there is no line with two different vertices");
        }
        List<int[]> vertices = joined.vertices;
        int count = joined.kept.size();
        int[] roads = roadNumbers(joined.kept);
        int[] levels = new int[count];
        for (int line = 0; line < count; line++) {
            levels[line] = joined.kept.get(line).attributes().effectiveLevel();
        }
        Noding noding = new Noding(vertices, levels, roads, joined.vertexCount);
        List<Course> courses = courses(joined);
        NetworkFrame frame = planar ? NetworkFrame.planar() : NetworkFrame.geographic(boundsOf(courses));
        List<double[]> measures =
                courses.stream().map(course -> course.measures(frame)).toList();
        double[] starts = starts(joined.kept, roads, noding, measures);
        List<RoadLink> links = new ArrayList<>();
        for (int line = 0; line < count; line++) {
            cut(
                    joined.kept.get(line),
                    joined.numbers.get(line),
                    noding.nodesOf(line),
                    courses.get(line),
                    measures.get(line),
                    starts[line],
                    links);
        }
        RoadNetwork network = RoadNetwork.of(frame, noding.nodeCount(), links);
        int unnamed = (int) joined.kept.stream()
                .filter(line -> line.attributes().roadName() == null
                        && line.attributes().ref() == null)
                .count();
        BuildReport report = new BuildReport(
                given,
                count,
                links.size(),
                noding.nodeCount(),
                noding.joinedCount(),
                unnamed,
                network.graph().totalLength(),
                Map.copyOf(leftOut),
                List.copyOf(leftOutExamples));
        return new Built(network, report);
    }

    /** A network and what became of the lines. */
    public record Built(RoadNetwork network, BuildReport report) {}

    private record Joined(
            List<RoadLine> kept, List<Integer> numbers, List<int[]> vertices, List<int[]> places, int vertexCount) {}

    /** A course in the frame's coordinates: every vertex, and for those of the source their place in the list. */
    private record Course(double[] coordinates, int[] placeOfVertex) {
        /** Metres from its first vertex to each. */
        double[] measures(NetworkFrame frame) {
            double[] measures = new double[coordinates.length / 2];
            for (int i = 1; i < measures.length; i++) {
                measures[i] = measures[i - 1]
                        + frame.metres(
                                coordinates[2 * i - 2],
                                coordinates[2 * i - 1],
                                coordinates[2 * i],
                                coordinates[2 * i + 1]);
            }
            return measures;
        }
    }

    private record Shape(
            int[] vertices,
            int level,
            @Nullable String road,
            @Nullable String carriageway) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Shape shape
                    && level == shape.level
                    && Arrays.equals(vertices, shape.vertices)
                    && Objects.equals(road, shape.road)
                    && Objects.equals(carriageway, shape.carriageway);
        }

        @Override
        public int hashCode() {
            return 31 * Arrays.hashCode(vertices) + level;
        }
    }

    private Joined join() {
        VertexNumbers numbers = new VertexNumbers(degrees ? DEGREE_CELL : METRE_CELL, 4 * lines.size());
        List<RoadLine> kept = new ArrayList<>();
        List<Integer> lineNumbers = new ArrayList<>();
        List<int[]> vertices = new ArrayList<>();
        List<int[]> places = new ArrayList<>();
        Set<Shape> seen = new HashSet<>();
        for (int number = 0; number < lines.size(); number++) {
            RoadLine line = lines.get(number);
            int[] all = new int[line.vertexCount()];
            int[] place = new int[all.length];
            int size = 0;
            for (int i = 0; i < all.length; i++) {
                int vertex = numbers.numberOf(line.vertices()[2 * i], line.vertices()[2 * i + 1]);
                if (size == 0 || all[size - 1] != vertex) {
                    place[size] = i;
                    all[size++] = vertex;
                }
            }
            if (size < 2) {
                leaveOut(line.key(), "fewer than two different vertices");
                continue;
            }
            int[] course = Arrays.copyOf(all, size);
            if (!seen.add(shapeOf(course, line.attributes()))) {
                leaveOut(line.key(), "repeats another line of the same road");
                continue;
            }
            kept.add(line);
            lineNumbers.add(number);
            vertices.add(course);
            places.add(Arrays.copyOf(place, size));
        }
        return new Joined(kept, lineNumbers, vertices, places, numbers.count());
    }

    private static Shape shapeOf(int[] course, RoadAttributes attributes) {
        int[] reversed = new int[course.length];
        for (int i = 0; i < course.length; i++) {
            reversed[i] = course[course.length - 1 - i];
        }
        int[] lesser = Arrays.compare(course, reversed) <= 0 ? course : reversed;
        String road = attributes.roadName() == null ? attributes.ref() : attributes.roadName();
        return new Shape(lesser, attributes.effectiveLevel(), road, attributes.carriageway());
    }

    private static int[] roadNumbers(List<RoadLine> kept) {
        Map<String, Integer> numbers = new HashMap<>();
        int[] roads = new int[kept.size()];
        for (int line = 0; line < roads.length; line++) {
            String key = RoadNetwork.roadKey(kept.get(line).attributes(), line);
            roads[line] = numbers.computeIfAbsent(key, absent -> numbers.size());
        }
        return roads;
    }

    private List<Course> courses(Joined joined) {
        List<Course> courses = new ArrayList<>(joined.kept.size());
        for (int line = 0; line < joined.kept.size(); line++) {
            courses.add(course(joined.kept.get(line).vertices(), joined.places.get(line)));
        }
        return courses;
    }

    private Course course(double[] source, int[] places) {
        double[] coordinates = new double[2 * places.length + 32];
        int[] placeOfVertex = new int[places.length];
        int size = 0;
        double[] pair = new double[2];
        for (int i = 0; i < places.length; i++) {
            double first = source[2 * places[i]];
            double second = source[2 * places[i] + 1];
            int pieces = 1;
            double fromFirst = first;
            double fromSecond = second;
            if (i > 0 && !planar) {
                fromFirst = source[2 * places[i - 1]];
                fromSecond = source[2 * places[i - 1] + 1];
                pieces = pieces(fromFirst, fromSecond, first, second);
            }
            for (int piece = 1; piece <= pieces; piece++) {
                double part = (double) piece / pieces;
                boolean last = piece == pieces;
                vertexMap.map(
                        last ? first : fromFirst + part * (first - fromFirst),
                        last ? second : fromSecond + part * (second - fromSecond),
                        pair);
                if (2 * size + 2 > coordinates.length) {
                    coordinates = Arrays.copyOf(coordinates, 2 * coordinates.length);
                }
                coordinates[2 * size] = pair[0];
                coordinates[2 * size + 1] = pair[1];
                size++;
            }
            placeOfVertex[i] = size - 1;
        }
        return new Course(Arrays.copyOf(coordinates, 2 * size), placeOfVertex);
    }

    private int pieces(double first1, double second1, double first2, double second2) {
        double metres = Math.hypot(first2 - first1, second2 - second1) * (degrees ? 111_320 : 1);
        return (int) Math.max(1, Math.ceil(metres / LONGEST_STRAIGHT_METRES));
    }

    /** The box of all vertices; across the antimeridian where that makes it narrower. */
    private static Bounds boundsOf(List<Course> courses) {
        double south = Double.POSITIVE_INFINITY;
        double north = Double.NEGATIVE_INFINITY;
        double[] plain = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        double[] turned = plain.clone();
        for (Course course : courses) {
            double[] coordinates = course.coordinates;
            for (int i = 0; i < coordinates.length; i += 2) {
                double longitude = coordinates[i];
                widen(plain, longitude);
                widen(turned, longitude < 0 ? longitude + 360 : longitude);
                south = Math.min(south, coordinates[i + 1]);
                north = Math.max(north, coordinates[i + 1]);
            }
        }
        if (turned[1] - turned[0] < plain[1] - plain[0]) {
            return new Bounds(south, asLongitude(turned[0]), north, asLongitude(turned[1]));
        }
        return new Bounds(south, plain[0], north, plain[1]);
    }

    private static void widen(double[] range, double value) {
        range[0] = Math.min(range[0], value);
        range[1] = Math.max(range[1], value);
    }

    private static double asLongitude(double turned) {
        return turned > 180 ? turned - 360 : turned;
    }

    private static double[] starts(List<RoadLine> kept, int[] roads, Noding noding, List<double[]> measuresOfLines) {
        int count = kept.size();
        double[] measures = new double[count];
        int[] firstNodes = new int[count];
        int[] lastNodes = new int[count];
        double[] lengths = new double[count];
        for (int line = 0; line < count; line++) {
            Double measure = kept.get(line).startMeasureMetres();
            measures[line] = measure == null ? Double.NaN : measure;
            int[] nodes = noding.nodesOf(line);
            firstNodes[line] = nodes[0];
            lastNodes[line] = nodes[nodes.length - 1];
            double[] along = measuresOfLines.get(line);
            lengths[line] = along[along.length - 1];
        }
        return Chaining.starts(measures, roads, firstNodes, lastNodes, lengths);
    }

    private static void cut(
            RoadLine line,
            int lineNumber,
            int[] nodes,
            Course course,
            double[] measures,
            double start,
            List<RoadLink> links) {
        int from = 0;
        for (int i = 1; i < nodes.length; i++) {
            if (nodes[i] < 0) {
                continue;
            }
            int first = course.placeOfVertex[from];
            int last = course.placeOfVertex[i];
            double[] vertices = Arrays.copyOfRange(course.coordinates, 2 * first, 2 * last + 2);
            links.add(new RoadLink(
                    nodes[from],
                    nodes[i],
                    line.key(),
                    lineNumber,
                    line.attributes(),
                    start + measures[first],
                    vertices));
            from = i;
        }
    }
}
