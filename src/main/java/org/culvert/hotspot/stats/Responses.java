package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * What an event adds to the density, by how its place was recorded: a row of the kernel, or its average over the stretch
 * of road in which the true place may lie.
 *
 * <p>Rows are numbered through all spreads: {@code spreadIndex * pieces + piece}. Observed and simulated events use the
 * same rows. Roundings shorter than a piece, and spreads shorter than half a piece, make no difference to a field of
 * pieces and count as none; other spreads are rounded up to the next of {@code 1, 2, 4, 8 ...} half pieces, so that a
 * file with many different uncertainties needs only few sets of rows.
 */
final class Responses {
    /** Makes the rows of events whose places are exact. */
    interface Kernel {
        KernelRows rows(Pieces pieces, BitSet needed, int threads);
    }

    private final Pieces pieces;
    private final Chainage chainage;
    private final List<Double> spreads;
    private final List<KernelRows> rows = new ArrayList<>();
    private final double pieceMetres;

    private Responses(Pieces pieces, Chainage chainage, double pieceMetres, List<Double> spreads) {
        this.pieces = pieces;
        this.chainage = chainage;
        this.pieceMetres = pieceMetres;
        this.spreads = spreads;
    }

    /**
     * @param pieceMetres the longest that a piece may be
     * @param events what will be looked up: their spreads, and if {@code everywhere} is false also their places
     * @param everywhere whether simulated events may lie in any piece
     */
    static Responses build(
            Pieces pieces,
            Chainage chainage,
            Twins twins,
            Kernel kernel,
            double pieceMetres,
            Collection<RoadEvent> events,
            boolean everywhere,
            int threads) {
        var needed = new TreeMap<Double, BitSet>();
        var plain = new Responses(pieces, chainage, pieceMetres, List.of());
        for (RoadEvent event : events) {
            BitSet wanted = needed.computeIfAbsent(plain.spread(event.recording()), key -> new BitSet());
            if (!everywhere) {
                wanted.set(plain.recordedPiece(event.link(), event.metres(), event.recording()));
            }
        }
        if (everywhere) {
            needed.values().forEach(wanted -> wanted.set(0, pieces.count()));
        }
        var responses = new Responses(pieces, chainage, pieceMetres, List.copyOf(new TreeSet<>(needed.keySet())));
        var spreader = new RoadSpread(pieces, chainage);
        var base = new BitSet();
        needed.forEach((spread, wanted) -> {
            if (spread == 0) {
                base.or(wanted);
            } else {
                spreader.addNeighbours(wanted, spread, base);
            }
        });
        KernelRows exact = twins.fold(kernel.rows(pieces, twins.with(base), threads), base, threads);
        needed.forEach((spread, wanted) ->
                responses.rows.add(spread == 0 ? exact : spreader.average(exact, wanted, spread, threads)));
        return responses;
    }

    Pieces pieces() {
        return pieces;
    }

    /** The step that makes a difference, or 0. */
    double rounding(Recording recording) {
        return recording.roundingMetres() < pieceMetres ? 0 : recording.roundingMetres();
    }

    private double spread(Recording recording) {
        double step = pieceMetres / 2;
        if (recording.spreadMetres() < step) {
            return 0;
        }
        while (step < recording.spreadMetres()) {
            step *= 2;
        }
        return step;
    }

    /** The piece in which an event at a position is recorded. */
    int recordedPiece(int link, double metres, Recording recording) {
        double step = rounding(recording);
        if (step == 0) {
            return pieces.at(link, metres);
        }
        Chainage.Position position = chainage.round(link, metres, step);
        return pieces.at(position.link(), position.metres());
    }

    /** For each true piece, the piece in which an event there is recorded. */
    int[] recordedPieces(Recording recording) {
        return rounding(recording) == 0
                ? IntStream.range(0, pieces.count()).toArray()
                : IntStream.range(0, pieces.count())
                        .map(piece -> recordedPiece(pieces.linkOf(piece), pieces.centre(piece), recording))
                        .toArray();
    }

    /** The first row of an event recorded in this way; that of a piece comes so many rows later. */
    int firstRow(Recording recording) {
        int index = spreads.indexOf(spread(recording));
        if (index < 0) {
            throw new IllegalStateException("no rows were made for a spread of " + recording.spreadMetres() + " m");
        }
        return index * pieces.count();
    }

    int row(RoadEvent event) {
        return firstRow(event.recording()) + recordedPiece(event.link(), event.metres(), event.recording());
    }

    /** The recorded piece of a row. */
    int pieceOf(int row) {
        return row % pieces.count();
    }

    int addTo(int row, double[] field, int[] touched, int touchedCount) {
        return rows.get(row / pieces.count()).addTo(pieceOf(row), field, touched, touchedCount);
    }

    KernelRows rowsOf(int row) {
        return rows.get(row / pieces.count());
    }

    /** Events in an order that does not depend on how they came. */
    static List<RoadEvent> inOrder(Collection<RoadEvent> events) {
        return events.stream()
                .sorted(Comparator.comparingInt(RoadEvent::link)
                        .thenComparingDouble(RoadEvent::metres)
                        .thenComparingDouble(event -> event.recording().roundingMetres())
                        .thenComparingDouble(event -> event.recording().spreadMetres()))
                .toList();
    }
}
