package org.culvert.hotspot.stats;

import java.util.Map;
import java.util.TreeMap;

/**
 * Roads cut into patches of equal chainage, each strand for itself, wherever the cuts are begun. Immutable.
 */
final class Patches {
    private final double patchMetres;
    private final double[] along;
    private final int[] firstOfStrand;
    private final int count;

    /**
     * @param patchMetres length of a patch along the road
     */
    Patches(Pieces pieces, Chainage chainage, double patchMetres) {
        this.patchMetres = patchMetres;
        this.along = new double[pieces.count()];
        this.firstOfStrand = new int[pieces.count()];
        record Strand(int road, int strand) implements Comparable<Strand> {
            @Override
            public int compareTo(Strand other) {
                int byRoad = Integer.compare(road, other.road);
                return byRoad != 0 ? byRoad : Integer.compare(strand, other.strand);
            }
        }
        Map<Strand, double[]> range = new TreeMap<>();
        for (int link = 0; link < chainage.linkCount(); link++) {
            double[] of = range.computeIfAbsent(new Strand(chainage.road(link), chainage.strand(link)), key ->
                    new double[] {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 0});
            of[0] = Math.min(of[0], chainage.low(link));
            of[1] = Math.max(of[1], chainage.high(link));
        }
        int patches = 0;
        for (double[] of : range.values()) {
            of[2] = patches;
            // One more, since the first may be begun anywhere before the road
            patches += (int) Math.ceil((of[1] - of[0]) / patchMetres) + 1;
        }
        this.count = patches;
        for (int piece = 0; piece < along.length; piece++) {
            int link = pieces.linkOf(piece);
            double[] of =
                    range.getOrDefault(new Strand(chainage.road(link), chainage.strand(link)), new double[] {0, 0, 0});
            along[piece] = chainage.at(link, pieces.centre(piece)) - of[0];
            firstOfStrand[piece] = (int) of[2];
        }
    }

    /** How many patches there may be, wherever they are begun. */
    int count() {
        return count;
    }

    /**
     * The patch of a piece.
     *
     * @param begun where the cuts are begun, as a share of a patch, 0 up to 1
     */
    int of(int piece, double begun) {
        return firstOfStrand[piece] + (int) Math.floor(along[piece] / patchMetres + begun);
    }
}
