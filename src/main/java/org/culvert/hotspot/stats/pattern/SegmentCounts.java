package org.culvert.hotspot.stats.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Counts on segments of equal length against what each segment's exposure lets expect: the segment test of Malo, Suarez and
 * Diez (2004), Can we mitigate animal-vehicle accidents using predictive models?, Journal of Applied Ecology 41, 701-710, with
 * unequal exposure and two grids.
 *
 * <p>Expected counts share the total out by exposure. Where {@link CountTail#overdispersionP} is at most 0.05, a negative binomial
 * of the same means takes the place of the distribution asked for: conservative, since hot segments themselves make counts vary.
 * p-values are adjusted by Benjamini and Hochberg within a grid. Where a cut falls decides much of what is found: the second grid
 * is shifted by half a segment, and what both find is less an accident of the cut. For display beside a search for hotspots, not
 * instead of one.
 */
public final class SegmentCounts {
    private static final double OVERDISPERSED = 0.05;

    private SegmentCounts() {}

    /** How much there was to be struck or seen on a piece of a line: metres, vehicle kilometres, hours; any unit. */
    @FunctionalInterface
    public interface Exposure {
        /** @return zero or more; NaN where it is not known */
        double between(int line, double fromMetres, double toMetres);

        /** Metres alone: what is found is the burden, not the risk of a vehicle. */
        static Exposure length() {
            return (line, from, to) -> to - from;
        }
    }

    /**
     * A segment.
     *
     * @param line number of its line
     * @param fromMetres where it begins
     * @param toMetres where it ends; the last of a line may be shorter
     * @param count events on it
     * @param expected by its exposure; NaN where the exposure is not known
     * @param p chance of as many; NaN where nothing is expected or the exposure is not known
     * @param adjustedP the same, adjusted for the number of segments
     */
    public record Segment(
            int line, double fromMetres, double toMetres, int count, double expected, double p, double adjustedP) {}

    /**
     * One cutting.
     *
     * @param offsetMetres where the first cut is
     * @param segments by line and metres
     * @param tail the distribution that was used
     * @param overdispersionP p of counts that vary no more than Poisson's
     */
    public record Grid(double offsetMetres, List<Segment> segments, CountTail tail, double overdispersionP) {
        public Grid {
            segments = List.copyOf(segments);
        }

        /**
         * For {@link LocalG}: the segments next to each on the same line, so many to each side.
         *
         * @throws IllegalArgumentException if it is less than one
         */
        public int[][] neighbours(int eachSide) {
            if (eachSide < 1) {
                throw new IllegalArgumentException("at least one neighbour to each side, not " + eachSide);
            }
            return IntStream.range(0, segments.size())
                    .mapToObj(at -> IntStream.rangeClosed(at - eachSide, at + eachSide)
                            .filter(other -> other != at && other >= 0 && other < segments.size())
                            .filter(other -> segments.get(other).line == segments.get(at).line)
                            .toArray())
                    .toArray(int[][]::new);
        }
    }

    /**
     * Both cuttings.
     *
     * @param whole cut from the beginnings of the lines
     * @param shifted cut from half a segment on
     */
    public record Result(Grid whole, Grid shifted) {
        /** The pieces that lie in segments with an adjusted p of at most a level in both. */
        public List<Persistence.Interval> inBoth(double level) {
            List<Persistence.Interval> both = new ArrayList<>();
            for (Segment a : whole.segments) {
                for (Segment b : shifted.segments) {
                    double from = Math.max(a.fromMetres, b.fromMetres);
                    double to = Math.min(a.toMetres, b.toMetres);
                    if (a.line == b.line && from < to && a.adjustedP <= level && b.adjustedP <= level) {
                        both.add(new Persistence.Interval(a.line, from, to));
                    }
                }
            }
            return both;
        }
    }

    /**
     * @param lineMetres length of each line
     * @param line the line of each event
     * @param metres its distance along that line
     * @param segmentMetres length of a segment, greater than zero
     * @param exposure of any piece of a line
     * @param kind {@link CountTail.Kind#POISSON} or {@link CountTail.Kind#BINOMIAL}
     * @throws IllegalArgumentException if there is no event, one is not on its line, a length is not greater than zero, or there
     *     are events where the exposure is zero
     */
    public static Result count(
            double[] lineMetres,
            int[] line,
            double[] metres,
            double segmentMetres,
            Exposure exposure,
            CountTail.Kind kind) {
        if (!(segmentMetres > 0) || line.length == 0 || line.length != metres.length) {
            throw new IllegalArgumentException(
                    "a segment has a length, and there are events, each with a line and metres");
        }
        if (kind == CountTail.Kind.NEGATIVE_BINOMIAL) {
            throw new IllegalArgumentException("ask for Poisson or binomial: the data say whether they vary more");
        }
        for (int event = 0; event < line.length; event++) {
            boolean on = line[event] >= 0
                    && line[event] < lineMetres.length
                    && metres[event] >= 0
                    && metres[event] <= lineMetres[line[event]];
            if (!on) {
                throw new IllegalArgumentException(
                        "event " + event + " is not on its line: line " + line[event] + " at " + metres[event] + " m");
            }
        }
        return new Result(
                grid(lineMetres, line, metres, segmentMetres, segmentMetres, exposure, kind),
                grid(lineMetres, line, metres, segmentMetres, segmentMetres / 2, exposure, kind));
    }

    private static Grid grid(
            double[] lineMetres,
            int[] line,
            double[] metres,
            double segmentMetres,
            double firstCut,
            Exposure exposure,
            CountTail.Kind kind) {
        int[] first = new int[lineMetres.length + 1];
        for (int one = 0; one < lineMetres.length; one++) {
            if (!(lineMetres[one] > 0)) {
                throw new IllegalArgumentException("line " + one + " has no length");
            }
            first[one + 1] = first[one] + 1 + segmentOf(Math.nextDown(lineMetres[one]), segmentMetres, firstCut);
        }
        int segments = first[lineMetres.length];
        int[] counts = new int[segments];
        for (int event = 0; event < line.length; event++) {
            int last = first[line[event] + 1] - 1;
            counts[Math.min(last, first[line[event]] + segmentOf(metres[event], segmentMetres, firstCut))]++;
        }
        double[] from = new double[segments];
        double[] to = new double[segments];
        double[] share = new double[segments];
        double known = 0;
        int total = 0;
        for (int one = 0; one < lineMetres.length; one++) {
            for (int segment = first[one]; segment < first[one + 1]; segment++) {
                int at = segment - first[one];
                from[segment] = at == 0 ? 0 : firstCut + (at - 1) * segmentMetres;
                to[segment] = Math.min(lineMetres[one], firstCut + at * segmentMetres);
                share[segment] = exposure.between(one, from[segment], to[segment]);
                if (share[segment] < 0
                        || Double.isInfinite(share[segment])
                        || (share[segment] == 0 && counts[segment] > 0)) {
                    throw new IllegalArgumentException(
                            "line " + one + " from " + from[segment] + " to " + to[segment]
                                    + " m: exposure is finite, and greater than zero where there are events; NaN where not known");
                }
                if (!Double.isNaN(share[segment])) {
                    known += share[segment];
                    total += counts[segment];
                }
            }
        }
        return judged(firstCut == segmentMetres ? 0 : firstCut, first, counts, from, to, share, known, total, kind);
    }

    private static int segmentOf(double metres, double segmentMetres, double firstCut) {
        return metres < firstCut ? 0 : 1 + (int) Math.floor((metres - firstCut) / segmentMetres);
    }

    private static Grid judged(
            double offset,
            int[] first,
            int[] counts,
            double[] from,
            double[] to,
            double[] share,
            double known,
            int total,
            CountTail.Kind kind) {
        double[] expected = new double[counts.length];
        for (int segment = 0; segment < counts.length; segment++) {
            expected[segment] = known > 0 ? total * share[segment] / known : Double.NaN;
        }
        int[] tested = IntStream.range(0, counts.length)
                .filter(segment -> expected[segment] > 0)
                .toArray();
        int[] testedCounts =
                Arrays.stream(tested).map(segment -> counts[segment]).toArray();
        double[] testedExpected =
                Arrays.stream(tested).mapToDouble(segment -> expected[segment]).toArray();
        double overdispersionP = tested.length > 1 ? CountTail.overdispersionP(testedCounts, testedExpected) : 1;
        CountTail tail = overdispersionP <= OVERDISPERSED
                ? new CountTail(
                        CountTail.Kind.NEGATIVE_BINOMIAL, total, CountTail.dispersion(testedCounts, testedExpected))
                : new CountTail(kind, total, 0);
        double[] p = new double[counts.length];
        for (int segment = 0; segment < p.length; segment++) {
            p[segment] = expected[segment] > 0 ? tail.chance(counts[segment], expected[segment]) : Double.NaN;
        }
        double[] adjusted = FalseDiscovery.benjaminiHochberg(p);
        List<Segment> segments = new ArrayList<>();
        for (int line = 0; line + 1 < first.length; line++) {
            for (int segment = first[line]; segment < first[line + 1]; segment++) {
                segments.add(new Segment(
                        line,
                        from[segment],
                        to[segment],
                        counts[segment],
                        expected[segment],
                        p[segment],
                        adjusted[segment]));
            }
        }
        return new Grid(offset, segments, tail, overdispersionP);
    }
}
