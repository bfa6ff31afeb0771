package org.culvert.road;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.culvert.geo.Bounds;
import org.culvert.platform.InvalidException;
import org.culvert.road.network.RoadAttributes;
import org.culvert.road.network.RoadNetwork;
import org.jspecify.annotations.Nullable;

/** Shows links of the current network for maps. */
@ApplicationScoped
public class RoadLinkReader {
    public static final int DEFAULT_LIMIT = 1000;
    public static final int MAXIMUM_LIMIT = 10_000;

    private final RoadService roads;

    RoadLinkReader(RoadService roads) {
        this.roads = roads;
    }

    /**
     * Links that have a part in a box, in the order of the network.
     *
     * @param bbox west, south, east, north with commas between, or null for all
     * @param cursor where a former page ended
     */
    public RoadLinkFeatures listLinks(@Nullable String bbox, @Nullable Integer limit, @Nullable String cursor) {
        CurrentRoads current = roads.current();
        RoadNetwork network = current.network();
        int most = limitOf(limit);
        int after = cursorOf(cursor, current);
        int[] links =
                bbox == null ? IntStream.range(0, network.linkCount()).toArray() : network.linksIn(boundsOf(bbox));
        List<RoadLinkFeatures.Feature> features = new ArrayList<>();
        String next = null;
        for (int link : links) {
            if (link <= after) {
                continue;
            }
            if (features.size() == most) {
                next = current.number() + "-" + after;
                break;
            }
            features.add(feature(current, link));
            after = link;
        }
        return new RoadLinkFeatures("FeatureCollection", current.number(), features.size(), next, features);
    }

    /** A link by its number in the network. */
    public static RoadLinkFeatures.Feature feature(CurrentRoads current, int link) {
        RoadNetwork network = current.network();
        RoadAttributes known = network.attributes(link);
        double[] course = network.link(link).vertices();
        double[][] coordinates = new double[course.length / 2][];
        for (int i = 0; i < coordinates.length; i++) {
            coordinates[i] = new double[] {sevenDecimals(course[2 * i]), sevenDecimals(course[2 * i + 1])};
        }
        return new RoadLinkFeatures.Feature(
                "Feature",
                current.linkId(link),
                new RoadLinkFeatures.Geometry("LineString", coordinates),
                new RoadLinkFeatures.Properties(
                        network.roadOf(link).label(),
                        known.ref(),
                        known.roadClass(),
                        known.speedLimitKmh(),
                        known.aadt(),
                        known.owner(),
                        known.carriageway(),
                        known.level(),
                        known.structure().name().toLowerCase(Locale.ROOT),
                        millimetres(network.fromChainage(link)),
                        millimetres(network.toChainage(link)),
                        millimetres(network.graph().length(link)),
                        known.oneWay(),
                        known.lanes(),
                        current.lastingId(link).toString()));
    }

    private static double sevenDecimals(double degrees) {
        return Math.round(degrees * 1e7) / 1e7;
    }

    private static double millimetres(double metres) {
        return Math.round(metres * 1000) / 1000.0;
    }

    private static int limitOf(@Nullable Integer limit) {
        if (limit == null) {
            return DEFAULT_LIMIT;
        }
        if (limit < 1) {
            throw InvalidException.of("limit", "A page needs at least one link.", "1 to " + MAXIMUM_LIMIT);
        }
        return Math.min(limit, MAXIMUM_LIMIT);
    }

    /** A cursor is the version's number and the last link shown: on another version it would mean another link. */
    private static int cursorOf(@Nullable String cursor, CurrentRoads current) {
        if (cursor == null) {
            return -1;
        }
        try {
            String[] parts = cursor.split("-", -1);
            if (parts.length == 2 && Integer.parseInt(parts[0]) == current.number()) {
                return Integer.parseInt(parts[1]);
            }
        } catch (NumberFormatException unknown) {
            throw staleCursor();
        }
        throw staleCursor();
    }

    private static InvalidException staleCursor() {
        return InvalidException.of(
                "cursor",
                "This is no cursor of the current network.",
                "the next of a former page; begin again if a new network was imported meanwhile");
    }

    /** A box as parameters give it. */
    public static Bounds boundsOf(String bbox) {
        String[] parts = bbox.split(",", -1);
        try {
            if (parts.length == 4) {
                return new Bounds(
                        Double.parseDouble(parts[1].strip()),
                        Double.parseDouble(parts[0].strip()),
                        Double.parseDouble(parts[3].strip()),
                        Double.parseDouble(parts[2].strip()));
            }
        } catch (IllegalArgumentException impossible) {
            throw wrongBox();
        }
        throw wrongBox();
    }

    private static InvalidException wrongBox() {
        return InvalidException.of(
                "bbox", "This is no box.", "west,south,east,north in degrees, e.g. 151.0,-34.1,151.4,-33.7");
    }
}
