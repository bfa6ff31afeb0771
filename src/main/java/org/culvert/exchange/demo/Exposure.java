package org.culvert.exchange.demo;

import java.util.ArrayList;
import java.util.List;

/**
 * Where collisions are reported: a kilometre of road counts by the square root of its traffic, by the danger of its
 * class, and by how likely somebody there is to call. The same law for every taxon group, so that what is planted on top
 * of it is all the truth there is.
 */
final class Exposure {
    private final Settings settings;
    private final Ground ground;
    private final Spot mainTown;
    private final List<Road> roads;
    private final double[] cumulative;
    private final int[] roadOf;
    private final int[] segmentOf;

    Exposure(Settings settings, List<Road> roads) {
        this.settings = settings;
        this.ground = settings.ground();
        this.mainTown = ground.spot(settings.mainTown().x(), settings.mainTown().y());
        this.roads = roads;
        int segments = roads.stream().mapToInt(road -> road.spots().size() - 1).sum();
        cumulative = new double[segments];
        roadOf = new int[segments];
        segmentOf = new int[segments];
        double sum = 0;
        int at = 0;
        for (Road road : roads) {
            for (int segment = 0; segment + 1 < road.spots().size(); segment++) {
                sum += weight(road, road.measures()[segment], road.measures()[segment + 1]);
                cumulative[at] = sum;
                roadOf[at] = road.number();
                segmentOf[at] = segment;
                at++;
            }
        }
    }

    /** How many times as likely a caller at a place is as one far from the town. */
    double reporting(Spot spot) {
        double distance = ground.distance(spot, mainTown);
        double near = settings.townNearMetres();
        double far = settings.townFarMetres();
        double share = StrictMath.max(0, StrictMath.min(1, (far - distance) / (far - near)));
        return 1 + (settings.townReportingFactor() - 1) * share;
    }

    /** The weight of a short piece of road. */
    private double weight(Road road, double from, double to) {
        return (to - from)
                * StrictMath.sqrt(road.aadt())
                * road.kind().danger()
                * reporting(road.spotAt((from + to) / 2));
    }

    double total() {
        return cumulative[cumulative.length - 1];
    }

    /** The weight of a stretch, summed over pieces of 50 metres. */
    double weightOf(Road road, double from, double to) {
        double sum = 0;
        for (double at = from; at < to; at += 50) {
            sum += weight(road, at, StrictMath.min(to, at + 50));
        }
        return sum;
    }

    RoadPoint draw(Dice dice) {
        double wanted = dice.unit() * total();
        int low = 0;
        int high = cumulative.length - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (cumulative[middle] > wanted) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        Road road = roads.get(roadOf[low]);
        double[] measures = road.measures();
        int segment = segmentOf[low];
        return new RoadPoint(road, dice.between(measures[segment], measures[segment + 1]));
    }

    record RoadPoint(Road road, double measure) {
        Spot spot() {
            return road.spotAt(measure);
        }
    }

    static List<Road> named(List<Road> roads, String name) {
        List<Road> found = new ArrayList<>();
        for (Road road : roads) {
            if (road.name().equals(name)) {
                found.add(road);
            }
        }
        return found;
    }
}
