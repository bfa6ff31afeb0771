package org.culvert.hotspot.stats.pattern;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/** Seeded generators, one for each simulation, and the p-value that simulations give. */
final class Simulations {
    /** Sums of the same values in another order may differ by this much, relatively; such are taken as equal. */
    private static final double TIE = 1e-9;

    private Simulations() {}

    /**
     * A generator of its own for each simulation, so that it does not matter which thread runs it: states by SplitMix64
     * (Steele, Lea and Flood 2014, Fast splittable pseudorandom number generators, doi:10.1145/2660193.2660195).
     */
    static UniformRandomProvider generator(long seed, int simulation) {
        long[] state = new long[4];
        long at = seed ^ mix(simulation + 1L);
        for (int i = 0; i < state.length; i++) {
            at += 0x9e3779b97f4a7c15L;
            state[i] = mix(at);
        }
        return RandomSource.XO_SHI_RO_256_PP.create(state);
    }

    private static long mix(long of) {
        long z = of;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }

    /** {@code (1 + number of simulated values at least as great) / (1 + number of simulations)}. */
    static double chance(double observed, double[] simulated) {
        int atLeast = 0;
        for (double one : simulated) {
            if (one >= observed - TIE * Math.max(1, Math.abs(observed))) {
                atLeast++;
            }
        }
        return (1.0 + atLeast) / (simulated.length + 1.0);
    }

    static void shuffle(int[] values, UniformRandomProvider random) {
        for (int i = values.length - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            int swapped = values[i];
            values[i] = values[j];
            values[j] = swapped;
        }
    }
}
