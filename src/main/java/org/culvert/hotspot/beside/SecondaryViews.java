package org.culvert.hotspot.beside;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.culvert.hotspot.stats.Chainage;
import org.culvert.hotspot.stats.pattern.CountTail;
import org.culvert.hotspot.stats.pattern.DistanceRows;
import org.culvert.hotspot.stats.pattern.FalseDiscovery;
import org.culvert.hotspot.stats.pattern.HierarchicalGroups;
import org.culvert.hotspot.stats.pattern.KEnvelope;
import org.culvert.hotspot.stats.pattern.LocalG;
import org.culvert.hotspot.stats.pattern.NetworkClusters;
import org.culvert.hotspot.stats.pattern.NetworkK;
import org.culvert.hotspot.stats.pattern.PlacedEvents;
import org.culvert.hotspot.stats.pattern.SegmentCounts;
import org.jspecify.annotations.Nullable;

/** Computes what other methods show of a run's collisions. */
public final class SecondaryViews {
    private static final String SENTENCE =
            "For comparison only: these methods claim nothing here, and what they name is"
                    + " no hotspot. They take length of road as all the exposure there is, so that they find busy roads and roads"
                    + " near towns again.";
    private static final String SEGMENTS =
            "Counts on segments against a share of all by length of road (after Malo, Suarez"
                    + " and Diez 2004), %s, adjusted for the number of segments by Benjamini and Hochberg (1995). Where the cuts fall"
                    + " decides much of what is found.";
    private static final String NEIGHBOURS =
            "Gi* of Getis and Ord (1992) on the same segments and their neighbours along the"
                    + " road, by %d conditional permutations, adjusted by Benjamini and Hochberg (1995). It asks whether a segment"
                    + " and its neighbours are high together beside all others of this network.";
    private static final String TOO_MANY = "Gi* of Getis and Ord (1992): not computed, since there are %d segments.";
    private static final String GROUPS = "Groups by density along the roads (DBSCAN, Ester and others 1996, on network"
            + " distance). A description: chance makes groups as well.";
    private static final String GROUPS_OF_ANY_DENSITY =
            "Groups that last longest while the roads between collisions are cut from the longest down (HDBSCAN, Campello,"
                    + " Moulavi and Sander 2013, on network distance up to %.0f m). A description: chance makes groups as well.";
    private static final String NOT_OF_ANY_DENSITY =
            "Groups by HDBSCAN (Campello, Moulavi and Sander 2013): not computed,"
                    + " since it takes %d to %d collisions.";
    private static final String K = "The network K function (Okabe and Yamada 2001)";
    private static final String CORRECTED_K =
            "The network K function, corrected for how much road lies at each distance (Ang, Baddeley and Nair 2012)";
    private static final String TOGETHER = "%s against %d even sets, by one number over all distances: the greatest"
            + " difference (MAD) and the sum of squares (DCLF).";
    private static final String NOT_TOGETHER = "%s: not computed, since it takes 2 to %d collisions.";

    private static final double LEVEL = 0.05;
    /** The length of Malo, Suarez and Diez 2004. */
    private static final double SEGMENT_METRES = 1000;

    private static final int MOST_FOUND = 50;
    private static final int MOST_GROUPS = 20;
    private static final int MOST_FOR_G = 30_000;
    private static final int FEW_FOR_G = 2000;
    private static final int MOST_FOR_K = 5000;
    private static final int MOST_FOR_CORRECTED_K = 1000;
    private static final int MOST_FOR_HIERARCHY = 2000;

    /** How far apart events of one hierarchy may be, in reaches. */
    private static final double FARTHEST = 20;

    private static final int SETS_FOR_K = 99;
    private static final int RADII = 10;

    private final RoadScene scene;
    private final RoadLines lines;
    private final List<DatedEvent> events;
    private final double reachMetres;
    private final int minimumIncidents;
    private final long seed;
    private final int threads;

    private SecondaryViews(
            RoadScene scene,
            Chainage chainage,
            List<DatedEvent> group,
            double reachMetres,
            int minimumIncidents,
            long seed,
            int threads) {
        this.scene = scene;
        this.lines = new RoadLines(scene, chainage);
        this.events = DatedEvent.inOrder(group);
        this.reachMetres = reachMetres;
        this.minimumIncidents = minimumIncidents;
        this.seed = seed;
        this.threads = threads;
    }

    public static Secondary of(
            RoadScene scene,
            Chainage chainage,
            List<DatedEvent> group,
            double reachMetres,
            int minimumIncidents,
            long seed,
            int threads) {
        var views = new SecondaryViews(scene, chainage, group, reachMetres, minimumIncidents, seed, threads);
        if (group.isEmpty()) {
            var none = new Secondary.Segments("There are no collisions.", SEGMENT_METRES, 0, List.of());
            return views.with(none, none);
        }
        SegmentCounts.Result counts = views.count();
        return views.with(views.segments(counts), views.neighbours(counts.whole()));
    }

    private Secondary with(Secondary.Segments segments, Secondary.Segments neighbours) {
        return new Secondary(
                SENTENCE,
                segments,
                neighbours,
                groups(),
                groupsOfAnyDensity(),
                together(NetworkK.Correction.NONE, K, MOST_FOR_K),
                together(NetworkK.Correction.ANG, CORRECTED_K, MOST_FOR_CORRECTED_K));
    }

    private SegmentCounts.Result count() {
        return SegmentCounts.count(
                lines.metres(),
                events.stream().mapToInt(lines::lineOf).toArray(),
                events.stream().mapToDouble(lines::metresOf).toArray(),
                SEGMENT_METRES,
                lines.roadLength(),
                CountTail.Kind.POISSON);
    }

    private Secondary.Segments segments(SegmentCounts.Result counts) {
        List<SegmentCounts.Segment> shifted = counts.shifted().segments().stream()
                .filter(segment -> segment.adjustedP() <= LEVEL)
                .toList();
        List<Secondary.Segment> found = counts.whole().segments().stream()
                .filter(segment -> segment.adjustedP() <= LEVEL)
                .sorted(Comparator.comparingDouble(SegmentCounts.Segment::adjustedP)
                        .thenComparingInt(SegmentCounts.Segment::line)
                        .thenComparingDouble(SegmentCounts.Segment::fromMetres))
                .limit(MOST_FOUND)
                .map(segment -> segment(
                        segment,
                        segment.expected(),
                        segment.adjustedP(),
                        shifted.stream().anyMatch(other -> overlap(segment, other))))
                .toList();
        String tail = counts.whole().tail().kind() == CountTail.Kind.POISSON
                ? "by Poisson's distribution"
                : "by a negative binomial distribution, since they vary more than Poisson's";
        return new Secondary.Segments(
                SEGMENTS.formatted(tail), SEGMENT_METRES, tested(counts.whole().segments()), found);
    }

    private static int tested(List<SegmentCounts.Segment> segments) {
        return (int)
                segments.stream().filter(segment -> !Double.isNaN(segment.p())).count();
    }

    private static boolean overlap(SegmentCounts.Segment one, SegmentCounts.Segment other) {
        return one.line() == other.line()
                && Math.max(one.fromMetres(), other.fromMetres()) < Math.min(one.toMetres(), other.toMetres());
    }

    private Secondary.Segment segment(
            SegmentCounts.Segment segment, @Nullable Double expected, double adjustedP, @Nullable Boolean alsoShifted) {
        return new Secondary.Segment(
                lines.label(segment.line()),
                Figures.rounded(lines.chainageAt(segment.line(), segment.fromMetres()), 0),
                Figures.rounded(lines.chainageAt(segment.line(), segment.toMetres()), 0),
                segment.count(),
                expected == null ? null : Double.valueOf(Figures.rounded(expected, 2)),
                Figures.significant(adjustedP),
                alsoShifted);
    }

    private Secondary.Segments neighbours(SegmentCounts.Grid grid) {
        List<SegmentCounts.Segment> segments = grid.segments();
        int count = segments.size();
        if (count < 3 || count > MOST_FOR_G) {
            return new Secondary.Segments(TOO_MANY.formatted(count), SEGMENT_METRES, 0, List.of());
        }
        int permutations = count <= FEW_FOR_G ? 9999 : 999;
        double[] value =
                segments.stream().mapToDouble(SegmentCounts.Segment::count).toArray();
        double[] p = new LocalG(value, grid.neighbours(1)).permutationP(permutations, seed);
        double[] adjusted = FalseDiscovery.benjaminiHochberg(p);
        List<Secondary.Segment> found = IntStream.range(0, count)
                .filter(at -> adjusted[at] <= LEVEL && segments.get(at).count() > 0)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(at -> adjusted[at])
                        .thenComparingInt(at -> -segments.get(at).count())
                        .thenComparingInt(at -> at))
                .limit(MOST_FOUND)
                .map(at -> segment(segments.get(at), null, adjusted[at], null))
                .toList();
        int tested = (int) Arrays.stream(p).filter(one -> !Double.isNaN(one)).count();
        return new Secondary.Segments(NEIGHBOURS.formatted(permutations), SEGMENT_METRES, tested, found);
    }

    private Secondary.Groups groups() {
        double eps = reachMetres / 2;
        int least = Math.max(2, minimumIncidents);
        NetworkClusters.Groups groups = NetworkClusters.dbscan(scene.placed(events), eps, least, threads);
        return new Secondary.Groups(
                GROUPS,
                Figures.rounded(eps, 1),
                least,
                groups.count(),
                groups.ungrouped(),
                largest(groups.count(), groups.group()));
    }

    private Secondary.Groups groupsOfAnyDensity() {
        int least = Math.max(2, minimumIncidents);
        if (events.size() < least || events.size() > MOST_FOR_HIERARCHY) {
            return new Secondary.Groups(
                    NOT_OF_ANY_DENSITY.formatted(least, MOST_FOR_HIERARCHY), null, least, 0, null, List.of());
        }
        double farthest = FARTHEST * reachMetres;
        PlacedEvents placed = scene.placed(events);
        HierarchicalGroups groups = HierarchicalGroups.of(DistanceRows.alongRoads(placed, farthest), least);
        int[] group = new int[events.size()];
        for (int rank = 0; rank < group.length; rank++) {
            group[placed.given(rank)] = groups.group()[rank];
        }
        return new Secondary.Groups(
                String.format(Locale.ROOT, GROUPS_OF_ANY_DENSITY, farthest),
                null,
                least,
                groups.count(),
                (int) Arrays.stream(group).filter(one -> one == 0).count(),
                largest(groups.count(), group));
    }

    /** @param groupOf of each event, from 1; 0 for none */
    private List<Secondary.Group> largest(int count, int[] groupOf) {
        List<List<DatedEvent>> members = new ArrayList<>();
        for (int group = 0; group < count; group++) {
            members.add(new ArrayList<>());
        }
        for (int event = 0; event < events.size(); event++) {
            if (groupOf[event] > 0) {
                members.get(groupOf[event] - 1).add(events.get(event));
            }
        }
        return members.stream()
                .sorted(Comparator.comparingInt((List<DatedEvent> group) -> -group.size()))
                .limit(MOST_GROUPS)
                .map(this::group)
                .toList();
    }

    /** By the line on which most of a group lies; of two with as many, the one that comes first. */
    private Secondary.Group group(List<DatedEvent> members) {
        int most = -1;
        long count = 0;
        for (int line : members.stream().mapToInt(lines::lineOf).distinct().toArray()) {
            long here = members.stream()
                    .filter(member -> lines.lineOf(member) == line)
                    .count();
            if (here > count) {
                most = line;
                count = here;
            }
        }
        int on = most;
        var metres = members.stream()
                .filter(member -> lines.lineOf(member) == on)
                .mapToDouble(lines::metresOf)
                .summaryStatistics();
        return new Secondary.Group(
                lines.label(on),
                Figures.rounded(lines.chainageAt(on, metres.getMin()), 0),
                Figures.rounded(lines.chainageAt(on, metres.getMax()), 0),
                members.size());
    }

    private Secondary.Together together(NetworkK.Correction correction, String method, int most) {
        int count = events.size();
        if (count < 2 || count > most) {
            return new Secondary.Together(
                    NOT_TOGETHER.formatted(method, most), List.of(), List.of(), List.of(), null, null, null, null, 0);
        }
        double[] radii = new double[RADII];
        Arrays.setAll(radii, i -> 4 * reachMetres * (i + 1) / RADII);
        double[] even = new double[scene.graph().linkCount()];
        Arrays.fill(even, 1);
        KEnvelope envelope = KEnvelope.of(scene.placed(events), radii, correction, even, SETS_FOR_K, seed, threads);
        return new Secondary.Together(
                TOGETHER.formatted(method, SETS_FOR_K),
                rounded(envelope.radiiMetres()),
                rounded(envelope.observed()),
                rounded(envelope.mean()),
                Figures.significant(envelope.madP()),
                Figures.rounded(envelope.madRadiusMetres(), 1),
                envelope.madAbove(),
                Figures.significant(envelope.dclfP()),
                SETS_FOR_K);
    }

    private static List<Double> rounded(List<Double> values) {
        return values.stream().map(value -> Figures.rounded(value, 1)).toList();
    }
}
