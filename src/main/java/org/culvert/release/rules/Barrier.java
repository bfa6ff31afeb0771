package org.culvert.release.rules;

import java.util.List;
import org.culvert.geo.Position;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadCrossing;
import org.culvert.road.network.RoadCrossings;
import org.culvert.road.network.RoadNetwork;
import org.culvert.road.network.Structure;
import org.jspecify.annotations.Nullable;

/**
 * The roads across the straight way between two places: what an animal that goes from one to the other meets. An unknown
 * speed limit counts as the fastest, unknown traffic as the heaviest.
 *
 * @param roads each in the order in which it is met; a road that is met twice is named twice
 */
public record Barrier(List<Crossed> roads) {
    public static final Barrier NONE = new Barrier(List.of());

    /** @param metres from the start, along the straight way */
    public record Crossed(
            String roadName,
            @Nullable String roadClass,
            @Nullable Integer speedLimitKmh,
            @Nullable Integer aadt,
            double metres) {}

    public Barrier {
        roads = List.copyOf(roads);
    }

    /**
     * @param beyondMetres what lies nearer to the start is not counted: the road that the animal was found on is neither before
     *     nor behind it
     */
    public static Barrier between(
            RoadNetwork network, RoadCrossings crossings, Position start, Position end, double beyondMetres) {
        return new Barrier(crossings.between(start, end).stream()
                .filter(crossing -> crossing.metresFromStart() > beyondMetres)
                .filter(crossing -> network.attributes(crossing.link()).structure() != Structure.TUNNEL)
                .map(crossing -> crossed(network, crossing))
                .toList());
    }

    private static Crossed crossed(RoadNetwork network, RoadCrossing crossing) {
        RoadAttributes attributes = network.attributes(crossing.link());
        return new Crossed(
                network.roadOf(crossing.link()).label(),
                attributes.roadClass(),
                attributes.speedLimitKmh(),
                attributes.aadt(),
                crossing.metresFromStart());
    }

    /** What barriers are compared by, computed once. */
    public Weight weight() {
        return new Weight(fastestKmh(), vehiclesADay(), roads.size());
    }

    /** How great a barrier is: by its fastest road, then by the vehicles a day, then by how many roads. */
    public record Weight(double fastestKmh, double vehiclesADay, int roads) implements Comparable<Weight> {
        @Override
        public int compareTo(Weight other) {
            int bySpeed = Double.compare(fastestKmh, other.fastestKmh);
            if (bySpeed != 0) {
                return bySpeed;
            }
            int byTraffic = Double.compare(vehiclesADay, other.vehiclesADay);
            return byTraffic != 0 ? byTraffic : Integer.compare(roads, other.roads);
        }
    }

    /** Vehicles a day on all of them together; infinite where one was never counted. */
    public double vehiclesADay() {
        return roads.stream()
                .mapToDouble(road -> road.aadt() == null ? Double.POSITIVE_INFINITY : road.aadt())
                .sum();
    }

    /** The fastest of them in km/h; 0 where there is none, infinite where one is not known. */
    public double fastestKmh() {
        return roads.stream()
                .mapToDouble(road -> road.speedLimitKmh() == null ? Double.POSITIVE_INFINITY : road.speedLimitKmh())
                .max()
                .orElse(0);
    }
}
