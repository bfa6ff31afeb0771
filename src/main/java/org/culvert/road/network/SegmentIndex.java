package org.culvert.road.network;

import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.ItemVisitor;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Finds the segments near a point of the plane: a sort-tile-recursive tree (Leutenegger, Lopez and Edgington 1997) of short
 * runs of segments, so that a large network needs few boxes. Built once, then read by any number of threads.
 */
final class SegmentIndex {
    private static final int LONGEST_RUN = 8;

    /** {@code x} and {@code y} of all vertices, and for each link the index of its first, with one more at the end. */
    private final double[] x;

    private final double[] y;
    private final STRtree tree = new STRtree(10);
    private final Envelope extent = new Envelope();

    /** Segments {@code first} to {@code last} (ex) of a link; segment i joins vertices i and i + 1 of the flat arrays. */
    private record Run(int link, int first, int last) {}

    /** Takes segments one by one. */
    @FunctionalInterface
    interface SegmentVisitor {
        void visit(int link, int segment);
    }

    SegmentIndex(double[] x, double[] y, int[] firstVertex) {
        this.x = x;
        this.y = y;
        for (int link = 0; link + 1 < firstVertex.length; link++) {
            int last = firstVertex[link + 1] - 1;
            for (int segment = firstVertex[link]; segment < last; segment += LONGEST_RUN) {
                int end = Math.min(last, segment + LONGEST_RUN);
                Envelope box = new Envelope();
                for (int vertex = segment; vertex <= end; vertex++) {
                    box.expandToInclude(x[vertex], y[vertex]);
                }
                extent.expandToInclude(box);
                tree.insert(box, new Run(link, segment, end));
            }
        }
        tree.build();
    }

    Envelope extent() {
        return new Envelope(extent);
    }

    /** Visits every segment whose own box meets the given one. */
    void visit(Envelope box, SegmentVisitor visitor) {
        ItemVisitor each = item -> {
            Run run = (Run) item;
            for (int segment = run.first; segment < run.last; segment++) {
                if (meets(box, segment)) {
                    visitor.visit(run.link, segment);
                }
            }
        };
        tree.query(box, each);
    }

    private boolean meets(Envelope box, int segment) {
        return Math.max(x[segment], x[segment + 1]) >= box.getMinX()
                && Math.min(x[segment], x[segment + 1]) <= box.getMaxX()
                && Math.max(y[segment], y[segment + 1]) >= box.getMinY()
                && Math.min(y[segment], y[segment + 1]) <= box.getMaxY();
    }
}
