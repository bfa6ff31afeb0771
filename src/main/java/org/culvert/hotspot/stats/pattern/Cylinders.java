package org.culvert.hotspot.stats.pattern;

import java.util.ArrayList;
import java.util.List;

/**
 * All windows of a {@link SpaceTimeScan} and the log likelihood ratio in them, for the dates as they are or dealt out anew.
 *
 * <p>A ball grows by one ring of places at a time, and its days are kept in order. Immutable.
 */
final class Cylinders {
    /**
     * The best window around a place.
     *
     * @param centre number of the place
     * @param lastEntry the ball goes to this entry of the lists of {@link Balls}
     * @param firstDay of the window
     * @param lastDay of the window
     * @param observed events in it
     * @param inBall events in the ball at any time
     * @param onDays events anywhere on its days
     * @param ratio log likelihood ratio
     */
    record Best(
            int centre, int lastEntry, int firstDay, int lastDay, int observed, int inBall, int onDays, double ratio) {}

    private static final int LIMIT_STEPS = 40;

    private final Balls balls;
    private final int[] firstOfPlace;
    private final int days;
    private final int mostDays;
    private final int leastCases;
    private final SpaceTimeScan.Times times;
    private final int cases;
    /** Events before each day. */
    private final int[] before;
    /** Logarithms of 0 (taken as 0) to the number of cases. */
    private final double[] log;

    Cylinders(
            Balls balls,
            int[] firstOfPlace,
            int[] day,
            int days,
            int mostDays,
            int leastCases,
            SpaceTimeScan.Times times) {
        this.balls = balls;
        this.firstOfPlace = firstOfPlace;
        this.days = days;
        this.mostDays = mostDays;
        this.leastCases = leastCases;
        this.times = times;
        this.cases = day.length;
        this.before = new int[days + 1];
        for (int one : day) {
            before[one + 1]++;
        }
        for (int one = 0; one < days; one++) {
            before[one + 1] += before[one];
        }
        this.log = new double[cases + 1];
        for (int count = 1; count <= cases; count++) {
            log[count] = Math.log(count);
        }
    }

    /** What one thread needs. */
    final class Work {
        private final int[] sorted = new int[cases];
        private final double[] limit = new double[cases + 1];
        private final int[] limitVersion = new int[cases + 1];
        private double ratio;
        private int version = 1;
        private int lastEntry;
        private int firstDay;
        private int lastDay;
        private int observed;
        private int inBall;

        private void begin() {
            ratio = 0;
            version++;
        }

        /**
         * For so many seen, windows with a product of events in the ball and on its days of this and more cannot be better than
         * the best yet: the ratio falls as more are expected. It saves nearly all logarithms.
         */
        private double limit(int seen) {
            if (limitVersion[seen] != version) {
                limitVersion[seen] = version;
                double low = 0;
                double high = seen;
                for (int i = 0; i < LIMIT_STEPS; i++) {
                    double middle = (low + high) / 2;
                    if (Cylinders.this.ratio(seen, middle) > ratio) {
                        low = middle;
                    } else {
                        high = middle;
                    }
                }
                limit[seen] = high * cases;
            }
            return limit[seen];
        }
    }

    Work work() {
        return new Work();
    }

    /** The greatest log likelihood ratio anywhere, 0 if nowhere is more than expected. */
    double greatest(int[] day, Work work) {
        work.begin();
        for (int centre = 0; centre < balls.count(); centre++) {
            look(centre, day, work);
        }
        return work.ratio;
    }

    /** The best window around each place where there is one. */
    List<Best> bestOfEach(int[] day) {
        List<Best> bests = new ArrayList<>();
        Work work = work();
        for (int centre = 0; centre < balls.count(); centre++) {
            work.begin();
            look(centre, day, work);
            if (work.ratio > 0) {
                bests.add(new Best(
                        centre,
                        work.lastEntry,
                        work.firstDay,
                        work.lastDay,
                        work.observed,
                        work.inBall,
                        before[work.lastDay + 1] - before[work.firstDay],
                        work.ratio));
            }
        }
        return bests;
    }

    private void look(int centre, int[] day, Work work) {
        int end = balls.first()[centre + 1];
        int count = 0;
        int earliest = Integer.MAX_VALUE;
        int latest = -1;
        for (int entry = balls.first()[centre]; entry < end; entry++) {
            int place = balls.place()[entry];
            for (int one = firstOfPlace[place]; one < firstOfPlace[place + 1]; one++) {
                insert(work.sorted, count++, day[one]);
                earliest = Math.min(earliest, day[one]);
                latest = Math.max(latest, day[one]);
            }
            if (balls.endsAt(entry, end)) {
                if (times == SpaceTimeScan.Times.ANY) {
                    anyDays(work, count, earliest, latest, entry);
                } else {
                    lastDays(work, count, latest, entry);
                }
                earliest = Integer.MAX_VALUE;
                latest = -1;
            }
        }
    }

    private static void insert(int[] sorted, int count, int day) {
        int at = count;
        while (at > 0 && sorted[at - 1] > day) {
            sorted[at] = sorted[at - 1];
            at--;
        }
        sorted[at] = day;
    }

    /** Windows from a day of the ball to another, with a day of the outermost ring between or among them. */
    private void anyDays(Work work, int count, int earliest, int latest, int entry) {
        int[] sorted = work.sorted;
        int from = firstAtLeast(sorted, count, earliest - mostDays + 1);
        int least = firstAtLeast(sorted, count, earliest);
        for (int i = from; i < count && sorted[i] <= latest; i++) {
            if (i > 0 && sorted[i] == sorted[i - 1]) {
                continue;
            }
            int beforeFirst = before[sorted[i]];
            int beyond = sorted[i] + mostDays;
            for (int j = Math.max(i, least); j < count && sorted[j] < beyond; j++) {
                if (j + 1 == count || sorted[j + 1] != sorted[j]) {
                    weigh(work, j - i + 1, count, before[sorted[j] + 1] - beforeFirst, sorted[i], sorted[j], entry);
                }
            }
        }
    }

    /** Windows from a day of the ball to the last day of all. */
    private void lastDays(Work work, int count, int latest, int entry) {
        int[] sorted = work.sorted;
        for (int i = firstAtLeast(sorted, count, days - mostDays); i < count && sorted[i] <= latest; i++) {
            if (i == 0 || sorted[i] != sorted[i - 1]) {
                weigh(work, count - i, count, cases - before[sorted[i]], sorted[i], days - 1, entry);
            }
        }
    }

    private void weigh(Work work, int seen, int inBall, int onDays, int firstDay, int lastDay, int entry) {
        double product = (double) inBall * onDays;
        if (seen < leastCases || product >= work.limit(seen)) {
            return;
        }
        double ratio = ratio(seen, product / cases);
        if (ratio > work.ratio) {
            work.ratio = ratio;
            work.version++;
            work.lastEntry = entry;
            work.firstDay = firstDay;
            work.lastDay = lastDay;
            work.observed = seen;
            work.inBall = inBall;
        }
    }

    /** The log likelihood ratio, for fewer expected than seen. */
    private double ratio(int seen, double expected) {
        double outside = seen == cases ? 0 : (cases - seen) * (log[cases - seen] - Math.log(cases - expected));
        return seen * (log[seen] - Math.log(expected)) + outside;
    }

    private static int firstAtLeast(int[] sorted, int count, int value) {
        int low = 0;
        int high = count;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < value) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
