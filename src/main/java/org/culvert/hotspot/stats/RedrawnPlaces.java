package org.culvert.hotspot.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Every event gets a new true place, within its own stratum of the network uniformly by length or by survey effort, and is
 * then recorded as the real one was: rounded to the same step and spread as far. How many events a stratum and a way of
 * recording has is kept, so that nothing has to be estimated.
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

    /** Makes what true places are drawn from. */
    private interface Draws {
        /** @param recordedPiece where an event in each true piece is recorded; one array for one rounding */
        WeightedDraw of(int stratum, int[] recordedPiece);
    }

    private final Responses responses;
    private final List<Group> groups = new ArrayList<>();

    /**
     * @param stratumOfPiece number of the stratum of each piece; an event belongs to that of the piece it is recorded in
     */
    RedrawnPlaces(Responses responses, List<RoadEvent> events, int[] stratumOfPiece) {
        this(responses, events, stratumOfPiece, byLength(responses.pieces(), stratumOfPiece));
    }

    private RedrawnPlaces(Responses responses, List<RoadEvent> events, int[] stratumOfPiece, Draws draws) {
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
        eventsOf.forEach((key, count) -> {
            int[] recordedPiece = recordedBy.getOrDefault(key.rounding(), new int[0]);
            groups.add(new Group(draws.of(key.stratum(), recordedPiece), recordedPiece, key.firstRow(), count));
        });
    }

    /**
     * By the metres that surveys went over, in one stratum. What a rounding moves counts where it is recorded, so it is drawn
     * as often as the less surveyed of the two places was surveyed, and never where it would have been left out.
     *
     * @param metresIn metres surveyed in each piece, each counted as often as it was surveyed; not zero everywhere
     */
    static RedrawnPlaces bySurveys(Responses responses, List<RoadEvent> events, double[] metresIn) {
        Pieces pieces = responses.pieces();
        Map<int[], WeightedDraw> drawOf = new IdentityHashMap<>();
        return new RedrawnPlaces(
                responses,
                events,
                new int[pieces.count()],
                (stratum, recordedPiece) ->
                        drawOf.computeIfAbsent(recordedPiece, key -> drawSurveyed(pieces, recordedPiece, metresIn)));
    }

    private static WeightedDraw drawSurveyed(Pieces pieces, int[] recordedPiece, double[] metresIn) {
        double[] weight = new double[metresIn.length];
        for (int piece = 0; piece < weight.length; piece++) {
            int recorded = recordedPiece[piece];
            weight[piece] =
                    Math.min(metresIn[piece], metresIn[recorded] / pieces.length(recorded) * pieces.length(piece));
        }
        // A step so coarse that nothing surveyed is recorded on surveyed ground
        double[] given = Arrays.stream(weight).sum() > 0 ? weight : metresIn;
        int[] surveyed = IntStream.range(0, given.length)
                .filter(piece -> given[piece] > 0)
                .toArray();
        return new WeightedDraw(
                surveyed,
                Arrays.stream(surveyed).mapToDouble(piece -> given[piece]).toArray());
    }

    /** Groups of one stratum share their draw. */
    private static Draws byLength(Pieces pieces, int[] stratumOfPiece) {
        Map<Integer, WeightedDraw> drawOf = new TreeMap<>();
        return (stratum, recordedPiece) ->
                drawOf.computeIfAbsent(stratum, key -> drawWithin(pieces, key, stratumOfPiece));
    }

    private static WeightedDraw drawWithin(Pieces pieces, int stratum, int[] stratumOfPiece) {
        int[] within = IntStream.range(0, stratumOfPiece.length)
                .filter(piece -> stratumOfPiece[piece] == stratum)
                .toArray();
        return new WeightedDraw(
                within, Arrays.stream(within).mapToDouble(pieces::length).toArray());
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
