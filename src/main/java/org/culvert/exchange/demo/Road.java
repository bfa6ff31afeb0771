package org.culvert.exchange.demo;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One road, or one carriageway of a dual one, with its measure along it.
 *
 * @param measures metres of each vertex by the road's own reckoning, rising; the first is its start measure
 * @param measured whether the road's owner keeps a measure for it at all
 * @param aadt vehicles a day, as they are
 * @param shownAadt as they are written down, or null when nobody counted
 * @param speedLimit in km/h as written down, or null
 */
record Road(
        int number,
        String name,
        RoadClass kind,
        @Nullable String carriageway,
        List<Spot> spots,
        double[] measures,
        boolean measured,
        int aadt,
        @Nullable Integer shownAadt,
        @Nullable Integer speedLimit,
        List<Piece> pieces,
        List<Junction> junctions) {

    /** A part of the road from one vertex to another on one level and under one owner: a feature of the roads file. */
    record Piece(int fromVertex, int toVertex, int level, String owner) {}

    /** A vertex that another named road shares. */
    record Junction(double measure, String otherRoad) {}

    double startMeasure() {
        return measures[0];
    }

    double endMeasure() {
        return measures[measures.length - 1];
    }

    double lengthMetres() {
        return endMeasure() - startMeasure();
    }

    /** The point at a measure, which is clamped to the road. */
    Spot spotAt(double measure) {
        int segment = segmentAt(measure);
        double share = (measure - measures[segment]) / (measures[segment + 1] - measures[segment]);
        return spots.get(segment).towards(spots.get(segment + 1), StrictMath.max(0, StrictMath.min(1, share)));
    }

    int segmentAt(double measure) {
        int low = 0;
        int high = measures.length - 2;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (measures[middle] <= measure) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    String ownerAt(double measure) {
        int segment = segmentAt(measure);
        for (Piece piece : pieces) {
            if (piece.fromVertex() <= segment && segment < piece.toVertex()) {
                return piece.owner();
            }
        }
        throw new IllegalStateException("no piece of " + name + " holds segment " + segment);
    }
}
