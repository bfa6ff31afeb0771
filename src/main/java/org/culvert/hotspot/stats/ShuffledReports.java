package org.culvert.hotspot.stats;

import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * The group's n events are drawn without replacement from N reports, each with the place and the way of recording that it
 * has. The variance of the density is that of a sample from a finite population (Cochran 1977, Sampling Techniques,
 * section 2.5): {@code n (1 - n/N) S^2} with {@code S^2} on N - 1.
 */
final class ShuffledReports implements NullModel {
    private final Responses responses;
    private final int[] reportRows;
    private final int drawn;

    /**
     * @param reports all reports, in an order that does not depend on how they came
     * @param drawn how many of them the group has
     */
    ShuffledReports(Responses responses, List<RoadEvent> reports, int drawn) {
        if (drawn > reports.size()) {
            throw new IllegalArgumentException(
                    "a group of " + drawn + " cannot be drawn from " + reports.size() + " reports");
        }
        this.responses = responses;
        this.reportRows = reports.stream().mapToInt(responses::row).toArray();
        this.drawn = drawn;
    }

    @Override
    public void draw(UniformRandomProvider random, int[] rows) {
        int[] left = reportRows.clone();
        for (int i = 0; i < drawn; i++) {
            int pick = i + random.nextInt(left.length - i);
            rows[i] = left[pick];
            left[pick] = left[i];
        }
    }

    @Override
    public int events() {
        return drawn;
    }

    @Override
    public double shareDrawn() {
        return (double) drawn / reportRows.length;
    }

    @Override
    public Moments moments() {
        int pieces = responses.pieces().count();
        double[] sum = new double[pieces];
        double[] squares = new double[pieces];
        double[] recorded = new double[pieces];
        double reports = reportRows.length;
        for (int row : reportRows) {
            recorded[responses.pieceOf(row)] += drawn / reports;
            KernelRows rows = responses.rowsOf(row);
            int piece = responses.pieceOf(row);
            for (int entry = rows.start(piece); entry < rows.start(piece + 1); entry++) {
                double value = rows.value(entry);
                sum[rows.piece(entry)] += value;
                squares[rows.piece(entry)] += value * value;
            }
        }
        double[] mean = new double[pieces];
        double[] variance = new double[pieces];
        for (int piece = 0; piece < pieces && reports > 1; piece++) {
            mean[piece] = drawn * sum[piece] / reports;
            double spread = (squares[piece] - sum[piece] * sum[piece] / reports) / (reports - 1);
            variance[piece] = drawn * (1 - drawn / reports) * spread;
        }
        return new Moments(mean, variance, recorded);
    }
}
