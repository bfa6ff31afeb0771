package org.culvert.road.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.culvert.geo.Geodesy;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;

/**
 * Puts a position on roads.
 *
 * <p><b>Radius.</b> Candidates are the links within the position's uncertainty, at least {@value #LEAST_RADIUS_METRES} m.
 *
 * <p><b>Likelihood.</b> The uncertainty is read as two standard deviations of a round normal error, so that a link at an
 * offset d has the likelihood exp(-d&sup2;/(2 s&sup2;)), s being half the radius; weights are these, scaled to sum to 1.
 *
 * <p><b>Ambiguity.</b> A road's likelihood is that of its nearest link. Another road whose likelihood is at least half of
 * the best one's makes the answer ambiguous: with a radius of 30 m, 5 m from one road and 15 m from another is ambiguous,
 * 2 m and 18 m is not. A road that is only met at its end, where it goes on as the best one (two ends at the node, one of the
 * roads without a name), is no rival.
 *
 * <p><b>Name.</b> If a road of the given name is among the candidates, only roads of that name compete. If not, all do, and
 * the answer says so. <b>Direction.</b> A carriageway with the given word, or within 67.5 degrees of the given direction of
 * the compass, keeps its likelihood, one more than 112.5 degrees away keeps a twentieth; a road without a direction of its
 * own keeps a tenth if it runs more than 60 degrees across. These factors are of our own choosing.
 */
final class Snapper {
    static final double LEAST_RADIUS_METRES = 30;
    private static final double RIVAL_SHARE = 0.5;
    private static final double ON_THE_LINE_METRES = 1e-6;
    private static final double FARTHEST_METRES = 20_000;

    private final RoadNetwork network;
    private final SegmentIndex index;

    Snapper(RoadNetwork network, SegmentIndex index) {
        this.network = network;
        this.index = index;
    }

    static double radius(double uncertaintyMetres) {
        return Math.max(LEAST_RADIUS_METRES, uncertaintyMetres);
    }

    /** The nearest segment of one link so far. */
    private static final class Nearest {
        private final int link;
        private int segment;
        private double part;
        private double distance = Double.POSITIVE_INFINITY;

        Nearest(int link) {
            this.link = link;
        }
    }

    Snap snap(double x, double y, double uncertaintyMetres, SnapHints hints) {
        if (!(uncertaintyMetres >= 0)) {
            throw new IllegalArgumentException("an uncertainty is a number of metres, 0 or more");
        }
        double radius = radius(uncertaintyMetres);
        List<SnapCandidate> found = within(x, y, radius);
        if (found.isEmpty()) {
            SnapCandidate beyond = nearestWithin(x, y, 2 * radius, FARTHEST_METRES);
            return new Snap(
                    List.of(), false, List.of(), radius, named(hints, false), directionUsed(hints, false), beyond);
        }
        boolean nameFound = false;
        List<SnapCandidate> competing = found;
        String name = hints.roadName();
        if (name != null) {
            var wanted = new RoadNames.Wanted(name);
            List<SnapCandidate> ofThatName = found.stream()
                    .filter(candidate -> network.isCalled(candidate.road(), wanted))
                    .toList();
            nameFound = !ofThatName.isEmpty();
            competing = nameFound ? ofThatName : found;
        }
        List<SnapCandidate> weighed = weighed(competing, radius / 2, hints.direction());
        List<Integer> rivals = rivals(weighed);
        boolean used = hints.direction() != null && understood(hints.direction(), weighed);
        return new Snap(
                weighed, !rivals.isEmpty(), rivals, radius, named(hints, nameFound), directionUsed(hints, used), null);
    }

    SnapCandidate nearest(double x, double y) {
        Envelope extent = index.extent();
        double farthest = Math.hypot(
                Math.max(Math.abs(x - extent.getMinX()), Math.abs(x - extent.getMaxX())),
                Math.max(Math.abs(y - extent.getMinY()), Math.abs(y - extent.getMaxY())));
        SnapCandidate candidate = nearestWithin(x, y, LEAST_RADIUS_METRES, 2 * farthest + LEAST_RADIUS_METRES);
        if (candidate == null) {
            throw new IllegalStateException("the network has no links");
        }
        return candidate;
    }

    private @Nullable SnapCandidate nearestWithin(double x, double y, double firstRadius, double lastRadius) {
        double radius = firstRadius;
        while (true) {
            List<SnapCandidate> found = within(x, y, radius);
            if (!found.isEmpty()) {
                return found.get(0);
            }
            if (radius >= lastRadius) {
                return null;
            }
            radius = Math.min(4 * radius, lastRadius);
        }
    }

    /** One candidate for each link within a radius, the nearest first, then in the order of links. */
    private List<SnapCandidate> within(double x, double y, double radius) {
        Map<Integer, Nearest> byLink = new HashMap<>();
        // The plane stretches lengths a little away from its middle; the box allows for it.
        Envelope box = new Envelope(x - 1.02 * radius, x + 1.02 * radius, y - 1.02 * radius, y + 1.02 * radius);
        index.visit(box, (link, segment) -> look(byLink.computeIfAbsent(link, Nearest::new), segment, x, y));
        List<SnapCandidate> candidates = new ArrayList<>();
        for (Nearest nearest : byLink.values()) {
            SnapCandidate candidate = candidate(nearest, x, y);
            if (candidate.offsetMetres() <= radius) {
                candidates.add(candidate);
            }
        }
        candidates.sort(Comparator.comparingLong((SnapCandidate candidate) -> micrometres(candidate.offsetMetres()))
                .thenComparingInt(SnapCandidate::link));
        return candidates;
    }

    private static long micrometres(double metres) {
        return Math.round(metres * 1e6);
    }

    private void look(Nearest nearest, int segment, double x, double y) {
        double ax = network.vertexX(segment);
        double ay = network.vertexY(segment);
        double dx = network.vertexX(segment + 1) - ax;
        double dy = network.vertexY(segment + 1) - ay;
        double squared = dx * dx + dy * dy;
        double part = squared <= 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / squared));
        double distance = Math.hypot(ax + part * dx - x, ay + part * dy - y);
        boolean nearer = distance < nearest.distance;
        boolean earlierOfEqual = distance == nearest.distance && segment < nearest.segment;
        if (nearer || earlierOfEqual) {
            nearest.distance = distance;
            nearest.segment = segment;
            nearest.part = part;
        }
    }

    private SnapCandidate candidate(Nearest nearest, double x, double y) {
        int segment = nearest.segment;
        double from = network.vertexMeasure(segment);
        double metres = from + nearest.part * (network.vertexMeasure(segment + 1) - from);
        double px = network.vertexX(segment) + nearest.part * (network.vertexX(segment + 1) - network.vertexX(segment));
        double py = network.vertexY(segment) + nearest.part * (network.vertexY(segment + 1) - network.vertexY(segment));
        double offset = nearest.distance;
        if (network.frame().isGeographic() && offset > 0) {
            offset = Geodesy.metresBetween(
                    network.frame().position(x, y), network.frame().position(px, py));
        }
        return new SnapCandidate(
                nearest.link,
                metres,
                network.roadOf(nearest.link).number(),
                network.chainageAt(nearest.link, metres),
                offset,
                side(nearest, x - px, y - py),
                0,
                px,
                py);
    }

    /** At a bend the two segments may disagree; the direction half-way between them decides. */
    private Side side(Nearest nearest, double toX, double toY) {
        if (nearest.distance < ON_THE_LINE_METRES) {
            return Side.ON;
        }
        int segment = nearest.segment;
        double[] along = direction(segment);
        int first = network.firstVertex(nearest.link);
        int last = network.firstVertex(nearest.link + 1) - 2;
        int other = nearest.part <= 0 && segment > first
                ? segment - 1
                : nearest.part >= 1 && segment < last ? segment + 1 : -1;
        if (other >= 0) {
            double[] next = direction(other);
            along[0] += next[0];
            along[1] += next[1];
        }
        double cross = along[0] * toY - along[1] * toX;
        return cross > 0 ? Side.LEFT : cross < 0 ? Side.RIGHT : Side.ON;
    }

    private double[] direction(int segment) {
        double dx = network.vertexX(segment + 1) - network.vertexX(segment);
        double dy = network.vertexY(segment + 1) - network.vertexY(segment);
        double length = Math.hypot(dx, dy);
        return length <= 0 ? new double[] {0, 0} : new double[] {dx / length, dy / length};
    }

    private List<SnapCandidate> weighed(List<SnapCandidate> candidates, double sigma, @Nullable String direction) {
        double[] likelihood = new double[candidates.size()];
        double sum = 0;
        for (int i = 0; i < likelihood.length; i++) {
            double offset = candidates.get(i).offsetMetres() / sigma;
            likelihood[i] = Math.exp(-0.5 * offset * offset) * directionFactor(candidates.get(i), direction);
            sum += likelihood[i];
        }
        List<SnapCandidate> weighed = new ArrayList<>(likelihood.length);
        for (int i = 0; i < likelihood.length; i++) {
            weighed.add(candidates.get(i).weighing(likelihood[i] / sum));
        }
        // A stable sort: equally likely ones stay in the order of offset and link.
        weighed.sort(Comparator.comparingDouble((SnapCandidate candidate) -> -rounded(candidate.weight())));
        return weighed;
    }

    private static double rounded(double weight) {
        return Math.round(weight * 1e9) / 1e9;
    }

    private List<Integer> rivals(List<SnapCandidate> weighed) {
        SnapCandidate best = weighed.get(0);
        List<Integer> rivals = new ArrayList<>();
        for (SnapCandidate other : weighed) {
            boolean likely = other.weight() >= RIVAL_SHARE * best.weight();
            if (likely && other.road() != best.road() && !rivals.contains(other.road()) && !goesOn(best, other)) {
                rivals.add(other.road());
            }
        }
        return List.copyOf(rivals);
    }

    private boolean goesOn(SnapCandidate best, SnapCandidate other) {
        boolean bothNamed =
                network.road(best.road()).named() && network.road(other.road()).named();
        int node = nodeAt(other);
        RoadGraph graph = network.graph();
        return !bothNamed
                && node >= 0
                && graph.degree(node) == 2
                && (graph.from(best.link()) == node || graph.to(best.link()) == node);
    }

    private int nodeAt(SnapCandidate candidate) {
        RoadGraph graph = network.graph();
        if (candidate.metres() <= ON_THE_LINE_METRES) {
            return graph.from(candidate.link());
        }
        boolean atEnd = candidate.metres() >= graph.length(candidate.link()) - ON_THE_LINE_METRES;
        return atEnd ? graph.to(candidate.link()) : -1;
    }

    private double directionFactor(SnapCandidate candidate, @Nullable String direction) {
        if (direction == null) {
            return 1;
        }
        String carriageway = network.road(candidate.road()).carriageway();
        if (carriageway != null && Road.sameCarriageway(carriageway, direction)) {
            return 1;
        }
        Optional<Double> wanted = TravelDirection.degrees(direction);
        if (wanted.isEmpty()) {
            return 1;
        }
        Optional<Double> own = carriageway == null ? Optional.empty() : TravelDirection.degrees(carriageway);
        if (own.isPresent()) {
            double apart = TravelDirection.between(wanted.get(), own.get());
            return apart <= 67.5 ? 1 : apart <= 112.5 ? 0.5 : 0.05;
        }
        double apart = TravelDirection.between(wanted.get(), network.bearingAt(candidate.link(), candidate.metres()));
        return Math.min(apart, 180 - apart) <= 60 ? 1 : 0.1;
    }

    private boolean understood(String direction, List<SnapCandidate> candidates) {
        if (TravelDirection.degrees(direction).isPresent()) {
            return true;
        }
        return candidates.stream()
                .map(candidate -> network.road(candidate.road()).carriageway())
                .anyMatch(carriageway -> carriageway != null && Road.sameCarriageway(carriageway, direction));
    }

    private static @Nullable Boolean named(SnapHints hints, boolean found) {
        return hints.roadName() == null ? null : Boolean.valueOf(found);
    }

    private static @Nullable Boolean directionUsed(SnapHints hints, boolean used) {
        return hints.direction() == null ? null : Boolean.valueOf(used);
    }
}
