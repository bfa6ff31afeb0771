package org.culvert.hotspot;

import java.util.Objects;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.function.Function;
import org.culvert.call.CollisionReport;
import org.culvert.road.network.LinkPoint;
import org.culvert.road.network.NetworkDistances;
import org.culvert.road.network.RoadGraph;
import org.jspecify.annotations.Nullable;

/**
 * Tells a doubt by a junction from a doubt between roads.
 *
 * <p>By a junction the roads that are equally likely meet close by: where along the network it happened is known about as
 * well as the place is, whichever arm it was. To leave such collisions out would empty every junction of a town. Roads that
 * run beside or over one another and meet only far away are another matter: there nobody knows where on the network it was.
 * Roads count as meeting close by when the way between the two points on them is at most four times the doubt about the
 * place (at least 30 m): two points in a circle of that radius, on arms that leave a junction 60 degrees apart or more, are
 * never further (the worst case is the isosceles triangle over the circle's diameter).
 */
public final class RoadDoubt {
    private static final double LEAST_DOUBT_METRES = 30;
    private static final double WAY_TO_DOUBT = 4;

    private final RoadGraph graph;
    private final Function<UUID, OptionalInt> links;
    private final NetworkDistances distances;

    /**
     * @param links the number of a link by its identifier, empty for a link of another network
     */
    public RoadDoubt(RoadGraph graph, Function<UUID, OptionalInt> links) {
        this.graph = graph;
        this.links = links;
        this.distances = NetworkDistances.inMetres(graph);
    }

    /**
     * The longest way in metres from the nearest road to another that is as likely: 0 where the road is not in doubt,
     * infinite where the roads do not meet close by, or one of them is not in the current network or not told.
     */
    public double metresBetweenRoads(CollisionReport report) {
        if (!report.roadIsInDoubt()) {
            return 0;
        }
        LinkPoint nearest = point(
                Objects.requireNonNull(report.roadLinkId()), Objects.requireNonNullElse(report.metresAlongLink(), 0.0));
        double limit = WAY_TO_DOUBT
                * Math.max(LEAST_DOUBT_METRES, Objects.requireNonNullElse(report.coordinateUncertaintyInMeters(), 0.0));
        double longest = report.otherRoads().isEmpty() ? Double.POSITIVE_INFINITY : 0;
        for (CollisionReport.OtherRoad other : report.otherRoads()) {
            LinkPoint there = point(other.roadLinkId(), other.metresAlongLink());
            longest = Math.max(
                    longest,
                    nearest == null || there == null
                            ? Double.POSITIVE_INFINITY
                            : distances.between(nearest, there, limit));
        }
        return longest;
    }

    private @Nullable LinkPoint point(UUID roadLinkId, double metres) {
        OptionalInt link = links.apply(roadLinkId);
        return link.isEmpty() ? null : new LinkPoint(link.getAsInt(), Math.min(metres, graph.length(link.getAsInt())));
    }
}
