package org.culvert.hotspot.beside;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.culvert.hotspot.stats.Chainage;
import org.culvert.hotspot.stats.pattern.SegmentCounts;

/** Roads as lines of metres: each strand of a road is one, from its least chainage to its greatest. */
final class RoadLines {
    private final RoadScene scene;
    private final Chainage chainage;
    private final int[] lineOfLink;
    private final List<List<Integer>> links = new ArrayList<>();
    private final double[] start;
    private final double[] length;

    RoadLines(RoadScene scene, Chainage chainage) {
        this.scene = scene;
        this.chainage = chainage;
        int count = scene.graph().linkCount();
        this.lineOfLink = new int[count];
        Map<Long, Integer> numbers = new HashMap<>();
        for (int link = 0; link < count; link++) {
            long key = (long) chainage.road(link) << 32 | chainage.strand(link);
            int line = numbers.computeIfAbsent(key, unseen -> numbers.size());
            if (line == links.size()) {
                links.add(new ArrayList<>());
            }
            links.get(line).add(link);
            lineOfLink[link] = line;
        }
        this.start = new double[links.size()];
        this.length = new double[links.size()];
        for (int line = 0; line < start.length; line++) {
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (int link : links.get(line)) {
                low = Math.min(low, low(link));
                high = Math.max(high, high(link));
            }
            start[line] = low;
            length[line] = high - low;
        }
    }

    private double low(int link) {
        return Math.min(chainage.at(link, 0), chainage.at(link, scene.graph().length(link)));
    }

    private double high(int link) {
        return Math.max(chainage.at(link, 0), chainage.at(link, scene.graph().length(link)));
    }

    double[] metres() {
        return length.clone();
    }

    int lineOf(DatedEvent dated) {
        return lineOfLink[dated.event().link()];
    }

    double metresOf(DatedEvent dated) {
        int line = lineOf(dated);
        double at = chainage.at(dated.event().link(), dated.event().metres()) - start[line];
        return Math.max(0, Math.min(length[line], at));
    }

    /** Kilometres of road on a piece; where a chainage has no road, nothing is known. */
    SegmentCounts.Exposure roadLength() {
        return (line, from, to) -> {
            double sum = 0;
            for (int link : links.get(line)) {
                double span = high(link) - low(link);
                double shared = Math.min(start[line] + to, high(link)) - Math.max(start[line] + from, low(link));
                if (shared > 0 && span > 0) {
                    sum += shared / span * scene.graph().length(link);
                }
            }
            return sum > 0 ? sum : Double.NaN;
        };
    }

    String label(int line) {
        return scene.label(links.get(line).get(0));
    }

    double chainageAt(int line, double metres) {
        return start[line] + metres;
    }
}
