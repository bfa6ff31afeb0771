package org.culvert.hotspot.stats;

import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.statistics.distribution.GammaDistribution;

/**
 * As {@link RedrawnPlaces}, on a background that differs from patch to patch: in every simulated set each patch gets a gamma
 * multiplier of mean 1, of a coefficient of variation drawn from what the counts allow ({@link Patchiness}), with the cuts
 * between patches begun anywhere. How many events a stratum and a way of recording has is kept.
 */
final class PatchyPlaces implements NullModel {
    private final RedrawnPlaces even;
    private final Pieces pieces;
    private final Patches patches;
    private final Patchiness patchiness;
    private final double share;

    /**
     * @param patchMetres length of a patch along the road
     * @param kernelMetres over how much road the kernel averages: one over the integral of its square
     */
    PatchyPlaces(
            RedrawnPlaces even,
            Pieces pieces,
            Chainage chainage,
            double[] expected,
            int[] counted,
            double patchMetres,
            double kernelMetres) {
        this.even = even;
        this.pieces = pieces;
        this.patches = new Patches(pieces, chainage, patchMetres);
        double[] expectedIn = new double[patches.count()];
        int[] countedIn = new int[patches.count()];
        for (int piece = 0; piece < pieces.count(); piece++) {
            int patch = patches.of(piece, 0);
            expectedIn[patch] += expected[piece];
            countedIn[patch] += counted[piece];
        }
        this.patchiness = new Patchiness(expectedIn, countedIn);
        this.share = patchMetres / (patchMetres + kernelMetres);
    }

    @Override
    public void draw(UniformRandomProvider random, int[] rows) {
        double variation = patchiness.draw(random);
        if (variation == 0) {
            even.draw(random, rows);
            return;
        }
        double begun = random.nextDouble();
        double[] multiplier = new double[patches.count()];
        double square = variation * variation;
        var gamma = GammaDistribution.of(1 / square, square).createSampler(random);
        for (int patch = 0; patch < multiplier.length; patch++) {
            multiplier[patch] = gamma.sample();
        }
        double most = Arrays.stream(multiplier).max().orElse(0);
        // Groups of one stratum share their draw
        Map<WeightedDraw, WeightedDraw> roughOf = new IdentityHashMap<>();
        int at = 0;
        for (RedrawnPlaces.Group group : even.groups()) {
            WeightedDraw smooth = group.truePiece();
            if (group.events() * most < smooth.count()) {
                for (int i = 0; i < group.events(); i++) {
                    rows[at++] = group.rowOf(draw(smooth, multiplier, most, begun, random));
                }
            } else {
                at = group.draw(
                        roughOf.computeIfAbsent(smooth, key -> roughened(key, multiplier, begun)), random, rows, at);
            }
        }
    }

    /** Draws evenly, and keeps what is drawn as often as its patch is rough: quick where there are few events. */
    private int draw(
            WeightedDraw smooth, double[] multiplier, double most, double begun, UniformRandomProvider random) {
        int piece;
        do {
            piece = smooth.draw(random);
        } while (random.nextDouble() * most >= multiplier[patches.of(piece, begun)]);
        return piece;
    }

    private WeightedDraw roughened(WeightedDraw smooth, double[] multiplier, double begun) {
        int[] items = smooth.items();
        double[] weight = new double[items.length];
        Arrays.setAll(weight, i -> pieces.length(items[i]) * multiplier[patches.of(items[i], begun)]);
        return new WeightedDraw(items, weight);
    }

    @Override
    public int events() {
        return even.events();
    }

    @Override
    public double shareDrawn() {
        return 0;
    }

    @Override
    public double backgroundVariance() {
        return patchiness.meanSquare() * share;
    }

    @Override
    public Moments moments() {
        return even.moments();
    }
}
