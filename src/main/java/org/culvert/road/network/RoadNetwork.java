package org.culvert.road.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.culvert.geo.Bounds;
import org.culvert.geo.Geodesy;
import org.culvert.geo.Position;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;

/**
 * A road network in memory: its graph, the course of its links on flat arrays, what is known of them, and the roads that
 * they make up. Immutable and safe for several threads.
 *
 * <p>A point on it is a link and the metres from its from-node; chainage is the link's own at its from-node plus these.
 * Metres are geodesic on WGS 84 (or planar for a planar network), summed over the segments; within a segment they run evenly.
 */
public final class RoadNetwork {
    private final NetworkFrame frame;
    private final RoadGraph graph;
    private final List<RoadLink> links;
    private final int[] firstVertex;
    private final double[] x;
    private final double[] y;
    private final double[] measure;
    private final List<Road> roads;
    private final List<RoadNames.Known> namesOfRoads;
    private final int[] roadOfLink;
    private final SegmentIndex index;

    private RoadNetwork(NetworkFrame frame, int nodeCount, List<RoadLink> links) {
        this.frame = frame;
        this.links = Collections.unmodifiableList(new ArrayList<>(links));
        int count = links.size();
        this.firstVertex = new int[count + 1];
        for (int link = 0; link < count; link++) {
            firstVertex[link + 1] = firstVertex[link] + links.get(link).vertices().length / 2;
        }
        this.x = new double[firstVertex[count]];
        this.y = new double[firstVertex[count]];
        this.measure = new double[firstVertex[count]];
        int[] from = new int[count];
        int[] to = new int[count];
        double[] length = new double[count];
        for (int link = 0; link < count; link++) {
            from[link] = links.get(link).fromNode();
            to[link] = links.get(link).toNode();
            length[link] = lay(link, links.get(link).vertices());
        }
        this.graph = new RoadGraph(nodeCount, from, to, length);
        this.roadOfLink = new int[count];
        this.roads = Collections.unmodifiableList(roadsOf(links, roadOfLink));
        this.namesOfRoads = roads.stream().map(RoadNames.Known::of).toList();
        this.index = new SegmentIndex(x, y, firstVertex);
    }

    /**
     * A network of links that are already joined: as the builder made them, or as they were kept.
     *
     * @throws IllegalArgumentException if the graph is impossible, or a vertex is too far away for the frame
     */
    public static RoadNetwork of(NetworkFrame frame, int nodeCount, List<RoadLink> links) {
        return new RoadNetwork(frame, nodeCount, links);
    }

    private double lay(int link, double[] vertices) {
        int at = firstVertex[link];
        double sum = 0;
        for (int i = 0; 2 * i < vertices.length; i++) {
            if (frame.isGeographic() && !frame.plane().covers(new Position(vertices[2 * i + 1], vertices[2 * i]))) {
                throw new IllegalArgumentException(
                        "the network is too wide: a vertex is more than 60 degrees of longitude from its middle");
            }
            double[] xy = frame.toPlane(vertices[2 * i], vertices[2 * i + 1]);
            x[at + i] = xy[0];
            y[at + i] = xy[1];
            if (i > 0) {
                sum += frame.metres(vertices[2 * i - 2], vertices[2 * i - 1], vertices[2 * i], vertices[2 * i + 1]);
            }
            measure[at + i] = sum;
        }
        return sum;
    }

    /** What makes lines one road: name, or number without a name, and carriageway; else the line alone. */
    static String roadKey(RoadAttributes attributes, int lineNumber) {
        String name = attributes.roadName();
        String carriageway = attributes.carriageway();
        String way = carriageway == null ? "" : carriageway;
        if (name != null && !RoadNames.comparable(name).isEmpty()) {
            return "name " + RoadNames.comparable(name) + "|" + way;
        }
        return attributes.ref() == null
                ? "line " + lineNumber
                : "ref " + RoadNames.comparableRef(attributes.ref()) + "|" + way;
    }

    private static List<Road> roadsOf(List<RoadLink> links, int[] roadOfLink) {
        Map<String, Integer> numbers = new HashMap<>();
        List<List<Integer>> members = new ArrayList<>();
        for (int link = 0; link < links.size(); link++) {
            String key = roadKey(links.get(link).attributes(), links.get(link).lineNumber());
            int road = numbers.computeIfAbsent(key, absent -> {
                members.add(new ArrayList<>());
                return members.size() - 1;
            });
            members.get(road).add(link);
            roadOfLink[link] = road;
        }
        List<Road> roads = new ArrayList<>(members.size());
        for (int road = 0; road < members.size(); road++) {
            RoadLink first = links.get(members.get(road).get(0));
            RoadAttributes attributes = first.attributes();
            int[] own = members.get(road).stream().mapToInt(Integer::intValue).toArray();
            boolean named = attributes.roadName() != null || attributes.ref() != null;
            roads.add(new Road(road, label(first), firstRef(own, links), attributes.carriageway(), named, own));
        }
        return roads;
    }

    private static String label(RoadLink link) {
        RoadAttributes attributes = link.attributes();
        if (attributes.roadName() != null) {
            return attributes.roadName();
        }
        if (attributes.ref() != null) {
            return attributes.ref();
        }
        String roadClass = attributes.roadClass() == null ? "road" : attributes.roadClass();
        return "unnamed " + roadClass + " (" + link.lineKey() + ")";
    }

    private static @Nullable String firstRef(int[] own, List<RoadLink> links) {
        for (int link : own) {
            String ref = links.get(link).attributes().ref();
            if (ref != null) {
                return ref;
            }
        }
        return null;
    }

    public NetworkFrame frame() {
        return frame;
    }

    public RoadGraph graph() {
        return graph;
    }

    public int linkCount() {
        return links.size();
    }

    public RoadLink link(int link) {
        return links.get(link);
    }

    public RoadAttributes attributes(int link) {
        return links.get(link).attributes();
    }

    public List<Road> roads() {
        return roads;
    }

    public Road road(int road) {
        return roads.get(road);
    }

    /** The road that a link belongs to. */
    public Road roadOf(int link) {
        return roads.get(roadOfLink[link]);
    }

    public double chainageAt(int link, double metres) {
        return links.get(link).fromChainageMetres() + within(link, metres);
    }

    public double fromChainage(int link) {
        return links.get(link).fromChainageMetres();
    }

    public double toChainage(int link) {
        return links.get(link).fromChainageMetres() + graph.length(link);
    }

    /** x and y on the plane of a point on a link. */
    public double[] pointAt(int link, double metres) {
        int segment = segmentAt(link, metres);
        double part = part(segment, within(link, metres));
        return new double[] {
            x[segment] + part * (x[segment + 1] - x[segment]), y[segment] + part * (y[segment + 1] - y[segment])
        };
    }

    /** The position on Earth of a point on a link; only for a geographic network. */
    public Position positionAt(int link, double metres) {
        double[] xy = pointAt(link, metres);
        return frame.position(xy[0], xy[1]);
    }

    /** Degrees clockwise from north (from the y-axis of a planar network) in which a link runs at a point on it. */
    public double bearingAt(int link, double metres) {
        int segment = segmentAt(link, metres);
        if (!frame.isGeographic()) {
            double degrees = Math.toDegrees(Math.atan2(x[segment + 1] - x[segment], y[segment + 1] - y[segment]));
            return degrees < 0 ? degrees + 360 : degrees;
        }
        double[] vertices = links.get(link).vertices();
        int i = segment - firstVertex[link];
        return Geodesy.WGS84
                .inverse(
                        new Position(vertices[2 * i + 1], vertices[2 * i]),
                        new Position(vertices[2 * i + 3], vertices[2 * i + 2]))
                .azimuthAtStartDegrees();
    }

    /** The course of a link between two distances along it: longitude and latitude (or x and y) in turn. */
    public double[] course(int link, double fromMetres, double toMetres) {
        double from = within(link, Math.min(fromMetres, toMetres));
        double to = within(link, Math.max(fromMetres, toMetres));
        double[] vertices = links.get(link).vertices();
        int base = firstVertex[link];
        int firstInside = base;
        while (firstInside < firstVertex[link + 1] && measure[firstInside] <= from) {
            firstInside++;
        }
        int afterInside = firstInside;
        while (afterInside < firstVertex[link + 1] && measure[afterInside] < to) {
            afterInside++;
        }
        double[] result = new double[2 * (afterInside - firstInside) + 4];
        write(result, 0, link, from);
        System.arraycopy(vertices, 2 * (firstInside - base), result, 2, 2 * (afterInside - firstInside));
        write(result, result.length - 2, link, to);
        return result;
    }

    private void write(double[] target, int at, int link, double metres) {
        double[] vertices = links.get(link).vertices();
        if (metres <= 0) {
            target[at] = vertices[0];
            target[at + 1] = vertices[1];
        } else if (metres >= graph.length(link)) {
            target[at] = vertices[vertices.length - 2];
            target[at + 1] = vertices[vertices.length - 1];
        } else if (frame.isGeographic()) {
            Position position = positionAt(link, metres);
            target[at] = position.longitude();
            target[at + 1] = position.latitude();
        } else {
            double[] xy = pointAt(link, metres);
            target[at] = xy[0];
            target[at + 1] = xy[1];
        }
    }

    /** Roads that a name or number given by someone may mean, every carriageway of it, in the order of the source. */
    public List<Road> findRoads(String given) {
        var wanted = new RoadNames.Wanted(given);
        return roads.stream()
                .filter(road -> wanted.means(namesOfRoads.get(road.number())))
                .toList();
    }

    /** Whether a name or number that someone gave means a road. */
    boolean isCalled(int road, RoadNames.Wanted wanted) {
        return wanted.means(namesOfRoads.get(road));
    }

    /** Named roads that begin with, or else contain, what someone has typed so far. */
    public List<Road> suggestRoads(String typed, int limit) {
        String wanted = RoadNames.comparable(typed);
        String start = typed.strip().toLowerCase(Locale.ROOT);
        var exactly = new RoadNames.Wanted(typed);
        if (wanted.isEmpty()) {
            return List.of();
        }
        List<Road> beginning = new ArrayList<>();
        List<Road> containing = new ArrayList<>();
        for (Road road : roads) {
            if (!road.named()) {
                continue;
            }
            String name = namesOfRoads.get(road.number()).name();
            String plain = road.label().toLowerCase(Locale.ROOT);
            if (name.startsWith(wanted) || plain.startsWith(start) || isCalled(road.number(), exactly)) {
                beginning.add(road);
            } else if (name.contains(wanted) || plain.contains(start)) {
                containing.add(road);
            }
        }
        beginning.addAll(containing);
        return beginning.size() > limit ? beginning.subList(0, limit) : beginning;
    }

    /** What a position may be on; see {@link Snapper}. */
    public Snap snap(Position position, double uncertaintyMetres, SnapHints hints) {
        if (!frame.plane().covers(position)) {
            return Snap.nothing(Snapper.radius(uncertaintyMetres));
        }
        double[] xy = frame.plane().forward(position);
        return snap(xy[0], xy[1], uncertaintyMetres, hints);
    }

    /** What a point of the plane may be on; see {@link Snapper}. */
    public Snap snap(double pointX, double pointY, double uncertaintyMetres, SnapHints hints) {
        return new Snapper(this, index).snap(pointX, pointY, uncertaintyMetres, hints);
    }

    /** The nearest point of the network to a point of the plane, however far. */
    public SnapCandidate nearest(double pointX, double pointY) {
        return new Snapper(this, index).nearest(pointX, pointY);
    }

    /** The box that it was made for, in which all of it lies. */
    public Bounds bounds() {
        return frame.bounds();
    }

    /** Links of which a part may lie in a box, in increasing order. */
    public int[] linksIn(Bounds box) {
        Envelope envelope = frame.plane().envelopeOf(box);
        BitSet found = new BitSet(links.size());
        index.visit(envelope, (link, segment) -> found.set(link));
        return found.stream().toArray();
    }

    SegmentIndex index() {
        return index;
    }

    double vertexX(int vertex) {
        return x[vertex];
    }

    double vertexY(int vertex) {
        return y[vertex];
    }

    double vertexMeasure(int vertex) {
        return measure[vertex];
    }

    int firstVertex(int link) {
        return firstVertex[link];
    }

    private double within(int link, double metres) {
        double length = graph.length(link);
        if (!(metres >= -1e-6 && metres <= length + 1e-6)) {
            throw new IllegalArgumentException(metres + " m is not on link " + link + " of " + length + " m");
        }
        return Math.max(0, Math.min(length, metres));
    }

    /** The segment (by its first vertex) that holds a distance along a link. */
    private int segmentAt(int link, double metres) {
        double held = within(link, metres);
        int last = firstVertex[link + 1] - 2;
        int found = Arrays.binarySearch(measure, firstVertex[link], firstVertex[link + 1], held);
        int segment = found >= 0 ? found : -found - 2;
        return Math.max(firstVertex[link], Math.min(last, segment));
    }

    private double part(int segment, double metres) {
        double size = measure[segment + 1] - measure[segment];
        return size <= 0 ? 0 : Math.max(0, Math.min(1, (metres - measure[segment]) / size));
    }
}
