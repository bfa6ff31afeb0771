package org.culvert.hotspot.stats;

import java.util.Arrays;
import java.util.BitSet;

/** The piece of the other carriageway beside each piece, by number; -1 where the road is not divided. Immutable. */
final class Twins {
    private final int[] twin;
    private final boolean any;

    Twins(Pieces pieces, Carriageways carriageways) {
        this.twin = new int[pieces.count()];
        for (int piece = 0; piece < twin.length; piece++) {
            Carriageways.Place beside = carriageways.beside(pieces.linkOf(piece), pieces.centre(piece));
            twin[piece] = beside == null ? -1 : pieces.at(beside.link(), beside.metres());
        }
        this.any = Arrays.stream(twin).anyMatch(beside -> beside >= 0);
    }

    int of(int piece) {
        return twin[piece];
    }

    /** The pieces and those beside them. */
    BitSet with(BitSet wanted) {
        var both = (BitSet) wanted.clone();
        wanted.stream().filter(piece -> twin[piece] >= 0).forEach(piece -> both.set(twin[piece]));
        return both;
    }

    /** Rows of which half lies on either carriageway. */
    KernelRows fold(KernelRows rows, BitSet wanted, int threads) {
        if (!any) {
            return rows;
        }
        return KernelRows.assemble(twin.length, wanted, threads, () -> (piece, into) -> {
            if (twin[piece] < 0) {
                rows.copyTo(piece, 1, into);
            } else {
                rows.copyTo(piece, 0.5, into);
                rows.copyTo(twin[piece], 0.5, into);
            }
        });
    }
}
