package org.culvert.hotspot.stats;

import java.util.Arrays;
import java.util.BitSet;

/**
 * What an event in one piece adds to the density of every piece within reach: sparse rows, one a piece.
 *
 * <p>A row holds the equal-split discontinuous kernel of an event at the centre of the row's piece, reflected at dead
 * ends, as its average over each piece in turn, in events per metre. The average is exact (the kernel is integrated, not
 * sampled), so a row times the pieces' lengths sums to one however coarse the pieces are. Paths that reach the same link
 * end within 1/512 of the reach of each other are carried on as one, at their mean distance by weight, which keeps the
 * work bounded on dense street grids and keeps the mass.
 *
 * <p>Values are kept as floats: their rounding, 6e-8, is far below that of any position. Immutable.
 */
final class KernelRows {
    private final int[] start;
    private final int[] piece;
    private final float[] value;

    KernelRows(int[] start, int[] piece, float[] value) {
        this.start = start;
        this.piece = piece;
        this.value = value;
    }

    /** Index of a row's first entry; that of {@code row + 1} is one beyond its last. */
    int start(int row) {
        return start[row];
    }

    /** The piece of an entry. */
    int piece(int entry) {
        return piece[entry];
    }

    /** The density that an entry adds, in events per metre. */
    float value(int entry) {
        return value[entry];
    }

    int entries() {
        return piece.length;
    }

    /** Adds a row to a field and notes the places that were zero before; returns how many places are noted. */
    int addTo(int row, double[] field, int[] touched, int touchedCount) {
        int noted = touchedCount;
        for (int entry = start[row]; entry < start[row + 1]; entry++) {
            int at = piece[entry];
            double before = field[at];
            if (before == 0) {
                touched[noted++] = at;
            }
            field[at] = before + value[entry];
        }
        return noted;
    }

    /** Adds a share of a row to another that is being filled. */
    void copyTo(int row, double share, RowBuffer into) {
        for (int entry = start[row]; entry < start[row + 1]; entry++) {
            into.add(piece[entry], share * value[entry]);
        }
    }

    /**
     * Builds the rows.
     *
     * @param pieces the pieces of the network
     * @param kernel the kernel; its reach is in metres along the roads
     * @param needed the rows wanted; others stay empty
     * @param threads how many threads to use; the rows do not depend on it
     */
    static KernelRows build(Pieces pieces, RoadKernel kernel, BitSet needed, int threads) {
        return assemble(pieces.count(), needed, threads, () -> {
            var spread = new PathSpread(pieces, kernel);
            return (row, into) -> spread.from(row, into);
        });
    }

    /** Rows of a kernel that ends at its reach. */
    static Responses.Kernel of(RoadKernel kernel) {
        return (pieces, needed, threads) -> build(pieces, kernel, needed, threads);
    }

    /** Rows of an event that is not smoothed: one, in its own piece. */
    static KernelRows unsmoothed(Pieces pieces, BitSet needed, int threads) {
        return assemble(pieces.count(), needed, threads, () -> (row, into) -> into.add(row, 1));
    }

    /** Fills one row; one filler serves one thread. */
    interface RowFiller {
        void fill(int row, RowBuffer into);
    }

    static KernelRows assemble(int rows, BitSet needed, int threads, java.util.function.Supplier<RowFiller> fillers) {
        int chunks = Math.max(1, Math.min(rows, 64));
        int[] length = new int[rows];
        RowBuffer.Chunk[] parts = new RowBuffer.Chunk[chunks];
        Parallel.forEach(chunks, threads, () -> {
            RowFiller filler = fillers.get();
            var buffer = new RowBuffer(rows);
            return chunk -> {
                int from = (int) ((long) rows * chunk / chunks);
                int to = (int) ((long) rows * (chunk + 1) / chunks);
                var part = new RowBuffer.Chunk();
                for (int row = needed.nextSetBit(from); row >= 0 && row < to; row = needed.nextSetBit(row + 1)) {
                    filler.fill(row, buffer);
                    length[row] = buffer.flushTo(part);
                }
                parts[chunk] = part;
            };
        });
        int[] start = new int[rows + 1];
        for (int row = 0; row < rows; row++) {
            start[row + 1] = Math.addExact(start[row], length[row]);
        }
        int[] piece = new int[start[rows]];
        float[] value = new float[start[rows]];
        int at = 0;
        for (RowBuffer.Chunk part : parts) {
            at += part.copyTo(piece, value, at);
        }
        return new KernelRows(start, piece, value);
    }

    /** The sum over a row of value times length of piece: one, but for rounding. */
    double mass(int row, Pieces pieces) {
        double mass = 0;
        for (int entry = start[row]; entry < start[row + 1]; entry++) {
            mass += value[entry] * pieces.length(piece[entry]);
        }
        return mass;
    }

    /** Collects one row at a time by piece, in increasing order of piece. */
    static final class RowBuffer {
        private final double[] sum;
        private int[] touched = new int[64];
        private int count;

        RowBuffer(int pieces) {
            this.sum = new double[pieces];
        }

        void add(int piece, double value) {
            if (value == 0) {
                return;
            }
            if (sum[piece] == 0) {
                if (count == touched.length) {
                    touched = Arrays.copyOf(touched, 2 * count);
                }
                touched[count++] = piece;
            }
            sum[piece] += value;
        }

        private int flushTo(Chunk chunk) {
            Arrays.sort(touched, 0, count);
            chunk.reserve(count);
            for (int i = 0; i < count; i++) {
                chunk.append(touched[i], (float) sum[touched[i]]);
                sum[touched[i]] = 0;
            }
            int length = count;
            count = 0;
            return length;
        }

        /** The rows of one chunk, end to end. */
        static final class Chunk {
            private int[] piece = new int[1024];
            private float[] value = new float[1024];
            private int count;

            private void reserve(int more) {
                if (count + more > piece.length) {
                    int capacity = Math.max(count + more, piece.length + piece.length / 2);
                    piece = Arrays.copyOf(piece, capacity);
                    value = Arrays.copyOf(value, capacity);
                }
            }

            private void append(int toPiece, float toValue) {
                piece[count] = toPiece;
                value[count++] = toValue;
            }

            private int copyTo(int[] toPiece, float[] toValue, int at) {
                System.arraycopy(piece, 0, toPiece, at, count);
                System.arraycopy(value, 0, toValue, at, count);
                return count;
            }
        }
    }
}
