package org.culvert.hotspot.stats.pattern;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;
import org.culvert.hotspot.stats.Parallel;
import org.culvert.road.network.LinkPoint;

/**
 * Whether there were more events together in place and time than places and times alone explain: the space-time permutation
 * scan (Kulldorff, Heffernan, Hartman, Assuncao and Mostashari 2005, A space-time permutation scan statistic for disease
 * outbreak detection, PLoS Medicine 2(3), e59, doi:10.1371/journal.pmed.0020059), with balls along the roads.
 *
 * <p>A window is a ball of network distance around a place with events, and some days. With {@code n_z} events in the ball at
 * any time, {@code n_t} on its days anywhere, and C in all, {@code mu = n_z n_t / C} are expected; for {@code c > mu} seen, the
 * likelihood ratio is {@code (c / mu)^c ((C - c) / (C - mu))^(C - c)}. The greatest over all windows is held against that of sets
 * in which the dates are dealt out anew, so that p is adjusted for all windows looked at. What is busy always, and a season that
 * is the same everywhere, explain themselves: no exposure is needed. A change of effort at one place and time is found like any
 * other.
 *
 * <p>Only windows that begin (and, at any time, end) on a day with an event in their ball, and hold an event of its outermost
 * places, are looked at: for any other there is one of those with as many events, fewer expected, and so a greater ratio.
 */
public final class SpaceTimeScan {
    /** Which days a window may have. */
    public enum Times {
        /** Any run of days: looking back over the whole period. */
        ANY,
        /** Runs that end with the period: what is going on now. */
        ENDING_LAST
    }

    /**
     * What is looked at.
     *
     * @param firstDay of the period
     * @param lastDay of the period
     * @param times which days a window may have
     * @param mostDays longest window
     * @param farthestMetres greatest radius
     * @param leastEvents a window has at least so many, 2 or more; two of one place and day are often one collision told of twice
     * @param greatestShare greatest share of all events in a ball, such as 0.5
     * @param simulations such as 999
     * @param seed of the generators, one for each simulation
     */
    public record Settings(
            LocalDate firstDay,
            LocalDate lastDay,
            Times times,
            int mostDays,
            double farthestMetres,
            int leastEvents,
            double greatestShare,
            int simulations,
            long seed) {
        /** @throws IllegalArgumentException if a setting is out of range */
        public Settings {
            if (lastDay.isBefore(firstDay) || mostDays < 1 || simulations < 1) {
                throw new IllegalArgumentException(
                        "the period has a day, a window has a day, and there is a simulation");
            }
            if (leastEvents < 2) {
                throw new IllegalArgumentException("a window has at least 2 events, not " + leastEvents);
            }
            if (!(farthestMetres >= 0) || !(greatestShare > 0 && greatestShare <= 1)) {
                throw new IllegalArgumentException(
                        "a radius is zero or more, and a share greater than 0 and at most 1");
            }
        }
    }

    /**
     * A window in which there was more than expected.
     *
     * @param centre of its ball
     * @param radiusMetres distance of its outermost place
     * @param firstDay of the window
     * @param lastDay of the window
     * @param observed events in it
     * @param expected events in it by place and time alone
     * @param logLikelihoodRatio how much better "more here" explains them
     * @param p adjusted for all windows
     * @param gumbelP the same from a Gumbel distribution fitted to the simulated maxima, finer than simulations are many (Abrams,
     *     Kleinman and Kulldorff 2010, Gumbel based p-value approximations for spatial scan statistics, International Journal of
     *     Health Geographics 9, 61)
     * @param events which of the events given are in it, ascending
     */
    public record Window(
            LinkPoint centre,
            double radiusMetres,
            LocalDate firstDay,
            LocalDate lastDay,
            int observed,
            double expected,
            double logLikelihoodRatio,
            double p,
            double gumbelP,
            List<Integer> events) {
        public Window {
            events = List.copyOf(events);
        }
    }

    /**
     * What was found.
     *
     * @param windows the window of greatest ratio, then those that share no place with a greater one; the p of the latter is
     *     conservative. No window is left out for its p
     * @param cases how many events there were
     * @param places at how many different places
     * @param settings what was looked at
     */
    public record Findings(List<Window> windows, int cases, int places, Settings settings) {
        public Findings {
            windows = List.copyOf(windows);
        }
    }

    private static final double EULER = 0.5772156649015329;

    private SpaceTimeScan() {}

    /**
     * @param events the events
     * @param dates of each event in the order given
     * @param settings what to look at
     * @param mostWindows how many windows to tell of at most
     * @param threads how many threads may be used; the result is the same for any
     * @throws IllegalArgumentException if there are fewer than 2 events, not a date for each, or one outside the period
     */
    public static Findings scan(
            PlacedEvents events, List<LocalDate> dates, Settings settings, int mostWindows, int threads) {
        int cases = events.count();
        if (cases < 2 || dates.size() != cases) {
            throw new IllegalArgumentException("at least two events are needed, and a date for each");
        }
        int[] placeOf = new int[cases];
        int[] firsts = new int[cases + 1];
        int places = 0;
        for (int rank = 0; rank < cases; rank++) {
            boolean same = rank > 0
                    && events.link(rank) == events.link(rank - 1)
                    && events.metres(rank) == events.metres(rank - 1);
            if (!same) {
                firsts[places++] = rank;
            }
            placeOf[rank] = places - 1;
        }
        firsts[places] = cases;
        int[] firstOfPlace = Arrays.copyOf(firsts, places + 1);
        int[] day = new int[cases];
        for (int rank = 0; rank < cases; rank++) {
            LocalDate date = dates.get(events.given(rank));
            if (date.isBefore(settings.firstDay()) || date.isAfter(settings.lastDay())) {
                throw new IllegalArgumentException("an event of " + date + " is outside the period from "
                        + settings.firstDay() + " to " + settings.lastDay());
            }
            day[rank] = (int) (date.toEpochDay() - settings.firstDay().toEpochDay());
        }
        for (int place = 0; place < places; place++) {
            Arrays.sort(day, firstOfPlace[place], firstOfPlace[place + 1]);
        }
        int mostCases = (int) Math.floor(settings.greatestShare() * cases + 1e-9);
        Balls balls = Balls.alongRoads(events, firstOfPlace, placeOf, settings.farthestMetres(), mostCases, threads);
        int days =
                1 + (int) (settings.lastDay().toEpochDay() - settings.firstDay().toEpochDay());
        var cylinders = new Cylinders(
                balls, firstOfPlace, day, days, settings.mostDays(), settings.leastEvents(), settings.times());
        double[] maxima = simulate(cylinders, day, settings.simulations(), settings.seed(), threads);
        List<Window> windows = new ArrayList<>();
        for (Cylinders.Best best : chosen(cylinders.bestOfEach(day), balls, mostWindows)) {
            windows.add(window(best, balls, firstOfPlace, events, dates, settings, cases, maxima));
        }
        return new Findings(windows, cases, places, settings);
    }

    /** The greatest log likelihood ratio of each simulated set. */
    static double[] simulate(Cylinders cylinders, int[] day, int simulations, long seed, int threads) {
        double[] maxima = new double[simulations];
        Parallel.forEach(simulations, threads, () -> {
            int[] dealt = new int[day.length];
            var work = cylinders.work();
            return (IntConsumer) simulation -> {
                System.arraycopy(day, 0, dealt, 0, day.length);
                UniformRandomProvider random = Simulations.generator(seed, simulation);
                Simulations.shuffle(dealt, random);
                maxima[simulation] = cylinders.greatest(dealt, work);
            };
        });
        return maxima;
    }

    /** The greatest, and then the next that shares no place with one chosen before. */
    private static List<Cylinders.Best> chosen(List<Cylinders.Best> bests, Balls balls, int most) {
        List<Cylinders.Best> order = new ArrayList<>(bests);
        order.sort(Comparator.comparingDouble((Cylinders.Best best) -> -best.ratio())
                .thenComparingDouble(best -> balls.metres()[best.lastEntry()])
                .thenComparingInt(Cylinders.Best::firstDay)
                .thenComparingInt(Cylinders.Best::lastDay)
                .thenComparingInt(Cylinders.Best::centre));
        List<Cylinders.Best> chosen = new ArrayList<>();
        var taken = new BitSet();
        for (Cylinders.Best best : order) {
            if (chosen.size() == most) {
                break;
            }
            int from = balls.first()[best.centre()];
            if (IntStream.rangeClosed(from, best.lastEntry()).noneMatch(i -> taken.get(balls.place()[i]))) {
                IntStream.rangeClosed(from, best.lastEntry()).forEach(i -> taken.set(balls.place()[i]));
                chosen.add(best);
            }
        }
        return chosen;
    }

    private static Window window(
            Cylinders.Best best,
            Balls balls,
            int[] firstOfPlace,
            PlacedEvents events,
            List<LocalDate> dates,
            Settings settings,
            int cases,
            double[] maxima) {
        int centre = firstOfPlace[best.centre()];
        LocalDate firstDay = settings.firstDay().plusDays(best.firstDay());
        LocalDate lastDay = settings.firstDay().plusDays(best.lastDay());
        List<Integer> inside = new ArrayList<>();
        for (int entry = balls.first()[best.centre()]; entry <= best.lastEntry(); entry++) {
            int place = balls.place()[entry];
            for (int rank = firstOfPlace[place]; rank < firstOfPlace[place + 1]; rank++) {
                LocalDate date = dates.get(events.given(rank));
                if (!date.isBefore(firstDay) && !date.isAfter(lastDay)) {
                    inside.add(events.given(rank));
                }
            }
        }
        inside.sort(null);
        return new Window(
                new LinkPoint(events.link(centre), events.metres(centre)),
                balls.metres()[best.lastEntry()],
                firstDay,
                lastDay,
                best.observed(),
                (double) best.inBall() * best.onDays() / cases,
                best.ratio(),
                Simulations.chance(best.ratio(), maxima),
                gumbel(best.ratio(), maxima),
                inside);
    }

    /** Fitted by moments; NaN for fewer than two simulations or where all are alike. */
    static double gumbel(double ratio, double[] maxima) {
        double mean = Arrays.stream(maxima).average().orElse(Double.NaN);
        double square = 0;
        for (double one : maxima) {
            square += (one - mean) * (one - mean);
        }
        double scale = Math.sqrt(6 * square / (maxima.length - 1)) / Math.PI;
        return scale > 0 ? -Math.expm1(-Math.exp(-(ratio - (mean - EULER * scale)) / scale)) : Double.NaN;
    }
}
