package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Every event gets a new true place, uniformly by length within its own stratum of the network, and is then recorded as
 * the real one was: rounded to the same step and spread as far. How many events a stratum and a way of recording has is
 * kept, so that nothing has to be estimated.
 */
final class RedrawnPlaces implements NullModel {
    private record Key(int stratum, double rounding, int firstRow) implements Comparable<Key> {
        @Override
        public int compareTo(Key other) {
            int byStratum = Integer.compare(stratum, other.stratum);
            int byRounding = Double.compare(rounding, other.rounding);
            return byStratum != 0
                    ? byStratum
                    : byRounding != 0 ? byRounding : Integer.compare(firstRow, other.firstRow);
        }
    }

    /** Events of one stratum that were recorded in one way. */
    record Group(WeightedDraw truePiece, int[] recordedPiece, int firstRow, int events) {
        /** The row of an event whose true place is in a piece. */
        int rowOf(int piece) {
            return firstRow + recordedPiece[piece];
        }

        /**
         * Draws true places, and looks up how they are recorded.
         *
         * @param rows filled from {@code at} with one row an event
         * @return the index beyond the last
         */
        int draw(WeightedDraw truePiece, UniformRandomProvider random, int[] rows, int at) {
            truePiece.draw(random, rows, at, events);
            for (int i = at; i < at + events; i++) {
                rows[i] = rowOf(rows[i]);
            }
            return at + events;
        }
    }

    private final Responses responses;
    private final List<Group> groups = new ArrayList<>();

    /**
     * @param stratumOfPiece number of the stratum of each piece; an event belongs to that of the piece it is recorded in
     */
    RedrawnPlaces(Responses responses, List<RoadEvent> events, int[] stratumOfPiece) {
        this.responses = responses;
        Map<Key, Integer> eventsOf = new TreeMap<>();
        Map<Double, int[]> recordedBy = new TreeMap<>();
        for (RoadEvent event : events) {
            Recording recording = event.recording();
            int piece = responses.recordedPiece(event.link(), event.metres(), recording);
            double rounding = responses.rounding(recording);
            recordedBy.computeIfAbsent(rounding, key -> responses.recordedPieces(recording));
            eventsOf.merge(new Key(stratumOfPiece[piece], rounding, responses.firstRow(recording)), 1, Integer::sum);
        }
        Map<Integer, WeightedDraw> drawOf = new TreeMap<>();
        eventsOf.forEach((key, count) -> groups.add(new Group(
                drawOf.computeIfAbsent(key.stratum(), stratum -> drawWithin(stratum, stratumOfPiece)),
                recordedBy.getOrDefault(key.rounding(), new int[0]),
                key.firstRow(),
                count)));
    }

    private WeightedDraw drawWithin(int stratum, int[] stratumOfPiece) {
        int[] within = java.util.stream.IntStream.range(0, stratumOfPiece.length)
                .filter(piece -> stratumOfPiece[piece] == stratum)
                .toArray();
        double[] length = java.util.Arrays.stream(within)
                .mapToDouble(responses.pieces()::length)
                .toArray();
        return new WeightedDraw(within, length);
    }

    @Override
    public void draw(UniformRandomProvider random, int[] rows) {
        int at = 0;
        for (Group group : groups) {
            at = group.draw(group.truePiece, random, rows, at);
        }
    }

    List<Group> groups() {
        return groups;
    }

    @Override
    public int events() {
        return groups.stream().mapToInt(Group::events).sum();
    }

    @Override
    public double shareDrawn() {
        return 0;
    }

    @Override
    public Moments moments() {
        int pieces = responses.pieces().count();
        var moments = new Moments(new double[pieces], new double[pieces], new double[pieces]);
        double[] chanceOf = new double[pieces];
        double[] first = new double[pieces];
        double[] second = new double[pieces];
        for (Group group : groups) {
            int[] truePieces = group.truePiece.items();
            double[] chances = group.truePiece.chances();
            for (int i = 0; i < truePieces.length; i++) {
                chanceOf[group.recordedPiece[truePieces[i]]] += chances[i];
            }
            KernelRows rows = responses.rowsOf(group.firstRow);
            for (int piece = 0; piece < pieces; piece++) {
                double chance = chanceOf[piece];
                if (chance > 0) {
                    moments.recorded()[piece] += group.events * chance;
                    for (int entry = rows.start(piece); entry < rows.start(piece + 1); entry++) {
                        double value = rows.value(entry);
                        first[rows.piece(entry)] += chance * value;
                        second[rows.piece(entry)] += chance * value * value;
                    }
                    chanceOf[piece] = 0;
                }
            }
            for (int piece = 0; piece < pieces; piece++) {
                moments.mean()[piece] += group.events * first[piece];
                moments.variance()[piece] += group.events * (second[piece] - first[piece] * first[piece]);
                first[piece] = 0;
                second[piece] = 0;
            }
        }
        return moments;
    }
}
