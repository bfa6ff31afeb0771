package org.culvert.hotspot.stats.pattern;

import java.util.Arrays;
import java.util.function.IntConsumer;
import org.culvert.hotspot.stats.Parallel;
import org.culvert.road.network.RoadGraph;

/**
 * The K function on a network: how many other events lie within a distance of an event along the roads.
 *
 * <p>{@link Correction#NONE}: {@code K(r) = |L| / (n (n-1)) * number of ordered pairs with d <= r} (Okabe and Yamada 2001, The
 * K-function method on a network and its computational implementation, Geographical Analysis 33, 271-290); what it would be
 * by chance depends on the network. {@link Correction#ANG}: every pair counts {@code 1 / m(x_i, d_ij)}, where {@code m(u, t)}
 * is the number of points of the network at exactly the distance t from u (Ang, Baddeley and Nair 2012, Geometrically corrected
 * second order analysis of events on a linear network, Scandinavian Journal of Statistics 39, 591-617); by even chance it is r
 * on any network. Searches stop at the greatest radius. Distances within a micrometre of a radius count as within it. Dead ends
 * and the edges of the network need no further correction: roads beyond an edge are as if there were none.
 */
public final class NetworkK {
    /** How pairs are counted. */
    public enum Correction {
        NONE,
        ANG
    }

    /** Sums are taken in so many parts, whatever the number of threads, so that they come out the same. */
    private static final int PARTS = 128;

    private NetworkK() {}

    /**
     * @param events at least 2
     * @param radiiMetres ascending, zero or more
     * @param correction how pairs are counted
     * @param threads how many threads may be used; the result is the same for any
     * @return K in metres at each radius
     * @throws IllegalArgumentException if there are fewer than 2 events or the radii do not ascend
     */
    public static double[] of(PlacedEvents events, double[] radiiMetres, Correction correction, int threads) {
        requireAscending(radiiMetres);
        int n = events.count();
        if (n < 2) {
            throw new IllegalArgumentException("K needs at least two events");
        }
        int parts = Math.min(PARTS, n);
        double[][] sums = new double[parts][];
        Parallel.forEach(parts, threads, () -> {
            var pairs = new Pairs(events, radiiMetres, correction);
            return (IntConsumer)
                    part -> sums[part] = pairs.sum((int) ((long) part * n / parts), (int) ((part + 1L) * n / parts));
        });
        double[] total = new double[radiiMetres.length];
        for (double[] one : sums) {
            for (int i = 0; i < total.length; i++) {
                total[i] += one[i];
            }
        }
        return scaled(total, events);
    }

    /** The same on the calling thread, which may be one of many. */
    static double[] of(PlacedEvents events, double[] radiiMetres, Correction correction) {
        var pairs = new Pairs(events, radiiMetres, correction);
        return scaled(pairs.sum(0, events.count()), events);
    }

    /** How many points of the network are at exactly a distance from an event; where arms begin or meet, just beyond it. */
    static int pointsAt(PlacedEvents events, int rank, double metres) {
        var pairs = new Pairs(events, new double[] {metres}, Correction.ANG);
        pairs.reach.search(events.link(rank), events.metres(rank), metres);
        pairs.findArms(rank, metres);
        return pairs.pointsAt(metres);
    }

    static void requireAscending(double[] radii) {
        for (int i = 0; i < radii.length; i++) {
            if (!(radii[i] >= 0) || Double.isInfinite(radii[i]) || (i > 0 && radii[i] <= radii[i - 1])) {
                throw new IllegalArgumentException("radii are finite, zero or more, and ascend");
            }
        }
        if (radii.length == 0) {
            throw new IllegalArgumentException("at least one radius is needed");
        }
    }

    private static double[] scaled(double[] sumsAtRadii, PlacedEvents events) {
        double n = events.count();
        double each = events.graph().totalLength() / (n * (n - 1));
        double[] k = new double[sumsAtRadii.length];
        double sum = 0;
        for (int i = 0; i < k.length; i++) {
            sum += sumsAtRadii[i];
            k[i] = sum * each;
        }
        return k;
    }

    /** Sums over pairs, for one thread. */
    private static final class Pairs {
        private final PlacedEvents events;
        private final double[] radii;
        private final Correction correction;
        private final Reach reach;
        private double[] begins = new double[64];
        private double[] ends = new double[64];
        private int arms;

        Pairs(PlacedEvents events, double[] radii, Correction correction) {
            this.events = events;
            this.radii = radii;
            this.correction = correction;
            this.reach = new Reach(events);
        }

        /** For each radius, what the pairs add that are no nearer than the one before: of first events from ... to to. */
        double[] sum(int from, int to) {
            double[] sums = new double[radii.length];
            double farthest = radii[radii.length - 1];
            for (int rank = from; rank < to; rank++) {
                reach.search(events.link(rank), events.metres(rank), farthest);
                if (correction == Correction.ANG) {
                    findArms(rank, farthest);
                }
                for (int i = 0; i < reach.count(); i++) {
                    if (reach.event(i) == rank) {
                        continue;
                    }
                    double away = reach.metres(i);
                    int radius = firstAtLeast(radii, radii.length, away - Reach.MICROMETRE);
                    sums[radius] += correction == Correction.ANG ? 1.0 / Math.max(1, pointsAt(away)) : 1;
                }
            }
            return sums;
        }

        /**
         * The arms on which a point moves away from the event: along each link from either end, from the distance at which it
         * starts to that at which it meets what comes from the other end.
         */
        void findArms(int rank, double farthest) {
            RoadGraph graph = events.graph();
            arms = 0;
            int own = events.link(rank);
            double here = events.metres(rank);
            addArms(0, reach.toNode(graph.from(own)), here, farthest);
            addArms(0, reach.toNode(graph.to(own)), graph.length(own) - here, farthest);
            for (int i = 0; i < reach.touchedCount(); i++) {
                int link = reach.touched(i);
                if (link != own) {
                    addArms(reach.toNode(graph.from(link)), reach.toNode(graph.to(link)), graph.length(link), farthest);
                }
            }
            Arrays.sort(begins, 0, arms);
            Arrays.sort(ends, 0, arms);
        }

        private void addArms(double one, double other, double length, double farthest) {
            double meet = Math.min(Math.min(one, other) + length, (one + other + length) / 2);
            addArm(one, meet, farthest);
            addArm(other, meet, farthest);
        }

        private void addArm(double begin, double end, double farthest) {
            // A meeting point that is a node is where an arm of no length begins: rounding must not make it one of
            // some.
            if (begin > farthest + Reach.MICROMETRE || end - begin <= Reach.MICROMETRE / 1000) {
                return;
            }
            if (arms == begins.length) {
                begins = Arrays.copyOf(begins, 2 * arms);
                ends = Arrays.copyOf(ends, 2 * arms);
            }
            begins[arms] = begin;
            ends[arms++] = end;
        }

        int pointsAt(double metres) {
            double just = metres + Reach.MICROMETRE / 10;
            return firstAtLeast(begins, arms, just) - firstAtLeast(ends, arms, just);
        }

        private static int firstAtLeast(double[] ascending, int count, double value) {
            int low = 0;
            int high = count;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (ascending[middle] < value) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }
    }
}
