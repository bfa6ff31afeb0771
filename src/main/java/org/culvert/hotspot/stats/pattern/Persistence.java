package org.culvert.hotspot.stats.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/**
 * Which stretches lasted: how far those found in each of several periods, such as moving windows of three years, lie on the same
 * road.
 *
 * <p>Overlap is by length. Moving windows share years, so that a stretch found in one is likely to be found in the next by the
 * same events: beside the number of windows, each result says in how many of them that share no year (after Bil, Andrasik and
 * Sedonik 2019, A detailed spatiotemporal analysis of traffic crash hotspots, Applied Geography 107, 82-90, who follow hotspots
 * through moving windows of three years).
 */
public final class Persistence {
    private Persistence() {}

    /**
     * A piece of a line: a road or link, by metres along it.
     *
     * @param line number of the line
     * @param fromMetres not more than {@code toMetres}
     * @param toMetres not less than {@code fromMetres}
     */
    public record Interval(int line, double fromMetres, double toMetres) {
        /** @throws IllegalArgumentException if the interval ends before it begins */
        public Interval {
            if (!(fromMetres <= toMetres)) {
                throw new IllegalArgumentException(
                        "an interval from " + fromMetres + " to " + toMetres + " m ends before it begins");
            }
        }

        double metres() {
            return toMetres - fromMetres;
        }
    }

    /**
     * A stretch as found in one period; its parts may overlap.
     *
     * @param parts at least one
     */
    public record Stretch(List<Interval> parts) {
        /** @throws IllegalArgumentException if there is no part */
        public Stretch {
            parts = List.copyOf(parts);
            if (parts.isEmpty()) {
                throw new IllegalArgumentException("a stretch has at least one part");
            }
        }
    }

    /**
     * A period and what was found in it.
     *
     * @param firstYear not after {@code lastYear}
     * @param lastYear not before {@code firstYear}
     * @param stretches maybe none
     */
    public record Period(int firstYear, int lastYear, List<Stretch> stretches) {
        /** @throws IllegalArgumentException if the period ends before it begins */
        public Period {
            stretches = List.copyOf(stretches);
            if (lastYear < firstYear) {
                throw new IllegalArgumentException(
                        "a period from " + firstYear + " to " + lastYear + " ends before it begins");
            }
        }
    }

    /**
     * A piece of road that was in the same periods from end to end.
     *
     * @param where the piece
     * @param periods in which periods, by index, ascending
     * @param longestRun most of them that follow one another
     * @param apart most of them that share no year
     */
    public record Piece(Interval where, List<Integer> periods, int longestRun, int apart) {
        public Piece {
            periods = List.copyOf(periods);
        }
    }

    /**
     * How a stretch of one period fared in the others.
     *
     * @param period index of its period
     * @param stretch index among that period's stretches
     * @param metres its length
     * @param overlapMetres how much of it was found in each period; in its own, all
     * @param heldIn periods in which the share asked for was found, ascending, its own among them
     * @param longestRun most of those that follow one another
     * @param apart most of those that share no year
     */
    public record Lasting(
            int period,
            int stretch,
            double metres,
            List<Double> overlapMetres,
            List<Integer> heldIn,
            int longestRun,
            int apart) {
        public Lasting {
            overlapMetres = List.copyOf(overlapMetres);
            heldIn = List.copyOf(heldIn);
        }
    }

    /**
     * The pieces of road that were found in any period, by line and metres.
     *
     * @throws IllegalArgumentException if the periods are not in the order of their first years
     */
    public static List<Piece> pieces(List<Period> periods) {
        requireOrder(periods);
        List<List<Interval>> found = merged(periods);
        TreeSet<Integer> lines = new TreeSet<>();
        found.forEach(intervals -> intervals.forEach(interval -> lines.add(interval.line())));
        List<Piece> pieces = new ArrayList<>();
        for (int line : lines) {
            TreeSet<Double> cuts = new TreeSet<>();
            for (List<Interval> intervals : found) {
                for (Interval interval : intervals) {
                    if (interval.line() == line) {
                        cuts.add(interval.fromMetres());
                        cuts.add(interval.toMetres());
                    }
                }
            }
            Double from = null;
            for (double to : cuts) {
                if (from != null) {
                    addPiece(pieces, new Interval(line, from, to), found, periods);
                }
                from = to;
            }
        }
        return pieces;
    }

    private static void addPiece(List<Piece> pieces, Interval where, List<List<Interval>> found, List<Period> periods) {
        double middle = (where.fromMetres() + where.toMetres()) / 2;
        List<Integer> in = new ArrayList<>();
        for (int period = 0; period < found.size(); period++) {
            for (Interval interval : found.get(period)) {
                if (interval.line() == where.line()
                        && interval.fromMetres() <= middle
                        && middle <= interval.toMetres()) {
                    in.add(period);
                    break;
                }
            }
        }
        if (in.isEmpty()) {
            return;
        }
        Interval whole = where;
        if (!pieces.isEmpty()) {
            Piece last = pieces.get(pieces.size() - 1);
            boolean goesOn = last.where().line() == where.line()
                    && last.where().toMetres() == where.fromMetres()
                    && last.periods().equals(in);
            if (goesOn) {
                whole = new Interval(where.line(), last.where().fromMetres(), where.toMetres());
                pieces.remove(pieces.size() - 1);
            }
        }
        pieces.add(new Piece(whole, in, longestRun(in), apart(in, periods)));
    }

    /**
     * Every stretch of every period, by period and then as given.
     *
     * @param leastShare a stretch held in a period if at least this share of its length was found there, above 0 to 1
     * @throws IllegalArgumentException if the periods are not in the order of their first years, or the share is out of range
     */
    public static List<Lasting> stretches(List<Period> periods, double leastShare) {
        requireOrder(periods);
        if (!(leastShare > 0 && leastShare <= 1)) {
            throw new IllegalArgumentException("a share is greater than 0 and at most 1, not " + leastShare);
        }
        List<List<Interval>> found = merged(periods);
        List<Lasting> results = new ArrayList<>();
        for (int period = 0; period < periods.size(); period++) {
            List<Stretch> own = periods.get(period).stretches();
            for (int stretch = 0; stretch < own.size(); stretch++) {
                List<Interval> parts = merge(own.get(stretch).parts());
                double metres = parts.stream().mapToDouble(Interval::metres).sum();
                List<Double> overlap = new ArrayList<>();
                List<Integer> held = new ArrayList<>();
                for (int other = 0; other < found.size(); other++) {
                    double shared = other == period ? metres : shared(parts, found.get(other));
                    overlap.add(shared);
                    // A stretch without length is held where its own period is alone.
                    if (other == period || (metres > 0 && shared >= leastShare * metres * (1 - 1e-12))) {
                        held.add(other);
                    }
                }
                results.add(
                        new Lasting(period, stretch, metres, overlap, held, longestRun(held), apart(held, periods)));
            }
        }
        return results;
    }

    private static double shared(List<Interval> some, List<Interval> others) {
        double sum = 0;
        for (Interval a : some) {
            for (Interval b : others) {
                if (a.line() == b.line()) {
                    sum += Math.max(0, Math.min(a.toMetres(), b.toMetres()) - Math.max(a.fromMetres(), b.fromMetres()));
                }
            }
        }
        return sum;
    }

    private static List<List<Interval>> merged(List<Period> periods) {
        return periods.stream()
                .map(period -> merge(period.stretches().stream()
                        .flatMap(stretch -> stretch.parts().stream())
                        .toList()))
                .toList();
    }

    private static List<Interval> merge(List<Interval> intervals) {
        List<Interval> order = new ArrayList<>(intervals);
        order.sort(Comparator.comparingInt(Interval::line)
                .thenComparingDouble(Interval::fromMetres)
                .thenComparingDouble(Interval::toMetres));
        List<Interval> merged = new ArrayList<>();
        for (Interval next : order) {
            Interval last = merged.isEmpty() ? null : merged.get(merged.size() - 1);
            if (last != null && last.line() == next.line() && next.fromMetres() <= last.toMetres()) {
                merged.set(
                        merged.size() - 1,
                        new Interval(last.line(), last.fromMetres(), Math.max(last.toMetres(), next.toMetres())));
            } else {
                merged.add(next);
            }
        }
        return merged;
    }

    private static int longestRun(List<Integer> periods) {
        int longest = 0;
        int run = 0;
        for (int i = 0; i < periods.size(); i++) {
            run = i > 0 && periods.get(i) == periods.get(i - 1) + 1 ? run + 1 : 1;
            longest = Math.max(longest, run);
        }
        return longest;
    }

    /** Of those that end first, the first that begins after the one taken before. */
    private static int apart(List<Integer> indexes, List<Period> periods) {
        List<Period> order = new ArrayList<>(indexes.stream().map(periods::get).toList());
        order.sort(Comparator.comparingInt(Period::lastYear));
        int count = 0;
        long until = Long.MIN_VALUE;
        for (Period period : order) {
            if (period.firstYear() > until) {
                count++;
                until = period.lastYear();
            }
        }
        return count;
    }

    private static void requireOrder(List<Period> periods) {
        for (int i = 1; i < periods.size(); i++) {
            if (periods.get(i).firstYear() < periods.get(i - 1).firstYear()) {
                throw new IllegalArgumentException("periods come in the order of their first years");
            }
        }
    }
}
