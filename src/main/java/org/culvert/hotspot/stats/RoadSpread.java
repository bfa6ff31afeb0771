package org.culvert.hotspot.stats;

import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Averages kernel rows over the stretch of road around each piece, by chainage, on the piece's own strand. A piece counts
 * with the length of it that lies within; where the road ends, the stretch is cut there.
 */
final class RoadSpread {
    private record Strand(int road, int strand) {}

    /** What a neighbour hears: a piece, and how much chainage of it lies within the stretch. */
    private interface Neighbour {
        void accept(int piece, double overlapMetres);
    }

    private final Pieces pieces;
    private final Chainage chainage;
    private final Map<Strand, List<Integer>> linksOf = new HashMap<>();

    RoadSpread(Pieces pieces, Chainage chainage) {
        this.pieces = pieces;
        this.chainage = chainage;
        for (int link = 0; link < chainage.linkCount(); link++) {
            Strand strand = strandOf(link);
            if (!linksOf.containsKey(strand)) {
                linksOf.put(
                        strand,
                        chainage.linksBeside(link).stream()
                                .filter(other -> chainage.strand(other) == strand.strand())
                                .toList());
            }
        }
    }

    private Strand strandOf(int link) {
        return new Strand(chainage.road(link), chainage.strand(link));
    }

    private void around(int piece, double spreadMetres, Neighbour neighbour) {
        int link = pieces.linkOf(piece);
        double middle = chainage.at(link, pieces.centre(piece));
        double low = middle - spreadMetres;
        double high = middle + spreadMetres;
        for (int other : linksOf.getOrDefault(strandOf(link), List.of())) {
            if (chainage.low(other) >= high) {
                break;
            }
            if (chainage.high(other) <= low) {
                continue;
            }
            for (int near = pieces.first(other); near < pieces.first(other + 1); near++) {
                double one = chainage.at(other, pieces.start(near));
                double two = chainage.at(other, pieces.end(near));
                double overlap = Math.min(high, Math.max(one, two)) - Math.max(low, Math.min(one, two));
                if (overlap > 0) {
                    neighbour.accept(near, overlap);
                }
            }
        }
    }

    /** Adds to {@code base} every piece that lies within the spread of one of the wanted pieces. */
    void addNeighbours(BitSet wanted, double spreadMetres, BitSet base) {
        wanted.stream().forEach(piece -> {
            base.set(piece);
            around(piece, spreadMetres, (near, overlap) -> base.set(near));
        });
    }

    KernelRows average(KernelRows exact, BitSet wanted, double spreadMetres, int threads) {
        return KernelRows.assemble(pieces.count(), wanted, threads, () -> (piece, into) -> {
            double[] total = new double[1];
            around(piece, spreadMetres, (near, overlap) -> total[0] += overlap);
            if (total[0] == 0) {
                exact.copyTo(piece, 1, into);
            } else {
                around(piece, spreadMetres, (near, overlap) -> exact.copyTo(near, overlap / total[0], into));
            }
        });
    }
}
