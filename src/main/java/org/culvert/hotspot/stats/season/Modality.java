package org.culvert.hotspot.stats.season;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * How many peaks a sample on the circle has, without saying beforehand where they are or how wide.
 *
 * <p>Silverman's test (B. W. Silverman 1981, Using kernel density estimates to investigate multimodality, Journal of the
 * Royal Statistical Society B 43, 97-99) with the wrapped normal kernel, which only ever loses modes as it widens: the least
 * bandwidth at which the estimate has one mode is large if there are two peaks. How large it may be by chance is asked of
 * samples drawn from that one-peaked estimate. The test is conservative. On the circle as N. I. Fisher and J. S. Marron
 * (2001), Mode testing via the excess mass estimate, Biometrika 88, 499-517, discuss it.
 */
final class Modality {
    private static final int GRID = 360;
    private static final double NARROWEST = Math.toRadians(2);
    private static final double WIDEST = Math.PI;
    /** Fourier terms smaller than this change no mode. */
    private static final double NEGLIGIBLE = 1e-9;

    private static final double[] GRID_COSINE = new double[GRID];
    private static final double[] GRID_SINE = new double[GRID];

    static {
        for (int i = 0; i < GRID; i++) {
            GRID_COSINE[i] = Math.cos(CircularSample.FULL_TURN * i / GRID);
            GRID_SINE[i] = Math.sin(CircularSample.FULL_TURN * i / GRID);
        }
    }

    private Modality() {}

    /** The least bandwidth, in radians, at which the density of a sample has no more than so many modes. */
    static double criticalBandwidth(CircularSample sample, int modes) {
        double[] angles = angles(sample);
        double narrow = NARROWEST;
        double wide = WIDEST;
        if (modes(density(angles, narrow)).size() <= modes) {
            return narrow;
        }
        while (wide - narrow > 1e-4) {
            double middle = (narrow + wide) / 2;
            if (modes(density(angles, middle)).size() <= modes) {
                wide = middle;
            } else {
                narrow = middle;
            }
        }
        return wide;
    }

    /** The p-value of more than one mode. */
    static double chanceOfOneMode(CircularSample sample, int simulations, long seed) {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(seed);
        double[] angles = angles(sample);
        double bandwidth = criticalBandwidth(sample, 1);
        double[] drawn = new double[angles.length];
        int more = 0;
        for (int simulation = 0; simulation < simulations; simulation++) {
            for (int i = 0; i < drawn.length; i++) {
                drawn[i] = angles[random.nextInt(angles.length)] + bandwidth * normal(random);
            }
            if (modes(density(drawn, bandwidth)).size() > 1) {
                more++;
            }
        }
        return (1.0 + more) / (simulations + 1.0);
    }

    /** The modes of a sample at the least bandwidth that has no more than so many, the highest first, in radians. */
    static List<Double> modes(CircularSample sample, int most) {
        double[] density = density(angles(sample), criticalBandwidth(sample, most));
        List<Integer> modes = new ArrayList<>(modes(density));
        modes.sort((a, b) -> density[a] == density[b] ? Integer.compare(a, b) : Double.compare(density[b], density[a]));
        return modes.stream().map(at -> CircularSample.FULL_TURN * at / GRID).toList();
    }

    /** The density at the whole degrees, by its Fourier series, up to a factor. */
    private static double[] density(double[] angles, double bandwidth) {
        double[] density = new double[GRID];
        int terms = (int) Math.ceil(Math.sqrt(-2 * Math.log(NEGLIGIBLE)) / bandwidth);
        double[] cosine = new double[angles.length];
        double[] sine = new double[angles.length];
        double[] c = new double[angles.length];
        double[] s = new double[angles.length];
        for (int i = 0; i < angles.length; i++) {
            cosine[i] = Math.cos(angles[i]);
            sine[i] = Math.sin(angles[i]);
            c[i] = 1;
        }
        for (int term = 1; term <= terms; term++) {
            double sumC = 0;
            double sumS = 0;
            for (int i = 0; i < angles.length; i++) {
                double next = c[i] * cosine[i] - s[i] * sine[i];
                s[i] = s[i] * cosine[i] + c[i] * sine[i];
                c[i] = next;
                sumC += c[i];
                sumS += s[i];
            }
            double damped = Math.exp(-0.5 * term * term * bandwidth * bandwidth) / angles.length;
            for (int at = 0; at < GRID; at++) {
                int turned = (int) ((long) term * at % GRID);
                density[at] += damped * (sumC * GRID_COSINE[turned] + sumS * GRID_SINE[turned]);
            }
        }
        return density;
    }

    /** Where the density is higher than before and falls after, flat tops counted once. */
    private static List<Integer> modes(double[] density) {
        List<Integer> modes = new ArrayList<>();
        for (int at = 0; at < GRID; at++) {
            double here = density[at];
            if (here - density[(at + GRID - 1) % GRID] <= NEGLIGIBLE) {
                continue;
            }
            int after = 1;
            while (after < GRID && Math.abs(density[(at + after) % GRID] - here) <= NEGLIGIBLE) {
                after++;
            }
            if (density[(at + after) % GRID] < here) {
                modes.add(at);
            }
        }
        return modes;
    }

    private static double[] angles(CircularSample sample) {
        double[] angles = new double[sample.count()];
        for (int i = 0; i < angles.length; i++) {
            angles[i] = sample.ascending(i);
        }
        return angles;
    }

    /** G. E. P. Box and M. E. Muller 1958, doi:10.1214/aoms/1177706645. */
    private static double normal(UniformRandomProvider random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble()))
                * Math.cos(CircularSample.FULL_TURN * random.nextDouble());
    }
}
