package org.culvert.hotspot.stats;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * The greatest surprise anywhere on the network in each of many simulated sets, and what it says of an observed one.
 *
 * <p>With the observed set among S + 1 equally likely ones, {@code (1 + number of simulations at least as surprising) /
 * (S + 1)} is a p-value adjusted for all the places looked at: Westfall and Young (1993), Resampling-Based Multiple
 * Testing; Davison and Hinkley (1997), Bootstrap Methods and their Application, chapter 4.
 */
final class MonteCarlo {
    /** Sums of the same values in another order may differ by this much, relatively; such are taken as equal. */
    private static final double TIE = 1e-9;

    private final double[] ascending;

    private MonteCarlo(double[] ascending) {
        this.ascending = ascending;
    }

    static MonteCarlo run(
            Smoother smoother,
            NullModel chance,
            Surprise surprise,
            int simulations,
            long seed,
            int threads,
            IntConsumer done) {
        double[] greatest = new double[simulations];
        var finished = new AtomicInteger();
        int atOnce = smoother.atOnce();
        int batches = (simulations + atOnce - 1) / atOnce;
        Parallel.forEach(batches, threads, () -> {
            Smoother.Brush brush = smoother.newBrush();
            int[][] sets = new int[atOnce][chance.events()];
            return batch -> {
                int first = batch * atOnce;
                int count = Math.min(atOnce, simulations - first);
                for (int set = 0; set < count; set++) {
                    chance.draw(generator(seed, first + set), sets[set]);
                }
                brush.smooth(Arrays.copyOf(sets, count));
                for (int set = 0; set < count; set++) {
                    greatest[first + set] = greatest(brush, set, surprise);
                    done.accept(finished.incrementAndGet());
                }
            };
        });
        return ofGreatest(greatest);
    }

    /** From the greatest surprise of each simulation, in any order. */
    static MonteCarlo ofGreatest(double[] greatest) {
        double[] ascending = greatest.clone();
        Arrays.sort(ascending);
        return new MonteCarlo(ascending);
    }

    /** The greatest surprise anywhere of one of the sets that were smoothed last. */
    static double greatest(Smoother.Brush brush, int set, Surprise surprise) {
        double[] density = brush.density(set);
        int[] touched = brush.touched(set);
        double best = 0;
        for (int i = 0; i < brush.touchedCount(set); i++) {
            best = surprise.orBetter(best, touched[i], density[touched[i]]);
        }
        return best;
    }

    /** The least surprise that is taken as equal to one. */
    static double least(double surprise) {
        return surprise - TIE * Math.max(1, surprise);
    }

    /** The p-value, adjusted for all places, of a surprise at one of them. */
    double adjustedP(double surprise) {
        double least = least(surprise);
        int below = 0;
        int above = ascending.length;
        while (below < above) {
            int middle = (below + above) >>> 1;
            if (ascending[middle] < least) {
                below = middle + 1;
            } else {
                above = middle;
            }
        }
        return (1.0 + ascending.length - below) / (ascending.length + 1.0);
    }

    /**
     * The least surprise whose adjusted p is at most alpha: that of the global envelope by the smallest p anywhere (Myllymaki
     * and others 2017, Global envelope tests for spatial processes, Journal of the Royal Statistical Society B 79, 381-404,
     * doi:10.1111/rssb.12172). Infinite where so few simulations cannot reach alpha at all.
     */
    double critical(double alpha) {
        double reached = 1;
        while (adjustedP(reached) > alpha) {
            reached *= 2;
            if (Double.isInfinite(reached)) {
                return reached;
            }
        }
        // No surprise at all has a p of 1
        return Surprise.least(0, reached, surprise -> adjustedP(surprise) <= alpha);
    }

    /** A generator of its own for each simulation, so that it does not matter which thread runs it. */
    static UniformRandomProvider generator(long seed, int simulation) {
        long[] state = new long[4];
        long at = seed ^ mix(simulation + 1L);
        for (int i = 0; i < state.length; i++) {
            at += 0x9e3779b97f4a7c15L;
            state[i] = mix(at);
        }
        return RandomSource.XO_SHI_RO_256_PP.create(state);
    }

    /** Finaliser of SplitMix64: Steele, Lea and Flood (2014), Fast splittable pseudorandom number generators. */
    private static long mix(long of) {
        long z = of;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
