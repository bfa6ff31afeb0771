package org.culvert.exchange.demo;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A seeded stream of chance (SplitMix64: Steele, Lea and Flood 2014), one for each purpose, so that a change in one part
 * of the region leaves the others alone. Written out here because the JDK does not promise that the derived methods of
 * its own generators stay the same; transcendental functions are those of {@link StrictMath} for the same reason.
 */
final class Dice {
    private long state;

    Dice(long seed, String purpose) {
        long hash = 0xcbf29ce484222325L;
        for (byte b : purpose.getBytes(StandardCharsets.UTF_8)) {
            hash = (hash ^ b) * 0x100000001b3L;
        }
        state = mix(seed) ^ mix(hash);
    }

    private static long mix(long value) {
        long z = value;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }

    private long nextLong() {
        state += 0x9e3779b97f4a7c15L;
        return mix(state);
    }

    /** Uniform in [0, 1). */
    double unit() {
        return (nextLong() >>> 11) * 0x1.0p-53;
    }

    double between(double low, double high) {
        return low + unit() * (high - low);
    }

    /** Uniform in 0 .. bound - 1. */
    int below(int bound) {
        return (int) (unit() * bound);
    }

    /** Uniform in low .. high, both included. */
    int from(int low, int high) {
        return low + below(high - low + 1);
    }

    boolean chance(double probability) {
        return unit() < probability;
    }

    double normal(double mean, double deviation) {
        double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - unit()));
        return mean + deviation * radius * StrictMath.cos(2 * StrictMath.PI * unit());
    }

    double logNormal(double median, double sigma) {
        return median * StrictMath.exp(normal(0, sigma));
    }

    <T> T pick(List<T> list) {
        return list.get(below(list.size()));
    }

    /** An index drawn with the given weights, which are not negative and not all zero. */
    int weighted(double[] weights) {
        double sum = 0;
        for (double weight : weights) {
            sum += weight;
        }
        double at = unit() * sum;
        for (int i = 0; i < weights.length; i++) {
            at -= weights[i];
            if (at < 0) {
                return i;
            }
        }
        return weights.length - 1;
    }

    <T> List<T> shuffled(List<T> list) {
        List<T> result = new ArrayList<>(list);
        for (int i = result.size() - 1; i > 0; i--) {
            int j = below(i + 1);
            T kept = result.get(i);
            result.set(i, result.get(j));
            result.set(j, kept);
        }
        return result;
    }
}
